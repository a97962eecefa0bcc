import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { csvParseRows } from 'd3-dsv';
import ICAL from 'ical.js';
import { priceDay } from '#core/tariff/pricing.ts';
import { yearReport } from '#core/year/year.ts';
import { createDayModel } from '#dayPage/day/model.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { padModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { storeOf } from '../dayPage/daySheetFixtures.ts';
import { expectNoBarrier } from './barriers.ts';
import { expect, test, widthBeyondScreen } from './fixture.ts';

async function open(page: Page): Promise<void> {
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Choose a file' }).click();
  await expect(page.getByRole('button', { name: 'Save the day as a table' })).toBeVisible();
}

/** The file that a button hands out, asked for by keys. */
async function fileOf(page: Page, name: string): Promise<{ name: string; text: string }> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name }).focus();
  await page.keyboard.press('Enter');
  const download = await coming;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

const rowsOf = (text: string) => csvParseRows(text.replace(/^\ufeff/, ''));

test('the day as a table holds what the core says, and never a formula that was typed', async ({
  page,
}) => {
  await open(page);
  await page.getByLabel('Reason').first().fill('=1+1');
  await expect(async () => {
    const { name, text } = await fileOf(page, 'Save the day as a table');
    expect(name).toMatch(/^[a-z0-9-]+-day-\d{4}-\d{2}-\d{2}\.csv$/);
    expect(rowsOf(text).map((row) => row.at(-1))).toContain("'=1+1");
  }).toPass();
  const { text } = await fileOf(page, 'Save the day as a table');
  const [head = [], ...rows] = rowsOf(text);
  const day = createDayModel(storeOf(ownerPad));
  const report = day.here.value?.report;
  const sum = (named: RegExp) =>
    rows.reduce((total, row) => total + Number(row[head.findIndex((cell) => named.test(cell))]), 0);
  expect(sum(/^Length/)).toBe(1440);
  expect(sum(/^Energy/)).toBeCloseTo((report?.energy ?? Number.NaN) / 3.6e6, 4);
  const tariff = day.tariff.value;
  if (tariff === null) throw new Error('the example has prices');
  const drawing = report?.segments.filter(({ power }) => power > 0) ?? [];
  expect(sum(/^Price/)).toBeCloseTo(priceDay(tariff, day.date.value, drawing).energyCost, 4);
});

test('the year as a table, by the month and by the day', async ({ page }) => {
  await open(page);
  const months = await fileOf(page, 'Save the year as a table');
  expect(rowsOf(months.text)).toHaveLength(13);
  await page.getByRole('radio', { name: 'Day', exact: true }).press('Space');
  const days = await fileOf(page, 'Save the year as a table');
  const year = Number(/year-(\d{4})/.exec(days.name)?.[1]);
  const plan = yearPlanOf(ownerPad, padModel(ownerPad), { year });
  if (plan === null) throw new Error('the example has a year');
  const report = yearReport(plan);
  const rows = rowsOf(days.text).slice(1);
  expect(rows).toHaveLength(report.byDay.length);
  const price = rows.reduce((total, row) => total + Number(row[6]), 0);
  expect(price).toBeCloseTo(report.cost, 2);
});

test('the day as a calendar opens in another reader', async ({ page }) => {
  await open(page);
  const { name, text } = await fileOf(page, 'Save the day as a calendar');
  expect(name).toMatch(/\.ics$/);
  const events = new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each));
  expect(events).toHaveLength(ownerPad.day.blocks.length);
  const block = ownerPad.day.blocks[0];
  expect(events[0]?.summary).toBe(`Pool pump ${block?.speed} rpm`);
  expect(events[0]?.startDate.hour).toBe(Math.floor((block?.start ?? 0) / 60));
  expect(events[0]?.description).toContain('This is only a plan on paper');
  expect(events[0]?.description).toMatch(/Flow [\d.]+ gpm\. Power \d+ W\./);
  expect(events.every(({ startDate }) => startDate.zone === ICAL.Timezone.localTimezone)).toBe(
    true,
  );
});

test('it has no barrier that axe can find, and keeps within a phone', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open(page);
  await expectNoBarrier(page, '.take-out');
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await widthBeyondScreen(page)).toBe(0);
});
