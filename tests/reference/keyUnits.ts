/**
 * Units as keys spell them (`flow_m3_h`), with their size in SI. The figures stand here and not in
 * `src/units` on purpose: a check must not borrow the factors it checks.
 * Source: NIST SP 811 (2008), appendix B.8; exact products where it prints them as exact.
 */

import { unitWords } from './unitWords.ts';

export type Dimension =
  | 'ratio'
  | 'length'
  | 'area'
  | 'volume'
  | 'flow'
  | 'velocity'
  | 'pressure'
  | 'temperature'
  | 'temperatureDifference'
  | 'density'
  | 'specificHeat'
  | 'kinematicViscosity'
  | 'dynamicViscosity'
  | 'mass'
  | 'massRate'
  | 'concentration'
  | 'power'
  | 'energy'
  | 'time'
  | 'speed'
  | 'voltage'
  | 'current'
  | 'price'
  | 'costPerVolume'
  | 'energyPerVolume'
  | 'volumePerEnergy'
  | 'volumePerLength'
  | 'pressureGradient'
  | 'apparentPower'
  | 'specificWeight'
  | 'headPerPressure'
  | 'money';

export interface KeyUnit {
  readonly dimension: Dimension;
  /** si = (value - zero) * factor. */
  readonly factor: number;
  readonly zero: number;
}

const inch = 0.0254;
const foot = 0.3048;
const pound = 0.45359237;
const poundForce = 4.4482216152605;
const gallon = 3.785411784e-3;
const cubicFoot = foot ** 3;
const btu = 1055.05585262;
const hour = 3600;
const wattHour = 3600;
const fahrenheit = 5 / 9;

type Row = readonly [spelling: string, factor: number, zero?: number];

const rows: Readonly<Record<Dimension, readonly Row[]>> = {
  ratio: [
    ['percent', 0.01],
    ['pct', 0.01],
    ['share', 1],
    ['ratio', 1],
    ['fraction', 1],
    ['per_100', 0.01],
    ['per_100_ft', 0.01],
    ['per_100_m', 0.01],
    ['ft_per_100_ft', 0.01],
    ['m_per_100_m', 0.01],
    ['m_per_m', 1],
    ['ft_per_ft', 1],
    ['m_per_km', 0.001],
    ['mm_per_m', 0.001],
    ['per_m', 1],
    ['per_ft', 1],
    ['ft_per_1000_ft', 0.001],
  ],
  length: [
    ['m', 1],
    ['km', 1000],
    ['cm', 0.01],
    ['mm', 0.001],
    ['um', 1e-6],
    ['in', inch],
    ['ft', foot],
    ['yd', 3 * foot],
  ],
  area: [
    ['m2', 1],
    ['cm2', 1e-4],
    ['mm2', 1e-6],
    ['ft2', foot ** 2],
    ['in2', inch ** 2],
  ],
  volume: [
    ['m3', 1],
    ['l', 1e-3],
    ['ml', 1e-6],
    ['fl_oz', gallon / 128],
    ['imp_gal', 4.54609e-3],
    ['qt', gallon / 4],
    ['pint', gallon / 8],
    ['gal', gallon],
    ['kgal', 1000 * gallon],
    ['ft3', cubicFoot],
    ['in3', inch ** 3],
  ],
  flow: [
    ['m3_s', 1],
    ['m3_min', 1 / 60],
    ['m3_h', 1 / hour],
    ['l_s', 1e-3],
    ['l_min', 1e-3 / 60],
    ['lpm', 1e-3 / 60],
    ['l_h', 1e-3 / hour],
    ['gpm', gallon / 60],
    ['gph', gallon / hour],
    ['gal_h', gallon / hour],
    ['gal_min', gallon / 60],
    ['ft3_s', cubicFoot],
  ],
  velocity: [
    ['m_s', 1],
    ['cm_s', 0.01],
    ['m_h', 1 / hour],
    ['km_h', 1000 / hour],
    ['ft_s', foot],
    ['ft_min', foot / 60],
    ['fps', foot],
    ['gpm_ft2', gallon / 60 / foot ** 2],
  ],
  pressure: [
    ['pa', 1],
    ['hpa', 100],
    ['kpa', 1000],
    ['mpa', 1e6],
    ['bar', 1e5],
    ['mbar', 100],
    ['psi', poundForce / inch ** 2],
    ['psia', poundForce / inch ** 2],
    ['inhg', 3386.389],
    ['mmhg', 133.3224],
    ['atm', 101325],
  ],
  temperature: [
    ['c', 1],
    ['degc', 1],
    ['f', fahrenheit, 32],
    ['degf', fahrenheit, 32],
    ['k', 1, 273.15],
  ],
  temperatureDifference: [],
  density: [
    ['kg_m3', 1],
    ['g_cm3', 1000],
    ['kg_l', 1000],
    ['g_l', 1],
    ['lb_ft3', pound / cubicFoot],
    ['lb_gal', pound / gallon],
    ['mg_ml', 1],
    ['g_per_l', 1],
  ],
  specificHeat: [
    ['j_kg_k', 1],
    ['kj_kg_k', 1000],
    ['btu_lb_f', btu / pound / fahrenheit],
  ],
  kinematicViscosity: [
    ['m2_s', 1],
    ['mm2_s', 1e-6],
    ['cst', 1e-6],
    ['ft2_s', foot ** 2],
  ],
  dynamicViscosity: [
    ['pa_s', 1],
    ['mpa_s', 1e-3],
    ['cp', 1e-3],
  ],
  mass: [
    ['kg', 1],
    ['g', 1e-3],
    ['mg', 1e-6],
    ['lb', pound],
    ['oz', pound / 16],
  ],
  massRate: [
    ['kg_s', 1],
    ['g_per_h', 1e-3 / hour],
    ['g_h', 1e-3 / hour],
    ['kg_per_h', 1 / hour],
    ['kg_h', 1 / hour],
    ['g_per_day', 1e-3 / (24 * hour)],
    ['kg_per_day', 1 / (24 * hour)],
    ['lb_per_h', pound / hour],
    ['lb_h', pound / hour],
    ['lb_per_day', pound / (24 * hour)],
  ],
  concentration: [
    ['mg_l', 1e-3],
    ['ppm', 1e-3],
    ['g_m3', 1e-3],
  ],
  power: [
    ['w', 1],
    ['kw', 1000],
    ['mw', 1e6],
    ['hp', 550 * foot * poundForce],
    ['ps', 75 * 9.80665],
    ['btu_per_h', btu / hour],
    ['btu_h', btu / hour],
    ['kbtu_h', (1000 * btu) / hour],
    ['kbtu_per_h', (1000 * btu) / hour],
    ['ton', (12_000 * btu) / hour],
  ],
  energy: [
    ['j', 1],
    ['kj', 1000],
    ['mj', 1e6],
    ['wh', wattHour],
    ['kwh', 1000 * wattHour],
    ['btu', btu],
    ['kbtu', 1000 * btu],
    ['therm', 1e5 * btu],
  ],
  time: [
    ['s', 1],
    ['seconds', 1],
    ['min', 60],
    ['minutes', 60],
    ['h', hour],
    ['hours', hour],
    ['days', 24 * hour],
    ['weeks', 7 * 24 * hour],
  ],
  speed: [
    ['rpm', 1],
    ['per_s', 60],
    ['hz', 60],
  ],
  voltage: [
    ['v', 1],
    ['kv', 1000],
  ],
  current: [
    ['a', 1],
    ['ma', 1e-3],
  ],
  price: [
    ['per_kwh', 1],
    ['per_mwh', 1e-3],
    ...['cents', 'cent', 'ct', 'pence'].map((name): Row => [`${name}_per_kwh`, 0.01]),
    ...['usd', 'eur', 'gbp', 'dollars'].map((name): Row => [`${name}_per_kwh`, 1]),
  ],
  costPerVolume: [
    ['per_1000_gal', 1 / (1000 * gallon)],
    ['per_kgal', 1 / (1000 * gallon)],
    ['per_m3', 1],
    ['per_gal', 1 / gallon],
  ],
  energyPerVolume: [
    ['kwh_per_1000_gal', (1000 * wattHour) / (1000 * gallon)],
    ['kwh_per_kgal', (1000 * wattHour) / (1000 * gallon)],
    ['kwh_per_m3', 1000 * wattHour],
    ['wh_per_m3', wattHour],
    ['wh_per_gal', wattHour / gallon],
    ['j_m3', 1],
  ],
  volumePerEnergy: [
    ['kgal_per_kwh', gallon / wattHour],
    ['gal_per_wh', gallon / wattHour],
    ['gal_per_kwh', gallon / (1000 * wattHour)],
    ['m3_per_kwh', 1 / (1000 * wattHour)],
    ['l_per_wh', 1e-3 / wattHour],
    ['l_per_kwh', 1e-3 / (1000 * wattHour)],
  ],
  volumePerLength: [
    ['l_per_m', 1e-3],
    ['gal_per_100_ft', gallon / (100 * foot)],
    ['gal_per_ft', gallon / foot],
    ['m3_per_m', 1],
  ],
  // Whatever the currency, its hundredth part is one hundredth.
  money: [
    ...['usd', 'eur', 'gbp', 'dollar', 'dollars', 'euro', 'euros', 'pounds'].map(
      (name): Row => [name, 1],
    ),
    ...['cent', 'cents', 'ct', 'pence', 'pennies'].map((name): Row => [name, 0.01]),
  ],
  specificWeight: [
    ['n_m3', 1],
    ['kn_m3', 1000],
    ['lbf_ft3', poundForce / cubicFoot],
  ],
  headPerPressure: [
    ['m_per_pa', 1],
    ['m_per_kpa', 1e-3],
    ['m_per_bar', 1e-5],
    ['ft_per_psi', (foot * inch ** 2) / poundForce],
    ['ft_per_inhg', foot / 3386.389],
  ],
  apparentPower: [
    ['va', 1],
    ['kva', 1000],
  ],
  pressureGradient: [
    ['pa_per_m', 1],
    ['kpa_per_m', 1000],
    ['kpa_per_100_m', 10],
    ['bar_per_m', 1e5],
    ['mbar_per_100_m', 1],
    ['mbar_per_m', 100],
    ['bar_per_100_m', 1000],
    ['psi_per_ft', poundForce / inch ** 2 / foot],
    ['inhg_per_ft', 3386.389 / foot],
    ['psi_per_100_ft', poundForce / inch ** 2 / (100 * foot)],
  ],
};

/** Every spelling with its unit. */
export const keyUnits: ReadonlyMap<string, KeyUnit> = new Map(
  (Object.entries(rows) as [Dimension, readonly Row[]][]).flatMap(([dimension, entries]) =>
    entries.map(([spelling, factor, zero = 0]) => [spelling, { dimension, factor, zero }] as const),
  ),
);

const byWords: ReadonlyMap<string, KeyUnit> = new Map(
  [...keyUnits]
    .filter(([spelling]) => unitWords(spelling) !== '')
    // "per_ft" is no foot.
    .filter(([spelling]) => !(spelling.startsWith('per_') && keyUnits.has(unitWords(spelling))))
    .toReversed()
    .map(([spelling, unit]) => [unitWords(spelling), unit] as const),
);

/** The unit a key spells, in whatever words; "per" may be left out, but where nothing else stands. */
export function unitFrom(spelling: string): KeyUnit | undefined {
  return (
    keyUnits.get(spelling) ??
    (spelling.startsWith('per_') ? undefined : byWords.get(unitWords(spelling)))
  );
}

/** A bare number: a ratio, a coefficient, a count. */
export const bare: KeyUnit = { dimension: 'ratio', factor: 1, zero: 0 };
