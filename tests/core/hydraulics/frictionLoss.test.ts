import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { darcyWeisbach, smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { hazenWilliams } from '#core/hydraulics/hazenWilliams.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { allowance, referenceCases } from '../referenceCases.ts';

// NIST SP 811, B.8, exact.
const gallonPerMinute = 0.003785411784 / 60;

const off = (got: number, expected: number) => Math.abs(got / expected - 1);

describe('Darcy–Weisbach', () => {
  it('every head loss of the reference file is met', () => {
    const cases = referenceCases('pipe-friction-loss').filter(
      (item) => item.what === 'Darcy-Weisbach',
    );
    expect(cases.length).toBeGreaterThan(10);
    for (const item of cases) {
      const input = item.inputs as Record<string, number>;
      const got = darcyWeisbach({
        flow: (input.flow_gpm ?? 0) * gallonPerMinute + (input.flow_m3_h ?? 0) / 3600,
        bore: input.inside_diameter_m ?? 0,
        length: 100,
        roughness: input.roughness_m ?? 0,
        kinematicViscosity: input.kinematic_viscosity_m2_s ?? 0,
      });
      const expected = item.expected.head_loss_per_100 ?? Number.NaN;
      expect(Math.abs(got - expected), JSON.stringify(input)).toBeLessThanOrEqual(
        allowance(item, expected),
      );
    }
  });

  const run = {
    flow: 0.004,
    bore: pipeSize('sch40-2').bore,
    length: 30,
    roughness: smoothPlasticRoughness,
    kinematicViscosity: 1e-6,
  };

  it('laminar flow is Hagen–Poiseuille', () => {
    // Poiseuille (1846): h = 128 nu L Q / (pi g D^4).
    const slow = { ...run, flow: 5e-5, bore: 0.05 };
    const head = (128 * 1e-6 * 30 * 5e-5) / (Math.PI * 9.80665 * 0.05 ** 4);
    expect(off(darcyWeisbach(slow), head)).toBeLessThan(1e-14);
  });

  it('head is continuous where laminar flow ends', () => {
    const at2000 = (2000 * Math.PI * run.bore * 1e-6) / 4;
    const [below, above] = [at2000 * (1 - 1e-9), at2000 * (1 + 1e-9)];
    expect(
      off(darcyWeisbach({ ...run, flow: below }), darcyWeisbach({ ...run, flow: above })),
    ).toBeLessThan(1e-8);
  });

  it('no flow, or no length, loses nothing, and twice the length loses twice', () => {
    expect(darcyWeisbach({ ...run, flow: 0 })).toBe(0);
    expect(darcyWeisbach({ ...run, length: 0 })).toBe(0);
    expect(darcyWeisbach({ ...run, length: 60 })).toBeCloseTo(2 * darcyWeisbach(run), 12);
  });

  it('the least flow a computer can hold still gives a number', () => {
    expect(darcyWeisbach({ ...run, flow: Number.MIN_VALUE })).toBeGreaterThanOrEqual(0);
    expect(darcyWeisbach({ ...run, flow: Number.MIN_VALUE })).toBeLessThan(1e-300);
  });

  it('loss in smooth pipe rises about as flow to the 1.8', () => {
    // Blasius (1913): f as Re^-0.25, so head as Q^1.75 in smooth pipe, towards 2 as Re grows.
    const power = Math.log2(darcyWeisbach({ ...run, flow: 0.008 }) / darcyWeisbach(run));
    expect(power).toBeGreaterThan(1.75);
    expect(power).toBeLessThan(1.9);
  });

  it('smooth plastic pipe is 1.5 micrometres rough', () => {
    // Moody (1944), drawn tubing: 0.000005 ft.
    expect(off(smoothPlasticRoughness, 0.000005 * 0.3048)).toBeLessThan(0.02);
    expect(smoothPlasticRoughness).toBe(1.5e-6);
  });

  it('warmer water runs easier', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-5, max: 0.02, noNaN: true }),
        fc.double({ min: 6e-7, max: 1.8e-6, noNaN: true }),
        (flow, kinematicViscosity) => {
          const turbulentStart = 4000 * 1.02 * (Math.PI / 4) * run.bore * kinematicViscosity;
          fc.pre(flow > turbulentStart);
          const cold = darcyWeisbach({
            ...run,
            flow,
            kinematicViscosity: 1.01 * kinematicViscosity,
          });
          expect(cold).toBeGreaterThan(darcyWeisbach({ ...run, flow, kinematicViscosity }));
        },
      ),
    );
  });
});

describe('Hazen–Williams', () => {
  const forms = { rational: 'rational', '0.2083': 'gpm', '10.67': 'si', any: 'rational' } as const;

  it('every case of the reference file is met in the form it names', () => {
    // Includes the printed table of 77 Ill. Adm. Code 906 App. A, Schedule 40 plastic, C = 150.
    const cases = referenceCases('pipe-friction-loss').filter((item) => 'form' in item.inputs);
    expect(cases.length).toBeGreaterThan(30);
    for (const item of cases) {
      const input = item.inputs as Record<string, number>;
      const got = hazenWilliams(
        {
          flow: (input.flow_gpm ?? 0) * gallonPerMinute,
          bore:
            input.inside_diameter_m ?? pipeSize(`sch${input.schedule}-${input.nominal_in}`).bore,
          length: 100,
          c: input.hazen_williams_c ?? 0,
        },
        forms[String(input.form) as keyof typeof forms],
      );
      const expected = item.expected.head_loss_per_100 ?? Number.NaN;
      expect(Math.abs(got - expected), JSON.stringify(input)).toBeLessThanOrEqual(
        allowance(item, expected),
      );
    }
  });

  const run = { flow: 0.003785411784, bore: 0.0525018, length: 100, c: 150 };

  it('is the SI form unless another is asked for', () => {
    // Reference file pipe-friction-loss, 60 gpm in 2 in Schedule 40.
    expect(hazenWilliams(run)).toBe(hazenWilliams(run, 'si'));
    expect(off(hazenWilliams(run, 'si'), 5.571505109839111)).toBeLessThan(1e-12);
    expect(off(hazenWilliams(run, 'gpm'), 5.641768801106001)).toBeLessThan(1e-12);
    expect(off(hazenWilliams(run, 'rational'), 5.579720238635829)).toBeLessThan(1e-12);
  });

  it('the three forms stay within 2.5 % of one another in pool pipe', () => {
    // Reference file: "the three forms differ by up to 2 %".
    fc.assert(
      fc.property(
        fc.double({ min: 2e-4, max: 0.02, noNaN: true }),
        fc.double({ min: 0.02, max: 0.16, noNaN: true }),
        (flow, bore) => {
          const rational = hazenWilliams({ ...run, flow, bore }, 'rational');
          expect(off(hazenWilliams({ ...run, flow, bore }, 'si'), rational)).toBeLessThan(0.025);
          expect(off(hazenWilliams({ ...run, flow, bore }, 'gpm'), rational)).toBeLessThan(0.025);
        },
      ),
    );
  });

  it('meets Darcy–Weisbach within 2 % near 6 ft/s in 2 in pipe but is 12 % low at 10 gpm', () => {
    // Reference README: Hazen–Williams C = 150 against Darcy at 20 degC, smooth.
    const darcy = (flow: number) =>
      darcyWeisbach({ ...run, flow, roughness: 1.5e-6, kinematicViscosity: 1.0033667563000113e-6 });
    const fast = 62.75 * gallonPerMinute;
    expect(off(hazenWilliams({ ...run, flow: fast }), darcy(fast))).toBeLessThan(0.02);
    const slow = 10 * gallonPerMinute;
    expect(hazenWilliams({ ...run, flow: slow }) / darcy(slow)).toBeCloseTo(0.88, 1);
  });

  it('no flow loses nothing in any form, and length counts in proportion', () => {
    for (const form of ['si', 'rational', 'gpm'] as const) {
      expect(hazenWilliams({ ...run, flow: 0 }, form)).toBe(0);
      expect(hazenWilliams({ ...run, length: 0 }, form)).toBe(0);
      expect(
        off(hazenWilliams({ ...run, length: 50 }, form) * 2, hazenWilliams(run, form)),
      ).toBeLessThan(1e-14);
    }
  });

  it('twice the coefficient means 2^1.852 times less loss', () => {
    // Williams and Hazen (1905): h as C^-1.852 (1/0.54 in the rational form).
    const half = { ...run, c: 75 };
    expect(hazenWilliams(half) / hazenWilliams(run)).toBeCloseTo(2 ** 1.852, 10);
    expect(hazenWilliams(half, 'gpm') / hazenWilliams(run, 'gpm')).toBeCloseTo(2 ** 1.852, 10);
    expect(hazenWilliams(half, 'rational') / hazenWilliams(run, 'rational')).toBeCloseTo(
      2 ** (1 / 0.54),
      10,
    );
  });
});

describe('friction losses beyond the contract', () => {
  const darcy = {
    flow: 0.004,
    bore: 0.05,
    length: 30,
    roughness: 1.5e-6,
    kinematicViscosity: 1e-6,
  };
  const hazen = { flow: 0.004, bore: 0.05, length: 30, c: 150 };
  const refusals: readonly (readonly [string, () => number, CoreError])[] = [
    [
      'a negative length',
      () => darcyWeisbach({ ...darcy, length: -1 }),
      new CoreError('length', -1, 'a number from 0 to 1000000000 m'),
    ],
    [
      'a negative wall',
      () => darcyWeisbach({ ...darcy, roughness: -1 }),
      new CoreError('roughness', -1, 'a number from 0 to 0.005 m'),
    ],
    [
      'a negative wall in slow flow',
      () => darcyWeisbach({ ...darcy, flow: 1e-6, roughness: -1 }),
      new CoreError('roughness', -1, 'a number from 0 to 0.005 m'),
    ],
    [
      'a wall rougher than a tenth of the bore, even in slow flow',
      () => darcyWeisbach({ ...darcy, flow: 1e-6, roughness: 0.006 }),
      new CoreError('roughness', 0.006, 'a number from 0 to 0.005 m'),
    ],
    [
      'a backward flow',
      () => darcyWeisbach({ ...darcy, flow: -1 }),
      new CoreError('flow', -1, 'a number from 0 to 1000000 m3/s'),
    ],
    [
      'a backward flow in Hazen–Williams',
      () => hazenWilliams({ ...hazen, flow: -1 }),
      new CoreError('flow', -1, 'a number from 0 to 1000000 m3/s'),
    ],
    [
      'a needle bore in Hazen–Williams',
      () => hazenWilliams({ ...hazen, bore: 0 }),
      new CoreError('bore', 0, 'a number from 0.0001 to 10 m'),
    ],
    [
      'a negative length in Hazen–Williams',
      () => hazenWilliams({ ...hazen, length: -1 }),
      new CoreError('length', -1, 'a number from 0 to 1000000000 m'),
    ],
    [
      'an impossible coefficient',
      () => hazenWilliams({ ...hazen, c: 9 }),
      new CoreError('Hazen–Williams coefficient', 9, 'a number from 10 to 200'),
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
      fc.property(wild, wild, wild, wild, wild, (a, b, c, d, e) => {
        const parts = { flow: a, bore: b, length: c };
        for (const call of [
          () => darcyWeisbach({ ...parts, roughness: d, kinematicViscosity: e }),
          () => hazenWilliams({ ...parts, c: d }),
          () => hazenWilliams({ ...parts, c: d }, 'rational'),
          () => hazenWilliams({ ...parts, c: d }, 'gpm'),
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
