import { expect, test } from './fixture.ts';
import { pagePaths } from './site.ts';

test.use({ serviceWorkers: 'allow' });

test('after one visit every page opens without a network', async ({ page, context }) => {
  test.slow();
  await page.goto('/');
  await page.evaluate(() => navigator.serviceWorker.ready);
  await context.setOffline(true);
  for (const path of pagePaths()) {
    await page.goto(path);
    await expect(page.locator('h1')).toBeVisible();
  }
});

test('a page with an unknown question behind its address opens too', async ({ page, context }) => {
  await page.goto('/');
  await page.evaluate(() => navigator.serviceWorker.ready);
  await context.setOffline(true);
  await page.goto('/lessons/?from=somewhere');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Lessons');
});

test('a first visit offers no update', async ({ page }) => {
  await page.goto('/');
  await page.evaluate(() => navigator.serviceWorker.ready);
  await expect(page.locator('[data-update-offer]')).toBeHidden();
});

test('a waiting version takes over only on the word of the reader', async ({ page }) => {
  await page.addInitScript(() => {
    const waiting = { postMessage: (message: unknown) => Object.assign(window, { said: message }) };
    const registration = Object.assign(new EventTarget(), { waiting, installing: null });
    const container = Object.assign(new EventTarget(), {
      controller: {},
      register: () => Promise.resolve(registration),
    });
    Object.defineProperty(navigator, 'serviceWorker', { value: container });
  });
  await page.goto('/');
  const offer = page.locator('[data-update-offer]');
  await expect(offer).toBeVisible();
  expect(await page.evaluate(() => 'said' in window)).toBe(false);
  await page.getByRole('button', { name: 'Use it now' }).click();
  expect(await page.evaluate(() => Reflect.get(window, 'said'))).toEqual({ type: 'SKIP_WAITING' });
});
