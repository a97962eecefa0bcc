import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import { sweepCheapestDay, sweepSteps } from '#core/planner/sweep.ts';
import { asked, evenly, foundIn, hour } from './sweepFixtures.ts';

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

  it('is told from the least value on, however many lie between two values', () => {
    const seen: number[] = [];
    const { changes } = sweepCheapestDay({
      values: [60, 1400],
      inputsAt: (minutes) => {
        seen.push(minutes);
        return inputsAt(minutes);
      },
      narrowTo: 1,
    });
    const places = changes.map(({ before }) => before.value);
    // Cheap hours full, dearer hours full, and no rest any more: the hours of the clock.
    expect(places.map((value) => Math.round(value / hour))).toEqual([8, 19]);
    expect(places).toEqual(places.toSorted((one, other) => one - other));
    for (const { before, after } of changes) {
      const rise = (foundIn(after).cost - foundIn(before).cost) / (after.value - before.value);
      expect([before.slope, after.slope]).toEqual([expect.closeTo(rise, 12), before.slope]);
    }
    // Halving: no value is looked at twice, and where nothing changes none at all.
    expect(new Set(seen).size).toBe(seen.length);
  });

  it('is narrowed down no further than was wished, and never by more than 100 days', () => {
    const count = (narrowTo: number) => {
      const steps = sweepSteps({ values: [420, 540], inputsAt, narrowTo });
      const told: number[] = [];
      let step = steps.next();
      for (; !step.done; step = steps.next()) told.push(step.value);
      expect(told).toEqual(told.map((_, place) => place + 1));
      return { days: told.length, changes: step.value.changes };
    };
    expect(count(120).days).toBe(2);
    expect(count(119).days).toBe(3);
    // A change is halved from 120 to 60, 30 and 15.
    expect(count(15)).toMatchObject({ days: 5, changes: [{ before: { value: 480 } }] });
    // The law of the sweep; two doubles side by side are halved no more.
    expect(count(Number.MIN_VALUE).days).toBe(2 + 100);
  });

  it('the price of one unit more is that to the next value, at the last that from the one before', () => {
    // 200 W move 10.8 m3 an hour: 0.2 kWh at 0.3 and 0.2 of a currency, per 10.8 m3.
    const at = (price: number) => (0.2 * price) / 10.8;
    const { days } = sweepCheapestDay({
      values: [54, 108, 135],
      inputsAt: (leastVolume) => ({
        ...asked,
        speeds,
        leastVolume,
        prices: [{ start: 0, end: 1440, price: leastVolume > 108 ? 0.6 : 0.3 }],
      }),
    });
    const last = (135 * at(0.6) - 108 * at(0.3)) / 27;
    expect(days.map(({ slope }) => slope)).toEqual([
      expect.closeTo(at(0.3), 12),
      expect.closeTo(last, 12),
      expect.closeTo(last, 12),
    ]);
    expect(sweepCheapestDay({ values: [60], inputsAt }).days[0]?.slope).toBeNull();
    expect(sweepCheapestDay({ values: [], inputsAt })).toEqual({ days: [], changes: [] });
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
    // The same where it is the first: what is alike is told by the others.
    const late = sweepCheapestDay({
      values: [60, 1400],
      inputsAt: (minutes) => (minutes < 100 ? null : inputsAt(minutes)),
    });
    expect(late.days[1]?.character?.runsIn).toEqual([0, 1, 2]);
    expect(late.changes).toMatchObject([{ differences: [{ kind: 'day', exists: true }] }]);
  });

  it('comes in steps, a day each', () => {
    const steps = sweepSteps({ values: [60, 120, 180], inputsAt });
    expect([steps.next().value, steps.next().value, steps.next().value]).toEqual([1, 2, 3]);
    expect(steps.next().done).toBe(true);
  });
});

describe('a broken contract', () => {
  const wish = { values: [1, 2], inputsAt: () => null };
  it.each([
    ['values that fall', { values: [2, 1] }, 'values[1]', 1],
    ['the same value twice', { values: [-1, 1, 1] }, 'values[2]', 1],
    ['a value without end', { values: [1, Number.POSITIVE_INFINITY] }, 'values[1]', Infinity],
    ['a value without beginning', { values: [Number.NEGATIVE_INFINITY] }, 'values[0]', -Infinity],
    ['a value that is no number', { values: [Number.NaN] }, 'values[0]', Number.NaN],
  ])('%s is refused by its place', (_what, changed, field, value) => {
    expect(() => sweepCheapestDay({ ...wish, ...changed })).toThrow(
      new CoreError(field, value, 'finite numbers, rising'),
    );
  });

  it('no width is refused', () => {
    expect(() => sweepCheapestDay({ ...wish, narrowTo: 0 })).toThrow(/^narrowTo is 0/);
  });
});
