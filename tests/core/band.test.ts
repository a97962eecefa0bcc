import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bandAbout,
  estimate,
  lineThrough,
  slopesOf,
  varianceAfter,
  varianceOf,
} from '#core/band.ts';
import { CoreError } from '#core/errors.ts';

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
