import { expect, test } from 'vitest';
import { cheapestDay } from '#core/planner/cheapestDay.ts';

// The day that src/core/planner/README.md works out by hand.
test('two speeds, two prices, 72 m3: 0.30, proven, at 0.0075 a cubic metre', () => {
  const day = cheapestDay({
    speeds: [
      { ratio: 0.5, flow: 4 / 3600, power: 100 },
      { ratio: 1, flow: 8 / 3600, power: 500 },
    ],
    mayStop: true,
    leastVolume: 72,
    needs: [],
    limits: [],
    quiet: [],
    prices: [
      { start: 0, end: 720, price: 0.1 },
      { start: 720, end: 0, price: 0.3 },
    ],
  });
  if (day.kind !== 'found') throw new Error('a day was expected');
  expect(day.cost).toBeCloseTo(0.3, 9);
  expect(day.bound).toBeCloseTo(0.3, 9);
  expect(day.multipliers[0]?.perUnit).toBeCloseTo(0.0075, 9);
  const slow = day.blocks.reduce((sum, { start, end }) => sum + ((end - start + 1440) % 1440), 0);
  expect(slow).toBe(18 * 60);
});
