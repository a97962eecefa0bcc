import { pressureHead } from '#core/fit/gauges.ts';
import { atmosphericPressure, geopotentialAltitude } from '#core/pump/npsh.ts';
import { liquidDensity } from '#core/water/water.ts';
import { expect, test } from '../fixture.ts';

const foot = 0.3048; // exact, NIST SP 811
const inCelsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;

test('height and altitude by the keys move the ladder as the core says', async ({ page }) => {
  await page.goto('/lessons/suction-side/');
  const figure = page.locator('#suction-ladder');
  await figure.scrollIntoViewIfNeeded();
  await expect(page.locator('astro-island[ssr]:has(#suction-ladder)')).toHaveCount(0);
  const margin = async () =>
    Number.parseFloat((await figure.locator('.readout-value').nth(2).textContent()) ?? '');
  const before = await margin();

  // A foot of height is a foot of margin.
  const height = figure.getByRole('slider', { name: 'Pump above the water' }).first();
  await height.focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => margin()).toBeCloseTo(before - 2, 1);

  const air = (altitude: number) =>
    pressureHead(
      atmosphericPressure(geopotentialAltitude(altitude)),
      liquidDensity(inCelsius(82)),
    ) / foot;
  const altitude = figure.locator('#suction-ladder-altitude');
  await altitude.focus();
  for (let presses = 0; presses < 5; presses += 1) await page.keyboard.press('PageUp');
  await expect(altitude).toHaveAttribute('aria-valuetext', /^5000 feet; margin/);
  const shown = Number.parseFloat(
    (await figure.locator('.curve-label.is-strong').first().textContent()) ?? '',
  );
  expect(shown).toBeCloseTo(air(5000 * foot), 1);
  await expect(page).toHaveURL(/suction=altitude-1524/);

  await figure.getByLabel('Basket full of leaves').check();
  await expect(figure.locator('.figure-finding')).toContainText('its basket full');
  await figure.getByRole('button', { name: 'Reset' }).click();
  await expect.poll(() => margin()).toBe(before);
  await expect(page).not.toHaveURL(/suction=/);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  test('the ladder fits', async ({ page }) => {
    await page.goto('/lessons/suction-side/');
    await page.locator('#suction-ladder').scrollIntoViewIfNeeded();
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
  });
});
