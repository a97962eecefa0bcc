import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import type { Block } from '#core/day/day.ts';
import type { RunningPoint } from '#core/day/dayReport.ts';
import { priceYear } from '#core/tariff/pricing.ts';
import { daysInYear } from '#core/time/calendar.ts';
import { loadingOn } from '#core/year/conditions.ts';
import {
  type DayConditions,
  emission,
  planOn,
  type YearPlan,
  yearReport,
} from '#core/year/year.ts';
import { inventedPump, inventedTariff } from '../day/dayFixtures.ts';
import { inventedYear, mild } from './yearFixtures.ts';

const summerBlocks: readonly Block[] = [
  { id: 'night', start: 1380, end: 420, ratio: 0.4 },
  { id: 'noon', start: 600, end: 780, ratio: 0.8 },
];
const winterBlocks: readonly Block[] = [{ id: 'short', start: 600, end: 840, ratio: 0.5 }];

const yearPlan = (change: Partial<YearPlan<never, never>> = {}) =>
  inventedYear(summerBlocks, change);

/** A filter that takes away flow as it loads; our own invention. */
function loadedPump(ratio: number, { loading }: DayConditions): RunningPoint {
  const point = inventedPump(ratio);
  return point.kind === 'flowing' ? { ...point, flow: point.flow * (1 - 0.3 * loading) } : point;
}

describe('a year', () => {
  // Definition: with one plan and one kind of day, a year is what priceYear says, day types and all.
  it('of like days costs and takes what the same day does, priced over the calendar', () => {
    for (const year of [2027, 2028]) {
      const report = yearReport(yearPlan({ year }));
      const spans = report.byDay[0]?.report.segments ?? [];
      const priced = priceYear(inventedTariff, year, spans);
      expect(report.days).toBe(daysInYear(year));
      expect(report.cost).toBeCloseTo(priced.cost, 8);
      expect(report.energy / priced.energy).toBeCloseTo(1, 12);
    }
  });

  it('is the sum of its months, and each month of its days', () => {
    const report = yearReport(yearPlan());
    for (const part of ['days', 'energy', 'cost', 'volumeMoved', 'runMinutes'] as const) {
      const months = report.byMonth.reduce((sum, month) => sum + month[part], 0);
      expect(months / report[part]).toBeCloseTo(1, 12);
    }
    expect(report.byMonth.map(({ days }) => days)).toEqual([
      31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31,
    ]);
  });

  it('changes its plan on the first day named, and before the first holds the last one', () => {
    const plans = [
      { from: { month: 5, day: 1 }, blocks: summerBlocks, needs: [] },
      { from: { month: 10, day: 15 }, blocks: winterBlocks, needs: [] },
    ];
    const minutes = (month: number, day: number) =>
      yearReport(yearPlan({ plans })).byDay.find(
        ({ date }) => date.month === month && date.day === day,
      )?.report.runMinutes;
    expect(planOn(plans, { month: 1, day: 1 }).blocks).toBe(winterBlocks);
    expect([minutes(4, 30), minutes(5, 1), minutes(10, 14), minutes(10, 15)]).toEqual([
      240, 660, 660, 240,
    ]);
    expect(() => planOn([], { month: 1, day: 1 })).toThrow('at least one plan');
  });

  it('moves less water the more seldom the filter is cleaned', () => {
    const moved = (interval: number) =>
      yearReport(
        yearPlan({
          conditionsOn: (date) => ({ ...mild, loading: loadingOn(date, interval) }),
          pointAt: loadedPump,
        }),
      ).volumeMoved;
    const clean = yearReport(yearPlan()).volumeMoved;
    // Evenly loading from 0 to 1 takes on average half of the 30 % away.
    expect(moved(5) / clean).toBeCloseTo(0.85, 3);
    const half = moved(365) / clean;
    expect(half).toBeCloseTo(0.85, 6);
    expect(moved(3660) / clean).toBeGreaterThan(0.98);
  });

  // Definition: a day given the same conditions and plan is the same day, whatever its date costs.
  it('comes to the same whether like days are told by one object or by many', () => {
    const plans = [
      { from: { month: 3, day: 1 }, blocks: summerBlocks, needs: [] },
      { from: { month: 10, day: 15 }, blocks: winterBlocks, needs: [] },
    ];
    const frosty: DayConditions = { ...mild, frost: [{ start: 60, end: 300 }] };
    const year = (copy: (of: DayConditions) => DayConditions) =>
      yearReport(
        yearPlan({
          plans,
          frostRatio: 0.3,
          conditionsOn: ({ month }) => copy(month < 3 ? frosty : mild),
        }),
      );
    const [shared, apart] = [year((of) => of), year((of) => ({ ...of }))];
    for (const part of ['energy', 'cost', 'volumeMoved', 'runMinutes', 'frostMinutes'] as const) {
      expect(shared[part]).toBe(apart[part]);
    }
    expect(shared.byMonth.map(({ cost }) => cost)).toEqual(apart.byMonth.map(({ cost }) => cost));
  });

  it('runs as the pump is set anew for a day, in the place of what was planned', () => {
    const report = yearReport(
      yearPlan({
        conditionsOn: (date) => ({ ...mild, loading: loadingOn(date, 5) }),
        // An hour, and two minutes more for each hundredth of dirt.
        blocksOn: (_, { loading }) => [
          { id: 'run', start: 480, end: 540 + Math.round(200 * loading), ratio: 1 },
        ],
      }),
    );
    // Loading at noon of five days since the cleaning: 0.1, 0.3, 0.5, 0.7, 0.9.
    expect(report.byDay.slice(0, 6).map((day) => day.report.runMinutes)).toEqual([
      80, 120, 160, 200, 240, 80,
    ]);
    expect(report.byDay[0]?.plan.blocks).toBe(summerBlocks);
  });

  it('counts the days on which a need stays short or a limit is crossed', () => {
    const need = { id: 'skim', leastFlow: 0.004, minutes: 180, windows: [], shortestRun: 0 };
    const limit = { id: 'cover', greatestFlow: 0.0045 };
    const plan: YearPlan<typeof need, typeof limit> = {
      ...yearPlan(),
      plans: [
        { from: { month: 1, day: 1 }, blocks: summerBlocks, needs: [need] },
        { from: { month: 12, day: 1 }, blocks: winterBlocks, needs: [need] },
      ],
      limits: [limit],
    };
    const report = yearReport(plan);
    expect(report.shortDays).toBe(31);
    expect(report.crossedDays).toBe(365 - 31);
    expect(report.byMonth[11]).toMatchObject({ shortDays: 31, crossedDays: 0 });
  });

  it('lays frost hours over the plan and counts them', () => {
    const frosty = { ...mild, frost: [{ start: 0, end: 360 }] };
    const plan = yearPlan({
      plans: [{ from: { month: 1, day: 1 }, blocks: winterBlocks, needs: [] }],
      conditionsOn: ({ month }) => (month === 1 ? frosty : mild),
    });
    const still = yearReport(plan);
    const guarded = yearReport({ ...plan, frostRatio: 0.3 });
    expect(guarded.runMinutes - still.runMinutes).toBe(31 * 360);
    expect([still.frostMinutes, guarded.frostMinutes]).toEqual([31 * 360, 31 * 360]);
    // Energy of the added hours: 31 x 6 h at 60 + 1500 x 0.027 W, by the invented pump's own law.
    expect((guarded.energy - still.energy) / (31 * 6 * 3600 * 100.5)).toBeCloseTo(1, 12);
  });
});

describe('greenhouse gas of a year', () => {
  it('is in proportion: 100 kWh at 400 g are 40 kg', () => {
    expect(emission(100 * 3.6e6, 400)).toBeCloseTo(40, 10);
    expect(() => emission(-1, 400)).toThrow(CoreError);
  });
});
