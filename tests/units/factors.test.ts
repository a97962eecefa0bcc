import { describe, expect, it } from 'vitest';
import { fromSI, toSI } from '#units/convert.ts';
import type { Quantity, UnitOf } from '#units/quantities.ts';

const near = (got: number, wanted: number, figures: number) =>
  expect(Math.abs(got / wanted - 1)).toBeLessThan(0.5 * 10 ** (1 - figures));

describe('factors agree with the figures NIST SP 811 (2008) prints in appendix B.8', () => {
  // Each: quantity, unit, printed SI size, figures printed (or 15 where SP 811 prints it bold, exact).
  const printed: readonly [Quantity, string, number, number][] = [
    ['flow', 'gpm', 6.30902e-5, 7],
    ['flow', 'L/min', 1.666667e-5, 7],
    ['flow', 'm3/h', 2.777778e-4, 7],
    ['head', 'ft', 0.3048, 15],
    ['diameter', 'in', 0.0254, 15],
    ['pressure', 'psi', 6894.757, 7],
    ['pressure', 'bar', 1e5, 15],
    ['vacuum', 'inHg', 3386.389, 7],
    ['vacuum', 'mbar', 100, 15],
    ['velocity', 'ft/s', 0.3048, 15],
    ['volume', 'gal', 3.785412e-3, 7],
    ['volume', 'L', 1e-3, 15],
    ['power', 'hp', 745.6999, 7],
    ['heatRate', 'Btu/h', 0.2930711, 7],
    ['energy', 'kWh', 3.6e6, 15],
    ['area', 'ft2', 0.09290304, 15],
    ['mass', 'lb', 0.45359237, 15],
  ];
  it.each(printed)('%s in %s', (quantity, unit, size, figures) => {
    near(toSI(quantity, 1, unit as UnitOf), size, figures);
  });

  it('the gallon is exactly 3.785411784 L', () => {
    // NIST SP 811 B.8 footnote: 231 cubic inches, exact.
    near(fromSI('volume', toSI('volume', 1, 'gal'), 'L'), 3.785411784, 15);
  });

  it('a filter rate of 1 gpm/ft2 is 2.445 m/h', () => {
    // 0.22712470704 m3/h over 0.09290304 m2: exact products of SP 811, worked by hand.
    expect(fromSI('filterRate', toSI('filterRate', 1, 'gpm/ft2'), 'm/h')).toBeCloseTo(2.44475, 5);
  });

  it('temperatures shift and differences do not', () => {
    // Definition of the Fahrenheit scale (NIST SP 811, B.9).
    expect(toSI('temperature', 32, 'degF')).toBe(0);
    expect(toSI('temperature', 212, 'degF')).toBeCloseTo(100, 12);
    expect(fromSI('temperature', 28, 'degF')).toBeCloseTo(82.4, 12);
    expect(toSI('temperatureDifference', 9, 'degF')).toBeCloseTo(5, 12);
  });

  it('a unit of another quantity throws, naming what would be right', () => {
    expect(() => toSI('flow', 1, 'psi' as UnitOf<'flow'>)).toThrow(
      'psi is no unit of flow; it has gpm, m3/h, L/min, m3/s.',
    );
  });
});
