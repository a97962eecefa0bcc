import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import type { Block } from '#core/day/day.ts';
import { dayReport } from '#core/day/dayReport.ts';
import { cheapestDay } from '#core/planner/cheapestDay.ts';
import { type CheapestDayInputs, settableRatios, speedTable } from '#core/planner/inputs.ts';
import { needPrices } from '#core/planner/prices.ts';
import { spanMinutes } from '#core/time/spans.ts';
import { anyNeed, anySpan, shifted } from '../day/dayFixtures.ts';
import { anyCase, nothingAsked as asked, inventedSpeeds, ordinaryCase } from './cases.ts';
import { changesOf, costOfDay, found, pointFrom } from './judge.ts';

const hour = 60;

/*
 * Closed forms. Power F + c r^3 and flow q r give the price of a litre (F + c r^3)/(q r), least at
 * r* = (F/2c)^(1/3): calculus. One price and only a volume: r* for part of the day where that is
 * enough, else one steady speed all day, since the power is convex in the flow (Jensen, 1906).
 */
describe('one price and only water to move', () => {
  const [fixed, cube, flow] = [54, 2000, 0.006];
  const best = (fixed / (2 * cube)) ** (1 / 3);
  const table = (extra: readonly number[]) =>
    settableRatios({ least: 0.15, top: 1, step: 0.0025 }, extra).map((ratio) => ({
      ratio,
      flow: flow * ratio,
      power: fixed + cube * ratio ** 3,
    }));

  it('the speed of most water per kilowatt-hour for part of the day', () => {
    // 54 = 2 x 2000 x 0.3^3 / 2, so r* = (54/4000)^(1/3) = 0.2381.
    expect(best).toBeCloseTo(0.23811, 5);
    const minutes = 1000;
    const leastVolume = flow * best * 60 * minutes;
    const day = found({ ...asked, speeds: table([best]), leastVolume });
    expect(day.blocks).toHaveLength(1);
    const [block] = day.blocks as readonly [Block];
    expect(block.ratio).toBeCloseTo(best, 12);
    expect(spanMinutes(block)).toBe(minutes);
    expect(day.cost).toBeCloseTo((((fixed * 1.5) / 1000) * 0.25 * minutes) / 60, 12);
    expect(day.gap).toBeLessThan(1e-6);
  });

  it('one steady speed all day where more is asked for', () => {
    const leastVolume = flow * 0.4 * 86_400;
    const day = found({ ...asked, speeds: table([0.4]), leastVolume });
    expect(day.blocks).toHaveLength(1);
    expect(day.changes).toBe(0);
    expect(day.blocks[0]?.ratio).toBe(0.4);
    expect(day.cost).toBeCloseTo(((fixed + cube * 0.4 ** 3) / 1000) * 24 * 0.25, 10);
  });

  it('the two nearest speeds where the steady one cannot be set', () => {
    const speeds = [0.3, 0.4, 0.5, 0.6].map((ratio) => ({
      ratio,
      flow: flow * ratio,
      power: fixed + cube * ratio ** 3,
    }));
    // Half the day at 0.4 and half at 0.5 moves as much as 0.45 all day.
    const day = found({ ...asked, speeds, leastVolume: flow * 0.45 * 86_400 });
    const watts = (fixed + cube * 0.4 ** 3 + (fixed + cube * 0.5 ** 3)) / 2;
    expect(day.cost).toBeCloseTo((watts / 1000) * 24 * 0.25, 10);
    expect(day.changes).toBe(2);
  });

  it('a litre costs more below that speed: the pump would rather stand still', () => {
    const day = found({ ...asked, speeds: table([best]), leastVolume: flow * best * 60 * 300 });
    expect(Math.max(...day.blocks.map(({ ratio }) => ratio))).toBeCloseTo(best, 9);
    expect(day.blocks).toHaveLength(1);
  });
});

describe('prices and hours', () => {
  it('water is moved in the cheap hours while they last', () => {
    // One speed of 200 W: 6 cheap hours move 64.8 m3, the rest is bought at the dear price. Arithmetic.
    const speeds = [{ ratio: 0.5, flow: 0.003, power: 200 }];
    const prices = [
      { start: 22 * hour, end: 4 * hour, price: 0.1 },
      { start: 4 * hour, end: 22 * hour, price: 0.3 },
    ];
    const day = found({ ...asked, speeds, prices, leastVolume: 0.003 * 3600 * 8 });
    expect(day.cost).toBeCloseTo(0.2 * (6 * 0.1 + 2 * 0.3), 12);
    expect(day.blocks).toHaveLength(1);
  });

  it('a supplier who pays is taken at full speed', () => {
    const prices = [
      { start: 0, end: 2 * hour, price: -0.1 },
      { start: 2 * hour, end: 0, price: 0.3 },
    ];
    const day = found({ ...asked, prices });
    expect(day.cost).toBeCloseTo(-0.1 * 2 * 1.845, 12); // 45 W + 1800 W at full speed.
    expect(day.blocks).toMatchObject([{ start: 0, end: 120, ratio: 1 }]);
  });

  it('a need is served in its own window across midnight', () => {
    const needs = [
      {
        id: 'heating',
        leastFlow: 0.003,
        minutes: 180,
        windows: [{ start: 23 * hour, end: 2 * hour }],
        shortestRun: 180,
      },
    ];
    const day = found({ ...asked, needs });
    expect(day.blocks).toMatchObject([{ start: 23 * hour, end: 2 * hour }]);
    expect(day.multipliers).toMatchObject([
      { needId: null, binds: false },
      { needId: 'heating', binds: true },
    ]);
  });

  it('a shortest run longer than the need is run in full', () => {
    const needs = [{ id: 'cleaner', leastFlow: 0.003, minutes: 30, windows: [], shortestRun: 120 }];
    const [block] = found({ ...asked, needs }).blocks as readonly [Block];
    expect(spanMinutes(block)).toBe(120);
  });

  it('quiet hours and limits are kept, and a pump that may not stop never does', () => {
    const day = found({
      ...asked,
      mayStop: false,
      leastVolume: 150,
      quiet: [{ start: 22 * hour, end: 6 * hour, ceiling: 0.2 }],
      limits: [{ id: 'filter', greatestFlow: 0.0035 }],
    });
    expect(day.blocks.reduce((sum, block) => sum + spanMinutes(block), 0)).toBe(1440);
  });

  it('nothing asked for is nothing run', () => {
    expect(found(asked)).toMatchObject({ blocks: [], cost: 0, bound: 0, gap: 0, changes: 0 });
  });
});

/** Random days on the invented table; what each gives is then asked for. */
const givenDay = fc
  .record({
    cuts: fc.uniqueArray(fc.integer({ min: 0, max: 1439 }), { minLength: 1, maxLength: 6 }),
    speeds: fc.array(fc.integer({ min: -1, max: 11 }), { minLength: 6, maxLength: 6 }),
    needs: fc.array(anyNeed, { maxLength: 3 }),
    quiet: fc.option(anySpan),
    prices: fc.tuple(fc.integer({ min: 5, max: 60 }), fc.integer({ min: 5, max: 60 }), anySpan),
  })
  .map(({ cuts, speeds, needs, prices: [dear, cheap, span] }) => {
    const sorted = cuts.toSorted((a, b) => a - b);
    const blocks = sorted.flatMap((start, place): readonly Block[] => {
      const row = asked.speeds[speeds[place] ?? -1];
      const end = sorted[(place + 1) % sorted.length] ?? start;
      return row === undefined ? [] : [{ id: `b${place}`, start, end, ratio: row.ratio }];
    });
    const named = needs.map((need, place) => ({ ...need, id: `need ${place}` }));
    const report = dayReport({
      blocks,
      pointAt: pointFrom(asked.speeds),
      volume: 60,
      needs: named,
      limits: [],
      quiet: [],
    });
    const { start } = span;
    const end = span.end % 1440;
    const prices =
      start === end
        ? [{ start, end, price: dear / 100 }]
        : [
            { start, end, price: dear / 100 },
            { start: end, end: start, price: cheap / 100 },
          ];
    const inputs: CheapestDayInputs = {
      ...asked,
      prices,
      leastVolume: report.volumeMoved * (1 - 1e-12),
      needs: report.needs.map(({ need, servedMinutes }) => ({ ...need, minutes: servedMinutes })),
    };
    return { blocks, inputs };
  });

describe('whatever is asked for', { timeout: 60_000 }, () => {
  it('is never dearer than a day that gives it, by more than the gap', () => {
    fc.assert(
      fc.property(givenDay, ({ blocks, inputs }) => {
        const result = cheapestDay(inputs);
        const cost = costOfDay(inputs, blocks);
        if (result.kind !== 'found') return expect.fail(`${result.kind} though a day is at hand`);
        expect(result.bound).toBeLessThanOrEqual(cost + 1e-6);
        if (result.gap <= 1e-3) expect(result.cost).toBeLessThanOrEqual(cost * (1 + 1e-3) + 1e-9);
      }),
      { numRuns: 150, seed: 13 },
    );
  });

  it('is kept to the minute, and costs what the tariff says', () => {
    for (let seed = 0; seed < 30; seed += 1) {
      const inputs = anyCase(seed, { grid: 1, speeds: [1, 58], runs: true });
      const result = cheapestDay(inputs);
      if (result.kind !== 'found') continue;
      const report = dayReport({
        blocks: result.blocks,
        pointAt: pointFrom(inputs.speeds),
        volume: 60,
        needs: inputs.needs,
        limits: inputs.limits,
        quiet: inputs.quiet,
      });
      expect(report.needs.filter(({ met }) => !met)).toEqual([]);
      expect([...report.crossings, ...report.quietCrossings]).toEqual([]);
      expect(report.volumeMoved).toBeGreaterThanOrEqual(inputs.leastVolume * (1 - 1e-9));
      expect(report.volumeMoved).toBeCloseTo(result.volumeMoved, 8);
      expect(result.cost).toBeCloseTo(costOfDay(inputs, result.blocks), 10);
      expect(result.changes).toBe(changesOf(result.blocks));
      expect(result.bound).toBeLessThanOrEqual(result.cost);
    }
  });

  it('more hours of a need are never cheaper', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      const inputs = ordinaryCase(seed, 24);
      const more = inputs.needs.map((need, place) =>
        place === 0 ? { ...need, minutes: need.minutes + 60 } : need,
      );
      const result = cheapestDay({ ...inputs, needs: more });
      if (result.kind === 'found')
        expect(found(inputs).bound).toBeLessThanOrEqual(result.cost + 1e-12);
    }
  });

  it('costs the same when all its hours are later, or its prices in another currency', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      const inputs = ordinaryCase(seed, 24);
      const later = {
        ...inputs,
        needs: inputs.needs.map((need) => ({
          ...need,
          windows: need.windows.map((window) => shifted(window, 397)),
        })),
        quiet: inputs.quiet.map((each) => shifted(each, 397)),
        prices: inputs.prices.map((each) => shifted(each, 397)),
      };
      const abroad = {
        ...inputs,
        prices: inputs.prices.map((each) => ({ ...each, price: each.price * 137 })),
      };
      const { cost, gap } = found(inputs);
      const [shiftedDay, foreignDay] = [found(later), found(abroad)];
      const slack = cost * (gap + Math.max(shiftedDay.gap, foreignDay.gap) + 1e-6);
      expect(Math.abs(shiftedDay.cost - cost)).toBeLessThanOrEqual(slack);
      expect(Math.abs(foreignDay.cost / 137 - cost)).toBeLessThanOrEqual(slack);
    }
  });

  it('each thing left out saves at least as much as a part of it, and no more than the day costs', () => {
    for (let seed = 0; seed < 20; seed += 1) {
      const inputs = ordinaryCase(seed, 24);
      const { cost } = found(inputs);
      for (const { savedByLess, savedWithout } of needPrices(inputs)) {
        expect(savedByLess).toBeGreaterThanOrEqual(0);
        expect(savedWithout).toBeGreaterThanOrEqual(savedByLess - 1e-7);
        expect(savedWithout).toBeLessThanOrEqual(cost + 1e-9);
      }
    }
  });

  it('an hour less saves what an hour costs where nothing else is asked for', () => {
    // One speed at 1 kW and one price: arithmetic.
    const speeds = [{ ratio: 1, flow: 0.004, power: 1000 }];
    const needs = [{ id: 'spillway', leastFlow: 0.004, minutes: 180, windows: [], shortestRun: 0 }];
    const prices = needPrices({ ...asked, speeds, needs });
    expect(prices[1]?.savedByLess).toBeCloseTo(0.25, 7);
    expect(prices[1]?.savedWithout).toBeCloseTo(0.75, 7);
  });
});

describe('speeds that can be set', () => {
  it('count from standstill, and both ends can be set', () => {
    const ratios = settableRatios({ least: 0.25, top: 0.96, step: 0.1 });
    expect(ratios.map((ratio) => Number(ratio.toFixed(9)))).toEqual([
      0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.96,
    ]);
  });

  it('are never made fewer, and those asked for are among them', () => {
    const ratios = settableRatios({ least: 0.2, top: 1, step: 1 / 3450 }, [0.54321, 0.1, 1.2]);
    // 690 to 3450 rpm are 2761 whole speeds.
    expect(ratios).toHaveLength(2761 + 1);
    expect(ratios).toContain(0.54321);
    expect(settableRatios({ least: 0.2, top: 1, step: 0 }, [0.3])).toEqual([0.2, 0.3, 1]);
  });

  it('that pass the speed of a hard stop are none', () => {
    const speeds = inventedSpeeds(10);
    const stop = { id: 'cover', greatestFlow: 1, greatestRatio: 0.5 };
    const day = found({ ...asked, speeds, limits: [stop], leastVolume: 150 });
    expect(Math.max(...day.blocks.map(({ ratio }) => ratio))).toBeLessThanOrEqual(0.5);
  });

  it('a pump that turns and moves nothing is no speed', () => {
    const table = speedTable([0.2, 0.5], (ratio) =>
      ratio < 0.3
        ? { kind: 'noFlow', power: 60 }
        : { kind: 'flowing', flow: 0.002, power: 150, suctionVelocity: 1, dischargeVelocity: 1 },
    );
    expect(table).toEqual([{ ratio: 0.5, flow: 0.002, power: 150 }]);
  });
});

describe('a broken contract', () => {
  it.each([
    ['prices that leave an hour out', { prices: [{ start: 60, end: 0, price: 1 }] }],
    ['a grid that cuts a price', { minuteStep: 50 }],
    ['half a change', { mostChanges: 1.5 }],
    ['a speed without flow', { speeds: [{ ratio: 1, flow: 0, power: 1 }] }],
  ])('%s throws', (_what, changed) => {
    expect(() => cheapestDay({ ...asked, ...changed })).toThrow(CoreError);
  });
});
