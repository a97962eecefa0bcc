import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { type YearPlan, yearReport } from '#core/year/year.ts';
import { sameWaterYear, shortNeeds } from '#core/year/yearBeside.ts';
import { anyDay, inventedPump } from '../day/dayFixtures.ts';
import { inventedYear, mild } from './yearFixtures.ts';

const yearPlan = (change: Partial<YearPlan<never, never>> = {}) =>
  inventedYear([{ id: 'a', start: 0, end: 600, ratio: 0.5 }], change);

describe('one speed that moves the same water', () => {
  // Definition of flow: half the flow for ten hours is the whole flow for five.
  it('runs as long as flow times time asks, season by season', () => {
    const plan = yearPlan({
      plans: [
        {
          from: { month: 5, day: 1 },
          blocks: [{ id: 'a', start: 0, end: 600, ratio: 0.5 }],
          needs: [],
        },
        {
          from: { month: 10, day: 1 },
          blocks: [{ id: 'b', start: 0, end: 60, ratio: 0.25 }],
          needs: [],
        },
      ],
    });
    const other = sameWaterYear(plan, yearReport(plan), { ratio: 1, start: 480 });
    expect(other.plans.map(({ blocks }) => blocks)).toEqual([
      [{ id: 'run', start: 480, end: 780, ratio: 1 }],
      [{ id: 'run', start: 480, end: 495, ratio: 1 }],
    ]);
  });

  it('moves at least the water of the year and less than a minute a day more', () => {
    fc.assert(
      fc.property(anyDay, fc.double({ min: 0.3, max: 1.2, noNaN: true }), (blocks, ratio) => {
        const plan = yearPlan({ plans: [{ from: { month: 1, day: 1 }, blocks, needs: [] }] });
        const mine = yearReport(plan);
        const other = yearReport(sameWaterYear(plan, mine, { ratio, start: 480 }));
        // Flow of the invented pump [m3/s] for a minute of each day.
        const minute = 365 * 60 * 0.006 * ratio;
        const most = 1440 * minute;
        expect(other.volumeMoved).toBeGreaterThanOrEqual(
          Math.min(mine.volumeMoved, most) * (1 - 1e-6),
        );
        expect(other.volumeMoved).toBeLessThan(mine.volumeMoved + minute * 1.001);
      }),
      { numRuns: 25 },
    );
  });

  it('runs round the clock where even that is too little', () => {
    const plan = yearPlan({
      plans: [
        {
          from: { month: 1, day: 1 },
          blocks: [{ id: 'a', start: 0, end: 1440, ratio: 1 }],
          needs: [],
        },
      ],
    });
    const other = yearReport(sameWaterYear(plan, yearReport(plan), { ratio: 0.5, start: 480 }));
    expect(other.runMinutes).toBe(365 * 1440);
  });

  // By hand: six hours of frost at full flow move 6 of the 10 half-flow hours' 5, so no hour is left.
  it('counts the water that frost moves, at its own speed, where the year minds frost', () => {
    const frosty = { ...mild, frost: [{ start: 0, end: 360 }] };
    const cold = yearPlan({ conditionsOn: () => frosty, frostRatio: 0.2 });
    const guarded = sameWaterYear(cold, yearReport(cold), { ratio: 1, start: 480 });
    expect(guarded.frostRatio).toBe(1);
    expect(guarded.plans[0]?.blocks).toEqual([]);
    const careless = yearPlan({ conditionsOn: () => frosty });
    const left = sameWaterYear(careless, yearReport(careless), { ratio: 1, start: 480 });
    expect(left.frostRatio).toBe(0);
    expect(left.plans[0]?.blocks[0]).toMatchObject({ start: 480, end: 780 });
  });

  // By hand: ten hours at half flow are five at full flow, whether or not frost calls in between them.
  it('counts frost within its own run once', () => {
    const frosty = { ...mild, frost: [{ start: 540, end: 600 }] };
    const cold = yearPlan({ conditionsOn: () => frosty, frostRatio: 0.2 });
    const other = sameWaterYear(cold, yearReport(cold), { ratio: 1, start: 480 });
    expect(other.plans[0]?.blocks).toEqual([{ id: 'run', start: 480, end: 780, ratio: 1 }]);
    // From noon on, the hour of frost has moved an hour's water already.
    const noon = sameWaterYear(cold, yearReport(cold), { ratio: 1, start: 720 });
    expect(noon.plans[0]?.blocks).toEqual([{ id: 'run', start: 720, end: 960, ratio: 1 }]);
  });

  it('has days that move no water move none at the one speed either', () => {
    // Invented: a filter so dirty on every other day that nothing flows, whatever the speed.
    const dirty = yearPlan({
      conditionsOn: ({ day }) => ({ ...mild, loading: day % 2 }),
      pointAt: (ratio, { loading }) =>
        loading === 1 ? { kind: 'noFlow', power: 60 } : inventedPump(ratio),
    });
    const other = sameWaterYear(dirty, yearReport(dirty), { ratio: 1, start: 480 });
    expect(other.plans[0]?.blocks).toEqual([{ id: 'run', start: 480, end: 780, ratio: 1 }]);
  });

  it('refuses a speed that is none, and stands still where no water was moved', () => {
    const plan = yearPlan();
    expect(() => sameWaterYear(plan, yearReport(plan), { ratio: 0, start: 480 })).toThrow(
      CoreError,
    );
    const still = yearPlan({ plans: [{ from: { month: 1, day: 1 }, blocks: [], needs: [] }] });
    const other = sameWaterYear(still, yearReport(still), { ratio: 1, start: 480 });
    expect(other.plans[0]?.blocks).toEqual([]);
  });
});

describe('needs that stay short', () => {
  it('are counted by the day, the shortest first', () => {
    const need = (id: string, leastFlow: number, minutes: number) => ({
      id,
      leastFlow,
      minutes,
      windows: [],
      shortestRun: 0,
    });
    const [skim, heat] = [need('skim', 0.001, 600), need('heat', 0.001, 660)];
    // January with both, February with the skimming alone, from March on a longer day.
    const short = [{ id: 'a', start: 0, end: 599, ratio: 0.5 }];
    const long = [{ id: 'a', start: 0, end: 720, ratio: 0.5 }];
    const report = yearReport({
      ...yearPlan(),
      plans: [
        { from: { month: 1, day: 1 }, blocks: short, needs: [heat, skim] },
        { from: { month: 2, day: 1 }, blocks: short, needs: [skim] },
        { from: { month: 3, day: 1 }, blocks: long, needs: [skim, heat] },
      ],
    } as YearPlan<typeof skim, never>);
    // Calendar (ISO 8601): January has 31 days, February 2027 has 28.
    expect(shortNeeds(report.byDay).map(({ need: { id }, days }) => [id, days])).toEqual([
      ['skim', 59],
      ['heat', 31],
    ]);
    expect(report.byDay[58]?.plan.from.month).toBe(2);
  });
});
