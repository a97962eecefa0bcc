import { exampleLoad } from '#explorables/BillArea/example.ts';
import { amperesAt, costOf, energyOf } from '#explorables/BillArea/model.ts';
import { formatMoney } from '#units/money.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/watts-and-kilowatt-hours/';
const figure = '#bill-area';

test('by keys: the least watts all day, their price and amperes as the core has them; reset', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  await page.locator(`${figure}-watts`).focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('PageUp');
  await page.locator(`${figure}-hours`).focus();
  await page.keyboard.press('End');
  const cost = formatMoney(costOf(energyOf(120, 24 * 3600), exampleLoad.price), '$');
  await expect(page.locator(`${figure} .bill-total`)).toContainText(`${cost} a day`);
  const amperes = amperesAt(exampleLoad, 120)?.current ?? Number.NaN;
  await expect(page.locator(`${figure} .bill-meter dt`).first()).toContainText(
    `The ammeter shows ${amperes.toFixed(1)}`,
  );
  await page.getByRole('button', { name: 'Reset' }).first().click();
  await expect(page.locator(`${figure}-watts`)).toHaveAttribute('aria-valuetext', /^1600 watts/);
});

test('the two knobs of the area answer to keys', async ({ page }) => {
  await page.goto(path);
  await wakeAll(page);
  const edge = page.locator(figure).getByRole('slider', { name: 'Hours a day' }).first();
  await edge.focus();
  await page.keyboard.press('ArrowRight');
  await expect(edge).toHaveAttribute('aria-valuetext', /^8\.25 hours/);
  const top = page.locator(figure).getByRole('slider', { name: 'Watts' }).first();
  await top.focus();
  await page.keyboard.press('ArrowUp');
  await expect(top).toHaveAttribute('aria-valuetext', /^1610 watts/);
});

test('no sideways scroll on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 800 });
  await page.goto(path);
  await wakeAll(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});
