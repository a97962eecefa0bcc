import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitPower,
  fixedShareSpread,
  type PowerFitOptions,
  type PowerReading,
  powerContradictions,
  typicalFixedShare,
} from '#core/fit/fitPower.ts';
import { bandAbout } from '#core/numerics/band.ts';

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
    expect(fit.assumptions).toEqual([{ kind: 'powerNotFalling' }]);
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

  it('one speed has the band that its share and its watts make, at every speed', () => {
    // Calculus: P(x) = P (s + x^3)/(s + r^3), so d ln P / d ln s = s/(s + x^3) - s/(s + r^3); the
    // watts of n readings add share/2 over root n (JCGM 100:2008).
    const [s, spread, share, r] = [typicalFixedShare, fixedShareSpread, 0.04, 0.8] as const;
    const readings = [
      { id: 'a', ratio: r, power: 800 },
      { id: 'b', ratio: r, power: 820 },
    ];
    const fit = fitPower(readings, { share });
    for (const x of [0.2, 0.4, 0.8, 1.1]) {
      const power = (810 * (s + x ** 3)) / (s + r ** 3);
      expect(fit.powerAt(x) / power).toBeCloseTo(1, 12);
      const relative = Math.hypot(
        spread * (s / (s + x ** 3) - s / (s + r ** 3)),
        share / 2 / Math.SQRT2,
      );
      const [got, expected] = [fit.bandAt(x), bandAbout(power, (relative * power) ** 2)];
      expect(got.low / expected.low).toBeCloseTo(1, 9);
      expect(got.high / expected.high).toBeCloseTo(1, 9);
    }
    expect(fit.assumptions).toEqual([
      { kind: 'fixedShareTypical', share: s, ...bandAbout(s, (s * spread) ** 2) },
    ]);
  });

  it('several speeds have the band of weighted least squares', () => {
    // Normal equations of P = a + b r^3, weights (2/(share P))^2 (JCGM 100:2008), two readings: the
    // line goes through both, and its variance is that of a mix of the two.
    const [slow, fast] = [watts(50, 1200)(0.5), watts(50, 1200)(1)];
    const fit = fitPower([slow, fast], { share: 0.02 });
    const part = (0.8 ** 3 - 0.5 ** 3) / (1 - 0.5 ** 3);
    const deviation = Math.hypot((1 - part) * 0.01 * slow.power, part * 0.01 * fast.power);
    const [got, expected] = [fit.bandAt(0.8), bandAbout(50 + 1200 * 0.8 ** 3, deviation ** 2)];
    expect(got.low / expected.low).toBeCloseTo(1, 9);
    expect(got.high / expected.high).toBeCloseTo(1, 9);
    expect(fit.assumptions).toEqual([]);
    expect(fit.contradictions).toEqual([]);
  });

  it('tells each reading beside its fit', () => {
    const fit = fitPower([
      { id: 'a', ratio: 1, power: 1010 },
      { id: 'b', ratio: 1, power: 990 },
    ]);
    expect(fit.residuals).toEqual([
      {
        id: 'a',
        ratio: 1,
        measured: 1010,
        predicted: expect.closeTo(1000, 9),
        residual: expect.closeTo(10, 9),
      },
      {
        id: 'b',
        ratio: 1,
        measured: 990,
        predicted: expect.closeTo(1000, 9),
        residual: expect.closeTo(-10, 9),
      },
    ]);
  });

  it('the reading that would narrow most is looked for over the speeds asked, and those read', () => {
    const one = [{ id: 'a', ratio: 1, power: 1500 }];
    const narrowest = (options: PowerFitOptions) => fitPower(one, options).narrowing;
    expect(narrowest({ leastRatio: 0.5 }).ratio).toBeCloseTo(0.5, 12);
    const { widthBefore, widthAfter } = narrowest({});
    expect(widthAfter).toBeLessThan(0.5 * widthBefore);
    const slow = fitPower([{ id: 'a', ratio: 0.2, power: 90 }]).narrowing;
    expect(slow.ratio).toBeCloseTo(1, 12);
    expect(
      fitPower([{ id: 'a', ratio: 0.2, power: 90 }], { greatestRatio: 1.2 }).narrowing.ratio,
    ).toBeCloseTo(1.2, 12);
    expect(() => narrowest({ leastRatio: 0 })).toThrow('leastRatio is 0');
    expect(() => narrowest({ greatestRatio: 0.2 })).toThrow('greatestRatio is 0.2');
    expect(() => narrowest({ share: 0 })).toThrow('share is 0');
  });

  it('a second reading at the one speed asked halves its variance', () => {
    // A band of exp(+-share) about its power before, of exp(+-share/sqrt 2) after (JCGM 100:2008); the
    // share is 95 %, so 1.96/2 of it is what a band of 1.96 deviations shows.
    const share = 0.05;
    const one = fitPower([{ id: 'a', ratio: 1, power: 900 }], { share, leastRatio: 1 });
    const width = (relative: number) => 2 * Math.sinh((1.96 / 2) * relative);
    expect(one.narrowing.widthBefore).toBeCloseTo(width(share), 12);
    expect(one.narrowing.widthAfter).toBeCloseTo(width(share / Math.SQRT2), 12);
  });

  it('speeds nearer than the readings are sure contradict nothing', () => {
    const pair = (ratio: number) => [
      { id: 'slow', ratio: 0.8, power: 700 },
      { id: 'fast', ratio: 0.8 * ratio, power: 690 },
    ];
    expect(powerContradictions(pair(1.02), 0.03)).toEqual([]);
    expect(powerContradictions(pair(1.04), 0.03)).toHaveLength(1);
    const level = pair(1.04).map((one) => ({ ...one, power: 700 }));
    expect(powerContradictions(level, 0.03)).toEqual([]);
    expect(powerContradictions([pair(1.04)[0] as PowerReading], 0.03)).toEqual([]);
    // Of three that fall, each beside the next faster one, in whatever order they were read.
    const falling = [
      { id: 'fast', ratio: 1, power: 400 },
      { id: 'middle', ratio: 0.7, power: 600 },
      { id: 'slow', ratio: 0.5, power: 700 },
    ];
    const pairs = powerContradictions(falling, 0.03);
    expect(pairs.map(({ slowerId, fasterId }) => [slowerId, fasterId])).toEqual([
      ['slow', 'middle'],
      ['middle', 'fast'],
    ]);
    expect(() => powerContradictions([], -1)).toThrow('share is -1');
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
    expect(() => fitPower([{ id: 'a', ratio: 1, power: 0 }])).toThrow('power is 0');
    for (const ratio of [0.009, 2.1]) {
      expect(() => fitPower([{ id: 'a', ratio, power: 9 }])).toThrow(`ratio is ${ratio}`);
    }
    expect(() => fitPower([{ id: 'a', ratio: 1, power: 9 }]).powerAt(-1)).toThrow('ratio is -1');
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
