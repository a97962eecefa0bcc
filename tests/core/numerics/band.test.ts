import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  bandAbout,
  estimate,
  lineThrough,
  slopesOf,
  varianceAfter,
  varianceOf,
} from '#core/numerics/band.ts';

describe('a weighted fit with beliefs', () => {
  it('is the weighted mean of belief and readings for one plain number', () => {
    // Closed form: mean = (sum y/s^2)/(1/t^2 + sum 1/s^2), variance = 1/(1/t^2 + sum 1/s^2).
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            value: fc.double({ min: -1, max: 1, noNaN: true }),
            deviation: fc.double({ min: 0.1, max: 3, noNaN: true }),
          }),
          { maxLength: 5 },
        ),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (measured, prior) => {
          const { parameters, covariance } = estimate({
            priorDeviations: [prior],
            measured,
            predict: ([a]) => measured.map(() => a as number),
          });
          const weight = 1 / prior ** 2 + measured.reduce((s, m) => s + 1 / m.deviation ** 2, 0);
          const mean = measured.reduce((s, m) => s + m.value / m.deviation ** 2, 0) / weight;
          expect(parameters[0]).toBeCloseTo(mean, 6);
          expect(covariance[0]?.[0]).toBeCloseTo(1 / weight, 6);
        },
      ),
    );
  });

  it('a promised variance is the one that the reading then leaves, when all is linear', () => {
    const slopes = [
      [1, 2, 0],
      [0, 1, -1],
      [2, 0, 1],
    ];
    const predict = (rows: number[][]) => (p: readonly number[]) =>
      rows.map((row) => row.reduce((sum, slope, at) => sum + slope * (p[at] as number), 0));
    const fitTo = (rows: number[][]) =>
      estimate({
        priorDeviations: [1, 2, 0.5],
        measured: rows.map(() => ({ value: 0.3, deviation: 0.2 })),
        predict: predict(rows),
      });
    const answer = [1, 1, 1];
    const before = fitTo(slopes.slice(0, 2)).covariance;
    const promised = varianceAfter(answer, slopes[2] as number[], 0.2, before);
    expect(promised).toBeCloseTo(varianceOf(answer, fitTo(slopes).covariance), 8);
  });

  it('slopes of smooth answers are right to eight places', () => {
    const [[slope]] = slopesOf(([x]) => [Math.sin(x as number)], [0.7]) as [[number]];
    expect(slope).toBeCloseTo(Math.cos(0.7), 8);
  });

  it('weighs a loose belief as little as it is worth', () => {
    // Closed form as above: belief 0 +- 3 and reading 1 +- 3 meet half way, with half the variance.
    const { parameters, covariance } = estimate({
      priorDeviations: [3],
      measured: [{ value: 1, deviation: 3 }],
      predict: ([a]) => [a as number],
    });
    expect(parameters[0]).toBeCloseTo(0.5, 9);
    expect(covariance[0]?.[0]).toBeCloseTo(4.5, 9);
  });

  it('finds the most likely value where the answer bends, from afar too', () => {
    // Where the slope of (p/t)^2 + ((e^p - y)/s)^2 is nothing, found here by halving.
    const likeliest = (y: number, s: number, t: number) => {
      let [low, high] = [-20, 20];
      for (let halving = 0; halving < 100; halving += 1) {
        const p = (low + high) / 2;
        if (p / t ** 2 + ((Math.exp(p) - y) * Math.exp(p)) / s ** 2 < 0) low = p;
        else high = p;
      }
      return low;
    };
    for (const [y, s, t] of [
      [20, 0.5, 2],
      [300, 3, 3],
      [0.2, 0.1, 1],
      [1.5, 1, 0.1],
      // From nothing the plain step would be a million: e to that is no number.
      [1e6, 1, 3],
    ] as const) {
      const { parameters, covariance } = estimate({
        priorDeviations: [t],
        measured: [{ value: y, deviation: s }],
        predict: ([p]) => [Math.exp(p as number)],
      });
      const p = likeliest(y, s, t);
      expect(parameters[0]).toBeCloseTo(p, 4);
      // Its variance is one over what belief and slope say together (JCGM 100:2008, to first order).
      const sure = 1 / t ** 2 + (Math.exp(p) / s) ** 2;
      expect((covariance[0]?.[0] as number) * sure).toBeCloseTo(1, 3);
    }
  });

  it('parts two parameters as the normal equations do', () => {
    // Readings of a + 2b and 3a - b, weights 1/s^2, beliefs 1/t^2; the 2 x 2 solved by Cramer.
    const rows = [
      [1, 2],
      [3, -1],
    ] as const;
    const measured = [
      { value: 0.8, deviation: 0.2 },
      { value: -0.3, deviation: 0.5 },
    ];
    const { parameters, covariance } = estimate({
      priorDeviations: [1, 0.4],
      measured,
      predict: ([a = 0, b = 0]) => rows.map(([one, other]) => one * a + other * b),
    });
    const [aa, ab, bb] = [1 + 1 / 0.04 + 9 / 0.25, 2 / 0.04 - 3 / 0.25, 6.25 + 4 / 0.04 + 1 / 0.25];
    const [ya, yb] = [0.8 / 0.04 - (3 * 0.3) / 0.25, (2 * 0.8) / 0.04 + 0.3 / 0.25];
    const whole = aa * bb - ab * ab;
    expect(parameters[0]).toBeCloseTo((ya * bb - yb * ab) / whole, 6);
    expect(parameters[1]).toBeCloseTo((yb * aa - ya * ab) / whole, 6);
    expect(covariance.flat().map((value) => value * whole)).toEqual([
      expect.closeTo(bb, 3),
      expect.closeTo(-ab, 3),
      expect.closeTo(-ab, 3),
      expect.closeTo(aa, 3),
    ]);
  });

  it('a reading takes from a variance what it shares with it', () => {
    // Conditioning of a normal law: 4 - 4^2/(4 + 1); nothing where the reading says nothing.
    expect(varianceAfter([1], [1], 1, [[4]])).toBeCloseTo(0.8, 12);
    expect(
      varianceAfter([1, 0], [0, 1], 1, [
        [4, 0],
        [0, 9],
      ]),
    ).toBe(4);
    expect(varianceAfter([1], [0], 0, [[4]])).toBe(4);
    expect(
      varianceOf(
        [1, -2],
        [
          [4, 1],
          [1, 9],
        ],
      ),
    ).toBe(4 - 4 + 36);
  });

  it('refuses a belief without room', () => {
    const certain = { priorDeviations: [0], measured: [], predict: () => [] };
    expect(() => estimate(certain)).toThrow('deviation is 0; it must be above 0.');
  });

  it('refuses a reading without error', () => {
    const exact = {
      priorDeviations: [1],
      measured: [{ value: 1, deviation: 0 }],
      predict: () => [0],
    };
    expect(() => estimate(exact)).toThrow(CoreError);
  });
});

describe('a line that never goes below nothing', () => {
  it('keeps its sense when one reading is a million million times surer than another', () => {
    const { start, slope, covariance } = lineThrough([
      { x: 1e-6, y: 100, weight: 1e-10 },
      { x: 0.01, y: 300, weight: 1e16 },
    ]);
    expect(start + slope * 1e-6).toBeCloseTo(100, 6);
    expect(start + slope * 0.01).toBeCloseTo(300, 6);
    expect(covariance.flat().every(Number.isFinite)).toBe(true);
  });

  it('is that of weighted least squares, with its covariance', () => {
    // By hand: weights 1, 2, 1 at x 0, 1, 3 and y 1, 2, 7. Sums: w 4, wx 5, wxx 11, wy 12, wxy 25.
    const points = [
      { x: 0, y: 1, weight: 1 },
      { x: 1, y: 2, weight: 2 },
      { x: 3, y: 7, weight: 1 },
    ];
    const whole = 4 * 11 - 5 * 5;
    const { start, slope, held, covariance } = lineThrough(points);
    expect(held).toBe('neither');
    expect(start).toBeCloseTo((12 * 11 - 5 * 25) / whole, 12);
    expect(slope).toBeCloseTo((4 * 25 - 5 * 12) / whole, 12);
    expect(covariance.flat()).toEqual([
      expect.closeTo(11 / whole, 12),
      expect.closeTo(-5 / whole, 12),
      expect.closeTo(-5 / whole, 12),
      expect.closeTo(4 / whole, 12),
    ]);
  });

  it('held at nothing on one side, the other is fitted alone', () => {
    const low = [
      { x: 1, y: 1, weight: 1 },
      { x: 2, y: 5, weight: 3 },
    ];
    // Through the origin: sum wxy / sum wxx.
    expect(lineThrough(low)).toMatchObject({ start: 0, slope: 31 / 13, held: 'start' });
    const falling = [
      { x: 1, y: 5, weight: 1 },
      { x: 2, y: 1, weight: 3 },
    ];
    // A level line: the weighted mean.
    expect(lineThrough(falling)).toMatchObject({ start: 2, slope: 0, held: 'slope' });
    // One that starts at nothing by itself has not been held there.
    const plain = [1, 2].map((x) => ({ x, y: 3 * x, weight: 1 }));
    expect(lineThrough(plain)).toMatchObject({ start: 0, slope: 3, held: 'neither' });
    const level = low.map((point) => ({ ...point, y: 2 }));
    expect(lineThrough(level)).toMatchObject({ start: 2, slope: 0, held: 'neither' });
  });

  it('refuses points that all stand at one place', () => {
    const same = { x: 1, y: 2, weight: 1 };
    expect(() => lineThrough([same, same])).toThrow(CoreError);
  });
});

describe('a band', () => {
  it('is the plain 1.96 deviations when they are small', () => {
    // 95 % of a normal law lies within 1.96 deviations: standard tables.
    const { low, high } = bandAbout(1000, 1);
    expect(low).toBeCloseTo(1000 - 1.96, 2);
    expect(high).toBeCloseTo(1000 + 1.96, 2);
  });

  it('is as many times wider as narrower, and no more than ten', () => {
    // A normal law of the logarithm; the cut at ten is common practice, no source.
    const { low, high } = bandAbout(100, 50 ** 2);
    expect(high / 100).toBeCloseTo(Math.exp(1.96 * 0.5), 9);
    expect(100 / low).toBeCloseTo(high / 100, 9);
    const widest = bandAbout(100, 1e9);
    expect(widest.low).toBeCloseTo(10, 9);
    expect(widest.high).toBeCloseTo(1000, 9);
    expect(bandAbout(0, 4)).toEqual({ low: 0, high: 0 });
    expect(bandAbout(0, 0)).toEqual({ low: 0, high: 0 });
  });

  it.each([
    [-1, 1],
    [1, -1],
    [Number.NaN, 1],
    [1, Number.NaN],
    [1, Number.POSITIVE_INFINITY],
    [Number.POSITIVE_INFINITY, 1],
  ])('refuses an answer of %d with a variance of %d', (value, variance) => {
    expect(() => bandAbout(value, variance)).toThrow(CoreError);
  });

  it('holds its answer, never falls below nothing and never runs away', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 1e9, noNaN: true }),
        (value, variance) => {
          const { low, high } = bandAbout(value, variance);
          expect(low >= 0 && low <= value && high >= value && high <= 10 * value * 1.001).toBe(
            true,
          );
        },
      ),
    );
  });
});
