import { pipeSizes } from '#core/hydraulics/pipe.ts';
import { expect, test } from './fixture.ts';
import { pageSource } from './site.ts';

const pages = [
  'safety',
  'pipes',
  'fittings',
  'equipment',
  'formulas',
  'glossary',
  'sources',
  'checks',
];

test('the shelf leads to all of its pages and each leads back', async ({ page }) => {
  for (const name of pages) {
    await page.goto('/reference/');
    await page.locator(`.shelf-entry[href="/reference/${name}/"]`).click();
    await expect(page).toHaveURL(new RegExp(`/reference/${name}/$`));
    await page.getByRole('main').getByRole('link', { name: 'Reference shelf' }).click();
    await expect(page.locator('h1')).toHaveText('Reference shelf');
  }
});

test('the start page leads to the shelf, and still has its doors', async ({ page }) => {
  await page.goto('/');
  await expect(page.locator('.door a', { hasText: 'Learn how it works' })).toBeVisible();
  await expect(page.locator('.door a', { hasText: 'Work out mine' })).toBeVisible();
  await page.getByRole('main').getByRole('link', { name: 'reference shelf' }).click();
  await expect(page.locator('h1')).toHaveText('Reference shelf');
});

for (const name of ['', ...pages.map((each) => `${each}/`)]) {
  test(`/reference/${name} loads no script file`, () => {
    expect(pageSource(`/reference/${name}`)).not.toMatch(/<script[^>]+src=|astro-island/);
  });
}

test('every size of pipe has its row, twice', async ({ page }) => {
  await page.goto('/reference/pipes/');
  await expect(page.locator('.figures tbody tr')).toHaveCount(2 * pipeSizes.length);
});

test('the formulas are set, each in the maths font', async ({ page }) => {
  await page.goto('/reference/formulas/');
  const laws = await page.locator('.law').count();
  expect(await page.locator('.law-maths .katex-display').count()).toBe(laws);
  const face = await page
    .locator('.law-maths .mathnormal')
    .first()
    .evaluate((letter) => getComputedStyle(letter).fontFamily);
  expect(face).toContain('KaTeX');
  await expect(page.locator('.katex-error')).toHaveCount(0);
});

test('a term in a lesson leads to its entry, and that is marked', async ({ page }) => {
  await page.goto('/lessons/velocity-and-bore/');
  const term = page.locator('a.term').first();
  const words = (await term.textContent()) ?? '';
  await term.click();
  await expect(page.locator('h1')).toHaveText('Glossary');
  const entry = page.locator('.glossary > div:target');
  await expect(entry).toBeInViewport();
  await expect(entry.locator('dt')).toContainText(words.replace(/s$/, ''), { ignoreCase: true });
});

test('a source of a lesson leads to its entry, which leads back', async ({ page }) => {
  await page.goto('/lessons/velocity-and-bore/');
  await page.locator('#source-astm-d1785').getByRole('link', { name: 'Where it is used' }).click();
  const entry = page.locator('#astm-d1785');
  await expect(entry).toBeInViewport();
  await entry.getByRole('link', { name: 'Velocity and bore' }).click();
  await expect(page.locator('h1')).toHaveText('Velocity and bore');
});

test('the checks unfold, and every value lies within its tolerance', async ({ page }) => {
  await page.goto('/reference/checks/');
  const families = page.locator('.check-family');
  expect(await families.count()).toBeGreaterThan(12);
  await page.locator('#pipe-dimensions summary').click();
  const row = page.locator('#pipe-dimensions tr', { hasText: 'nominal = 2 in, schedule = 40' });
  // Source: ASTM D1785 table 1.
  await expect(row.first()).toContainText('2.375 in');
  await expect(page.locator('main')).not.toContainText('outside its tolerance');
});

test('a wide table scrolls in its own box by keyboard', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/reference/pipes/');
  const box = page.locator('.figures').nth(1);
  await box.focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => box.evaluate((element) => element.scrollLeft)).toBeGreaterThan(0);
});
