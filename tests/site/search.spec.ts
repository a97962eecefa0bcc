import { expect, test } from './fixture.ts';
import { fileOf, travelSize } from './site.ts';

const field = 'What are you looking for?';

test('a word is found in the shelf and in a lesson, with the sentence it stands in', async ({
  page,
}) => {
  await page.goto('/search/');
  await page.getByLabel(field).fill('reynolds');
  const found = page.locator('.search-found li');
  await expect(found.first().getByRole('link')).toHaveText('Reynolds number');
  await expect(found.first().locator('mark').first()).toHaveText(/reynolds/i);
  await expect(found.filter({ hasText: 'Velocity and bore' }).first().locator('mark')).toHaveText(
    'Reynolds',
  );
  await expect(page.locator('#search-outcome')).toHaveText(/places found, the nearest first/);
  await expect(page).toHaveURL('/search/?q=reynolds');
});

test('by keyboard alone: type, go down to a place, open it there', async ({ page }) => {
  await page.goto('/search/');
  const input = page.getByLabel(field);
  await input.focus();
  await page.keyboard.type('affinity laws');
  await expect(page.locator('.search-found a').first()).toBeVisible();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await expect(page.locator('.search-found a').nth(1)).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(input).toBeFocused();
  await page.keyboard.press('ArrowDown');
  const target = await page.locator('.search-found a').first().getAttribute('href');
  await page.keyboard.press('Enter');
  await page.waitForURL((url) => url.pathname + url.hash === target);
  await expect(page.locator('h1')).toBeVisible();
});

test('a link carries the words, and nothing found is said plainly', async ({ page }) => {
  await page.goto('/search/?q=trampoline');
  await expect(page.getByLabel(field)).toHaveValue('trampoline');
  await expect(page.locator('#search-outcome')).toHaveText(
    'Nothing has “trampoline”. Try fewer words, or other ones.',
  );
});

test('answers that a reader is to work out are not given away', async ({ page }) => {
  await page.goto('/search/');
  await page.getByLabel(field).fill('shaft power');
  await expect(page.locator('.search-found li').first()).toBeVisible();
  await expect(page.locator('.search-found')).not.toContainText('Show the working');
});

test('an index that cannot be fetched is said, and asked for again', async ({
  page,
  allowMessage,
}) => {
  allowMessage(/Failed to load resource/);
  let isGone = true;
  await page.route('**/search-index.json', (route) => (isGone ? route.abort() : route.continue()));
  await page.goto('/search/');
  await page.getByLabel(field).fill('bor');
  await expect(page.locator('#search-outcome')).toHaveText(/could not be fetched/);
  isGone = false;
  await page.getByLabel(field).fill('bore');
  await expect(page.locator('.search-found li').first()).toContainText('Bore');
});

test('the index travels light', () => {
  expect(fileOf('/search-index.json')).toBeDefined();
  expect(travelSize('/search-index.json')).toBeLessThan(200);
});

test('the masthead leads there from every kind of page', async ({ page }) => {
  for (const path of ['/', '/lessons/velocity-and-bore/', '/reference/pipes/', '/pad/']) {
    await page.goto(path);
    await page.getByRole('banner').getByRole('link', { name: 'Search' }).click();
    await expect(page.locator('h1')).toHaveText('Search');
  }
});

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false });
  test('the page says so and leads on', async ({ page }) => {
    await page.goto('/search/');
    await expect(page.getByText('Searching needs script')).toBeVisible();
    await expect(page.getByLabel(field)).toBeHidden();
    await page.getByRole('main').getByRole('link', { name: 'glossary' }).click();
    await expect(page.locator('h1')).toHaveText('Glossary');
  });
});

test.describe('without a network', () => {
  test.use({ serviceWorkers: 'allow' });
  test('words are found after one visit to any page', async ({ page, context }) => {
    test.slow();
    await page.goto('/');
    await page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    await page.goto('/search/?q=spillway');
    const first = page.locator('.search-found a').first();
    await expect(first).toHaveText('Spillway');
    await first.click();
    await expect(page.locator('h1')).toHaveText('Glossary');
    await expect(page.locator('#spillway')).toContainText('falls into the pool');
  });
});
