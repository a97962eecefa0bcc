import { describe, expect, it } from 'vitest';
import { cheapestDay, searchCheapestDay } from '#core/planner/cheapestDay.ts';
import { nothingAsked as asked, ordinaryCase } from './cases.ts';
import { found } from './judge.ts';

describe('at most so many changes', { timeout: 60_000 }, () => {
  it('none at all is one speed all day', () => {
    // The slowest that moves the water alone: 0.0063 x 0.5527 x 86400 = 300.9 m3 is the first above 290. Arithmetic.
    const day = found({ ...asked, leastVolume: 290, mostChanges: 0 });
    const slowest = asked.speeds.find(({ flow }) => flow * 86_400 >= 290);
    expect(day.blocks).toMatchObject([{ ratio: slowest?.ratio }]);
    expect(day.changes).toBe(0);
  });

  // An invented day whose whole hours lie far from its shares of minutes: blocks of five hours in
  // six bands. Costs from scipy 1.17.1 optimize.milp (HiGHS, gap 0), binary speeds by the hour.
  it.each([
    [1, 2.5928],
    [3, 0.4593],
    [4, 0.4498],
    [6, 0.4432],
  ])('%d in whole hours cost what a programme in whole hours says', (mostChanges, cost) => {
    const gallons = 3.785411784e-3;
    const bands = [5, 5, 6, 4, 2, 2].map((hours, place, all) => {
      const before = all.slice(0, place).reduce((sum, each) => sum + each, 0) * 60;
      const price = [0.09, 0.2, 0.14, 0.4, 0.28, 0.09][place] ?? 0;
      return { start: before, end: before + hours * 60, price };
    });
    const result = cheapestDay({
      speeds: [
        { ratio: 0.35, flow: 26 * (gallons / 60), power: 110 },
        { ratio: 0.52, flow: 40 * (gallons / 60), power: 260 },
        { ratio: 0.7, flow: 54 * (gallons / 60), power: 560 },
        { ratio: 0.87, flow: 67 * (gallons / 60), power: 1050 },
      ],
      mayStop: true,
      leastVolume: 34_000 * gallons,
      needs: [
        {
          id: 'heater',
          leastFlow: 54 * (gallons / 60),
          minutes: 120,
          windows: [{ start: 480, end: 1200 }],
          shortestRun: 0,
        },
      ],
      limits: [],
      quiet: [],
      prices: bands,
      mostChanges,
      minuteStep: 60,
    });
    expect(result).toMatchObject({ kind: 'found', gap: 0 });
    if (result.kind === 'found') expect(result.cost).toBeCloseTo(cost, 9);
  });

  it('fewer changes are never cheaper, and none is cheaper than any number', () => {
    const inputs = ordinaryCase(3, 12);
    const free = found(inputs);
    const costs = [2, 3, 4, 6, 8].map((mostChanges) => {
      const day = found({ ...inputs, mostChanges });
      expect(day.changes).toBeLessThanOrEqual(mostChanges);
      expect(day.gap).toBeLessThanOrEqual(1e-3);
      expect(day.cost).toBeGreaterThanOrEqual(free.bound - 1e-12);
      return day;
    });
    costs.slice(1).forEach((day, place) => {
      expect(day.bound).toBeLessThanOrEqual((costs[place]?.cost ?? 0) + 1e-12);
    });
  });

  it('is searched in steps whose bound only rises and whose cost only falls', () => {
    const steps = searchCheapestDay({ ...ordinaryCase(5, 12), mostChanges: 4 });
    let [bound, cost] = [0, Number.POSITIVE_INFINITY];
    let seen = 0;
    for (let step = steps.next(); !step.done && seen < 40; step = steps.next()) {
      seen += 1;
      expect(step.value.regions).toBe(seen);
      expect(step.value.cost ?? cost).toBeLessThanOrEqual(cost + 1e-12);
      cost = step.value.cost ?? cost;
      // The ceiling moves down with the cost, by no more than the gap wanted.
      expect(step.value.bound).toBeGreaterThanOrEqual(bound * (1 - 1e-3) - 1e-12);
      bound = Math.max(bound, step.value.bound);
    }
    expect(seen).toBeGreaterThan(1);
  });
});
