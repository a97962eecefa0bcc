import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  craneMultipliers,
  type EndKind,
  endCoefficients,
  type FittingKind,
  fittingK,
  fullyTurbulentFriction,
  minorLoss,
  suddenContraction,
  suddenEnlargement,
} from '#core/hydraulics/fittings.ts';
import { colebrookWhite } from '#core/hydraulics/friction.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { allowance, type ReferenceCase, referenceCases } from '../referenceCases.ts';

const foot = 0.3048; // NIST SP 811, B.8, exact.
const cases = referenceCases('minor-losses');

function expectCase(item: ReferenceCase, got: number, slack = 0): void {
  const expected = Object.values(item.expected)[0] ?? Number.NaN;
  expect(
    Math.abs(got - expected),
    `${item.what} ${JSON.stringify(item.inputs)}`,
  ).toBeLessThanOrEqual(allowance(item, expected) + slack);
}

describe('fully turbulent friction', () => {
  const ofSize = cases.filter((item) => 'friction_factor_turbulent' in item.expected);

  it('the formula values of the reference file are met', () => {
    const exact = ofSize.filter((item) => item.what.startsWith('f_T from'));
    expect(exact).toHaveLength(3);
    for (const item of exact) {
      expectCase(item, fullyTurbulentFriction(item.inputs.inside_diameter_m as number));
    }
  });

  it("Crane's printed table agrees to its last figure, the older one to two units of it", () => {
    // Crane TP-410 page A-26 (scan) and the 2009 edition (as tabulated in fluids 1.0.22).
    const printed = ofSize.filter((item) => 'edition' in item.inputs);
    expect(printed).toHaveLength(10);
    for (const item of printed) {
      const bore = pipeSize(`sch40-${item.inputs.nominal_in}`).bore;
      expectCase(
        item,
        fullyTurbulentFriction(bore),
        item.inputs.edition === 'older' ? 0.001 : 0.0005,
      );
    }
  });

  it('is Colebrook–White in commercial steel at endless speed', () => {
    // Colebrook (1939) with the roughness of commercial steel, 0.0018 in (Moody 1944: 0.00015 ft).
    for (const bore of [0.02, 0.05, 0.15]) {
      const steel = colebrookWhite(1e12, (0.0018 * 0.0254) / bore);
      expect(Math.abs(fullyTurbulentFriction(bore) / steel - 1)).toBeLessThan(1e-6);
    }
  });

  it('falls as pipe gets wider', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.005, max: 1.9, noNaN: true }), (bore) => {
        expect(fullyTurbulentFriction(bore * 1.01)).toBeLessThan(fullyTurbulentFriction(bore));
      }),
    );
  });
});

describe('coefficients of fittings', () => {
  const named: Record<string, FittingKind> = {
    'standard 90 deg elbow': 'elbow90',
    'standard 45 deg elbow': 'elbow45',
    'standard tee, flow through run': 'teeRun',
    'standard tee, flow through branch': 'teeBranch',
    'close return bend': 'returnBend',
    '90 deg bend r/D = 1.5': 'elbow90Long',
    '90 deg bend r/D = 3': 'bend90Wide',
    'gate valve, full bore': 'gateValve',
    'ball valve, full bore': 'ballValve',
    'globe valve': 'globeValve',
    'angle valve': 'angleValve',
    'swing check valve, clearway': 'swingCheckValveClearway',
    'swing check valve, conventional': 'swingCheckValve',
    'butterfly valve 2-8 in': 'butterflyValve',
  };

  it('every multiplier of the reference file is met', () => {
    const fittings = cases.filter((item) => 'friction_factor_turbulent' in item.inputs);
    expect(fittings.map((item) => item.what).sort()).toEqual(Object.keys(named).sort());
    for (const item of fittings) {
      const kind = named[item.what] as FittingKind;
      expectCase(item, craneMultipliers[kind] * (item.inputs.friction_factor_turbulent as number));
    }
  });

  it("the multipliers are Crane's", () => {
    // Crane TP-410 pages. Elbows, street elbows, tees and return bend from memory;
    // three-way plug valve 30 and 90 as in fluids, fittings.K_plug_valve_Crane, styles 1 and 2.
    expect(craneMultipliers).toEqual({
      elbow90: 30,
      elbow90Long: 14,
      bend90Wide: 12,
      elbow45: 16,
      streetElbow90: 50,
      streetElbow45: 26,
      returnBend: 50,
      teeRun: 20,
      teeBranch: 60,
      gateValve: 8,
      ballValve: 3,
      butterflyValve: 45,
      globeValve: 340,
      angleValve: 150,
      swingCheckValve: 100,
      swingCheckValveClearway: 50,
      threeWayValveStraight: 30,
      threeWayValveBranch: 90,
    });
  });

  it('K is the multiplier times the friction factor of the size', () => {
    // K of a 2 in standard elbow is 0.57 in the handbook's examples: 30 x 0.019.
    expect(fittingK('elbow90', 0.0525018)).toBeCloseTo(30 * 0.018990696177265357, 12);
    for (const kind of Object.keys(craneMultipliers) as FittingKind[]) {
      const ratio = fittingK(kind, 0.0779272) / fullyTurbulentFriction(0.0779272);
      expect(ratio, kind).toBeCloseTo(craneMultipliers[kind], 10);
    }
  });

  it('pipe ends have the same coefficient at every size', () => {
    const ends: Record<string, EndKind> = {
      'square-edged inlet': 'squareInlet',
      'bell-mouth inlet': 'bellMouthInlet',
      'inward projecting pipe, TP-410': 'projectingInlet',
      'exit into a pool': 'exit',
    };
    const found = cases.filter((item) => item.what in ends);
    expect(found).toHaveLength(4);
    for (const item of found) {
      const kind = ends[item.what] as EndKind;
      expectCase(item, endCoefficients[kind]);
      expect(fittingK(kind, 0.02)).toBe(fittingK(kind, 0.15));
      expect(fittingK(kind, 0.02)).toBe(endCoefficients[kind]);
    }
    // Hydraulic Institute Engineering Data Book and Crane TP-410, to the printed digits.
    expect(endCoefficients).toEqual({
      squareInlet: 0.5,
      // Crane TP-410: 0.04 for a radius of 0.15 bores or more (from memory).
      roundedInlet: 0.04,
      bellMouthInlet: 0.05,
      projectingInlet: 0.78,
      exit: 1,
    });
  });
});

describe('sudden changes of bore', () => {
  it('every change of the reference file is met', () => {
    const changes = cases.filter((item) => 'diameter_1_m' in item.inputs);
    expect(changes).toHaveLength(4);
    for (const item of changes) {
      const { diameter_1_m, diameter_2_m } = item.inputs as {
        diameter_1_m: number;
        diameter_2_m: number;
      };
      const change = diameter_1_m < diameter_2_m ? suddenEnlargement : suddenContraction;
      expectCase(item, change(diameter_1_m, diameter_2_m));
    }
  });

  it('no change costs nothing; the whole way costs an exit or a square inlet', () => {
    // Borda–Carnot tends to 1, the contraction to the 0.5 of a square-edged inlet (Crane TP-410).
    expect(suddenEnlargement(0.05, 0.05)).toBe(0);
    expect(suddenContraction(0.05, 0.05)).toBe(0);
    expect(suddenEnlargement(0.005, 2)).toBeCloseTo(1, 4);
    expect(suddenContraction(2, 0.005)).toBeCloseTo(0.5, 4);
  });

  it('a larger step costs more', () => {
    const bores = fc.double({ min: 0.01, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(bores, fc.double({ min: 1.001, max: 3, noNaN: true }), (bore, step) => {
        expect(suddenEnlargement(bore, bore * step * 1.01)).toBeGreaterThan(
          suddenEnlargement(bore, bore * step),
        );
        expect(suddenContraction(bore * step * 1.01, bore)).toBeGreaterThan(
          suddenContraction(bore * step, bore),
        );
      }),
    );
  });

  it('enlargement is the momentum balance worked out by hand', () => {
    // Borda–Carnot: head lost = (V1 - V2)^2 / 2g.
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.1, noNaN: true }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        (bore, step) => {
          const [v1, v2] = [2, 2 / step ** 2];
          const head = (v1 - v2) ** 2 / (2 * 9.80665);
          expect(minorLoss(suddenEnlargement(bore, bore * step), v1)).toBeCloseTo(head, 12);
        },
      ),
    );
  });
});

describe('head from a coefficient', () => {
  it('the heads of the reference file are met', () => {
    const heads = cases.filter((item) => 'velocity_ft_s' in item.inputs);
    expect(heads).toHaveLength(3);
    for (const item of heads) {
      const { k, velocity_ft_s } = item.inputs as { k: number; velocity_ft_s: number };
      expectCase(item, minorLoss(k, velocity_ft_s * foot) / foot);
    }
  });

  it('one velocity head at 1 m/s is 51 mm', () => {
    // 1/(2 x 9.80665), standard gravity (NIST SP 811).
    expect(minorLoss(1, 1)).toBeCloseTo(0.050985810648896, 14);
    expect(minorLoss(0, 3)).toBe(0);
    expect(minorLoss(3, 0)).toBe(0);
  });

  it('coefficients in a row add up', () => {
    // Hydraulic Institute data tool, worked example: 0.31 + 0.31 + 2 + 0.17 + 1 = 3.79.
    const row = [0.31, 0.31, 2, 0.17, 1];
    const head = row.reduce((sum, k) => sum + minorLoss(k, 2.5), 0);
    expect(head).toBeCloseTo(minorLoss(3.79, 2.5), 12);
  });
});

describe('fittings beyond the contract', () => {
  const boreRange = 'a number from 0.005 to 2 m';
  const refusals: readonly (readonly [string, () => number, CoreError])[] = [
    ['a needle bore', () => fullyTurbulentFriction(0.004), new CoreError('bore', 0.004, boreRange)],
    ['a tunnel', () => fittingK('exit', 2.1), new CoreError('bore', 2.1, boreRange)],
    [
      'an enlargement from a needle',
      () => suddenEnlargement(0.004, 1),
      new CoreError('first bore', 0.004, boreRange),
    ],
    [
      'a contraction from a tunnel',
      () => suddenContraction(2.1, 1),
      new CoreError('first bore', 2.1, boreRange),
    ],
    [
      'an enlargement that narrows',
      () => suddenEnlargement(0.05, 0.04),
      new CoreError('second bore', 0.04, 'a number from 0.05 to 2 m'),
    ],
    [
      'a contraction that widens',
      () => suddenContraction(0.04, 0.05),
      new CoreError('second bore', 0.05, 'a number from 0.005 to 0.04 m'),
    ],
    [
      'a negative coefficient',
      () => minorLoss(-1, 1),
      new CoreError('loss coefficient', -1, 'a number from 0 to 1000000000'),
    ],
    [
      'a backward velocity',
      () => minorLoss(1, -1),
      new CoreError('velocity', -1, 'a number from 0 to 1000000 m/s'),
    ],
  ];
  for (const [what, call, error] of refusals) {
    it(`${what} is refused with its range`, () => expect(call).toThrow(error));
  }

  it('an unknown kind is refused by name, also one every object has', () => {
    for (const kind of ['trombone', 'toString', '__proto__']) {
      expect(() => fittingK(kind as FittingKind, 0.05)).toThrow(
        new CoreError('fitting kind', kind, 'a kind in craneMultipliers or endCoefficients'),
      );
    }
  });

  it('any numbers give a finite number or a CoreError', () => {
    const wild = fc.oneof(fc.double(), fc.double({ min: -0.1, max: 3 }));
    fc.assert(
      fc.property(wild, wild, (a, b) => {
        for (const call of [
          () => fullyTurbulentFriction(a),
          () => fittingK('elbow90', a),
          () => suddenEnlargement(a, b),
          () => suddenContraction(a, b),
          () => minorLoss(a, b),
        ]) {
          try {
            expect(Number.isFinite(call())).toBe(true);
          } catch (error) {
            expect(error).toBeInstanceOf(CoreError);
          }
        }
      }),
    );
  });
});
