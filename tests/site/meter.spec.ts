import type { Page } from '@playwright/test';
import { createDayModel } from '#dayPage/day/model.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { storeOf } from '../dayPage/daySheetFixtures.ts';
import { expectNoBarrier } from './barriers.ts';
import { expect, test, widthBeyondScreen } from './fixture.ts';

const finding = (page: Page) => page.locator('.meter-check .cheapest-finding');
const field = (page: Page) => page.getByLabel('Meter file');

async function open(page: Page): Promise<void> {
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Open a meter file' }).click();
  await expect(field(page)).toBeVisible();
}

const fileOf = (name: string, text: string) => ({
  name,
  mimeType: 'text/plain',
  buffer: Buffer.from(text),
});

/** Watts of the example's day at a minute. */
const segments = createDayModel(storeOf(ownerPad)).here.value?.report.segments ?? [];
const wattsAt = (minute: number) =>
  segments.find(({ start, end }) => start <= minute && minute < end)?.power ?? 0;
const meanWatts = Array.from({ length: 96 }, (_, slot) => {
  const minutes = Array.from({ length: 15 }, (_, minute) => wattsAt(15 * slot + minute));
  return minutes.reduce((sum, watts) => sum + watts, 0) / 15;
});

/** A Green Button feed of quarter hours: a base of 300 W and so much of the example's pump. */
function feed(days: number, share: number): string {
  const rows: string[] = [];
  for (let slot = 0; slot < 96 * days; slot += 1) {
    const watts = 300 + share * (meanWatts[slot % 96] ?? 0);
    const start = Date.UTC(2027, 0, 4) / 1000 + 900 * slot;
    rows.push(
      `<IntervalReading>\n  <timePeriod>\n    <duration>900</duration>\n    <start>${start}</start>\n  </timePeriod>\n  <value>${Math.round(watts * 250)}</value>\n</IntervalReading>`,
    );
  }
  return `<?xml version="1.0"?>
<feed xmlns="http://www.w3.org/2005/Atom"><entry><content>
<LocalTimeParameters xmlns="http://naesb.org/espi"><dstOffset>0</dstOffset><tzOffset>0</tzOffset></LocalTimeParameters>
</content></entry><entry><content>
<ReadingType xmlns="http://naesb.org/espi"><powerOfTenMultiplier>-3</powerOfTenMultiplier><uom>72</uom></ReadingType>
</content></entry><entry><content><IntervalBlock xmlns="http://naesb.org/espi">
${rows.join('\n')}
</IntervalBlock></content></entry></feed>`;
}

test('a good file: the finding is what it was made with', async ({ page }) => {
  await open(page);
  await field(page).setInputFiles(fileOf('mine.xml', feed(14, 0.8)));
  await expect(finding(page)).toContainText(/the meter moves 0\.80\sW for each watt of the model/);
  await expect(page.getByText(/The rest of the house draws 300\sW on the mean/)).toBeVisible();
  await expect(page.getByText('“mine.xml”: 1344 intervals of')).toBeVisible();
  await expect(
    page.getByRole('img', { name: 'Metered and modelled power by the hour of the day' }),
  ).toBeVisible();
  await page.getByRole('radio', { name: 'the pump alone' }).press('Space');
  await expect(finding(page)).toContainText(/kWh counted over 14\sdays/);
});

test('a broken file is told by its line and leaves the one before', async ({ page }) => {
  await open(page);
  await field(page).setInputFiles(fileOf('mine.xml', feed(14, 1)));
  await expect(finding(page)).toContainText(/moves 1\.00\sW/);
  const whole = feed(14, 0.5);
  await field(page).setInputFiles(fileOf('cut.xml', whole.slice(0, whole.length / 2)));
  const error = page.locator('#day-meter-file-error');
  await expect(error).toContainText(/“cut\.xml”: This XML breaks off in line \d+/);
  await expect(error).toContainText('What was loaded before stays.');
  await expect(finding(page)).toContainText(/moves 1\.00\sW/);
  await field(page).setInputFiles(fileOf('few.csv', 'time,kWh\n2027-01-01 00:00,1\n'));
  await expect(error).toContainText('No table was found in this file.');
  await field(page).setInputFiles(fileOf('mine.xml', feed(14, 0.7)));
  await expect(finding(page)).toContainText(/moves 0\.70\sW/);
  await expect(error).toHaveCount(0);
});

test('a large file is read beside the page, which stays awake, and can be called off', async ({
  page,
}) => {
  await open(page);
  const large = feed(700, 1);
  expect(large.length).toBeGreaterThan(8e6);
  await field(page).setInputFiles(fileOf('large.xml', large));
  // From here on: handing a file over is the test's own work.
  await page.evaluate(() => {
    let [last, longest] = [performance.now(), 0];
    const beat = () => {
      const now = performance.now();
      longest = Math.max(longest, now - last);
      last = now;
      Reflect.set(window, 'longestPause', longest);
      setTimeout(beat, 20);
    };
    beat();
  });
  await expect(page.getByText('“large.xml”: 67200 intervals of')).toBeVisible({ timeout: 60_000 });
  await expect(finding(page)).toContainText(/moves 1\.00\sW/);
  // Reading takes seconds; the page may stop for what it draws, never for so long.
  const pause = await page.evaluate(() => Reflect.get(window, 'longestPause') as number);
  test.info().annotations.push({ type: 'longest pause', description: `${pause.toFixed(0)} ms` });
  await field(page).setInputFiles(fileOf('larger.xml', large));
  await page.getByRole('button', { name: 'Stop reading' }).click();
  await expect(page.getByText('“larger.xml” was not read to its end.')).toBeVisible();
  await expect(page.getByText('“large.xml”: 67200 intervals of')).toBeVisible();
});

test('a table that leaves something open is asked about, by keys', async ({ page }) => {
  await open(page);
  const rows = Array.from(
    { length: 96 },
    (_, hour) =>
      `2027-06-0${Math.floor(hour / 24) + 1} ${String(hour % 24).padStart(2, '0')}:00,1,${0.2 + 0.01 * (hour % 5)}`,
  );
  await field(page).setInputFiles(fileOf('two.csv', `time,north,south\n${rows.join('\n')}`));
  await expect(
    page.getByText('This table does not say which column is meant and the unit.'),
  ).toBeVisible();
  await page.getByLabel('The amount stands in').focus();
  await page.keyboard.press('ArrowDown');
  await page.getByRole('button', { name: 'Read it this way' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('“two.csv”: 96 intervals of')).toBeVisible();
  await page.getByText('How the table was read').click();
  await expect(page.getByLabel('The amount stands in')).toHaveValue('2');
});

test('an invented file shows how it works, without a barrier, by day, by night, on a phone', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open(page);
  await page.getByRole('button', { name: 'Try it with an invented meter file' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Invented file: 2688 intervals of')).toBeVisible();
  await page.getByText('By the hour, as a table').click();
  await page.getByText('How the table was read').click();
  await expectNoBarrier(page, '.meter-check');
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await widthBeyondScreen(page)).toBe(0);
  await page.getByRole('button', { name: 'Put the file away' }).click();
  await expect(finding(page)).toHaveCount(0);
});

test('frost hours of a series go into the year and can be undone', async ({ page }) => {
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Work out the year' }).click();
  const air = page.getByLabel('Air temperatures');
  const rows = Array.from({ length: 31 * 24 }, (_, hour) => {
    const stamp = new Date(Date.UTC(2027, 0, 1) + 3.6e6 * hour).toISOString().slice(0, 16);
    return `${stamp},${hour % 24 < 6 ? 30 : 50}`;
  });
  await air.setInputFiles(fileOf('air.csv', `time,air temp (F)\n${rows.join('\n')}`));
  await expect(page.getByText(/in 31 days: January 186\sh\./)).toBeVisible();
  await page.getByRole('button', { name: 'Put these frost hours into the year' }).click();
  await expect(page.getByText('The year goes by these very hours')).toBeVisible();
  await expect(page.getByLabel('Jan, frost')).toHaveValue('186');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.getByLabel('Jan, frost')).toHaveCount(0);
});
