import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { yearReport } from '#core/year.ts';
import { padModel } from '#pad/assemble.ts';
import { yearPlanOf } from '#pad/assembleYear.ts';
import { ownerPad } from '#pad/demos.ts';
import type { PadYear } from '#pad/schema.ts';
import { formatMoney } from '#units/money.ts';
import { expect, test, widthBeyondScreen } from './fixture.ts';

const finding = (page: Page) => page.locator('.year-sheet .cheapest-finding');

async function open(page: Page): Promise<void> {
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Work out the year' }).click();
  await expect(finding(page)).toContainText('The year 2027 takes');
}

/** The price of the example's year by the core, with what was said of the year. */
function priceWith(given: Partial<PadYear>): string {
  const pad = { ...ownerPad, year: { ...ownerPad.year, ...given } };
  const plan = yearPlanOf(pad, padModel(pad), { year: 2027 });
  if (plan === null) throw new Error('the example has no year');
  return formatMoney(yearReport(plan).cost, pad.tariff.currency);
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
  await expect(finding(page)).toContainText(/The \$1\s?200\.00 for the pump are back in/);
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
  await expect(page.locator('.year-plans li')).toHaveText(/from 1 May: 4 blocks, 24\sh a day/);
  await page.locator('.year-plans').getByRole('button', { name: 'Remove' }).click();
  await expect(page.locator('.year-plans li')).toHaveCount(0);
  await page.getByRole('button', { name: 'Begin with an invented year' }).click();
  await expect(page.locator('.year-month')).toHaveCount(12);
  await page.getByRole('button', { name: 'Clear the months' }).click();
  await expect(page.locator('.year-month')).toHaveCount(0);
});

test('by day, by night and on a phone it has no barrier that axe can find', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open(page);
  await page.getByRole('button', { name: 'Begin with an invented year' }).click();
  await page.getByRole('button', { name: 'Find the cheapest day' }).click();
  await expect(page.locator('.cheapest > .cheapest-found')).toBeVisible();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await new AxeBuilder({ page }).include('.day').analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`),
      colorScheme,
    ).toEqual([]);
  }
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await widthBeyondScreen(page)).toBe(0);
});
