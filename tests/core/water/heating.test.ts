import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  heaterHours,
  heatingEnergy,
  thumbHeatBtu,
  thumbHeaterBtuPerHour,
} from '#core/water/heating.ts';
import { water } from '#core/water/water.ts';
import { allowance, referenceCases } from '../referenceCases.ts';

const gallon = 231 * 0.0254 ** 3; // exact, NIST SP 811
const btu = (4186.8 * 0.453_592_37) / 1.8; // International Table Btu [J], exact, NIST SP 811 B.8

type Numbers = Readonly<Record<string, number>>;

// Reference file chlorine-and-heat: rho V cp dT, properties from IAPWS SR6-08(2011).
describe('heat against the reference cases', () => {
  for (const item of referenceCases('chlorine-and-heat').filter(
    ({ inputs }) => inputs['rise_mg_l'] === undefined,
  )) {
    it(`${item.what} ${JSON.stringify(item.inputs)}`, () => {
      const got = answers(item.inputs as Numbers);
      for (const [key, expected] of Object.entries(item.expected)) {
        expect(Math.abs((got[key] ?? Number.NaN) - expected)).toBeLessThanOrEqual(
          allowance(item, expected),
        );
      }
    });
  }

  function answers(inputs: Numbers): Numbers {
    const { area_ft2, temperature_rise_f = 0, volume_gal = 0, volume_m3 } = inputs;
    if (area_ft2 !== undefined) {
      return { heater_btu_per_h: thumbHeaterBtuPerHour(area_ft2, temperature_rise_f) };
    }
    const properties = {
      density: inputs['density_kg_m3'] as number,
      specificHeat: inputs['specific_heat_j_kg_k'] as number,
    };
    if (volume_m3 !== undefined) {
      const rise = (inputs['target_c'] as number) - (inputs['temperature_c'] as number);
      const energy = heatingEnergy(volume_m3, rise, properties);
      const power = (inputs['heater_kw'] as number) * 1000;
      return {
        energy_kwh: energy / 3.6e6,
        hours: heaterHours(energy, power, inputs['efficiency']),
      };
    }
    const energy = heatingEnergy(volume_gal * gallon, temperature_rise_f / 1.8, properties);
    const power = ((inputs['heater_btu_per_h'] as number) * btu) / 3600;
    const thumb = thumbHeatBtu(volume_gal, temperature_rise_f);
    return {
      energy_btu: energy / btu,
      hours: heaterHours(energy, power),
      trade_8_34_btu: thumb,
      trade_error_percent: 100 * (thumb / (energy / btu) - 1),
    };
  }
});

describe('heating a pool', () => {
  it('takes the properties of the water at the mean temperature', () => {
    // Reference file chlorine-and-heat: 75 m3 from 24 to 27 degC, iapws 1.5.3.
    const energy = heatingEnergy(75, 3, water(25.5));
    expect(energy / 3.6e6 / 260.522_173_131_656_6).toBeCloseTo(1, 6);
  });

  it('twice the water takes twice the heat and twice the hours', () => {
    const volume = fc.double({ min: 0.1, max: 3000, noNaN: true });
    fc.assert(
      fc.property(volume, (each) => {
        const [once, twice] = [each, 2 * each].map((size) => heatingEnergy(size, 5, water(26)));
        expect(heaterHours(twice ?? 0, 9000)).toBeCloseTo(2 * heaterHours(once ?? 0, 9000), 6);
      }),
    );
  });

  it('a heater that wastes half takes twice the hours, and one that wastes a fifth a quarter more', () => {
    // Definition of efficiency: heat into the water over heat taken. 36 kW give 36 kWh in an hour.
    const heat = 36 * 3.6e6;
    expect(heaterHours(heat, 36_000)).toBeCloseTo(1, 12);
    expect(heaterHours(heat, 36_000, 0.5)).toBeCloseTo(2, 12);
    expect(heaterHours(heat, 36_000, 0.8)).toBeCloseTo(1.25, 12);
  });

  it('what cannot be is refused', () => {
    expect(() => heatingEnergy(50, -1, water(26))).toThrow(CoreError);
    expect(() => heatingEnergy(50, Number.NaN, water(26))).toThrow(CoreError);
    expect(() => heaterHours(1, 0)).toThrow(CoreError);
    expect(() => heaterHours(1, 1, 4)).toThrow(
      'efficiency is 4; it must be above 0 and at most 1.',
    );
  });
});
