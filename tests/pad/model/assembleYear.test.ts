import { describe, expect, test } from 'vitest';
import { segmentsOf } from '#core/day/day.ts';
import { priceYear } from '#core/tariff/pricing.ts';
import { yearReport } from '#core/year/year.ts';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import type { Pad, PadYear } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';

function yearOf(pad: Pad, given: Partial<PadYear> = {}, year = 2027) {
  const changed = { ...pad, year: { ...pad.year, ...given } };
  const plan = yearPlanOf(changed, padModel(changed), { year });
  if (plan === null) throw new Error('the pad has no year');
  return yearReport(plan);
}

describe('the year of a pad', () => {
  // The oracle is the price of one like day over the calendar; the invented pad changes nothing.
  test('with nothing said of the year costs what its day does, priced over the calendar', () => {
    const model = padModel(ownerPad);
    const { running, tariff, blocks } = model;
    if (running === null || tariff === null || blocks === null) throw new Error('no day');
    const spans = segmentsOf(blocks)
      .filter(({ ratio }) => ratio > 0)
      .map((each) => ({ ...each, power: running.powerAt(each.ratio) }));
    const report = yearOf(ownerPad);
    expect(report.cost).toBeCloseTo(priceYear(tariff, 2027, spans).cost, 6);
    expect(report.byDay).toHaveLength(365);
  });

  test('changes its day on the first day of a plan', () => {
    const { byDay } = yearOf(lodgePad, { frostSpeed: null });
    const on = (month: number, day: number) =>
      byDay.find(({ date }) => date.month === month && date.day === day)?.report.runMinutes;
    expect([on(5, 14), on(5, 15), on(9, 30), on(10, 1)]).toEqual([240, 1440, 1440, 240]);
  });

  test('moves less water as the filter loads, and more again once it is cleaned', () => {
    const { byDay } = yearOf(ownerPad, { cleaningDays: 30 });
    const moved = byDay.map(({ report }) => report.volumeMoved);
    expect(moved[29]).toBeLessThan(moved[0] ?? 0);
    expect(moved[30]).toBeCloseTo(moved[0] ?? 0, 9);
    for (let day = 1; day < 30; day += 1) {
      expect(moved[day]).toBeLessThan(moved[day - 1] ?? 0);
    }
  });

  test('moves a little less water in the cold, where it is more viscous', () => {
    const cold = yearOf(ownerPad, { waterTemperatures: Array(12).fill(5) });
    const warm = yearOf(ownerPad, { waterTemperatures: Array(12).fill(30) });
    const ratio = cold.volumeMoved / warm.volumeMoved;
    expect(ratio).toBeLessThan(1);
    expect(ratio).toBeGreaterThan(0.9);
  });

  test('runs in the hours of frost that the month table names, to the minute', () => {
    const frostHours = [31, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 744];
    const none = yearOf({ ...ownerPad, day: { ...ownerPad.day, blocks: [] } }, { frostHours });
    expect(none.runMinutes).toBe(0);
    const kept = yearOf(
      { ...ownerPad, day: { ...ownerPad.day, blocks: [] } },
      { frostHours, frostSpeed: 1000 },
    );
    // An hour each night of January, and December through.
    expect(kept.runMinutes).toBe(31 * 60 + 31 * 1440);
    expect(kept.frostMinutes).toBe(kept.runMinutes);
    expect(kept.byDay[0]?.conditions.frost).toEqual([{ start: 270, end: 330 }]);
  });

  test('leaves out the needs that a plan is without', () => {
    const [need] = ownerPad.needs;
    const from = { month: 1, day: 1 };
    const plan = { id: 'p', name: '', from, blocks: [], withoutNeeds: [], turnovers: null };
    const short = yearOf(ownerPad, { plans: [plan] }).shortDays;
    expect(short).toBe(365);
    const every = ownerPad.needs.map(({ id }) => id);
    expect(yearOf(ownerPad, { plans: [{ ...plan, withoutNeeds: every }] }).shortDays).toBe(0);
    expect(need).toBeDefined();
  });

  test('is not there while pump, pool or price is unknown', () => {
    const empty = emptyPad();
    expect(yearPlanOf(empty, padModel(empty), { year: 2027 })).toBeNull();
    expect(yearPlanOf(rigPad, padModel(rigPad), { year: 2027 })).not.toBeNull();
  });
});
