import { quantile } from 'd3-array';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { choleskyOf, partingOf, sampleBand } from '#core/uncertainty/uncertainty.ts';

describe('the triangle of a covariance', () => {
  const thousandths = fc.integer({ min: -3000, max: 3000 }).map((value) => value / 1000);
  const square = fc.integer({ min: 1, max: 5 }).chain((size) =>
    fc.array(fc.array(thousandths, { minLength: size, maxLength: size }), {
      minLength: size,
      maxLength: size,
    }),
  );
  const times = (left: readonly (readonly number[])[], right: readonly (readonly number[])[]) =>
    left.map((row) =>
      right.map((other) => row.reduce((sum, value, at) => sum + value * (other[at] ?? 0), 0)),
    );

  it('times its own transpose is the covariance', () => {
    fc.assert(
      fc.property(square, (any) => {
        // A A' has no negative variance, whatever A is.
        const covariance = times(any, any);
        const triangle = choleskyOf(covariance);
        times(triangle, triangle).forEach((row, at) => {
          row.forEach((value, col) => {
            expect(Math.abs(value - (covariance[at]?.[col] as number))).toBeLessThan(1e-5);
          });
        });
        triangle.forEach((row, at) => {
          expect(row).toHaveLength(at + 1);
          expect(row[at]).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });

  it('has noughts where something is certain, and refuses what is no covariance', () => {
    // By hand: 4 = 2 x 2; the second is certain; 5 = 1 x 1 + 2 x 2.
    expect(
      choleskyOf([
        [4, 0, 2],
        [0, 0, 0],
        [2, 0, 5],
      ]),
    ).toEqual([[2], [0, 0], [1, 0, 2]]);
    expect(() =>
      choleskyOf([
        [1, 2],
        [2, 1],
      ]),
    ).toThrow(CoreError);
    expect(() => choleskyOf([[Number.NaN]])).toThrow(CoreError);
    // What is a trifle hangs on the size of the numbers: a thousandth of them is none.
    const small = [
      [1e-6, 1e-6],
      [1e-6, 0.999e-6],
    ];
    expect(() => choleskyOf(small)).toThrow(CoreError);
    // A trifle below nothing is rounding.
    expect(
      choleskyOf([
        [1, 1],
        [1, 1 - 1e-12],
      ]),
    ).toEqual([[1], [1, 0]]);
  });
});

describe('what is left of a variance once the others are known', () => {
  // By hand: 4 + d less 4 x 4/4 is d. Rounding of doubles takes 1e-16 of 4 or so.
  const leftOf = (d: number, size = 1) => {
    const whole = 4 * size;
    return choleskyOf([
      [whole, whole],
      [whole, whole + d * size],
    ])[1]?.[1];
  };

  it.each([1, 1e-6, 1e6])('counts by its share of the whole, at size %f', (size) => {
    expect((leftOf(4e-11, size) ?? 0) / Math.sqrt(4e-11 * size)).toBeCloseTo(1, 4);
    expect(leftOf(1e-12, size)).toBe(0);
    expect(leftOf(0, size)).toBe(0);
    expect(leftOf(-1e-9, size)).toBe(0);
    expect(() => leftOf(-1e-8, size)).toThrow(/^covariance is -/);
  });
});

describe('a band of trials', () => {
  it('has its ends where d3-array puts the 2.5 and 97.5 % quantiles', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1 }),
        (values) => {
          const { low, high } = sampleBand(values);
          expect(low).toBeCloseTo(quantile(values, 0.025) as number, 6);
          expect(high).toBeCloseTo(quantile(values, 0.975) as number, 6);
        },
      ),
    );
    expect(() => sampleBand([])).toThrow(CoreError);
  });
});

describe('how far two bands part', () => {
  it.each([
    [{ low: 1, high: 3 }, { low: 1, high: 3 }, 0],
    [{ low: 1, high: 3 }, { low: 0.5, high: 3 }, 0.2],
    [{ low: 0, high: 5 }, { low: 0, high: 4 }, 0.2],
    [{ low: 2, high: 2 }, { low: 2, high: 2 }, 0],
    [{ low: 2, high: 2 }, { low: 3, high: 3 }, 1],
    [{ low: 2, high: 2 }, { low: 1, high: 3 }, 0.5],
  ])('%j and %j: %f', (linear, sampled, parting) => {
    expect(partingOf(linear, sampled)).toBeCloseTo(parting, 12);
  });
});
