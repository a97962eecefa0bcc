/** Keys such as `flow_2_gpm` taken apart: a name, perhaps an index, a unit. */
import type { Json } from './caseFile.ts';
import { bare, type KeyUnit, keyUnits, unitFrom } from './keyUnits.ts';
import type { Kind } from './nameKinds.ts';
import { nameOf } from './names.ts';

export interface Key {
  /** As it stands in the file. */
  readonly raw: string;
  readonly name: string;
  /** `name` with the index behind it, "speed#2", the way rules ask for it. */
  readonly id: string;
  readonly index?: number;
  readonly unit: KeyUnit;
  /** A temperature spelled at the end, `head_ft_at_4_c` [degC]. */
  readonly at?: number;
  /** Any other condition, `hours_at_2400` or `velocity_ft_s_at_40_gpm`; the name then ends in "@". */
  readonly condition?: Condition;
}

export interface Condition {
  /** As spelled: "2400", "40_gpm", "low". */
  readonly text: string;
  /** The key that would state it as an input; undefined where it has no unit that tells. */
  readonly input?: string;
  readonly value: number;
  /** The key without it. */
  readonly rest: string;
}

/** A value in SI; words, flags and null as they are; lists and objects untouched but for numbers. */
export type Value = Json;

const ordinals: Readonly<Record<string, number>> = {
  first: 1,
  second: 2,
  third: 3,
  fourth: 4,
  fifth: 5,
  sixth: 6,
  a: 1,
  b: 2,
  c: 3,
};

const longestUnit = 5;

function indexOf(token: string): number | undefined {
  return /^[1-9]$/.test(token) ? Number(token) : ordinals[token];
}

interface Named {
  readonly name: string;
  readonly index?: number;
}

function kindsFor({ dimension }: KeyUnit): readonly Kind[] {
  if (dimension === 'temperature') return ['temperature', 'temperatureDifference'];
  if (dimension === 'ratio') return ['ratio', 'number'];
  if (dimension === 'money') return ['number'];
  return [dimension];
}

function firstMeaning(spelling: string, kinds: readonly Kind[]): string | undefined {
  return kinds.map((kind) => nameOf(spelling, kind)).find((name) => name !== undefined);
}

/** Tries the words as a name, then with one index taken out of them. */
function named(tokens: readonly string[], kinds: readonly Kind[]): Named | undefined {
  const whole = firstMeaning(tokens.join('_'), kinds);
  if (whole !== undefined) return { name: whole };
  const words = tokens.filter((token) => token !== 'of');
  const indices = words.map(indexOf).filter((index) => index !== undefined);
  const [index] = indices;
  if (indices.length !== 1 || index === undefined) return undefined;
  const name = firstMeaning(words.filter((token) => indexOf(token) === undefined).join('_'), kinds);
  return name === undefined ? undefined : { name, index };
}

function keyFrom(raw: string, found: Named, unit: KeyUnit, at: number | undefined): Key {
  const { name, index } = found;
  return {
    raw,
    name,
    id: index === undefined ? name : `${name}#${index}`,
    unit,
    ...(index === undefined ? {} : { index }),
    ...(at === undefined ? {} : { at }),
  };
}

const condition = /^(.+)_at_(-?\d+(?:\.\d+)?)_(c|f)$/;

/** Differences of temperature shift no zero. */
function unitFor(name: string, unit: KeyUnit): KeyUnit {
  const isDifference = nameOf('temperature_rise', 'temperatureDifference') === name;
  return isDifference ? { ...unit, dimension: 'temperatureDifference', zero: 0 } : unit;
}

/** Takes a key apart; undefined when some part of it is not known. */
export function parseKey(raw: string): Key | undefined {
  return keyInAnyOrder(raw) ?? conditioned(raw);
}

function keyInAnyOrder(raw: string): Key | undefined {
  // By the day is how all cases count: "hours_per_day" are hours.
  const daily = raw.replace(/_(per|a)_day$/, '');
  if (daily !== raw) return keyOf(raw) ?? withRaw(raw, keyOf(daily));
  const [, before, often] = /^(.+)_(per_(?:hour|week|month|year|season))$/.exec(raw) ?? [];
  const [unit = '', ...name] = raw.split('_');
  return (
    keyOf(raw) ??
    // "energy_kwh_per_year" for "energy_per_year_kwh".
    withRaw(raw, often === undefined ? undefined : keyOf(`${often}_${before}`)) ??
    // "hours_needed" for "needed_hours".
    withRaw(raw, unitFrom(unit) && keyOf([...name, unit].join('_')))
  );
}

/** How an input of a quantity is called where only its unit is known. */
const usualName: Partial<Record<KeyUnit['dimension'], string>> = {
  flow: 'flow',
  speed: 'speed',
  time: 'time',
  temperature: 'temperature',
  velocity: 'velocity',
  pressure: 'pressure',
};

function conditionOf(text: string, rest: string): Condition {
  const [, digits, spelled = ''] = /^(-?\d+(?:\.\d+)?)(?:_(.+))?$/.exec(text) ?? [];
  const value = Number(digits ?? Number.NaN);
  // No other quantity of a pump has such numbers.
  if (spelled === '' && value >= 300) return { text, rest, value, input: 'speed_rpm' };
  const unit = unitFrom(spelled);
  const name = unit && usualName[unit.dimension];
  return { text, rest, value, ...(name === undefined ? {} : { input: `${name}_${spelled}` }) };
}

/** A value at a condition, `share_after_8_h`: another name, so that no rule overlooks it. */
function conditioned(written: string): Key | undefined {
  // "power_at_1725_rpm_w" for "power_w_at_1725_rpm".
  const raw = written.replace(/^(.+)(_at_\d+_rpm)_(.+)$/, '$1_$3$2');
  const [, rest, text] = /^(.+)_(?:at|after|within)_([^_]+(?:_[^_]+)*)$/.exec(raw) ?? [];
  const key = rest === undefined ? undefined : keyInAnyOrder(rest);
  if (key === undefined || rest === undefined || text === undefined) return undefined;
  const [name, id] = [`${key.name}@`, `${key.id}@${text}`];
  return { ...key, raw: written, name, id, condition: conditionOf(text, rest) };
}

const withRaw = (raw: string, key: Key | undefined): Key | undefined => key && { ...key, raw };

function keyOf(raw: string): Key | undefined {
  const lower = raw.toLowerCase();
  const [, before, degrees, scale] = condition.exec(lower) ?? [];
  const atUnit = keyUnits.get(scale ?? '');
  const at = atUnit === undefined ? undefined : toCanonical(Number(degrees), atUnit);
  const tokens = (before ?? lower).split('_');
  for (let length = Math.min(longestUnit, tokens.length); length > 0; length -= 1) {
    const unit = unitFrom(tokens.slice(-length).join('_'));
    const found = unit && named(tokens.slice(0, -length), kindsFor(unit));
    if (unit && found) return keyFrom(raw, found, unitFor(found.name, unit), at);
  }
  const found = named(tokens, ['number', 'text', 'structure', 'flag']);
  if (found) return keyFrom(raw, found, bare, at);
  return structureWithUnit(raw, tokens);
}

/** `vertices_ft`, `parallel_…`: a list whose numbers all share one unit. */
function structureWithUnit(raw: string, tokens: readonly string[]): Key | undefined {
  for (let length = Math.min(longestUnit, tokens.length - 1); length > 0; length -= 1) {
    const unit = unitFrom(tokens.slice(-length).join('_'));
    const found = unit && named(tokens.slice(0, -length), ['structure']);
    if (unit && found) return keyFrom(raw, found, unit, undefined);
  }
  return undefined;
}

/** A shown number in SI. */
export function toCanonical(value: number, { factor, zero }: KeyUnit): number {
  return (value - zero) * factor;
}

/** An SI number in the unit of a key. */
export function fromCanonical(value: number, { factor, zero }: KeyUnit): number {
  return value / factor + zero;
}

/** A value with every number in it in SI; objects are left for the rule that knows their keys. */
export function valueInSI(value: Json, unit: KeyUnit): Value {
  if (typeof value === 'number') return toCanonical(value, unit);
  if (Array.isArray(value)) return (value as readonly Json[]).map((each) => valueInSI(each, unit));
  return value;
}
