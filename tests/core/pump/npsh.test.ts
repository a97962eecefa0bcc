import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  atmosphericPressure,
  geopotentialAltitude,
  npshAvailable,
  npshFromVacuum,
  npshMargin,
} from '#core/pump/npsh.ts';
import { water } from '#core/water/water.ts';
import { casesOf } from '../numericCases.ts';

const pascalPerPsi = 6894.757_293_168; // NIST SP 811 B.8, from exact lb and in
const metresPerFoot = 0.3048; // exact, NIST SP 811

describe('atmosphere and NPSH against the reference cases', () => {
  for (const { what, inputs, expected, relative } of casesOf('npsh')) {
    it(`${what} ${JSON.stringify(inputs)}`, () => {
      const got = answer(inputs);
      const wanted =
        expected['pressure_pa'] ??
        expected['npsh_available_m'] ??
        (expected['pressure_psi'] as number) * pascalPerPsi;
      expect(Math.abs(got / wanted - 1)).toBeLessThanOrEqual(relative);
    });
  }

  function answer(inputs: Readonly<Record<string, number>>): number {
    const geopotential =
      inputs['geopotential_altitude_m'] ??
      geopotentialAltitude(
        inputs['geometric_altitude_m'] ?? (inputs['altitude_ft'] as number) * metresPerFoot,
      );
    const atmosphere = atmosphericPressure(geopotential);
    if (inputs['temperature_c'] === undefined) return atmosphere;
    const pool = water(inputs['temperature_c']);
    if (inputs['vacuum_inhg'] === undefined) {
      return npshAvailable({
        atmosphere,
        water: pool,
        surfaceAbovePump: inputs['suction_head_m'] as number,
        suctionLoss: inputs['friction_m'] as number,
      });
    }
    const bore = (inputs['inside_diameter_in'] as number) * 0.0254;
    const flow = ((inputs['flow_gpm'] as number) * 3.785_411_784) / 60_000;
    return npshFromVacuum({
      atmosphere,
      water: pool,
      suctionVacuum: inputs['vacuum_inhg'] * 3386.389, // conventional inHg, NIST SP 811 B.8
      velocity: flow / ((Math.PI / 4) * bore ** 2),
    });
  }
});

describe('NPSH', () => {
  it('a gauge at the pump inlet sees what the described suction side says', () => {
    // Energy balance from pool surface to inlet: vacuum/(rho g) = loss + V^2/2g - height.
    const pool = water(25);
    const [velocity, loss, height] = [1.8, 0.9, 0.4];
    const suctionVacuum = (loss + velocity ** 2 / (2 * 9.80665) - height) * pool.density * 9.80665;
    const fromGauge = npshFromVacuum({ atmosphere: 101_325, water: pool, suctionVacuum, velocity });
    const described = npshAvailable({
      atmosphere: 101_325,
      water: pool,
      surfaceAbovePump: height,
      suctionLoss: loss,
    });
    expect(fromGauge).toBeCloseTo(described, 10);
  });

  it('falls with altitude, with warmth and with loss', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (altitude, temperature, loss) => {
          const at = (a: number, t: number, l: number) =>
            npshAvailable({
              atmosphere: atmosphericPressure(a),
              water: water(t),
              surfaceAbovePump: 0,
              suctionLoss: l,
            });
          const here = at(altitude, temperature, loss);
          expect(Number.isFinite(here)).toBe(true);
          expect(at(altitude + 100, temperature, loss)).toBeLessThan(here);
          expect(at(altitude, temperature, loss + 0.1)).toBeLessThan(here);
        },
      ),
    );
  });

  it('a gauge above the pump adds its height, and none is taken where none is given', () => {
    const gauge = { atmosphere: 101_325, water: water(25), suctionVacuum: 2e4, velocity: 1.8 };
    // Energy balance: the same pressure higher up is more head at the pump.
    const [low, high] = [0, 0.6].map((gaugeAbovePump) =>
      npshFromVacuum({ ...gauge, gaugeAbovePump }),
    );
    expect((high ?? 0) - (low ?? 0)).toBeCloseTo(0.6, 12);
    expect(npshFromVacuum(gauge)).toBe(low);
  });

  it('a margin is what is left, and may be negative', () => {
    expect(npshMargin(5, 3)).toBe(2);
    expect(npshMargin(3, 5)).toBe(-2);
  });

  it('refuses an altitude beyond the law, naming field, value and range', () => {
    expect(() => atmosphericPressure(12_000)).toThrow(CoreError);
    expect(() => atmosphericPressure(12_000)).toThrow(
      'altitude is 12000; it must be a number from -2000 to 11000 m.',
    );
    expect(() => geopotentialAltitude(Number.NaN)).toThrow(CoreError);
  });
});
