import { expect, test } from './fixture.ts';
import { sheetsOf } from './paper.ts';

test('the start page prints on one or two sheets without masthead and footer', async ({ page }) => {
  await page.goto('/');
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('banner')).toBeHidden();
  await expect(page.getByRole('contentinfo')).toBeHidden();
  expect(await sheetsOf(page)).toBeLessThanOrEqual(2);
});

test('paper is white even for a reader who likes the night', async ({ page }) => {
  await page.goto('/lessons/');
  await page.getByLabel('Look of the page').selectOption('dark');
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  const [ground, ink] = await page.locator('html').evaluate((html) => {
    const { backgroundColor, color } = getComputedStyle(html);
    return [backgroundColor, color];
  });
  expect(ground).toBe('rgb(255, 255, 255)');
  expect(ink).toBe('rgb(0, 0, 0)');
});
