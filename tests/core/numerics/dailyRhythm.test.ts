import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { dailyRhythm } from '#core/numerics/dailyRhythm.ts';

const close = (got: readonly number[], want: readonly number[], within = 9) =>
  got.forEach((value, index) => {
    expect(value).toBeCloseTo(want[index] ?? Number.NaN, within);
  });

describe('the smooth part of a day', () => {
  it('of a sum of slow waves is that sum, and of a fast one nothing', () => {
    // Orthogonality of the discrete waves (definition of the Fourier series).
    const wave = (waves: number, phase: number) =>
      Array.from({ length: 48 }, (_, index) =>
        Math.sin((2 * Math.PI * waves * index) / 48 + phase),
      );
    const slow = wave(1, 0.3).map((value, index) => 4 + 2 * value - (wave(5, 1)[index] ?? 0));
    close(dailyRhythm(slow, 5), slow);
    close(
      dailyRhythm(wave(9, 0.7), 8),
      wave(9, 0.7).map(() => 0),
    );
  });

  it('keeps the mean, adds up, and smoothed twice is as smoothed once', () => {
    const day = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 24, maxLength: 24 });
    fc.assert(
      fc.property(day, day, fc.integer({ min: 0, max: 8 }), (one, other, waves) => {
        const smooth = dailyRhythm(one, waves);
        const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);
        expect(sum(smooth)).toBeCloseTo(sum(one), 6);
        close(dailyRhythm(smooth, waves), smooth, 7);
        const both = dailyRhythm(
          one.map((value, index) => value + (other[index] ?? 0)),
          waves,
        );
        close(
          both,
          smooth.map((value, index) => value + (dailyRhythm(other, waves)[index] ?? 0)),
          7,
        );
      }),
    );
  });

  it('refuses too few values, and what is no number', () => {
    expect(() => dailyRhythm([1, 2, 3], 1)).toThrow(CoreError);
    expect(() => dailyRhythm([1, 2, 3, Number.NaN], 1)).toThrow(CoreError);
    expect(() => dailyRhythm([1, 2, 3, 4], 0.5)).toThrow(CoreError);
    expect(() => dailyRhythm([1, 2, 3, 4], -1)).toThrow(CoreError);
  });
});
