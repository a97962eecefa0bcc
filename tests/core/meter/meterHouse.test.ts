import { describe, expect, it } from 'vitest';
import { meterStretch } from '#core/meter/meter.ts';
import { dayProfile, houseCheck } from '#core/meter/meterHouse.ts';
import type { MeterInterval, PowerOn } from '#core/meter/meterIntervals.ts';

const check = (intervals: readonly MeterInterval[], powerOn: PowerOn) =>
  houseCheck(meterStretch(intervals, powerOn), dayProfile(intervals, powerOn));

/** Invented: a pump of 1 kW for seven hours of the morning. */
const powerOn: PowerOn = () => [{ start: 360, end: 780, power: 1000 }];

/** Days of a meter that counts the given mean power in each interval of the day. */
function daysOf(days: number, step: number, powerIn: (slot: number) => number) {
  const slots = 1440 / step;
  return Array.from({ length: days * slots }, (_, index) => ({
    start: index * step,
    duration: step,
    energy: 60 * step * powerIn(index % slots),
  }));
}

const pumpIn = (slot: number, step: number) => {
  const shared = Math.min(780, (slot + 1) * step) - Math.max(360, slot * step);
  return (1000 * Math.max(0, shared)) / step;
};

/** Numbers that look like chance: the digits of a square root, as good as any. */
const noise = (slot: number) => ((Math.sqrt(2 + slot) * 1e4) % 1) - 0.5;

/** Least squares by the normal equations, solved by elimination; gives the last unknown and its standard error. */
function lastOfLeastSquares(rows: readonly (readonly number[])[], values: readonly number[]) {
  const size = rows[0]?.length ?? 0;
  const sum = (of: (row: readonly number[], at: number) => number) =>
    rows.reduce((total, row, at) => total + of(row, at), 0);
  const work = Array.from({ length: size }, (_, i) => [
    ...Array.from({ length: size }, (_other, j) => sum((row) => (row[i] ?? 0) * (row[j] ?? 0))),
    sum((row, at) => (row[i] ?? 0) * (values[at] ?? 0)),
    i === size - 1 ? 1 : 0,
  ]);
  for (const [pivot, line] of work.entries()) {
    const lead = line[pivot] as number;
    for (const [at, other] of work.entries()) {
      if (at === pivot) continue;
      const share = (other[pivot] as number) / lead;
      for (let col = 0; col < size + 2; col += 1) {
        other[col] = (other[col] as number) - share * (line[col] as number);
      }
    }
  }
  const solved = work.map((line, at) => (line[size] as number) / (line[at] as number));
  const squares = sum(
    (row, at) =>
      ((values[at] ?? 0) - row.reduce((part, x, i) => part + x * (solved[i] ?? 0), 0)) ** 2,
  );
  const last = work[size - 1] as number[];
  const inverse = (last[size + 1] as number) / (last[size - 1] as number);
  return {
    value: solved[size - 1] ?? Number.NaN,
    error: Math.sqrt((squares / (rows.length - size)) * inverse),
  };
}

describe('the share of a pump in a house', () => {
  it.each([
    [60, 6],
    [30, 8],
    [15, 8],
  ])(
    'in slots of %i minutes is that of least squares with mean, %i waves and pump, error and all',
    (step, waves) => {
      // Frisch and Waugh (Econometrica 1, 1933, from memory): what is left of both after the waves
      // have been taken out gives the same share as all of them fitted together. The standard error
      // counts every number fitted (NIST/SEMATECH e-Handbook of Statistical Methods, 4.4.3, from memory).
      const slots = 1440 / step;
      const counted = (slot: number) => 400 + 300 * noise(slot) + 0.9 * pumpIn(slot, step);
      const rows = Array.from({ length: slots }, (_, slot) => {
        const angle = (2 * Math.PI * slot) / slots;
        const pairs = Array.from({ length: waves }, (_other, wave) => [
          Math.cos((wave + 1) * angle),
          Math.sin((wave + 1) * angle),
        ]);
        return [1, ...pairs.flat(), pumpIn(slot, step)];
      });
      const { value, error } = lastOfLeastSquares(
        rows,
        rows.map((_, slot) => counted(slot)),
      );
      const got = check(daysOf(3, step, counted), powerOn);
      expect((got.share ?? 0) / value).toBeCloseTo(1, 9);
      expect((got.shareError ?? 0) / error).toBeCloseTo(1, 9);
    },
  );

  it('is held by no pump that runs evenly, whatever it draws', () => {
    for (const power of [1 / 3, 0.1 + 0.2, 700, 1234.567, 2999.9]) {
      const even = () => [{ start: 0, end: 1440, power }];
      const house = daysOf(3, 60, (slot) => 300 + 200 * noise(slot) + power);
      expect(check(house, even)).toEqual({
        kind: 'steadyPump',
        share: null,
        shareError: null,
        base: null,
        rest: [],
        wholeDays: 3,
      });
    }
  });
});

describe('days of a house', () => {
  const steady = (slot: number) => 300 + pumpIn(slot, 60);

  it('are whole from 23 hours on, as on the day the clocks go forward', () => {
    const three = daysOf(3, 60, steady);
    const wholeOf = (left: readonly MeterInterval[]) => check(left, powerOn).wholeDays;
    expect(wholeOf(three)).toBe(3);
    expect(wholeOf(three.toSpliced(50, 1))).toBe(3);
    expect(wholeOf(three.toSpliced(50, 2))).toBe(2);
    expect(check(three.toSpliced(50, 1), powerOn).kind).toBe('told');
    expect(check(three.toSpliced(50, 2), powerOn).kind).toBe('fewDays');
  });

  it('tell nothing while one hour of the clock is missing on all of them', () => {
    const gap = daysOf(4, 60, steady).filter(({ start }) => start % 1440 !== 180);
    expect(check(gap, powerOn)).toMatchObject({ kind: 'fewDays', wholeDays: 4, rest: [] });
    expect(dayProfile(gap, powerOn)[3]).toEqual({
      start: 180,
      minutes: 60,
      metered: null,
      modelled: null,
    });
    expect(check([], powerOn)).toMatchObject({ kind: 'fewDays', wholeDays: 0 });
  });

  it('are cut as most of the intervals are, in whatever order they come', () => {
    const hours = daysOf(1, 60, steady);
    const quarters = daysOf(1, 15, () => 300).slice(0, 4);
    const mixed = [...hours.slice(1, 12), ...quarters, ...hours.slice(12)];
    expect(dayProfile(mixed, powerOn)).toHaveLength(24);
    expect(dayProfile([...mixed].reverse(), powerOn)).toHaveLength(24);
    expect(dayProfile([...hours.slice(0, 2), ...quarters], powerOn)).toHaveLength(96);
  });

  it('refuse what is no interval, by its place', () => {
    const bad = { start: 0, duration: 0, energy: 1 };
    expect(() => dayProfile([...daysOf(1, 60, steady), bad], powerOn)).toThrow(
      'intervals[24].duration is 0',
    );
  });
});
