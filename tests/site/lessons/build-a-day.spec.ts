import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { dayReport } from '#core/day/dayReport.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import { exampleBench } from '#explorables/ThreeBlockDay/example.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padFragment } from '#pad/document/link.ts';
import { formatMoney } from '#units/money.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/build-a-day/';
const { reference } = exampleBench.speeds;

/** The day by the core: from nine, from twelve, and from a given minute, at three speeds [rpm]. */
function worked(lowBegins: number, [high, middle, low]: readonly [number, number, number]) {
  const blocks = [
    { id: 'high', start: 540, end: 720, ratio: high / reference },
    { id: 'middle', start: 720, end: lowBegins, ratio: middle / reference },
    { id: 'low', start: lowBegins, end: 540, ratio: low / reference },
  ];
  const report = dayReport({ ...exampleBench, blocks });
  const price = priceDay(exampleBench.tariff, exampleBench.date, report.segments).cost;
  const energy = (report.energy / joulesPerKilowattHour).toFixed(2);
  return `with ${energy}\u00a0kWh for ${formatMoney(price, '$')}`;
}

test('ends and speeds by keys: energy and price are those of the core, and Reset brings the day back', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  await expect(finding).toContainText(worked(1080, [2600, 1800, 1200]));
  await page.getByRole('slider', { name: 'Low block begins' }).first().focus();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowRight');
  await expect(finding).toContainText(worked(1035, [2600, 1800, 1200]));
  await page.locator('#three-block-day-high-speed').focus();
  await page.keyboard.press('PageDown');
  await expect(finding).toContainText(worked(1035, [2500, 1800, 1200]));
  await page.locator('#three-block-day-low-stops').focus();
  await page.keyboard.press('Space');
  await expect(finding).toContainText('Salt cell is');
  await expect(page).toHaveURL(/threeblocks=.*low-1035.*stops-1/);
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toContainText(worked(1080, [2600, 1800, 1200]));
});

test('a time is typed, a wrong one is told, and the own pad is laid out on a phone', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(path + padFragment(ownerPad));
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  const field = page.locator('#three-block-day-low-begins-number');
  await field.fill('5 pm');
  await expect(finding).toContainText(worked(1020, [2600, 1800, 1200]));
  await field.fill('supper');
  await field.blur();
  await expect(page.locator('#three-block-day-low-begins-number-error')).toContainText(
    'Give a time of the day, such as 09:30.',
  );
  await page.getByText('My pad', { exact: true }).click();
  await expect(page.locator('.blocks-needs')).toContainText('Gas heater');
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
});
