import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/errors.ts';
import { fitPower, typicalFixedShare } from '#core/fitPower.ts';

const watts = (fixed: number, cube: number) => (ratio: number) => ({
  id: String(ratio),
  ratio,
  power: fixed + cube * ratio ** 3,
});

describe('fixed draw and cube law from watts', () => {
  it('gives back the law that the readings follow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 200, noNaN: true }),
        fc.double({ min: 100, max: 3000, noNaN: true }),
        fc.uniqueArray(fc.constantFrom(0.3, 0.45, 0.6, 0.8, 1), { minLength: 2, maxLength: 5 }),
        (fixed, cube, ratios) => {
          const fit = fitPower(ratios.map(watts(fixed, cube)));
          expect(fit.fixed).toBeCloseTo(fixed, 6);
          expect(fit.cube).toBeCloseTo(cube, 6);
          for (const { residual } of fit.residuals) expect(residual).toBeCloseTo(0, 6);
        },
      ),
    );
  });

  it('never lets the fixed draw go below nothing, and says so', () => {
    const fit = fitPower([
      { id: 'a', ratio: 0.5, power: 50 },
      { id: 'b', ratio: 1, power: 1000 },
    ]);
    expect(fit.fixed).toBe(0);
    expect(fit.assumptions).toEqual([{ kind: 'fixedDrawNotNegative' }]);
  });

  it('never lets power fall with speed, and names the pair that says it does', () => {
    const fit = fitPower([
      { id: 'fast', ratio: 1, power: 500 },
      { id: 'slow', ratio: 0.5, power: 700 },
    ]);
    expect(fit.cube).toBe(0);
    expect(fit.contradictions).toEqual([
      { kind: 'powerFallsWithSpeed', slowerId: 'slow', fasterId: 'fast' },
    ]);
  });

  it('one speed takes the typical share, with a wide band away from it and a tight one on it', () => {
    const fit = fitPower([{ id: 'a', ratio: 1, power: 1500 }], { share: 0.02 });
    expect(fit.fixed / fit.cube).toBeCloseTo(typicalFixedShare, 12);
    expect(fit.powerAt(1)).toBeCloseTo(1500, 9);
    const spread = (ratio: number) => fit.bandAt(ratio).high / fit.bandAt(ratio).low;
    expect(spread(1)).toBeLessThan(1.06);
    expect(spread(0.3)).toBeGreaterThan(2);
    expect(fit.assumptions[0]?.kind).toBe('fixedShareTypical');
    expect(fit.narrowing.ratio).toBeCloseTo(0.3, 12);
  });

  it('the same speed read twice counts as one speed, and better', () => {
    const once = fitPower([{ id: 'a', ratio: 1, power: 1000 }]);
    const twice = fitPower([
      { id: 'a', ratio: 1, power: 1010 },
      { id: 'b', ratio: 1, power: 990 },
    ]);
    expect(twice.powerAt(1)).toBeCloseTo(1000, 9);
    expect(twice.bandAt(1).high).toBeLessThan(once.bandAt(1).high);
  });

  it('needs a reading, and a power above nothing', () => {
    expect(() => fitPower([])).toThrow('readings is empty; it must be at least one reading.');
    expect(() => fitPower([{ id: 'a', ratio: 1, power: 0 }])).toThrow(CoreError);
  });

  it('wild readings never give a number that is none', () => {
    const reading = fc.record({
      id: fc.string(),
      ratio: fc.double({ min: 0.01, max: 2, noNaN: true }),
      power: fc.double({ min: 0.001, max: 1e6, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 6 }), (readings) => {
        const fit = fitPower(readings);
        const { low, high } = fit.bandAt(0.4);
        const numbers = [fit.fixed, fit.cube, low, high, fit.narrowing.widthAfter];
        expect(numbers.every((value) => Number.isFinite(value) && value >= 0)).toBe(true);
      }),
    );
  });
});
