import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { water } from '#core/water/water.ts';
import { fasterDay, longerDay } from '#core/year/sameWater.ts';

const curve = {
  shutoffHead: 20,
  lastFlow: 0.02,
  provenance: 'points' as const,
  head: (flow: number) => 20 - 2e5 * flow * flow,
  slope: (flow: number) => -4e5 * flow,
};

/** A loop that is one piece of equipment with h = k Q2 [m], lifting the water by z [m]. */
const loop = (k: number, z = 0): Circuit => ({
  suction: [],
  discharge: [
    {
      kind: 'equipment',
      id: 'f',
      referenceHead: k * 0.005 ** 2,
      referenceFlow: 0.005,
      exponent: 2,
      factor: 1,
    },
  ],
  staticHead: z,
  water: water(25),
});

/**
 * By hand: r2 20 - 2e5 Q2 = k Q2 + z, so Q = sqrt((20 r2 - z)/(2e5 + k)) (affinity laws, ANSI/HI 14.6,
 * and the definition of a loop's own curve).
 */
const flowBy = (ratio: number, k: number, z = 0) => Math.sqrt((20 * ratio ** 2 - z) / (2e5 + k));

const anyK = fc.double({ min: 1e4, max: 5e6, noNaN: true });
const plan = { ratio: 1, minutes: 600, start: 60 };
const lengthOf = ([block]: readonly { start: number; end: number }[]) =>
  block === undefined ? 0 : (block.end - block.start + 1440) % 1440 || 1440;

describe('a day that runs as long as the water takes', () => {
  it('moves the water and not a whole minute more', () => {
    fc.assert(
      fc.property(
        anyK,
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        fc.integer({ min: 2, max: 1438 }),
        (k, ratio, minutes) => {
          const flow = flowBy(ratio, k);
          const day = longerDay(
            { curve, circuit: loop(k), water: flow * 60 * (minutes - 0.5) },
            { ...plan, ratio },
          );
          expect(day).toMatchObject([{ ratio, start: 60, end: (60 + minutes) % 1440 }]);
        },
      ),
    );
  });

  it('is not a minute longer for water that rounding adds', () => {
    const exact = 600 * 60 * flowBy(1, 2e5);
    expect(
      lengthOf(longerDay({ curve, circuit: loop(2e5), water: exact * (1 + 1e-9) }, plan)),
    ).toBe(600);
    expect(
      lengthOf(longerDay({ curve, circuit: loop(2e5), water: exact * (1 + 1e-4) }, plan)),
    ).toBe(601);
  });

  it('is the whole day where that is too short or no water moves, and empty for no water', () => {
    const tooMuch = { curve, circuit: loop(2e5), water: 1e4 };
    expect(lengthOf(longerDay(tooMuch, plan))).toBe(1440);
    // 20 m of pump cannot lift water by 25 m.
    expect(lengthOf(longerDay({ ...tooMuch, circuit: loop(2e5, 25), water: 1 }, plan))).toBe(1440);
    expect(longerDay({ ...tooMuch, water: 0 }, plan)).toEqual([]);
    expect(() => longerDay({ ...tooMuch, water: -1 }, plan)).toThrow(CoreError);
  });
});

describe('a day that runs as fast as the water takes', () => {
  it('moves the water in its time', () => {
    fc.assert(
      fc.property(
        anyK,
        fc.double({ min: 0, max: 4, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 1440 }),
        (k, z, share, minutes) => {
          const slowest = Math.sqrt(z / 20);
          const ratio = slowest + share * (1 - slowest);
          const amount = flowBy(ratio, k, z) * 60 * minutes;
          const [block] = fasterDay(
            { curve, circuit: loop(k, z), water: amount },
            { ...plan, minutes },
            1,
          );
          expect(block?.ratio).toBeCloseTo(ratio, 9);
          expect(lengthOf(block === undefined ? [] : [block])).toBe(minutes);
        },
      ),
    );
  });

  it('is at the fastest speed where even that is too slow, and empty for no water or no time', () => {
    const same = { curve, circuit: loop(2e5), water: 1e4 };
    expect(fasterDay(same, plan, 0.8)).toMatchObject([{ ratio: 0.8, start: 60, end: 660 }]);
    expect(fasterDay({ ...same, water: 0 }, plan, 1)).toEqual([]);
    expect(fasterDay(same, { ...plan, minutes: 0 }, 1)).toEqual([]);
    expect(() => fasterDay({ ...same, water: -1 }, plan, 1)).toThrow(CoreError);
    expect(() => fasterDay(same, { ...plan, minutes: 1441 }, 1)).toThrow(CoreError);
  });
});
