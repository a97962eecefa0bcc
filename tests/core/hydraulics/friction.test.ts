import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  colebrookStep,
  colebrookWhite,
  frictionFactor,
  frictionSlope,
  laminarFriction,
  laminarLimit,
  turbulentLimit,
} from '#core/hydraulics/friction.ts';
import { allowance, referenceCases } from '../referenceCases.ts';

/** One step of the solver from a guess. */
const stepped = (reynolds: number, roughness: number, guess: number) =>
  colebrookStep(reynolds, roughness, guess, { inverseRoot: 0, slope: 0 }).inverseRoot;

const off = (got: number, expected: number) => Math.abs(got / expected - 1);

/** Reynolds numbers spread evenly by their logarithm. */
const logSweep = (from: number, to: number, steps: number) =>
  Array.from({ length: steps + 1 }, (_, i) => from * (to / from) ** (i / steps));

const roughnesses = [0, 1e-6, 1e-5, 3e-5, 1e-4, 3e-4, 1e-3, 3e-3, 0.01, 0.03, 0.05];
const turbulent = logSweep(4000, 1e8, 300);

const wildReynolds = fc
  .double({ min: -3, max: 12, noNaN: true })
  .map((exponent) => Math.min(10 ** exponent, 1e12));
const anyRoughness = fc.oneof(
  fc.constant(0),
  fc.double({ min: 0, max: 0.1, noNaN: true }),
  fc.double({ min: -9, max: -1, noNaN: true }).map((exponent) => 10 ** exponent),
);

describe('Colebrook–White', () => {
  it('every friction factor of the reference file is met', () => {
    // Solved in 40 digits there; laminar and measured smooth pipe (McKeon et al. 2004) besides.
    const cases = referenceCases('friction-factor');
    expect(cases.length).toBeGreaterThan(45);
    for (const item of cases) {
      const { law, reynolds, relative_roughness } = item.inputs as Record<string, number>;
      const solve = String(law) === 'colebrook-white' ? colebrookWhite : frictionFactor;
      const expected = item.expected.friction_factor ?? Number.NaN;
      const got = solve(reynolds ?? Number.NaN, relative_roughness ?? Number.NaN);
      const message = `${item.what} at Re ${reynolds}, ${relative_roughness} (${item.source})`;
      expect(Math.abs(got - expected), message).toBeLessThanOrEqual(allowance(item, expected));
    }
  });

  it('three corners of the chart are right to fifteen figures', () => {
    // Colebrook–White by mpmath.findroot in 40 digits (reference file friction-factor).
    expect(off(colebrookWhite(4000, 0), 0.0399070140556349)).toBeLessThan(2e-14);
    expect(off(colebrookWhite(1e7, 0), 0.008102669430874914)).toBeLessThan(2e-14);
    expect(off(colebrookWhite(1e7, 0.05), 0.07155298184086678)).toBeLessThan(2e-14);
  });

  it('satisfies its own defining equation to machine precision from Re 100 to 1e12', () => {
    for (const roughness of [...roughnesses, 1e-9, 0.1]) {
      for (const reynolds of [
        ...turbulent,
        ...logSweep(100, 4000, 60),
        ...logSweep(1e8, 1e12, 60),
      ]) {
        const x = 1 / Math.sqrt(colebrookWhite(reynolds, roughness));
        const residual = x + 2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds);
        expect(Math.abs(residual) / x).toBeLessThan(2e-15);
      }
    }
  });

  it('lies within 2 % of Haaland over Re 4e3 to 1e8 and roughness to 0.05', () => {
    // Haaland, J. Fluids Eng. 105, 89 (1983): 1/sqrt f = -1.8 log10((e/3.7)^1.11 + 6.9/Re),
    // stated within 2 % of Colebrook–White.
    for (const roughness of roughnesses) {
      for (const reynolds of turbulent) {
        const haaland = (-1.8 * Math.log10((roughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;
        expect(off(colebrookWhite(reynolds, roughness), haaland)).toBeLessThan(0.02);
      }
    }
  });

  it('lies within 1.5 % of Swamee–Jain from Re 1e5', () => {
    // Swamee and Jain, J. Hydraul. Div. 102, 657 (1976): f = 0.25/log10(e/3.7 + 5.74/Re^0.9)^2,
    // stated within 1 % (from memory). The rounded 1 % is a little overrun where smooth pipe
    // runs fast, and in slow rough pipe by 3 %, so the check starts at Re 1e5.
    for (const roughness of [1e-6, 1e-5, 1e-4, 1e-3, 1e-2]) {
      for (const reynolds of logSweep(1e5, 1e8, 100)) {
        const swameeJain = 0.25 / Math.log10(roughness / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
        expect(off(colebrookWhite(reynolds, roughness), swameeJain)).toBeLessThan(0.015);
      }
    }
  });

  it('lies within 0.01 % of Serghides over the whole chart', () => {
    // Serghides, Chem. Eng. 91(5), 63 (1984): Steffensen's method on Colebrook–White, stated
    // within 0.0023 % (from memory) on a coarser grid than this one.
    for (const roughness of roughnesses) {
      for (const reynolds of turbulent) {
        const a = -2 * Math.log10(roughness / 3.7 + 12 / reynolds);
        const b = -2 * Math.log10(roughness / 3.7 + (2.51 * a) / reynolds);
        const c = -2 * Math.log10(roughness / 3.7 + (2.51 * b) / reynolds);
        const serghides = (a - (b - a) ** 2 / (c - 2 * b + a)) ** -2;
        expect(off(colebrookWhite(reynolds, roughness), serghides)).toBeLessThan(1e-4);
      }
    }
  });

  it('smooth pipe follows the Blasius law within 3 % where that holds', () => {
    // Blasius (1913): f = 0.3164 / Re^0.25, smooth pipe, Re 4e3 to 1e5.
    for (const reynolds of logSweep(4000, 1e5, 50)) {
      expect(off(colebrookWhite(reynolds, 0), 0.3164 / reynolds ** 0.25)).toBeLessThan(0.03);
    }
  });

  it('very fast flow in rough pipe forgets its Reynolds number', () => {
    // von Karman: 1/sqrt f = -2 log10(e/3.7).
    expect(off(colebrookWhite(1e12, 0.05), (2 * Math.log10(3.7 / 0.05)) ** -2)).toBeLessThan(1e-7);
  });

  it('one refining step from a guess a few per cent off is good to eight figures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4000, max: 1e8, noNaN: true }),
        anyRoughness,
        fc.double({ min: -0.03, max: 0.03, noNaN: true }),
        (reynolds, roughness, error) => {
          const exact = 1 / Math.sqrt(colebrookWhite(reynolds, roughness));
          expect(off(stepped(reynolds, roughness, exact * (1 + error)), exact)).toBeLessThan(1e-8);
          expect(off(stepped(reynolds, roughness, exact * (1 + error / 300)), exact)).toBeLessThan(
            2e-15,
          );
        },
      ),
    );
  });
});

describe('the work of a friction factor', () => {
  afterEach(() => void vi.restoreAllMocks());

  // The start takes two logarithms, each step one.
  const steps = (reynolds: number, roughness: number) => {
    const logarithm = vi.spyOn(Math, 'log').mockClear();
    colebrookWhite(reynolds, roughness);
    return logarithm.mock.calls.length - 2;
  };

  it('is one step from Re 1e7 on, so near does the series start', () => {
    // First term left out of w = B - L + L/B + L(L - 2)/2B^2: L(2 L^2 - 9 L + 6)/6B^3 (Corless et al.,
    // Adv. Comput. Math. 5, 329 (1996), from memory). Smooth pipe at Re 1e7 has B = 15.3 and L = 2.7:
    // 5e-4 of a w of 12.8, less than half of the 1e-4 after which the step is the last. Rough pipe
    // has a larger B.
    for (const roughness of roughnesses) {
      for (const reynolds of logSweep(1e7, 1e12, 50)) expect(steps(reynolds, roughness)).toBe(1);
    }
  });

  it('is never more than two steps', () => {
    for (const roughness of roughnesses) {
      for (const reynolds of logSweep(100, 1e7, 100))
        expect(steps(reynolds, roughness)).toBeLessThanOrEqual(2);
    }
  });
});

describe('the slope that comes with a step', () => {
  it('is the share of the factor for each share of the Reynolds number', () => {
    for (const roughness of roughnesses) {
      for (const reynolds of turbulent) {
        const root = { inverseRoot: 0, slope: 0 };
        const factor = colebrookWhite(reynolds, roughness);
        colebrookStep(reynolds, roughness, 1 / Math.sqrt(factor), root);
        // Calculus: frictionSlope is df/dRe of the same law.
        const expected = (frictionSlope(reynolds, roughness, factor) * reynolds) / factor;
        expect(root.slope).toBeCloseTo(expected, 12);
      }
    }
  });
});

describe('the friction factor at any Reynolds number', () => {
  it('laminar flow is 64 over Re', () => {
    // Hagen–Poiseuille; Hydraulic Institute Engineering Data Book.
    expect(laminarFriction(640)).toBe(0.1);
    expect(laminarFriction(1e5)).toBe(0.00064);
    expect(frictionFactor(100, 0.01)).toBe(0.64);
    expect(frictionFactor(2000, 0.01)).toBe(0.032);
  });

  it('changes law at Re 2000 and 4000', () => {
    // Physics of the project: 64/Re below 2000, Colebrook–White above 4000.
    expect([laminarLimit, turbulentLimit]).toEqual([2000, 4000]);
    expect(frictionFactor(4000, 0.001)).toBe(colebrookWhite(4000, 0.001));
    expect(frictionFactor(1e6, 0.001)).toBe(colebrookWhite(1e6, 0.001));
    expect(frictionFactor(3999, 0.001)).not.toBe(colebrookWhite(3999, 0.001));
  });

  it('half way through the blend it is the Hermite cubic of its two ends', () => {
    // Hermite (1878): value (p0 + p1)/2 + w (m0 - m1)/8 at the middle of a span of width w, slope
    // 3 (p1 - p0)/2w - (m0 + m1)/4. End values: 64/2000, and 40-digit Colebrook–White at Re 4000.
    const [start, end] = [0.032, 0.0399070140556349];
    const startSlope = -64 / 2000 ** 2;
    const endSlope = (colebrookWhite(4000.1, 0) - colebrookWhite(3999.9, 0)) / 0.2;
    const middle = (start + end) / 2 + (2000 * (startSlope - endSlope)) / 8;
    const slope = (3 * (end - start)) / 4000 - (startSlope + endSlope) / 4;
    expect(off(frictionFactor(3000, 0), middle)).toBeLessThan(1e-9);
    expect(off(frictionSlope(3000, 0, middle), slope)).toBeLessThan(1e-7);
  });

  it('is continuous with its slope where the laws meet', () => {
    for (const roughness of roughnesses) {
      for (const meeting of [2000, 4000]) {
        const [below, above] = [meeting * (1 - 1e-9), meeting * (1 + 1e-9)];
        const [f0, f1] = [frictionFactor(below, roughness), frictionFactor(above, roughness)];
        expect(off(f0, f1)).toBeLessThan(1e-8);
        const slopes = [frictionSlope(below, roughness, f0), frictionSlope(above, roughness, f1)];
        expect(off(slopes[0] ?? 0, slopes[1] ?? 1)).toBeLessThan(1e-6);
      }
    }
  });

  it('its slope is the limit of small differences everywhere', () => {
    fc.assert(
      fc.property(wildReynolds, anyRoughness, (reynolds, roughness) => {
        const step = reynolds * 1e-5;
        const side = (at: number) => at <= 2000 || at >= 4000;
        // A difference across a meeting point sees both laws; only the value is C1 there.
        fc.pre(side(reynolds - step) === side(reynolds + step) && reynolds + step < 1e12);
        const difference =
          (frictionFactor(reynolds + step, roughness) -
            frictionFactor(reynolds - step, roughness)) /
          (2 * step);
        const factor = frictionFactor(reynolds, roughness);
        const slope = frictionSlope(reynolds, roughness, factor);
        expect(Math.abs(slope - difference)).toBeLessThan((1e-8 * factor) / reynolds);
      }),
      { numRuns: 500 },
    );
  });

  it('rises with roughness, never falls', () => {
    fc.assert(
      fc.property(wildReynolds, anyRoughness, anyRoughness, (reynolds, a, b) => {
        const [smooth, rough] = [Math.min(a, b), Math.max(a, b)];
        expect(frictionFactor(reynolds, rough)).toBeGreaterThanOrEqual(
          frictionFactor(reynolds, smooth) * (1 - 1e-14),
        );
      }),
    );
  });

  it('turbulent friction falls as the flow quickens, and head still rises', () => {
    fc.assert(
      fc.property(wildReynolds, anyRoughness, (reynolds, roughness) => {
        fc.pre(reynolds < 9e11);
        const faster = reynolds * 1.01;
        const [f0, f1] = [frictionFactor(reynolds, roughness), frictionFactor(faster, roughness)];
        if (reynolds >= 4000) expect(f1).toBeLessThanOrEqual(f0 * (1 + 1e-14));
        expect(f1 * faster ** 2).toBeGreaterThan(f0 * reynolds ** 2);
      }),
      { numRuns: 500 },
    );
  });
});

describe('the friction factor beyond the contract', () => {
  const reynoldsRange = 'a number from 1e-100 to 1000000000000';
  const refusals: readonly (readonly [string, () => number, CoreError])[] = [
    [
      'still water in 64/Re',
      () => laminarFriction(0),
      new CoreError('Reynolds number', 0, reynoldsRange),
    ],
    ['still water', () => frictionFactor(0, 0), new CoreError('Reynolds number', 0, reynoldsRange)],
    [
      'a slope in still water',
      () => frictionSlope(0, 0, 0.02),
      new CoreError('Reynolds number', 0, reynoldsRange),
    ],
    [
      'laminar flow in Colebrook–White',
      () => colebrookWhite(99, 0),
      new CoreError('Reynolds number', 99, 'a number from 100 to 1000000000000'),
    ],
    [
      'a negative roughness',
      () => colebrookWhite(1e5, -1),
      new CoreError('relative roughness', -1, 'a number from 0 to 0.1'),
    ],
    [
      'a rubble pipe',
      () => frictionFactor(1e5, 0.11),
      new CoreError('relative roughness', 0.11, 'a number from 0 to 0.1'),
    ],
    [
      'a rubble pipe in a slope',
      () => frictionSlope(1e5, 0.11, 0.02),
      new CoreError('relative roughness', 0.11, 'a number from 0 to 0.1'),
    ],
    [
      'a slope without a factor',
      () => frictionSlope(1e5, 0, 0),
      new CoreError('friction factor', 0, 'a number from 0.001 to 1e+102'),
    ],
  ];
  for (const [what, call, error] of refusals) {
    it(`${what} is refused with its range`, () => expect(call).toThrow(error));
  }

  it('any numbers give a finite number or a CoreError', () => {
    const wild = fc.oneof(
      fc.double(),
      fc.double({ min: -0.01, max: 2 }),
      fc.double({ min: -12, max: 12, noNaN: true }).map((exponent) => 10 ** exponent),
    );
    fc.assert(
      fc.property(wild, wild, wild, (a, b, c) => {
        for (const call of [
          () => laminarFriction(a),
          () => colebrookWhite(a, b),
          () => frictionFactor(a, b),
          () => frictionSlope(a, b, c),
        ]) {
          try {
            expect(Number.isFinite(call())).toBe(true);
          } catch (error) {
            expect(error).toBeInstanceOf(CoreError);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });
});
