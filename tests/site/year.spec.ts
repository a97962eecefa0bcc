import type { Page } from '@playwright/test';
import { yearReport } from '#core/year/year.ts';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { padFragment } from '#pad/document/link.ts';
import type { Pad, PadYear } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { formatMoney } from '#units/money.ts';
import { expectNoBarrier } from './barriers.ts';
import { expect, test, widthBeyondScreen } from './fixture.ts';
import { sheetsOf } from './paper.ts';

const finding = (page: Page) => page.locator('.year-sheet .cheapest-finding');

async function open(page: Page, pad?: Pad): Promise<void> {
  await page.goto(`/day/${pad === undefined ? '' : padFragment(pad)}`);
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Work out the year' }).click();
  await expect(finding(page)).toContainText('The year 2027 takes');
}

/** The price of the example's year by the core, with what was said of the year. */
function priceWith(given: Partial<PadYear>): string {
  const pad = { ...ownerPad, year: { ...ownerPad.year, ...given } };
  const plan = yearPlanOf(pad, padModel(pad), { year: 2027 });
  if (plan === null) throw new Error('the example has no year');
  return formatMoney(yearReport(plan).cost, pad.tariff.currency, { places: 0 });
}

test('the year follows what is typed, by keys alone, and says what the core says', async ({
  page,
}) => {
  await open(page);
  await expect(finding(page)).toContainText(`costs ${priceWith({})}`);
  await page.getByLabel('Days between two cleanings of the filter').focus();
  await page.keyboard.type('30');
  await expect(finding(page)).toContainText(`costs ${priceWith({ cleaningDays: 30 })}`);
  await page.getByLabel('Price of the pump, fitted').fill('1200');
  await expect(finding(page)).toContainText(/The \$1200 for the pump are back in/);
  await page.getByLabel('Days between two cleanings of the filter').fill('0');
  await page.keyboard.press('Tab');
  await expect(
    page.getByText(/0 is too little\. The number of days must be from 1 to/),
  ).toBeVisible();
  await expect(finding(page)).toContainText(`costs ${priceWith({ cleaningDays: 30 })}`);
});

test('plans by season and months can be added and taken away', async ({ page }) => {
  await open(page);
  await page.getByRole('button', { name: 'Use the day on the sheet from then on' }).click();
  const season = page.locator('.year-season');
  await expect(season).toContainText(/All year, 365\sdays: 4 blocks, 24\sh a day/);
  await season.getByRole('button', { name: 'Remove' }).click();
  await expect(season).toHaveCount(0);
  await page.getByRole('button', { name: 'Begin with an invented year' }).click();
  await expect(page.locator('.year-month')).toHaveCount(12);
  await page.getByRole('button', { name: 'Clear the months' }).click();
  await expect(page.locator('.year-month')).toHaveCount(0);
});

test('a season has its own needs, name and first day, and a cheaper day in one tap, with undo', async ({
  page,
}) => {
  await open(page, lodgePad);
  const winter = page.locator('.year-season').last();
  await expect(winter).toContainText(/1 October to 14 May, 226\sdays: 1 block/);
  await expect(winter).toContainText(/Heat pump on 226\sdays/);
  // By keys alone: the box of a need, the name, the button.
  await winter.getByLabel('Heat pump').focus();
  await page.keyboard.press('Space');
  await winter.getByLabel('Skim before and after guests').focus();
  await page.keyboard.press('Space');
  await expect(winter).toContainText(/Short: Filter on 226\sdays\./);
  await winter.getByLabel('Season', { exact: true }).fill('Quiet months');
  await winter.getByLabel('From day').selectOption('15');
  await expect(winter).toContainText('15 October to 14 May');
  await winter.getByRole('button', { name: 'Take the cheapest day for this season' }).focus();
  await page.keyboard.press('Enter');
  await expect(winter).toContainText('The cheapest day for this season is in its place');
  await expect(winter).toContainText('Every need that holds has its hours on every day.');
  await winter.getByRole('button', { name: 'Undo the cheapest day' }).click();
  await expect(winter).toContainText(/Short: Filter on 212\sdays\./);
  await expect(winter.getByLabel('Season', { exact: true })).toHaveValue('Quiet months');
});

test('the months show money, energy, water, hours or gas, beside the year that is chosen', async ({
  page,
}) => {
  await open(page, lodgePad);
  const picture = page.locator('.year-months-plot .plot-still');
  await expect(picture).toHaveAttribute(
    'aria-label',
    /^Price of the month.*One-speed pump before$/,
  );
  await page.getByLabel('Water', { exact: true }).check();
  await expect(page.locator('.year-months-plot')).toContainText('is not known');
  await page.getByLabel('One speed, same water').check();
  await expect(picture).toHaveAttribute('aria-label', /^Water moved in the month.*same water$/);
  await expect(finding(page)).toContainText('than top speed alone, for the same water');
  const table = page.locator('.year-beside');
  await expect(table.locator('thead th')).toHaveCount(4);
  await expect(table.getByRole('row', { name: /The pump is paid back in/ })).toContainText('years');
});

test('the year prints on a sheet of its own, and the sheet by the pump names its season', async ({
  page,
}) => {
  await open(page, lodgePad);
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.year-sheet')).toBeHidden();
  await expect(page.locator('.print-sheet')).toContainText(
    'Season “Guests in the house”, 15 May to 30 September.',
  );
  expect(await sheetsOf(page)).toBe(1);
  await page.evaluate(() => {
    document.documentElement.dataset['print'] = 'year';
  });
  await expect(page.locator('.print-sheet')).toBeHidden();
  await expect(page.locator('.year-paper')).toContainText('House shut. 1 October to 14 May');
  await expect(page.locator('.year-beside')).toBeVisible();
  expect(await sheetsOf(page)).toBe(1);
});

test('by day, by night and on a phone it has no barrier that axe can find', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open(page);
  await page.getByRole('button', { name: 'Begin with an invented year' }).click();
  await page.getByRole('button', { name: 'Use the day on the sheet from then on' }).click();
  await page.getByRole('button', { name: 'Find the cheapest day' }).click();
  await expect(page.locator('.cheapest > .cheapest-found')).toBeVisible();
  await expectNoBarrier(page, '.day');
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await widthBeyondScreen(page)).toBe(0);
});
