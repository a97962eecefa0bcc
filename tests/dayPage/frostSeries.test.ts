import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { createDayModel } from '#dayPage/day/model.ts';
import { shareFrost } from '#dayPage/day/openFrost.ts';
import { readSeries } from '#dayPage/fileInput/readSeries.ts';
import type { StartReading } from '#dayPage/fileInput/startReading.ts';
import { createTakeOut } from '#dayPage/parts/takeOut/model.ts';
import { frostText } from '#dayPage/parts/year/FrostSeries.tsx';
import { createFrost, frostFound } from '#dayPage/parts/year/frost.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { minutesTo1970 } from '#pad/formats/series.ts';
import { storeOf } from './daySheetFixtures.ts';

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** Hours of the year 2027 with the temperature a rule gives. */
function series(rule: (month: number, hour: number) => number, months = 12): string {
  const rows = ['time,air_temp_C'];
  for (let at = Date.UTC(2027, 0, 1); at < Date.UTC(2027, months, 1); at += 3.6e6) {
    const date = new Date(at);
    rows.push(
      `${date.toISOString().slice(0, 16)},${rule(date.getUTCMonth() + 1, date.getUTCHours())}`,
    );
  }
  return rows.join('\n');
}

function frost() {
  let last: Promise<void> = Promise.resolve();
  const start: StartReading = (asked, tell) => {
    const run = async () => {
      for await (const news of readSeries(asked, (minute) => minute + minutesTo1970)) tell(news);
    };
    last = run();
    return () => {};
  };
  const day = createDayModel(storeOf(ownerPad));
  const model = createFrost(day, signal(2027), start);
  const take = async (text: string) => {
    model.file.take({ name: 'air.csv', file: new Blob([text]), isInvented: false });
    await last;
  };
  const words = () =>
    plain(
      frostText({
        frost: model,
        units: day.units,
        given: day.pad.value ? signal(day.pad.value.year) : signal(ownerPad.year),
      }),
    );
  return { day, model, take, words };
}

describe('frost from a series of temperatures', () => {
  it('counts the hours at or below the threshold, month by month', async () => {
    // By hand: in January six hours of every night are at -1 degC, 31 x 6 = 186 h; elsewhere none.
    const { model, take } = frost();
    await take(series((month, hour) => (month === 1 && hour < 6 ? -1 : 8)));
    expect(model.months.value).toEqual([186, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
    model.threshold.value = -1.5;
    expect(model.months.value?.[0]).toBe(0);
  });

  it('stands for the year in the file taken along as well, while it is open', async () => {
    // By hand: frost round the clock in the first fifteen days of January, and in no other.
    const { day, model, take } = frost();
    const rows = () =>
      (createTakeOut(day).yearFile('day')?.text ?? '').split('\r\n').map((row) => row.split(','));
    const minutes = () => {
      const [head = [], ...all] = rows();
      const column = head.findIndex((name) => name.startsWith('Frost'));
      return all.flatMap((row) => (row[column] === undefined ? [] : [Number(row[column])]));
    };
    const end = shareFrost(day.store, model.frostOn);
    const halves = series(() => 8)
      .split('\n')
      .map((row) => (/^2027-01-(0\d|1[0-5])/.test(row) ? row.replace(/,8$/, ',-1') : row));
    await take(halves.join('\n'));
    model.use();
    expect(minutes().slice(13, 17)).toEqual([1440, 1440, 0, 0]);
    end();
    // Closed, the months of the pad tell: 15 days of 24 h over 31 days, to the minute.
    expect(minutes().slice(13, 17)).toEqual([697, 697, 697, 697]);
  });

  it('goes into the pad as one step that can be undone, and by the hour only while the two agree', async () => {
    const { day, model, take, words } = frost();
    await take(series((month, hour) => (month === 1 && hour < 6 ? -1 : 8)));
    expect(model.frostOn.value).toBeUndefined();
    model.use();
    expect(day.pad.value.year.frostHours[0]).toBe(186);
    expect(model.frostOn.value?.({ year: 2027, month: 1, day: 9 })).toEqual([
      { start: 0, end: 360 },
    ]);
    expect(model.frostOn.value?.({ year: 2027, month: 6, day: 9 })).toEqual([]);
    expect(words()).toMatch(
      /^At 35\.6 °F or less, in 365 days: January 186 h\. The year goes by these very hours/,
    );
    day.store.undo();
    expect(day.pad.value.year.frostHours).toEqual(ownerPad.year.frostHours);
    expect(model.isUsed.value).toBe(false);
    expect(model.frostOn.value).toBeUndefined();
  });

  it('leaves months without a value as the year has them, and says so', async () => {
    const { model, take, words } = frost();
    await take(series(() => 0, 2));
    expect(model.months.value?.slice(0, 3)).toEqual([744, 672, 0]);
    expect(words()).toContain('10 months have no value and stay as the year has them.');
    expect(model.found.value?.byDay.get(301)).toBeUndefined();
  });

  it('a month known in part is stretched to its days', () => {
    // 12 cold hours in the one day there is: half of all hours, so half of 30 days of 24 h.
    const hours = Array.from({ length: 24 }, (_, hour) => ({
      date: { year: 2026, month: 4, day: 3 },
      hour,
      temperature: hour < 12 ? 0 : 9,
    }));
    expect(frostFound(hours, 2, 2027).byMonth[3]).toBe(360);
  });

  it('a file of something else changes nothing', async () => {
    const { day, model, take } = frost();
    await take(series(() => 0));
    const [before, padBefore] = [model.found.value, day.pad.value];
    await take('<feed/>');
    expect(model.file.coming.value.kind).toBe('refused');
    expect(model.found.value).toBe(before);
    expect(day.pad.value).toBe(padBefore);
  });
});
