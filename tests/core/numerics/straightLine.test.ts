import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { type LinePoint, straightLine } from '#core/numerics/straightLine.ts';

/**
 * Norris, a study of ozone monitors. Source: NIST Statistical Reference Datasets, linear least squares,
 * lower level of difficulty; 36 pairs and their certified values.
 */
const norris = [
  [0.1, 0.2],
  [338.8, 337.4],
  [118.1, 118.2],
  [888.0, 884.6],
  [9.2, 10.1],
  [228.1, 226.5],
  [668.5, 666.3],
  [998.5, 996.3],
  [449.1, 448.6],
  [778.9, 777.0],
  [559.2, 558.2],
  [0.3, 0.4],
  [0.1, 0.6],
  [778.1, 775.5],
  [668.8, 666.9],
  [339.3, 338.0],
  [448.9, 447.5],
  [10.8, 11.6],
  [557.7, 556.0],
  [228.3, 228.1],
  [998.0, 995.8],
  [888.8, 887.6],
  [119.6, 120.2],
  [0.3, 0.3],
  [0.6, 0.3],
  [557.6, 556.8],
  [339.3, 339.1],
  [888.0, 887.2],
  [998.5, 999.0],
  [778.9, 779.0],
  [10.2, 11.1],
  [117.6, 118.3],
  [228.9, 229.2],
  [668.4, 669.1],
  [449.2, 448.9],
  [0.2, 0.5],
] as const;

const certified = {
  intercept: -0.262323073774029,
  interceptError: 0.232818234301152,
  slope: 1.00211681802045,
  slopeError: 0.429796848199937e-3,
  deviation: 0.884796396144373,
};

const point = (x: number, y: number, weight = 1): LinePoint => ({ x, y, weight });
const own = norris.map(([y, x]) => point(x, y));

describe('a straight line through points', () => {
  it('gives the certified values of the Norris data to 11 figures', () => {
    const line = straightLine(own);
    for (const [name, value] of Object.entries(certified)) {
      const got = line?.[name as keyof typeof certified] ?? Number.NaN;
      expect(Math.abs(got / value - 1), name).toBeLessThan(1e-11);
    }
  });

  it('counts a point of weight 2 as two points, but for the number of readings', () => {
    // Definition of weighted least squares.
    const [once, twice] = [
      straightLine([...own, ...own.slice(0, 5)]),
      straightLine(own.map((each, index) => (index < 5 ? { ...each, weight: 2 } : each))),
    ];
    expect(twice?.slope).toBeCloseTo(once?.slope ?? Number.NaN, 12);
    expect(twice?.intercept).toBeCloseTo(once?.intercept ?? Number.NaN, 9);
  });

  it('has no hold where all points stand at one x', () => {
    expect(straightLine([point(0.1 + 0.2, 1), point(0.3, 2), point(0.3, 4)])).toBeNull();
    expect(straightLine([point(0, 0), point(0, 2), point(0, 1)])).toBeNull();
  });

  it('refuses what is no point', () => {
    expect(() => straightLine([point(0, 0), point(1, 1)])).toThrow(CoreError);
    const bad = [point(Number.NaN, 0), point(0, Number.POSITIVE_INFINITY), point(0, 0, 0)];
    for (const each of bad) {
      expect(() => straightLine([point(0, 0), point(1, 1), each])).toThrow(CoreError);
    }
  });

  it('any true line comes back, in any order and any weight', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1000, max: 1000 }),
        fc.integer({ min: -50, max: 50 }),
        fc.uniqueArray(fc.integer({ min: -500, max: 500 }), { minLength: 3, maxLength: 30 }),
        fc.infiniteStream(fc.integer({ min: 1, max: 60 })),
        (base, rise, places, weights) => {
          const points = places.map((x) => point(x, base + rise * x, weights.next().value));
          const line = straightLine(points);
          expect(line?.slope).toBeCloseTo(rise, 7);
          expect(line?.intercept).toBeCloseTo(base, 5);
          expect(line?.deviation).toBeCloseTo(0, 5);
        },
      ),
    );
  });
});
