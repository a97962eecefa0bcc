/**
 * Units as the keys of case files spell them (`flow_m3_h`), with their size in SI. The figures stand
 * here and not in `src/units` on purpose: a check must not borrow the factors it checks.
 * Source: NIST SP 811 (2008), appendix B.8; exact products where it prints them as exact.
 */
const inch = 0.0254;
const foot = 0.3048;
const poundForce = 4.4482216152605;
const gallon = 3.785411784e-3;
const btu = 1055.05585262;
const hour = 3600;
const kilowattHour = 3.6e6;

const factors: Readonly<Record<string, number>> = {
  share: 1,
  ratio: 1,
  percent: 0.01,
  per_100: 0.01,
  m: 1,
  mm: 1e-3,
  in: inch,
  ft: foot,
  m2: 1,
  ft2: foot ** 2,
  m3: 1,
  l: 1e-3,
  gal: gallon,
  ft3: foot ** 3,
  m3_s: 1,
  m3_h: 1 / hour,
  l_min: 1e-3 / 60,
  gpm: gallon / 60,
  m_s: 1,
  ft_s: foot,
  pa: 1,
  kpa: 1000,
  bar: 1e5,
  psi: poundForce / inch ** 2,
  inhg: 3386.389,
  c: 1,
  f: 5 / 9,
  kg_m3: 1,
  j_kg_k: 1,
  m2_s: 1,
  pa_s: 1,
  g: 1e-3,
  lb: 0.45359237,
  g_per_h: 1e-3 / hour,
  mg_l: 1e-3,
  w: 1,
  kw: 1000,
  hp: 550 * foot * poundForce,
  btu_per_h: btu / hour,
  kwh: kilowattHour,
  btu,
  h: hour,
  hours: hour,
  rpm: 1,
  v: 1,
  a: 1,
  per_kwh: 1,
  per_1000_gal: 1 / (1000 * gallon),
  kwh_per_1000_gal: kilowattHour / (1000 * gallon),
  kgal_per_kwh: (1000 * gallon) / kilowattHour,
  gal_per_wh: gallon / hour,
  l_per_m: 1e-3,
  gal_per_100_ft: gallon / (100 * foot),
};

export interface KeyUnit {
  /** si = (value - zero) * factor. */
  readonly factor: number;
  readonly zero: number;
}

export interface SpelledKey {
  /** What stands before the unit. */
  readonly words: readonly string[];
  /** The unit as the key spells it; empty for a bare number. */
  readonly spelling: string;
  /** `head_ft_at_4_c`: the temperature [degC] it counts at. */
  readonly celsius?: number;
  readonly unit: KeyUnit;
}

const condition = /^(.+)_at_(\d+)_c$/;

/** The C of Hazen and Williams is no temperature. */
const bare = ['hazen_williams_c'];

/** Takes a key apart; the longest spelling of a unit at its end counts. */
export function spelledKey(key: string): SpelledKey {
  const [, before = key, degrees] = condition.exec(key) ?? [];
  const tokens = before.split('_');
  const from = tokens.findIndex((_, place) =>
    Object.hasOwn(factors, tokens.slice(place).join('_')),
  );
  const isBare = from < 0 || bare.includes(key);
  const words = isBare ? tokens : tokens.slice(0, from);
  const spelling = isBare ? '' : tokens.slice(from).join('_');
  // A difference of temperature shifts no zero.
  const zero = spelling === 'f' && !words.includes('rise') ? 32 : 0;
  return {
    words,
    spelling,
    ...(degrees === undefined ? {} : { celsius: Number(degrees) }),
    unit: { factor: factors[spelling] ?? 1, zero },
  };
}

/** A number under a key, in SI (temperatures in degC). */
export function toCanonical(key: string, value: number): number {
  const { factor, zero } = spelledKey(key).unit;
  return (value - zero) * factor;
}

/** A number in SI as a key shows it. */
export function fromCanonical(key: string, value: number): number {
  const { factor, zero } = spelledKey(key).unit;
  return value / factor + zero;
}
