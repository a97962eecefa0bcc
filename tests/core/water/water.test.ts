import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  liquidDensity,
  liquidSpecificHeat,
  liquidViscosity,
  vapourPressure,
  water,
} from '#core/water/water.ts';
import { allowance, referenceCases } from '../referenceCases.ts';

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);

describe('water against the releases', () => {
  // IAPWS SR6-08(2011) table 8, as asserted in github jjgomera/iapws, test.py, test_liquid.
  const table8 = [
    { kelvin: 260, density: 997.06836, viscosity: 3058.36075e-6, heat: 4300.17472 },
    { kelvin: 298.15, density: 997.047013, viscosity: 889.996774e-6, heat: 4181.44618 },
    { kelvin: 375, density: 957.00971, viscosity: 276.207245e-6, heat: 4217.74697 },
  ];

  for (const row of table8) {
    it(`the verification values at ${row.kelvin} K come out to the printed digits`, () => {
      const celsius = row.kelvin - 273.15;
      expect(relative(liquidDensity(celsius), row.density)).toBeLessThan(1e-9);
      expect(relative(liquidViscosity(celsius), row.viscosity)).toBeLessThan(2e-9);
      expect(relative(liquidSpecificHeat(celsius), row.heat)).toBeLessThan(2e-9);
    });
  }

  // IAPWS R7-97(2012) table 35, same place, test_IAPWS97_4.
  for (const [kelvin, pressure] of [
    [300, 3536.58941],
    [500, 2.63889776e6],
    [600, 12.3443146e6],
  ] as const) {
    it(`vapour pressure at ${kelvin} K comes out to the printed digits`, () => {
      expect(relative(vapourPressure(kelvin - 273.15), pressure)).toBeLessThan(3e-9);
    });
  }

  it('water boils at 0.1 MPa at 372.755919 K', () => {
    // IAPWS R7-97(2012) table 36, same place.
    expect(relative(vapourPressure(372.755919 - 273.15), 1e5)).toBeLessThan(1e-7);
  });

  it('region 4 meets the critical pressure at the critical temperature', () => {
    // IAPWS R2-83(1992): 647.096 K, 22.064 MPa; 373 degC lies just below.
    expect(vapourPressure(373)).toBeLessThan(22.064e6);
    expect(vapourPressure(373)).toBeGreaterThan(21.7e6);
  });
});

describe('water against the reference cases', () => {
  const got: Record<string, (celsius: number) => number> = {
    density_kg_m3: liquidDensity,
    dynamic_viscosity_pa_s: liquidViscosity,
    kinematic_viscosity_m2_s: (celsius) => liquidViscosity(celsius) / liquidDensity(celsius),
    vapour_pressure_pa: vapourPressure,
  };

  it('every case is met within its tolerance', () => {
    const cases = referenceCases('water-properties');
    expect(cases.length).toBeGreaterThan(30);
    for (const item of cases) {
      const { temperature_c, temperature_f } = item.inputs;
      const celsius = temperature_c ?? ((temperature_f as number) - 32) / 1.8;
      for (const [key, expected] of Object.entries(item.expected)) {
        const value = got[key]?.(celsius as number) ?? Number.NaN;
        const message = `${item.what}, ${key}, ${celsius} degC (${item.source})`;
        expect(Math.abs(value - expected), message).toBeLessThanOrEqual(allowance(item, expected));
      }
    }
  });

  it('the bundle at 20 degC holds the same numbers as its formulas', () => {
    // Reference file water-properties: iapws 1.5.3 at 293.15 K; heat capacity 4184 J/(kg K) is
    // the round figure of the CRC Handbook (4.184 J per gram and kelvin at 20 degC, from memory).
    const pool = water(20);
    expect(pool.temperature).toBe(20);
    expect(pool.density).toBeCloseTo(998.2065464241155, 9);
    expect(relative(pool.dynamicViscosity, 0.0010015672646030015)).toBeLessThan(1e-12);
    expect(relative(pool.kinematicViscosity, 1.0033667563000113e-6)).toBeLessThan(1e-12);
    expect(relative(pool.vapourPressure, 2339.214766776897)).toBeLessThan(1e-12);
    expect(Math.abs(pool.specificHeat - 4184)).toBeLessThan(0.5);
  });
});

describe('water over its range', () => {
  const pairs = fc
    .tuple(
      fc.double({ min: 0, max: 44.9, noNaN: true }),
      fc.double({ min: 0.01, max: 0.1, noNaN: true }),
    )
    .map(([low, step]) => [water(low), water(low + step)] as const);

  it('warmer water is thinner and nearer to boiling', () => {
    fc.assert(
      fc.property(pairs, ([cold, warm]) => {
        expect(warm.dynamicViscosity).toBeLessThan(cold.dynamicViscosity);
        expect(warm.kinematicViscosity).toBeLessThan(cold.kinematicViscosity);
        expect(warm.vapourPressure).toBeGreaterThan(cold.vapourPressure);
      }),
    );
  });

  it('water is densest near 4 degC', () => {
    // CRC Handbook: greatest density at 3.98 degC.
    expect(liquidDensity(3.98)).toBeGreaterThan(liquidDensity(3.9));
    expect(liquidDensity(3.98)).toBeGreaterThan(liquidDensity(4.06));
    fc.assert(
      fc.property(fc.double({ min: 4.1, max: 44, noNaN: true }), (celsius) => {
        expect(liquidDensity(celsius + 0.5)).toBeLessThan(liquidDensity(celsius));
      }),
    );
  });

  it('vapour pressure agrees with the Buck equation within 0.2 %', () => {
    // Buck, J. Appl. Meteorol. 20, 1527 (1981), as revised 1996 (from memory): over water,
    // 611.21 exp((18.678 - t/234.5) t/(257.14 + t)) Pa. An independent fit to measurements.
    for (let celsius = 0; celsius <= 45; celsius += 1) {
      const buck = 611.21 * Math.exp(((18.678 - celsius / 234.5) * celsius) / (257.14 + celsius));
      expect(relative(vapourPressure(celsius), buck)).toBeLessThan(2e-3);
    }
  });

  it('viscosity agrees with the Vogel equation within its 2.5 %', () => {
    // Vogel equation for water, 2.414e-5 x 10^(247.8/(T - 140)) Pa s, stated within 2.5 %
    // from 0 to 370 degC (handbook form, from memory).
    for (let celsius = 0; celsius <= 100; celsius += 5) {
      const vogel = 2.414e-5 * 10 ** (247.8 / (celsius + 273.15 - 140));
      expect(relative(liquidViscosity(celsius), vogel)).toBeLessThan(0.025);
    }
  });

  it('heat capacity moves by less than 1 % from frost to bath', () => {
    // CRC Handbook: 4.2176 at 0 degC, least 4.178 near 35 degC, kJ/(kg K) (from memory).
    expect(Math.abs(liquidSpecificHeat(0) - 4217.6)).toBeLessThan(3);
    expect(Math.abs(liquidSpecificHeat(35) - 4178)).toBeLessThan(2);
  });
});

describe('water beyond its range', () => {
  const ranges = [
    ['liquidDensity', liquidDensity, -20, 110],
    ['liquidViscosity', liquidViscosity, -20, 110],
    ['liquidSpecificHeat', liquidSpecificHeat, -20, 110],
    ['vapourPressure', vapourPressure, 0, 373],
    ['water', (celsius: number) => water(celsius).density, 0, 45],
  ] as const;

  for (const [name, law, coldest, hottest] of ranges) {
    it(`${name} answers at both ends of its range and refuses beyond, naming it`, () => {
      expect(law(coldest)).toBeGreaterThan(0);
      expect(law(hottest)).toBeGreaterThan(0);
      for (const celsius of [coldest - 1e-6, hottest + 1e-6, Number.NaN, Infinity, -Infinity]) {
        expect(() => law(celsius)).toThrow(
          new CoreError('temperature', celsius, `a number from ${coldest} to ${hottest} degC`),
        );
      }
    });

    it(`${name} gives a finite number or a CoreError for any number`, () => {
      fc.assert(
        fc.property(fc.oneof(fc.double(), fc.double({ min: -50, max: 400 })), (celsius) => {
          try {
            expect(Number.isFinite(law(celsius))).toBe(true);
          } catch (error) {
            expect(error).toBeInstanceOf(CoreError);
          }
        }),
      );
    });
  }
});
