import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  chlorineMass,
  productMass,
  productVolume,
  saltCellHours,
  thumbChlorinePounds,
  tradePercentConcentration,
} from '#core/water/chlorine.ts';
import { allowance, referenceCases } from '../referenceCases.ts';

const gallon = 231 * 0.0254 ** 3; // exact, NIST SP 811
const pound = 0.453_592_37; // exact, NIST SP 811

type Numbers = Readonly<Record<string, number>>;

// Reference file chlorine-and-heat: conservation of mass on exact unit definitions.
describe('chlorine against the reference cases', () => {
  for (const item of referenceCases('chlorine-and-heat').filter(
    ({ inputs }) => inputs['rise_mg_l'] !== undefined,
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
    const volume = inputs['volume_m3'] ?? (inputs['volume_gal'] as number) * gallon;
    const mass = chlorineMass(volume, (inputs['rise_mg_l'] as number) / 1000);
    if (inputs['factor'] !== undefined) {
      const { volume_gal = 0, rise_mg_l = 0, factor } = inputs;
      const thumb = thumbChlorinePounds(volume_gal, rise_mg_l, factor);
      return { mass_lb: thumb, error_percent: 100 * ((thumb * pound) / mass - 1) };
    }
    if (inputs['available_chlorine_share'] !== undefined) {
      return { product_g: 1000 * productMass(mass, inputs['available_chlorine_share']) };
    }
    if (inputs['trade_percent'] !== undefined) {
      const product = productVolume(mass, tradePercentConcentration(inputs['trade_percent']));
      return { product_l: 1000 * product, product_gal: product / gallon };
    }
    if (inputs['cell_g_per_h'] !== undefined) {
      const rate = inputs['cell_g_per_h'] / 1000 / 3600;
      return { hours: saltCellHours(mass, rate, inputs['output_share']) };
    }
    return { mass_g: 1000 * mass, mass_lb: mass / pound };
  }
});

describe('salt cells and products', () => {
  it('a cell at half output takes twice as long', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), (mass) => {
        expect(saltCellHours(mass, 1e-5, 0.5)).toBeCloseTo(2 * saltCellHours(mass, 1e-5), 9);
      }),
    );
  });

  it('a liquid of 100 trade percent holds 100 g of chlorine in 100 mL, and more is refused', () => {
    // Definition of trade percent (common practice, no source).
    expect(tradePercentConcentration(100)).toBe(1000);
  });

  it('what cannot be is refused', () => {
    expect(() => saltCellHours(1, 1e-5, 1.2)).toThrow(
      'outputShare is 1.2; it must be above 0 and at most 1.',
    );
    expect(() => saltCellHours(1, 0)).toThrow(CoreError);
    expect(() => productMass(1, 0)).toThrow(CoreError);
    expect(() => tradePercentConcentration(101)).toThrow(CoreError);
    expect(() => productVolume(1, Number.NaN)).toThrow(CoreError);
    expect(() => chlorineMass(-1, 0.001)).toThrow(CoreError);
  });
});
