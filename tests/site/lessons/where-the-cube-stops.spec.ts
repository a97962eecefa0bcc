import { exampleSetup } from '#explorables/WaterPerKilowattHour/example.ts';
import { asked, bestStep, startSpeed, stepAt } from '#explorables/WaterPerKilowattHour/mileage.ts';
import { gallonPerMinute } from '#units/factors.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/where-the-cube-stops/';
const figure = '#water-per-kwh';

test('by keys: the slowest speed, its flow and the best speed as the core has them; reset', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const flow = page.locator(`${figure} .readout[data-quantity="flow"] .readout-value`);
  await page.locator(`${figure}-speed`).focus();
  await page.keyboard.press('Home');
  const one = asked(exampleSetup, exampleSetup.power.fixed, 0);
  const slow = stepAt(one, exampleSetup.leastSpeed).flow / gallonPerMinute;
  await expect
    .poll(async () => Math.abs(Number.parseFloat((await flow.textContent()) ?? '') - slow))
    .toBeLessThanOrEqual(0.05);
  const best = Math.round(bestStep(one)?.speed ?? 0);
  await expect(page.locator(`${figure} .figure-finding`)).toContainText(
    `The best speed is ${best}\u00a0rpm`,
  );
  await page.getByRole('button', { name: 'Reset' }).first().click();
  await expect(page.locator(`${figure}-speed`)).toHaveAttribute('aria-valuetext', /^1400 /);
});

test('the knobs of fixed draw and lift answer to keys', async ({ page }) => {
  await page.goto(path);
  await wakeAll(page);
  await page.getByRole('slider', { name: 'Fixed draw' }).first().focus();
  await page.keyboard.press('Home');
  await expect(page.locator(`${figure} .figure-finding`)).toContainText('slower is always better');
  const lift = page.getByRole('slider', { name: 'Lift' }).first();
  await lift.focus();
  await page.keyboard.press('PageUp');
  // Ten steps of half a foot.
  const start = Math.ceil(startSpeed(asked(exampleSetup, 0, 5 * 0.3048)));
  await expect(lift).toHaveAttribute('aria-valuetext', new RegExp(`from ${start} revolutions`));
});

test('no sideways scroll on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 800 });
  await page.goto(path);
  await wakeAll(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});
