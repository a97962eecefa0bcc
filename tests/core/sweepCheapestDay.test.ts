import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FoundDay } from '#core/cheapestDay.ts';
import { type CheapestDayInputs, settableRatios } from '#core/cheapestDayInputs.ts';
import { type Circuit, foldCircuit } from '#core/circuit.ts';
import { CoreError } from '#core/errors.ts';
import { operatingPoint } from '#core/operatingPoint.ts';
import { pipeSizes } from '#core/pipe.ts';
import { pumpFromThreePoints } from '#core/pump.ts';
import { type SweptDay, sweepCheapestDay, sweepSteps } from '#core/sweepCheapestDay.ts';
import { placesAlike, planCharacter, planDifferences } from '#core/sweepPlan.ts';
import { water } from '#core/water.ts';
import { inventedSpeeds, ordinaryCase } from './cheapestDayCases.ts';

const hour = 60;

const asked: CheapestDayInputs = {
  speeds: inventedSpeeds(24),
  mayStop: true,
  leastVolume: 0,
  needs: [],
  limits: [],
  quiet: [],
  prices: [{ start: 0, end: 1440, price: 0.25 }],
};

const evenly = (from: number, to: number, count: number) =>
  Array.from({ length: count }, (_, place) => from + ((to - from) * place) / (count - 1));

function foundIn({ day }: SweptDay): FoundDay {
  if (day?.kind !== 'found') return expect.fail(`no day was found: ${day?.kind}`);
  return day;
}

const anySeed = fc.integer({ min: 0, max: 5000 });

/*
 * One price and only water to move. Power F + c r^3 and flow q r give the price of a litre
 * (F + c r^3)/(q r), least at r* = (F/2c)^(1/3): calculus. Less water than r* moves all day: r* for
 * part of it, price in proportion; more: one steady speed all day, since power is convex in the
 * flow (Jensen, Acta Mathematica 30, 1906).
 */
describe('one price and only turnovers', () => {
  const [fixed, cube, flow, volume, price] = [54, 900, 0.006, 60, 0.25];
  const best = (fixed / (2 * cube)) ** (1 / 3);
  const steadyRatio = (turnovers: number) => (turnovers * volume) / 86_400 / flow;
  const law = (turnovers: number) => {
    const ratio = Math.max(best, steadyRatio(turnovers));
    const share = Math.min(1, steadyRatio(turnovers) / best);
    return (share * 24 * price * (fixed + cube * ratio ** 3)) / 1000;
  };
  const speeds = settableRatios({ least: 0.15, top: 1, step: 0.005 }, []).map((ratio) => ({
    ratio,
    flow: flow * ratio,
    power: fixed + cube * ratio ** 3,
  }));
  const narrowTo = 0.01;
  const sweep = sweepCheapestDay({
    values: evenly(0, 8, 33),
    inputsAt: (turnovers) => ({ ...asked, speeds, leastVolume: turnovers * volume }),
    narrowTo,
  });

  it('the price follows the law', () => {
    for (const swept of sweep.days) {
      const expected = law(swept.value);
      // Speeds come in steps of 0.005, whose chord lies less than 0.1 % above the cube.
      expect(foundIn(swept).cost).toBeGreaterThanOrEqual(expected * (1 - 1e-9));
      expect(foundIn(swept).cost).toBeLessThanOrEqual(expected * 1.001 + 1e-12);
    }
  });

  it('the plan changes where r* all day is just enough, and nowhere else', () => {
    const enough = (best * flow * 86_400) / volume;
    const rests = sweep.changes.filter(({ differences }) =>
      differences.some((each) => each.kind === 'stops' && !each.stops),
    );
    expect(rests).toHaveLength(1);
    // A rest of less than ten minutes does not count as one.
    expect(rests[0]?.after.value).toBeLessThanOrEqual(enough + narrowTo);
    expect(rests[0]?.before.value).toBeGreaterThanOrEqual(enough * (1 - 10 / 1440) - narrowTo);
    const others = sweep.changes.filter(
      ({ before, differences }) =>
        before.value > 0.25 && differences.some(({ kind }) => kind !== 'stops'),
    );
    expect(others).toEqual([]);
  });

  it('the slope is that of the law', () => {
    for (const { value, slope } of sweep.days.slice(1, -1)) {
      const rise = (law(value + 0.25) - law(value)) / 0.25;
      expect(Math.abs((slope ?? 0) / rise - 1)).toBeLessThan(0.01);
    }
  });
});

describe('whatever is asked for', { timeout: 60_000 }, () => {
  it('more turnovers are never cheaper, and each costs no less than the one before', () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const inputs = ordinaryCase(seed, 24);
        const { days } = sweepCheapestDay({
          values: evenly(0, 200, 9),
          inputsAt: (leastVolume) => ({ ...inputs, leastVolume }),
        });
        const found = days.filter(({ day }) => day?.kind === 'found').map(foundIn);
        for (const [place, day] of found.slice(1).entries()) {
          const before = found[place] as FoundDay;
          expect(day.cost).toBeGreaterThanOrEqual(before.bound - 1e-12);
          const next = found[place + 2];
          // The least cost of a linear programme is convex in what it asks: Dantzig, 1963.
          if (next !== undefined)
            expect(before.cost + next.cost).toBeGreaterThanOrEqual(2 * day.bound - 1e-12);
        }
      }),
      { numRuns: 40, seed: 21 },
    );
  });

  it('more hours of a need are never cheaper, and once there is no day there is none further on', () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const inputs = ordinaryCase(seed, 24);
        const { days, changes } = sweepCheapestDay({
          values: evenly(0, 720, 9),
          inputsAt: (minutes) => ({
            ...inputs,
            needs: inputs.needs.map((need, place) => (place === 0 ? { ...need, minutes } : need)),
          }),
          narrowTo: 4,
        });
        const lost = days.findIndex(({ day }) => day?.kind !== 'found');
        const kept = lost < 0 ? days : days.slice(0, lost);
        expect(days.slice(kept.length).every(({ character }) => character === null)).toBe(true);
        for (const [place, day] of kept.slice(1).entries())
          expect(foundIn(day).cost).toBeGreaterThanOrEqual(
            foundIn(kept[place] as SweptDay).bound - 1e-12,
          );
        const ends = changes.filter(({ differences: [first] }) => first?.kind === 'day');
        expect(ends).toHaveLength(lost > 0 ? 1 : 0);
      }),
      { numRuns: 30, seed: 22 },
    );
  });

  it('all prices times k: the cost times k, and the same plan', () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const inputs = ordinaryCase(seed, 24);
        const at = (k: number) => ({
          ...inputs,
          prices: inputs.prices.map((span) => ({ ...span, price: span.price * k })),
        });
        // Halving and doubling leave every digit as it is, so that nothing but the law is tested.
        const values = [0.25, 0.5, 1, 2, 4];
        const { days, changes } = sweepCheapestDay({ values, inputsAt: at });
        const today = foundIn(days[2] as SweptDay);
        for (const swept of days) {
          expect(foundIn(swept).cost).toBeCloseTo(swept.value * today.cost, 12);
          expect(foundIn(swept).blocks).toEqual(today.blocks);
        }
        expect(changes).toEqual([]);
      }),
      { numRuns: 40, seed: 23 },
    );
  });

  it('a larger bore never makes the day dearer on a loop without lift', () => {
    // Same power, more flow at every speed: Darcy–Weisbach, whose loss falls with the bore.
    const bores = pipeSizes.filter(({ series }) => series === 'sch40').map(({ bore }) => bore);
    const curve = pumpFromThreePoints([
      { flow: 0, head: 20 },
      { flow: 0.004, head: 17 },
      { flow: 0.008, head: 8 },
    ]);
    const circuit = (bore: number, length: number): Circuit => ({
      suction: [{ kind: 'pipe', id: 'in', bore: 0.0627, length: 9, roughness: 1.5e-6 }],
      discharge: [
        { kind: 'pipe', id: 'out', bore, length, roughness: 1.5e-6 },
        {
          kind: 'equipment',
          id: 'filter',
          referenceHead: 3,
          referenceFlow: 0.004,
          exponent: 1.5,
          factor: 1,
        },
      ],
      staticHead: 0,
      water: water(25),
    });
    const ratios = settableRatios({ least: 0.2, top: 1, step: 0 });
    const speedsAt = (bore: number, length: number) => {
      const folded = foldCircuit(circuit(bore, length));
      return ratios.flatMap((ratio) => {
        const point = operatingPoint(curve, folded, ratio);
        const power = 45 + 1200 * ratio ** 3;
        return point.kind === 'flowing' ? [{ ratio, flow: point.flow, power }] : [];
      });
    };
    let compared = 0;
    fc.assert(
      fc.property(anySeed, fc.integer({ min: 5, max: 80 }), (seed, length) => {
        const inputs = { ...ordinaryCase(seed, 2), limits: [], quiet: [] };
        const { days } = sweepCheapestDay({
          values: bores.slice(2),
          inputsAt: (bore) => ({ ...inputs, speeds: speedsAt(bore, length) }),
        });
        const first = days.findIndex(({ day }) => day?.kind === 'found');
        const found = first < 0 ? [] : days.slice(first).map(foundIn);
        for (const [place, day] of found.slice(1).entries())
          expect(day.bound).toBeLessThanOrEqual((found[place]?.cost ?? 0) + 1e-12);
        compared += found.length;
      }),
      { numRuns: 12, seed: 24 },
    );
    expect(compared).toBeGreaterThan(40);
  });
});

describe('where the plan changes', () => {
  const speeds = [{ ratio: 0.5, flow: 0.003, power: 200 }];
  const prices = [
    { start: 22 * hour, end: 6 * hour, price: 0.1 },
    { start: 6 * hour, end: 17 * hour, price: 0.2 },
    { start: 17 * hour, end: 22 * hour, price: 0.4 },
  ];
  const inputsAt = (minutes: number): CheapestDayInputs => ({
    ...asked,
    speeds,
    prices,
    needs: [{ id: 'filter', leastFlow: 0.003, minutes, windows: [], shortestRun: 0 }],
  });

  it('is where the cheap hours are full: 8 h, then 19 h. The hours of the clock', () => {
    const { changes } = sweepCheapestDay({ values: evenly(60, 1400, 12), inputsAt, narrowTo: 1 });
    const runsIn = changes.flatMap(({ before, after, differences }) =>
      differences.flatMap((each) =>
        each.kind === 'price' ? [[each.place, each.runs, before.value, after.value] as const] : [],
      ),
    );
    expect(runsIn.map(([place, runs]) => [place, runs])).toEqual([
      [1, true],
      [2, true],
    ]);
    for (const [place, full] of [8 * hour, 19 * hour].entries()) {
      const [, , before = 0, after = 0] = runsIn[place] ?? [];
      // Ten minutes in dearer hours are the least that counts.
      expect(before).toBeLessThanOrEqual(full + 10);
      expect(after).toBeGreaterThanOrEqual(full + 9);
      expect(after - before).toBeLessThanOrEqual(1);
    }
  });

  it('is where the pump can move no more: 0.003 m3/s for a day. Arithmetic', () => {
    const { days, changes } = sweepCheapestDay({
      values: [200, 250, 300],
      inputsAt: (leastVolume) => ({ ...asked, speeds, leastVolume }),
      narrowTo: 0.1,
    });
    const end = changes.find(({ differences: [first] }) => first?.kind === 'day');
    expect(end?.before.value).toBeLessThanOrEqual(259.2);
    expect(end?.after.value).toBeGreaterThan(259.2);
    expect((end?.after.value ?? 0) - (end?.before.value ?? 0)).toBeLessThanOrEqual(0.1);
    const lost = days[2]?.day;
    expect(lost?.kind === 'none' && lost.collision).toMatchObject([{ kind: 'volume' }]);
    expect(days.map(({ slope }) => slope === null)).toEqual([false, true, true]);
  });

  it('is not looked for between values with nothing between', () => {
    const seen: number[] = [];
    const { changes } = sweepCheapestDay({
      values: [60, 600, 1300],
      inputsAt: (minutes) => {
        seen.push(minutes);
        return inputsAt(minutes);
      },
    });
    expect(seen).toEqual([60, 600, 1300]);
    expect(changes.map(({ before, after }) => [before.value, after.value])).toEqual([
      [60, 600],
      [600, 1300],
    ]);
  });

  it('a value of which too little is known has no day and no slope', () => {
    const { days } = sweepCheapestDay({
      values: [60, 120],
      inputsAt: (minutes) => (minutes > 100 ? null : inputsAt(minutes)),
    });
    expect(days[1]).toEqual({ value: 120, day: null, character: null, slope: null });
    expect(days[0]?.slope).toBeNull();
  });

  it('comes in steps, a day each', () => {
    const steps = sweepSteps({ values: [60, 120, 180], inputsAt });
    expect([steps.next().value, steps.next().value, steps.next().value]).toEqual([1, 2, 3]);
    expect(steps.next().done).toBe(true);
  });
});

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
  const marks = (blocks: readonly ReturnType<typeof block>[], worth: FoundDay['worth'] = []) =>
    planCharacter({ blocks, worth, cost: 1, volumeMoved: 100 }, prices, [0, 1, 0]);

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
    const worth = (needId: string | null, perUnit: number) => ({
      needId,
      perUnit,
      binds: true,
      over: 0,
    });
    // 60 min x 0.00001 is 0.0006 of a price of 1; 10 m3 x 0.00004 is 0.0004 of it.
    expect(
      marks([], [worth(null, 0.000_04), worth('a', 0.000_01), worth('b', 0.000_008)]).binding,
    ).toEqual(['a']);
  });

  it('differs in what has come, what has gone, and in speeds that jump', () => {
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
});

describe('a broken contract', () => {
  const wish = { values: [1, 2], inputsAt: () => null };
  it.each([
    ['values that fall', { values: [2, 1] }],
    ['the same value twice', { values: [1, 1] }],
    ['a value without end', { values: [1, Number.POSITIVE_INFINITY] }],
    ['no width', { narrowTo: 0 }],
  ])('%s throws', (_what, changed) => {
    expect(() => sweepCheapestDay({ ...wish, ...changed })).toThrow(CoreError);
  });

  it('a tolerance below 0 throws', () => {
    expect(() => planDifferences(null, null, -1)).toThrow(CoreError);
  });
});
