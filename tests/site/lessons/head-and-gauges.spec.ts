import { totalDynamicHead } from '#core/fit/gauges.ts';
import { water } from '#core/water/water.ts';
import { exampleTemperature } from '#explorables/GaugeHead/example.ts';
import { rigPad } from '#pad/demos/demoRig.ts';
import { padFragment } from '#pad/document/link.ts';
import { foot, inchOfMercury, psi } from '#units/factors.ts';
import { formatIn } from '#units/format.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/head-and-gauges/';

/** The head by the core, as the page should write it. */
function headShown(pounds: number, inches: number, feet: number, temperature: number): string {
  const total = totalDynamicHead({
    dischargePressure: pounds * psi,
    suctionVacuum: inches * inchOfMercury,
    gaugeHeight: feet * foot,
    density: water(temperature).density,
  });
  return formatIn('head', total, 'ft');
}

test('gauges by keys add up to the head that the core gives; Reset brings the first state back', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  const opening = await finding.textContent();
  const pressure = page.locator('#gauge-head-filterPressure');
  await pressure.focus();
  await page.keyboard.press('End');
  await page.locator('#gauge-head-suctionVacuum').focus();
  await page.keyboard.press('Home');
  for (const key of ['PageUp', 'PageUp', 'ArrowUp']) await page.keyboard.press(key);
  const needle = page.getByRole('slider', { name: /^Height of the filter gauge/ });
  await needle.focus();
  await page.keyboard.press('Home');
  // 60 psi, 2.1 inHg of vacuum, the filter gauge 2 ft lower.
  await expect(finding).toContainText(`adds ${headShown(60, 2.1, -2, exampleTemperature)} of head`);
  await expect(finding).toContainText('The gauges alone do not say');
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toHaveText(opening ?? '');
});

test('takes the reader’s own readings, and fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(path + padFragment(rigPad));
  await wakeAll(page);
  await page.getByText('My pad', { exact: true }).click();
  await page.getByText('1725 rpm', { exact: true }).click();
  const finding = page.locator('.figure-finding');
  await expect(finding).toContainText(`adds ${headShown(2.4, 1.3, 2, 20)} of head`);
  await expect(finding).toContainText(
    `The flow is then ${formatIn('flow', 42.5 * 6.30901964e-5, 'gpm')}`,
  );
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
});
