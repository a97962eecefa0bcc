import type { Page } from '@playwright/test';
import { rigPad } from '#pad/demos/demos.ts';
import { padKey } from '#pad/store/padKey.ts';
import { expect, test } from './fixture.ts';

/** Opens a page whose scripts stay on the way until they are let through. */
async function openAsleep(page: Page, path: string): Promise<() => Promise<void>> {
  let letThrough = () => {};
  const arrived = new Promise<void>((resolve) => {
    letThrough = resolve;
  });
  await page.route('**/*.js', async (route) => {
    await arrived;
    await route.continue();
  });
  await page.goto(path, { waitUntil: 'commit' });
  await expect(page.locator('astro-island[ssr]').first()).toBeAttached();
  return async () => {
    letThrough();
    await page.unrouteAll({ behavior: 'wait' });
  };
}

test('words typed and sent before the script has come are searched for', async ({ page }) => {
  const wake = await openAsleep(page, '/search/?q=turnover');
  await page.getByLabel('What are you looking for?').fill('reynolds');
  await page.keyboard.press('Enter');
  await wake();
  await expect(page.locator('.search-found a').first()).toHaveText('Reynolds number');
  await expect(page.getByLabel('What are you looking for?')).toHaveValue('reynolds');
  await expect(page).toHaveURL('/search/?q=reynolds');
});

test('a guess made before the script has come is kept as the guess', async ({ page }) => {
  const wake = await openAsleep(page, '/lessons/flow-power-speed/');
  const ask = page.locator('.ask').first();
  await ask.locator('.ask-option').nth(1).click();
  await wake();
  await expect(ask.getByRole('radio').nth(1)).toBeChecked();
  await ask.getByRole('button', { name: 'Lock in my guess' }).click();
  await expect(ask.locator('.ask-verdict')).toContainText('You guessed:');
});

test('a button pressed before the script has come is pressed once it has, and once only', async ({
  page,
}) => {
  const wake = await openAsleep(page, '/day/');
  const rows = page.locator('.day-row');
  const before = await rows.count();
  await page
    .getByRole('button', { name: /^Remove/ })
    .first()
    .click();
  await expect(rows).toHaveCount(before);
  await wake();
  await expect(rows).toHaveCount(before - 1);
  await page.getByRole('button', { name: 'Undo' }).first().click();
  await expect(rows).toHaveCount(before);
});

test('what was meant for the example does not befall the own pad', async ({ page }) => {
  await page.addInitScript(([key, text]) => localStorage.setItem(key, text), [
    padKey,
    JSON.stringify(rigPad),
  ] as const);
  const wake = await openAsleep(page, '/day/');
  // Nothing of the example is there to be touched, or to be taken for one's own.
  await expect(page.locator('.day-row').first()).toBeHidden();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.print-sheet, .day-print').first()).toBeHidden();
  await page.emulateMedia({ media: 'screen' });
  await page.mouse.click(300, 400);
  await wake();
  await expect(page.locator('.day-name')).toHaveText(rigPad.name);
  await expect(page.locator('.day-row').first()).toBeVisible();
  await expect(page.locator('.day-row')).toHaveCount(rigPad.day.blocks.length);
});
