import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { dayNumber } from '#core/time/calendar.ts';
import { spanHolds } from '#core/time/spans.ts';
import { cleaningsIn, frostByDay, loadingOn, monthlyValue } from '#core/year/conditions.ts';

describe('conditions of a day', () => {
  it('go in a straight line from the middle of a month to the middle of the next', () => {
    const monthly = [0, 31, 60, 90, 0, 0, 0, 0, 0, 0, 0, -31];
    // Middle of January: 15.5 days in, noon of the 16th; of February 2027: 14 days in.
    expect(monthlyValue(monthly, { year: 2027, month: 1, day: 16 })).toBeCloseTo(0, 12);
    const from = monthlyValue(monthly, { year: 2027, month: 2, day: 14 });
    const to = monthlyValue(monthly, { year: 2027, month: 2, day: 15 });
    expect((from + to) / 2).toBeCloseTo(31, 0);
    // 31 December at noon is 15 of the 31 days from the middle of December to that of January.
    expect(monthlyValue(monthly, { year: 2027, month: 12, day: 31 })).toBeCloseTo(-31 + 15, 9);
    expect(monthlyValue(monthly, { year: 2027, month: 1, day: 1 })).toBeCloseTo(-31 + 16, 9);
  });

  it('refuse a table that is not twelve numbers', () => {
    const date = { year: 2027, month: 1, day: 1 };
    expect(() => monthlyValue([1, 2, 3], date)).toThrow('12 numbers');
    expect(() => monthlyValue(Array(12).fill(Number.NaN), date)).toThrow(CoreError);
  });

  it('load a filter evenly and start again when it is cleaned', () => {
    const loading = (day: number) => loadingOn({ year: 2027, month: 1, day }, 10);
    expect([loading(1), loading(6), loading(10), loading(11)]).toEqual([0.05, 0.55, 0.95, 0.05]);
    // Whole intervals that begin in a year of 365 days.
    expect([cleaningsIn(365, 365), cleaningsIn(366, 365), cleaningsIn(365, 7)]).toEqual([1, 2, 53]);
  });

  it('count a filter only in days of a year and intervals of a day or more', () => {
    const date = { year: 2027, month: 1, day: 1 };
    expect(() => loadingOn(date, 0)).toThrow('interval is 0');
    expect(() => cleaningsIn(365, 0.5)).toThrow('interval is 0.5');
    expect(() => cleaningsIn(364, 30)).toThrow('days is 364');
    expect(() => cleaningsIn(367, 30)).toThrow('days is 367');
  });

  it('take hours in any order, and only those of the clock', () => {
    const date = { year: 2027, month: 1, day: 3 };
    const at = (hour: number) => ({ date, hour, temperature: -1 });
    expect(frostByDay([at(10), at(2), at(9), at(3)], 2).get(dayNumber(date))).toEqual([
      { start: 120, end: 240 },
      { start: 540, end: 660 },
    ]);
    for (const hour of [24, -1, 2.5]) {
      expect(() => frostByDay([at(3), at(hour)], 2)).toThrow(
        `series[1].hour is ${hour}; it must be a whole hour from 0 to 23.`,
      );
    }
  });

  it('join neighbouring frost hours, across midnight of one day only as two ends', () => {
    const date = { year: 2027, month: 1, day: 3 };
    const series = [0, 1, 5, 23, 12].map((hour) => ({
      date,
      hour,
      temperature: hour === 12 ? 2.1 : -1,
    }));
    const frost = frostByDay(series, 2).get(dayNumber(date)) ?? [];
    const cold = (minute: number) => frost.some((span) => spanHolds(span, minute));
    expect([0, 119, 120, 300, 359, 360, 720, 1379, 1380, 1439].map(cold)).toEqual([
      true,
      true,
      false,
      true,
      true,
      false,
      false,
      false,
      true,
      true,
    ]);
    expect(frostByDay([{ date, hour: 3, temperature: 2.1 }], 2).size).toBe(0);
    expect(frostByDay([{ date, hour: 3, temperature: 2 }], 2).size).toBe(1);
  });
});
