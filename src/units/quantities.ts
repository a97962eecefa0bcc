/**
 * Every quantity the site shows, with the units a reader may choose for it.
 *
 * The stored value is always the core's: SI, with three plain exceptions that the core itself keeps
 * (temperature in degC, time of day in minutes, pump speed in rpm, where the core sees only ratios).
 * A unit turns into it by `stored = (shown - zero) * factor`.
 */
import * as size from './factors.ts';
import { type QuantitySpec, type UnitSpec, unit } from './spec.ts';

export type { QuantitySpec, UnitSpec };

const metres = unit('m', ['metre', 'metres'], 1, [3, 2], { typed: ['meter', 'meters'] });
const feet = unit('ft', ['foot', 'feet'], size.foot, [3, 1], { typed: ["'", '′'] });
const kilowatts = unit('kW', ['kilowatt', 'kilowatts'], 1000, [3, 2]);
const degreesCelsius = ['degree Celsius', 'degrees Celsius'] as const;
const degreesFahrenheit = ['degree Fahrenheit', 'degrees Fahrenheit'] as const;

export const quantities = {
  flow: {
    name: 'flow',
    us: 'gpm',
    metric: 'm3/h',
    usual: 50 * size.gallonPerMinute,
    units: {
      gpm: unit('gpm', ['gallon per minute', 'gallons per minute'], size.gallonPerMinute, [2, 2], {
        typed: ['gal/min', 'usgpm'],
      }),
      'm3/h': unit(
        'm³/h',
        ['cubic metre per hour', 'cubic metres per hour'],
        1 / size.hour,
        [3, 2],
        { typed: ['m^3/h', 'm3/hr', 'm³/hr'] },
      ),
      'L/min': unit(
        'L/min',
        ['litre per minute', 'litres per minute'],
        size.litre / size.minute,
        [3, 1],
        { typed: ['lpm'] },
      ),
      'm3/s': unit('m³/s', ['cubic metre per second', 'cubic metres per second'], 1, [3, 6], {
        typed: ['m^3/s'],
      }),
    },
  },
  head: { name: 'head', us: 'ft', metric: 'm', usual: 15, units: { m: metres, ft: feet } },
  pressure: {
    name: 'pressure',
    us: 'psi',
    metric: 'kPa',
    usual: 100e3,
    units: {
      kPa: unit('kPa', ['kilopascal', 'kilopascals'], 1000, [3, 1]),
      bar: unit('bar', ['bar', 'bar'], 1e5, [3, 2]),
      psi: unit('psi', ['pound per square inch', 'pounds per square inch'], size.psi, [3, 1]),
    },
  },
  vacuum: {
    name: 'vacuum',
    us: 'inHg',
    metric: 'kPa',
    usual: 20e3,
    units: {
      kPa: unit('kPa', ['kilopascal', 'kilopascals'], 1000, [3, 1]),
      mbar: unit('mbar', ['millibar', 'millibar'], 100, [3, 0]),
      inHg: unit('inHg', ['inch of mercury', 'inches of mercury'], size.inchOfMercury, [3, 1], {
        typed: ['"hg'],
      }),
    },
  },
  length: { name: 'length', us: 'ft', metric: 'm', usual: 10, units: { m: metres, ft: feet } },
  diameter: {
    name: 'diameter',
    us: 'in',
    metric: 'mm',
    usual: 0.05,
    units: {
      mm: unit('mm', ['millimetre', 'millimetres'], 1e-3, [3, 1], { typed: ['millimeters'] }),
      in: unit('in', ['inch', 'inches'], size.inch, [4, 3], { typed: ['"', '″'] }),
    },
  },
  roughness: {
    name: 'roughness',
    us: 'in',
    metric: 'mm',
    usual: 1.5e-6,
    units: {
      mm: unit('mm', ['millimetre', 'millimetres'], 1e-3, [2, 6], { typed: ['millimeters'] }),
      in: unit('in', ['inch', 'inches'], size.inch, [2, 7], { typed: ['"', '″'] }),
    },
  },
  velocity: {
    name: 'velocity',
    us: 'ft/s',
    metric: 'm/s',
    usual: 1.5,
    units: {
      'm/s': unit('m/s', ['metre per second', 'metres per second'], 1, [3, 2]),
      'ft/s': unit('ft/s', ['foot per second', 'feet per second'], size.foot, [3, 2], {
        typed: ['fps'],
      }),
    },
  },
  volume: {
    name: 'volume',
    us: 'gal',
    metric: 'm3',
    usual: 60,
    units: {
      m3: unit('m³', ['cubic metre', 'cubic metres'], 1, [3, 2], { typed: ['m^3'] }),
      L: unit('L', ['litre', 'litres'], size.litre, [3, 1], { typed: ['liter', 'liters'] }),
      gal: unit('gal', ['gallon', 'gallons'], size.gallon, [3, 1]),
    },
  },
  temperature: {
    name: 'temperature',
    us: 'degF',
    metric: 'degC',
    usual: 25,
    units: {
      degC: unit('°C', degreesCelsius, 1, [3, 1], { typed: ['c', 'celsius'] }),
      degF: unit('°F', degreesFahrenheit, size.fahrenheitDegree, [3, 1], {
        zero: 32,
        typed: ['f', 'fahrenheit'],
      }),
    },
  },
  temperatureDifference: {
    name: 'temperature difference',
    us: 'degF',
    metric: 'degC',
    usual: 5,
    units: {
      degC: unit('°C', degreesCelsius, 1, [3, 1], { typed: ['c', 'k', 'celsius'] }),
      degF: unit('°F', degreesFahrenheit, size.fahrenheitDegree, [3, 1], {
        typed: ['f', 'fahrenheit'],
      }),
    },
  },
  power: {
    name: 'power',
    us: 'W',
    metric: 'W',
    usual: 500,
    units: {
      W: unit('W', ['watt', 'watts'], 1, [3, 0]),
      kW: kilowatts,
      hp: unit('hp', ['horsepower', 'horsepower'], size.horsepower, [3, 2]),
    },
  },
  heatRate: {
    name: 'heat output',
    us: 'Btu/h',
    metric: 'kW',
    usual: 30e3,
    units: {
      kW: kilowatts,
      'Btu/h': unit(
        'Btu/h',
        ['British thermal unit per hour', 'British thermal units per hour'],
        size.britishThermalUnit / size.hour,
        [3, 0],
        { typed: ['btuh', 'btu/hr'] },
      ),
    },
  },
  energy: {
    name: 'energy',
    us: 'kWh',
    metric: 'kWh',
    usual: 5 * size.kilowattHour,
    units: { kWh: unit('kWh', ['kilowatt hour', 'kilowatt hours'], size.kilowattHour, [3, 2]) },
  },
  area: {
    name: 'area',
    us: 'ft2',
    metric: 'm2',
    usual: 40,
    units: {
      m2: unit('m²', ['square metre', 'square metres'], 1, [3, 2], { typed: ['m^2'] }),
      ft2: unit('ft²', ['square foot', 'square feet'], size.foot ** 2, [3, 1], {
        typed: ['ft^2', 'sqft'],
      }),
    },
  },
  filterRate: {
    name: 'filter rate',
    us: 'gpm/ft2',
    metric: 'm/h',
    usual: 30 / size.hour,
    units: {
      'm/h': unit('m/h', ['metre per hour', 'metres per hour'], 1 / size.hour, [3, 1]),
      'gpm/ft2': unit(
        'gpm/ft²',
        ['gallon per minute per square foot', 'gallons per minute per square foot'],
        size.gallonPerMinute / size.foot ** 2,
        [3, 2],
        { typed: ['gpm/ft^2', 'gpm/sqft'] },
      ),
    },
  },
  speed: {
    name: 'speed',
    us: 'rpm',
    metric: 'rpm',
    usual: 1750,
    units: {
      rpm: unit('rpm', ['revolution per minute', 'revolutions per minute'], 1, [1, 0], {
        typed: ['r/min', '1/min'],
      }),
    },
  },
  mass: {
    name: 'mass',
    us: 'lb',
    metric: 'g',
    usual: 0.5,
    units: {
      g: unit('g', ['gram', 'grams'], 1e-3, [3, 1]),
      kg: unit('kg', ['kilogram', 'kilograms'], 1, [3, 2]),
      lb: unit('lb', ['pound', 'pounds'], size.pound, [3, 2], { typed: ['lbs'] }),
    },
  },
  massRate: {
    name: 'output',
    us: 'g/h',
    metric: 'g/h',
    usual: 0.025 / size.hour,
    units: {
      'g/h': unit('g/h', ['gram per hour', 'grams per hour'], 1e-3 / size.hour, [3, 1], {
        typed: ['g/hr'],
      }),
    },
  },
  concentration: {
    name: 'concentration',
    us: 'mg/L',
    metric: 'mg/L',
    usual: 2e-3,
    units: {
      'mg/L': unit('mg/L', ['milligram per litre', 'milligrams per litre'], 1e-3, [2, 2], {
        typed: ['ppm', 'g/m3', 'g/m³'],
      }),
    },
  },
  voltage: {
    name: 'voltage',
    us: 'V',
    metric: 'V',
    usual: 230,
    units: { V: unit('V', ['volt', 'volts'], 1, [3, 0]) },
  },
  current: {
    name: 'current',
    us: 'A',
    metric: 'A',
    usual: 4,
    units: { A: unit('A', ['ampere', 'amperes'], 1, [2, 2], { typed: ['amp', 'amps'] }) },
  },
  share: {
    name: 'share',
    us: '%',
    metric: '%',
    usual: 0.5,
    units: { '%': unit('%', ['percent', 'percent'], 0.01, [2, 1]) },
  },
  duration: {
    name: 'time',
    us: 'h',
    metric: 'h',
    usual: 8 * size.hour,
    units: {
      h: unit('h', ['hour', 'hours'], size.hour, [2, 1], { typed: ['hr', 'hrs'] }),
      min: unit('min', ['minute', 'minutes'], size.minute, [2, 0], { typed: ['mins'] }),
      s: unit('s', ['second', 'seconds'], 1, [2, 0], { typed: ['sec'] }),
    },
  },
} as const satisfies Readonly<Record<string, QuantitySpec>>;

export type Quantity = keyof typeof quantities;

/** The unit ids of one quantity; for a union of quantities, of any of them. */
export type UnitOf<Q extends Quantity = Quantity> = Q extends Quantity
  ? keyof (typeof quantities)[Q]['units'] & string
  : never;

export const quantityNames = Object.keys(quantities) as readonly Quantity[];

export function quantitySpec(quantity: Quantity): QuantitySpec {
  return quantities[quantity];
}

/** The units a reader may choose for a quantity, in the order to list them. */
export function unitsOf<Q extends Quantity>(quantity: Q): readonly UnitOf<Q>[] {
  return Object.keys(quantities[quantity].units) as UnitOf<Q>[];
}

export function isUnitOf<Q extends Quantity>(quantity: Q, unit: string): unit is UnitOf<Q> {
  return Object.hasOwn(quantities[quantity].units, unit);
}

export function unitSpec<Q extends Quantity>(quantity: Q, unit: UnitOf<Q>): UnitSpec {
  const spec = quantitySpec(quantity).units[unit];
  if (spec === undefined) {
    throw new RangeError(
      `${String(unit)} is no unit of ${quantity}; it has ${unitsOf(quantity).join(', ')}.`,
    );
  }
  return spec;
}
