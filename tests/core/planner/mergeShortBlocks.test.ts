import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Block } from '#core/day/day.ts';
import { dayReport } from '#core/day/dayReport.ts';
import { cheapestDay } from '#core/planner/cheapestDay.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import { anyCase, inventedSpeeds, ordinaryCase } from './cases.ts';
import { pointFrom } from './judge.ts';

/*
 * Properties of a day that a person will set: nothing asked for is given up, no block and no stop is
 * shorter than the shortest, changes that cost next to nothing go, and the bound stays the one of the
 * day as it was found.
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

const shortest = 15;
const lengthOf = (start: number, end: number) => (end - start + 1440) % 1440 || 1440;

/** Blocks and stops shorter than the shortest. */
function shortIn(blocks: readonly Block[]): number {
  const sorted = blocks.toSorted((one, other) => one.start - other.start);
  const lengths = sorted.flatMap(({ start, end }, place) => {
    const next = sorted[(place + 1) % sorted.length]?.start ?? end;
    const stop = next === end % 1440 ? [] : [lengthOf(end % 1440, next)];
    return [lengthOf(start, end), ...stop];
  });
  return lengths.filter((length) => length < shortest).length;
}

describe('blocks nobody would set a pump to', () => {
  test('ordinary days keep all that is asked, have none of them, and fewer changes', () => {
    let [before, after, paid] = [0, 0, 0];
    for (let seed = 0; seed < 60; seed += 1) {
      const inputs = { ...ordinaryCase(seed), speeds: inventedSpeeds(290) };
      const plain = found(inputs);
      const set = found({ ...inputs, shortestBlock: shortest });
      expect(faultsIn(inputs, set.blocks)).toEqual([]);
      expect(shortIn(set.blocks)).toBe(0);
      expect(set.bound).toBe(plain.bound);
      expect(set.changes).toBeLessThanOrEqual(plain.changes);
      before += plain.changes;
      after += set.changes;
      paid += set.cost / plain.cost - 1;
    }
    expect(after).toBeLessThan(0.9 * before);
    expect(paid / 60).toBeLessThan(1e-3);
  });

  test('any day keeps all that is asked', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), fc.boolean(), (seed, runs) => {
        const inputs = anyCase(seed, { grid: 1, speeds: [2, 290], runs });
        const day = cheapestDay({ ...inputs, shortestBlock: 15 });
        if (day.kind !== 'found') return;
        expect(faultsIn(inputs, day.blocks)).toEqual([]);
        expect(shortIn(day.blocks)).toBe(0);
        expect(day.cost).toBeGreaterThanOrEqual(day.bound - 1e-9);
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  test('a short block that a need cannot do without grows', () => {
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
    };
    expect(found(inputs).blocks.map(({ start, end }) => [start, end])).toEqual([[600, 605]]);
    const [block] = found({ ...inputs, shortestBlock: shortest }).blocks;
    if (block === undefined) throw new Error('a block was expected');
    expect(lengthOf(block.start, block.end)).toBe(15);
    expect(block.start).toBeLessThanOrEqual(600);
    expect(block.end).toBeGreaterThanOrEqual(605);
  });
});

describe('watts at standstill', () => {
  test('are in the price and in the bound, and make a stop worth less', () => {
    // One speed, no need: 108 m3 at 3 L/s take 600 min at 200 W; the rest of the day stands at 30 W.
    const inputs: CheapestDayInputs = {
      speeds: [{ ratio: 0.5, flow: 0.003, power: 200 }],
      mayStop: true,
      standbyPower: 30,
      leastVolume: 108,
      needs: [],
      limits: [],
      quiet: [],
      prices: [{ start: 0, end: 1440, price: 0.3 }],
    };
    const expected = (0.3 * (600 * 200 + 840 * 30)) / 60_000;
    expect(found(inputs).cost).toBeCloseTo(expected, 12);
    expect(found(inputs).bound).toBeCloseTo(expected, 9);
    const all = found({ ...inputs, mayStop: false });
    expect(all.cost).toBeCloseTo((0.3 * 1440 * 200) / 60_000, 12);
  });
});
