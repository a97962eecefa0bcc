import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cheapestDay } from '#core/cheapestDay.ts';
import type { CheapestDayInputs } from '#core/cheapestDayInputs.ts';
import type { Block } from '#core/day.ts';
import { dayReport } from '#core/dayReport.ts';
import { anyCase, inventedSpeeds, ordinaryCase } from './cheapestDayCases.ts';
import { pointFrom } from './cheapestDayJudge.ts';

/*
 * Properties of joining short blocks: nothing asked for is given up, the price rises by a tenth of a
 * percent at most, and the bound stays the one of the day that was not joined.
 */
const found = (inputs: CheapestDayInputs) => {
  const day = cheapestDay(inputs);
  if (day.kind !== 'found') throw new Error(`the day is ${day.kind}`);
  return day;
};

/** What the day's own report finds missing or crossed. */
function faultsIn(inputs: CheapestDayInputs, blocks: readonly Block[]): readonly string[] {
  const report = dayReport({
    ...inputs,
    blocks,
    pointAt: pointFrom(inputs.speeds),
    volume: 60,
  });
  return [
    ...report.needs.filter(({ met }) => !met).map(({ need }) => need.id),
    ...report.crossings.map(({ limit }) => limit.id),
    ...report.quietCrossings.map(() => 'quiet'),
    ...(report.volumeMoved < inputs.leastVolume * (1 - 1e-9) ? ['water'] : []),
  ];
}

const lengthOf = ({ start, end }: Block) => (end - start + 1440) % 1440 || 1440;
const shortIn = (blocks: readonly Block[]) => blocks.filter((block) => lengthOf(block) < 10).length;

describe('blocks nobody would set a pump to', () => {
  test('ordinary days keep all that is asked, cost at most 0.1 % more, and have fewer of them', () => {
    let [before, after] = [0, 0];
    for (let seed = 0; seed < 60; seed += 1) {
      const inputs = ordinaryCase(seed);
      const plain = found(inputs);
      const joined = found({ ...inputs, shortestBlock: 10 });
      expect(faultsIn(inputs, joined.blocks)).toEqual([]);
      expect(joined.cost).toBeLessThanOrEqual(plain.cost * 1.001 + 1e-12);
      expect(joined.bound).toBe(plain.bound);
      expect(joined.changes).toBeLessThanOrEqual(plain.changes);
      before += shortIn(plain.blocks);
      after += shortIn(joined.blocks);
    }
    expect(before).toBeGreaterThan(10);
    expect(after).toBeLessThan(0.6 * before);
  });

  test('any day keeps all that is asked', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), fc.boolean(), (seed, runs) => {
        const inputs = anyCase(seed, { grid: 1, speeds: [2, 20], runs });
        const day = cheapestDay({ ...inputs, shortestBlock: 15 });
        if (day.kind !== 'found') return;
        expect(faultsIn(inputs, day.blocks)).toEqual([]);
        expect(day.cost).toBeGreaterThanOrEqual(day.bound - 1e-9);
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  test('a short block that a need cannot do without stays', () => {
    const speeds = inventedSpeeds(3);
    const need = {
      id: 'rinse',
      leastFlow: 0.006,
      minutes: 5,
      windows: [{ start: 600, end: 605 }],
      shortestRun: 5,
    };
    const inputs = {
      speeds,
      mayStop: true,
      leastVolume: 0,
      needs: [need],
      limits: [],
      quiet: [],
      prices: [{ start: 0, end: 1440, price: 0.2 }],
      shortestBlock: 10,
    };
    expect(found(inputs).blocks.map(({ start, end }) => [start, end])).toEqual([[600, 605]]);
  });
});
