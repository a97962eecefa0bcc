import { grouped, shortest } from '#units/numerals.ts';

/** How units are spelled in the keys of case files, and how a reader spells them. */
const unitWords: Readonly<Record<string, string>> = {
  pa_s: 'Pa s',
  mpa_s: 'mPa s',
  j_kg_k: 'J/(kg K)',
  kj_kg_k: 'kJ/(kg K)',
  percent: '%',
  pct: '%',
  share: '',
  ratio: '',
  fraction: '',
};

const unitParts: Readonly<Record<string, string>> = {
  a: 'A',
  btu: 'Btu',
  c: '°C',
  degc: '°C',
  degf: '°F',
  f: '°F',
  hpa: 'hPa',
  inhg: 'inHg',
  j: 'J',
  k: 'K',
  kpa: 'kPa',
  kw: 'kW',
  kwh: 'kWh',
  l: 'L',
  mpa: 'MPa',
  pa: 'Pa',
  um: 'µm',
  v: 'V',
  w: 'W',
  wh: 'Wh',
};

const unitPart = (token: string): string =>
  unitParts[token] ?? token.replace(/([a-z])([23])$/, (_, unit, power) => unit + '²³'[power - 2]);

const unitTerms = (spelling: string): string[] => spelling.split('_').map(unitPart);

/** A unit as a key spells it (`m3_h`, `kgal_per_kwh`), for the eye (`m³/h`, `kgal/kWh`). */
export function unitSymbol(spelling: string): string {
  const known = unitWords[spelling];
  if (known !== undefined) return known;
  if (spelling.startsWith('per_')) return `per ${unitTerms(spelling.slice(4)).join(' ')}`;
  const [top = '', bottom] = spelling.split('_per_');
  const [first = '', ...others] = unitTerms(top);
  if (bottom !== undefined) return `${first}/${unitTerms(bottom).join(' ')}`;
  return others.length === 0 ? first : `${first}/${others.join(' ')}`;
}

/** Signs that keep their capitals among the words of a key. */
const signs: Readonly<Record<string, string>> = {
  c: 'C',
  hazen: 'Hazen',
  k: 'K',
  npsh: 'NPSH',
  pn: 'PN',
  reynolds: 'Reynolds',
  tdh: 'TDH',
  wef: 'WEF',
  williams: 'Williams',
};

/** The words of a key, as text. */
export const keyWords = (tokens: readonly string[]): string =>
  tokens.map((token) => signs[token] ?? token).join(' ');

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const superscript = (power: number): string =>
  (power < 0 ? '⁻' : '') +
  [...String(Math.abs(power))].map((digit) => superscripts[Number(digit)]).join('');

/** A number to so many figures, by powers of ten where it is very small or large. */
export function readable(value: number, figures = 7): string {
  if (value === 0) return '0';
  const power = Math.floor(Math.log10(Math.abs(value)));
  if (power >= -4 && power < 8) return grouped(shortest(value, figures));
  return `${grouped(shortest(value / 10 ** power, figures))} × 10${superscript(power)}`;
}

/** The difference as a share, in the roundest words that are still true. */
export function differenceText(share: number): string {
  if (share === 0) return 'none';
  if (share < 1e-9) return 'under 1 in 10⁹';
  if (share < 1e-6) return 'under 1 in 10⁶';
  return `${shortest(share * 100, 2)} %`;
}

/** Where a copy was read says nothing about the figure; what was read does. */
const whereRead: readonly RegExp[] = [
  /; (?:also )?read in (?:github|a stored) .*$/,
  /; 100 f_T also read in .*$/,
  /,? (?:asserted in )?github [\w.-]+\/[\w.-]+ at \w+(?:, test\.py, [^;]*)?/g,
  /,? (?:source|table-data|generate)\/[^\s;,)]*/g,
  /,? scan stored as scribd document \d+/g,
  /,? \((?:stored|hpxml|RnD)[^)]*\)/g,
  /, stored [^;]*/g,
  /, quoted in stored [^;]*/g,
  /, after the Engineering ToolBox/g,
  / and table-data[^\s;,)]*/g,
  /[;,] (?:text |figure )?not visible here/g,
];

/** The source of a case in one line: the document or the library, without where a copy of it lay. */
export function shownSource(source: string): string {
  const short = whereRead.reduce((text, pattern) => text.replace(pattern, ''), source);
  const text = short
    .replace(/^stored wiki page/, 'public page')
    .replace(/ and$/, '')
    .replace(/\s+/g, ' ')
    .replace(/ ([,;.])/g, '$1')
    .trim();
  // Names of functions begin small; sentences do not.
  return /^[a-z]+ [a-z]/.test(text) ? text.charAt(0).toUpperCase() + text.slice(1) : text;
}
