import { filteredShare } from '#core/water/mixing.ts';
import { expect, test } from '../fixture.ts';

test('hours and flow by the keys move the share as the core says', async ({ page }) => {
  await page.goto('/lessons/volume-and-turnover/');
  const figure = page.locator('#mixing-parcels');
  await figure.scrollIntoViewIfNeeded();
  await expect(page.locator('astro-island[ssr]:has(#mixing-parcels)')).toHaveCount(0);
  const waiting = figure.locator('.mixing-key dd').first();
  await expect(waiting).toHaveText('37');

  // The example is one turnover in 8 hours: ten half hours more are 5/8 of another.
  const knob = figure.getByRole('slider', { name: 'Time the pump has run' }).first();
  await knob.focus();
  await page.keyboard.press('PageUp');
  const share = filteredShare(13 / 8);
  await expect(waiting).toHaveText(String(Math.round(100 * (1 - share))));
  await expect(knob).toHaveAttribute(
    'aria-valuetext',
    new RegExp(`${Math.round(100 * share)} percent has passed`),
  );
  await expect(page).toHaveURL(/mixing=time-46800/);

  await figure.locator('#mixing-parcels-flow').focus();
  await page.keyboard.press('Home');
  await expect(waiting).toHaveText('100');
  await expect(figure.locator('.figure-finding')).toContainText('No water moves');

  await figure.getByRole('button', { name: 'Reset' }).click();
  await expect(waiting).toHaveText('37');
  await expect(page).not.toHaveURL(/mixing=/);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  test('picture and parcels fit', async ({ page }) => {
    await page.goto('/lessons/volume-and-turnover/');
    await page.locator('#mixing-parcels').scrollIntoViewIfNeeded();
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
  });
});
