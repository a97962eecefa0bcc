import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import type { FoundDay } from '#core/planner/cheapestDay.ts';
import { placesAlike, planCharacter, planDifferences } from '#core/planner/sweepPlan.ts';

describe('what marks a plan', () => {
  const block = (start: number, end: number, ratio: number) => ({
    id: `${start}`,
    start,
    end,
    ratio,
  });
  const prices = [
    { start: 0, end: 600, price: 0.1 },
    { start: 600, end: 1000, price: 0.3 },
    { start: 1000, end: 0, price: 0.1 },
  ];
  const marks = (
    blocks: readonly ReturnType<typeof block>[],
    multipliers: FoundDay['multipliers'] = [],
  ) => planCharacter({ blocks, multipliers, cost: 1, volumeMoved: 100 }, prices, [0, 1, 0]);

  it('speeds close to one another are one, a few minutes none', () => {
    const found = marks([block(0, 300, 0.3), block(300, 600, 0.32), block(600, 609, 0.9)]);
    expect(found.speeds).toEqual([expect.closeTo(0.31, 12)]);
    expect(found.runsIn).toEqual([0]);
    expect(found.stops).toBe(true);
  });

  it('hours priced alike are one, across midnight too', () => {
    expect(marks([block(1300, 100, 0.5)]).runsIn).toEqual([0]);
    expect(marks([block(0, 0, 0.5)])).toMatchObject({ runsIn: [0, 1], stops: false });
    expect(placesAlike([prices])).toEqual([0, 1, 0]);
    // Alike today and not tomorrow is not alike.
    const dearer = prices.map((span, place) => (place === 2 ? { ...span, price: 0.2 } : span));
    expect(placesAlike([prices, dearer])).toEqual([0, 1, 2]);
    expect(placesAlike([])).toEqual([]);
  });

  it('a need binds by what an hour more of it costs, water by a tenth more', () => {
    const multipliers = (needId: string | null, perUnit: number) => ({
      needId,
      perUnit,
      binds: true,
      over: 0,
    });
    // 60 min x 0.00001 is 0.0006 of a price of 1; 10 m3 x 0.00004 is 0.0004 of it.
    expect(
      marks(
        [],
        [multipliers(null, 0.000_04), multipliers('a', 0.000_01), multipliers('b', 0.000_008)],
      ).binding,
    ).toEqual(['a']);
  });

  it('speeds that creep are one where each lies near the next, at their mean by time', () => {
    // Law of the project: within 0.03 of one another. (0.3 x 400 + 0.32 x 100 + 0.35 x 100)/600.
    const creeping = [block(700, 800, 0.35), block(0, 400, 0.3), block(500, 600, 0.32)];
    expect(marks(creeping).speeds).toEqual([expect.closeTo(187 / 600, 12)]);
    expect(marks([block(0, 60, 0.03), block(60, 120, 0.06)]).speeds).toHaveLength(1);
    expect(marks([block(0, 60, 0.6), block(60, 120, 0.5)]).speeds).toEqual([0.5, 0.6]);
  });

  it('ten minutes in the whole day count, at one speed or at one price, nine do not', () => {
    // Law of the project: what lasts less than 10 minutes does not count.
    // Five dear minutes up to 605, and from 995 or 996 five or four more.
    const dear = (from: number) => [block(100, 605, 0.4), block(from, 1100, 0.4)];
    expect(marks(dear(995)).runsIn).toEqual([0, 1]);
    expect(marks(dear(996)).runsIn).toEqual([0]);
    expect(marks([block(100, 105, 0.9), block(200, 205, 0.9)]).speeds).toEqual([0.9]);
    expect(marks([block(100, 105, 0.9), block(200, 204, 0.9)]).speeds).toEqual([]);
    expect(marks([block(500, 610, 0.9)]).runsIn).toEqual([0, 1]);
    expect(marks([block(500, 609, 0.9)]).runsIn).toEqual([0]);
    expect(marks([block(10, 0, 0.9)]).stops).toBe(true);
    expect(marks([block(9, 0, 0.9)]).stops).toBe(false);
  });

  it('a block that stands still is no running', () => {
    const still = [block(0, 600, 0), block(600, 1000, 0.5), block(1000, 1200, 0)];
    expect(marks(still)).toMatchObject({ speeds: [0.5], stops: true, runsIn: [1] });
  });

  it('runs where the minutes of the clock say so, counted one by one', () => {
    const cuts = fc.uniqueArray(fc.integer({ min: 0, max: 1439 }), { minLength: 2, maxLength: 9 });
    const ratio = fc.constantFrom(0, 0, 0.2, 0.5, 0.8);
    fc.assert(
      fc.property(cuts, fc.array(ratio, { minLength: 9, maxLength: 9 }), (unsorted, ratios) => {
        const starts = unsorted.toSorted((one, other) => one - other);
        const blocks = starts.map((start, at) =>
          block(start, starts[at + 1] ?? starts[0] ?? 0, ratios[at] ?? 0),
        );
        const speedAt = (minute: number) =>
          (blocks.findLast(({ start }) => start <= minute) ?? blocks.at(-1))?.ratio ?? 0;
        const minutes = Array.from({ length: 1440 }, (_, minute) => minute);
        const running = minutes.filter((minute) => speedAt(minute) > 0);
        const cheap = running.filter((minute) => minute < 600 || minute >= 1000).length;
        const found = marks(blocks);
        expect(found.stops).toBe(1440 - running.length >= 10);
        expect(found.runsIn.includes(0)).toBe(cheap >= 10);
        expect(found.runsIn.includes(1)).toBe(running.length - cheap >= 10);
        expect(found.speeds).toEqual(
          [0.2, 0.5, 0.8].filter(
            (one) => running.filter((minute) => speedAt(minute) === one).length >= 10,
          ),
        );
      }),
    );
  });

  it('what makes a day dearer by just 0.05 % binds, also a day that earns', () => {
    const multipliers = (needId: string | null, perUnit: number, binds = true) => ({
      needId,
      perUnit,
      binds,
      over: 0,
    });
    const of = (cost: number, ...all: FoundDay['multipliers'][number][]) =>
      planCharacter({ blocks: [], multipliers: all, cost, volumeMoved: 100 }, prices, [0, 1, 0])
        .binding;
    // 0.0005 of 2000 is 1: 60 min at 1/60 each, 10 m3 at 1/10 each.
    for (const cost of [2000, -2000]) {
      expect(of(cost, multipliers('a', 1 / 60), multipliers(null, 1 / 10))).toEqual(['a', null]);
      expect(of(cost, multipliers('a', 0.99 / 60), multipliers(null, 0.99 / 10))).toEqual([]);
      expect(of(cost, multipliers('a', 1, false), multipliers(null, 1, false))).toEqual([]);
    }
  });
});

describe('in what plans differ', () => {
  it('is in what has come, what has gone, and in speeds that jump', () => {
    const one = { speeds: [0.3], stops: true, runsIn: [0], binding: ['a'] };
    const other = { speeds: [0.3, 0.6], stops: false, runsIn: [1], binding: [null] };
    expect(planDifferences(one, one, 0.03)).toEqual([]);
    expect(planDifferences(null, null, 0.03)).toEqual([]);
    expect(planDifferences(one, null, 0.03)).toEqual([{ kind: 'day', exists: false }]);
    expect(planDifferences(one, other, 0.03)).toEqual([
      { kind: 'price', place: 1, runs: true },
      { kind: 'price', place: 0, runs: false },
      { kind: 'stops', stops: false },
      { kind: 'speeds', from: [0.3], to: [0.3, 0.6] },
      { kind: 'binds', needId: null, binds: true },
      { kind: 'binds', needId: 'a', binds: false },
    ]);
    const drifted = { ...one, speeds: [0.32] };
    expect(planDifferences(one, drifted, 0.03)).toEqual([]);
    expect(planDifferences(one, drifted, 0.01)).toMatchObject([{ kind: 'speeds' }]);
  });

  it('is a day that is there now, or none any more', () => {
    const one = { speeds: [0.3], stops: true, runsIn: [0], binding: [] };
    expect(planDifferences(null, one, 0)).toEqual([{ kind: 'day', exists: true }]);
    expect(planDifferences(one, null, 2)).toEqual([{ kind: 'day', exists: false }]);
  });

  it('is one speed of several that moves by more than the tolerance, not by just as much', () => {
    const at = (...speeds: number[]) => ({ speeds, stops: true, runsIn: [], binding: [] });
    expect(planDifferences(at(0.25, 0.5), at(0.25, 0.75), 0.25)).toEqual([]);
    for (const [from, to] of [
      [at(0.25, 0.5), at(0.25, 1)],
      [at(0.5, 0.75), at(0.125, 0.75)],
      [at(), at(0.125)],
      [at(0.25), at()],
    ] as const)
      expect(planDifferences(from, to, 0.25)).toEqual([
        { kind: 'speeds', from: from.speeds, to: to.speeds },
      ]);
  });

  it.each([-1, 2.1, Number.NaN])('a tolerance of %f is refused', (tolerance) => {
    expect(() => planDifferences(null, null, tolerance)).toThrow(
      new CoreError('tolerance', tolerance, 'a number from 0 to 2'),
    );
  });
});
