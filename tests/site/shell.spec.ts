import { expect, test } from './fixture.ts';
import { pagePaths } from './site.ts';

const paths = pagePaths();

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false });
  for (const path of paths) {
    test(`${path} shows its heading and no dead control`, async ({ page }) => {
      await page.goto(path);
      await expect(page.locator('h1')).toBeVisible();
      await expect(page.locator('main')).not.toBeEmpty();
      for (const control of await page.locator('button, input, select, textarea').all()) {
        await expect(control).toBeHidden();
      }
    });
  }
});

test('the look that was chosen comes back on the next page before anything is drawn', async ({
  page,
}) => {
  await page.goto('/');
  await page.getByLabel('Look of the page').selectOption('dark');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.goto('/lessons/', { waitUntil: 'commit' });
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await expect(page.getByLabel('Look of the page')).toHaveValue('dark');
  await page.getByLabel('Look of the page').selectOption('');
  await expect(page.locator('html')).not.toHaveAttribute('data-theme');
});

test.describe('night without script', () => {
  test.use({ javaScriptEnabled: false, colorScheme: 'dark' });
  test('the ground is dark where the device asks for it', async ({ page }) => {
    await page.goto('/');
    const ground = await page.locator('html').evaluate((html) => {
      return getComputedStyle(html).backgroundColor;
    });
    const [red = 255, green = 255, blue = 255] = (ground.match(/\d+/g) ?? []).map(Number);
    expect(Math.max(red, green, blue)).toBeLessThan(64);
  });
});

test('spoiled storage leaves the page as the device has it', async ({ page }) => {
  await page.addInitScript(() => localStorage.setItem('cubelaw-theme', '{"not":"a look"'));
  await page.goto('/');
  await expect(page.locator('html')).not.toHaveAttribute('data-theme');
  await expect(page.locator('h1')).toBeVisible();
});
