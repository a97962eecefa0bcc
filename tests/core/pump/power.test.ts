import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  bestMileageRatio,
  bestMileageSpeed,
  cubePower,
  hydraulicPower,
  lineCurrent,
  motorCurrent,
  powerFactor,
  powerFromEfficiency,
  shaftPower,
  wirePower,
} from '#core/pump/power.ts';
import { pumpFromPowerLaw } from '#core/pump/pump.ts';

const curve = pumpFromPowerLaw({ a: 20, b: 3.125e5, c: 2 }, 0.006);
const pump = {
  fixed: 30,
  curve,
  best: { flow: 0.004, efficiency: 0.6 },
  driveEfficiency: 0.8,
  density: 1000,
};

describe('wire power', () => {
  test('is the fixed draw and a cube along a closed loop', () => {
    // Reference affinity-laws.json, "wire power with a fixed draw": 40 W and 1400 W at a quarter speed.
    expect(wirePower(cubePower({ fixed: 40, cube: 1400 }), 0.001, 0.25)).toBeCloseTo(61.875, 12);
  });

  test('of a stopped pump is the standby draw, 0 where none is told', () => {
    const power = { fixed: 30, atReference: () => 1000 };
    expect(wirePower(power, 0, 0)).toBe(0);
    expect(wirePower({ ...power, standby: 4 }, 0, 0)).toBe(4);
    expect(wirePower({ ...power, standby: 4 }, 0, 0.1)).toBe(31);
  });

  test('at the best point is water power over both efficiencies, and the fixed draw', () => {
    // Definition of efficiency: rho g Q H / (eta_pump eta_drive); H = 15 m at 0.004 m3/s.
    const water = 1000 * 9.80665 * 0.004 * 15;
    expect(wirePower(powerFromEfficiency(pump), 0.004, 1)).toBeCloseTo(30 + water / 0.48, 8);
    expect(hydraulicPower(1000, 0.004, 15)).toBeCloseTo(water, 9);
    expect(shaftPower(water, 0.6)).toBeCloseTo(water / 0.6, 9);
  });

  test('follows the cube at corresponding points, above the fixed draw', () => {
    const power = powerFromEfficiency(pump);
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1.5, noNaN: true }),
        fc.double({ min: 0, max: 0.006, noNaN: true }),
        (ratio, flow) => {
          // Affinity laws, ANSI/HI 14.3.
          const here = wirePower(power, flow * ratio, ratio) - 30;
          const there = wirePower(power, flow, 1) - 30;
          expect(here / (there * ratio ** 3)).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  test('stays finite from no flow to far beyond the data', () => {
    const power = powerFromEfficiency(pump);
    for (const flow of [0, 1e-9, 0.004, 0.0072, 0.008, 0.05]) {
      expect(power.atReference(flow)).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(power.atReference(flow))).toBe(true);
    }
    // At no flow: rho g H Q_b / (2 eta) with H = 20 m, by the law's own limit.
    expect(power.atReference(0)).toBeCloseTo((1000 * 9.80665 * 20 * 0.004) / (2 * 0.48), 8);
    // Past x = 1.8 the value there is kept, and beyond the head's end no power is given back.
    expect(
      powerFromEfficiency({ ...pump, best: { flow: 0.006, efficiency: 0.6 } }).atReference(0.0105),
    ).toBe(0);
    expect(power.atReference(0.02)).toBeCloseTo(power.atReference(0.0072), 9);
  });
});

describe('the speed with most water per kWh', () => {
  test('is where the fixed draw is twice the rest', () => {
    // Calculus: d/dr (P/r + c r^2) = 0; reference affinity-laws.json gives 0.24264275032025867.
    const law = { fixed: 40, cube: 1400 };
    const ratio = bestMileageRatio(law);
    expect(ratio).toBeCloseTo(0.24264275032025867, 14);
    expect(wirePower(cubePower(law), 0, ratio)).toBeCloseTo(60, 10);
  });

  test('is found by search as well, for any fixed draw', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 300, max: 3000, noNaN: true }),
        (fixed, cube) => {
          const exact = Math.min(Math.max(bestMileageRatio({ fixed, cube }), 0.1), 1);
          const found = bestMileageSpeed((r) => (fixed + cube * r ** 3) / r, 0.1, 1);
          expect(found).toBeCloseTo(exact, 5);
        },
      ),
    );
  });

  test('lies at the end of the range when slower is always better, or faster', () => {
    expect(bestMileageSpeed((r) => r * r, 0.2, 1)).toBe(0.2);
    expect(bestMileageSpeed((r) => 1 / r, 0.2, 1)).toBe(1);
    expect(bestMileageSpeed(() => Number.POSITIVE_INFINITY, 0.2, 1)).toBe(0.2);
    expect(bestMileageRatio({ fixed: 0, cube: 1000 })).toBe(0);
  });

  test('is found past speeds that move no water', () => {
    const cost = (r: number) =>
      r < 0.5 ? Number.POSITIVE_INFINITY : (40 + 1400 * r ** 3) / (r - 0.4);
    // Calculus: the slope is zero where 2800 r^3 - 1680 r^2 - 40 = 0.
    const best = bestMileageSpeed(cost, 0.1, 1);
    expect(2800 * best ** 3 - 1680 * best ** 2 - 40).toBeCloseTo(0, 2);
  });
});

describe('current and power factor', () => {
  test('undo each other', () => {
    // Reference electricity.json: 230 V, 8 A, 0.95 is 1748 W.
    expect(powerFactor(1748, 230, 8)).toBeCloseTo(0.95, 12);
    expect(lineCurrent(1748, 230, 0.95)).toBeCloseTo(8, 12);
  });
});

test.each([
  ['density', () => hydraulicPower(1, 0.004, 15)],
  ['flow', () => hydraulicPower(1000, -1, 15)],
  ['head', () => hydraulicPower(1000, 0.004, -1)],
  ['efficiency', () => shaftPower(100, 0)],
  ['hydraulic power', () => shaftPower(-1, 0.5)],
  ['fixed draw', () => cubePower({ fixed: -1, cube: 1 })],
  ['cube coefficient', () => cubePower({ fixed: 1, cube: Number.NaN })],
  ['cube coefficient', () => bestMileageRatio({ fixed: 1, cube: 0 })],
  ['best flow', () => powerFromEfficiency({ ...pump, best: { flow: 0, efficiency: 0.6 } })],
  ['best efficiency', () => powerFromEfficiency({ ...pump, best: { flow: 1, efficiency: 1.1 } })],
  ['drive efficiency', () => powerFromEfficiency({ ...pump, driveEfficiency: 0 })],
  ['density', () => powerFromEfficiency({ ...pump, density: 800 })],
  ['speed ratio', () => wirePower(cubePower({ fixed: 1, cube: 1 }), 0, 11)],
  ['flow', () => wirePower(cubePower({ fixed: 1, cube: 1 }), -1, 1)],
  ['least ratio', () => bestMileageSpeed((r) => r, 0, 1)],
  ['greatest ratio', () => bestMileageSpeed((r) => r, 0.5, 0.4)],
  ['power factor', () => lineCurrent(100, 230, 1.1)],
  ['power', () => lineCurrent(-1, 230, 1)],
  ['power', () => powerFactor(-1, 230, 1)],
  ['voltage', () => powerFactor(100, 0, 1)],
  ['fixed draw', () => powerFromEfficiency({ ...pump, fixed: -1 })],
  ['fixed draw', () => bestMileageRatio({ fixed: -1, cube: 1 })],
  ['voltage', () => lineCurrent(100, 0, 1)],
  ['current', () => powerFactor(100, 230, 0)],
])('a wrong %s is refused by name', (field, call) => {
  let caught: unknown;
  try {
    call();
  } catch (error) {
    caught = error;
  }
  expect(caught).toBeInstanceOf(CoreError);
  expect((caught as CoreError).field).toBe(field);
});

describe('amperes of a motor', () => {
  test('work and magnetising add up at a right angle', () => {
    // The triangle 3, 4, 5 (Euclid, Elements I.47): 3 A do the work of 690 W at 230 V.
    expect(motorCurrent(690, 230, 4)).toBeCloseTo(5, 12);
    expect(powerFactor(690, 230, motorCurrent(690, 230, 4))).toBeCloseTo(0.6, 12);
  });

  test('without load the magnetising part is left, and without that the power factor is 1', () => {
    // Definition of the power factor, IEC 60050-131 (from memory).
    expect(motorCurrent(0, 230, 3)).toBe(3);
    expect(powerFactor(1000, 230, motorCurrent(1000, 230, 0))).toBeCloseTo(1, 12);
  });

  test.each([
    ['power', () => motorCurrent(-1, 230, 1)],
    ['voltage', () => motorCurrent(1, 0, 1)],
    ['magnetising current', () => motorCurrent(1, 230, -1)],
  ])('a wrong %s is refused by name', (field, call) => {
    expect(call).toThrow(`${field} is `);
  });
});
