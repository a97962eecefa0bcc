/** Whether a value that the core gives is the one a case expects. */
import { isObject, type Json, type Tolerance } from './caseFile.ts';
import { fromCanonical, type Key, type Value } from './keys.ts';

export interface Verdict {
  readonly key: string;
  readonly expected: Json;
  /** In the unit of the key. */
  readonly got: Json;
  readonly agrees: boolean;
}

/** What converting to SI and back may cost, so that a tolerance of 0 can be met. */
const roundTrip = 4 * Number.EPSILON;

/** The tolerance counts in the unit of the expected value; of two, the wider one holds. */
function numbersAgree(expected: number, got: number, tolerance: Tolerance): boolean {
  const { relative = 0, absolute = 0 } = tolerance;
  return (
    Math.abs(got - expected) <=
    Math.max(Math.max(relative, roundTrip) * Math.abs(expected), absolute)
  );
}

/** A case may leave it out, as it may leave out what is 0. */
export const restOfDay = 'off';

function agrees(expected: Json, got: Json, tolerance: Tolerance): boolean {
  if (typeof expected === 'number' && typeof got === 'number') {
    return numbersAgree(expected, got, tolerance);
  }
  if (Array.isArray(expected) && Array.isArray(got)) {
    return (
      expected.length === got.length &&
      expected.every((each: Json, index) => agrees(each, got[index] as Json, tolerance))
    );
  }
  if (isObject(expected) && isObject(got)) {
    const names = Object.keys(expected);
    const others = Object.entries(got).filter(([name]) => !names.includes(name));
    return (
      names.every((name) => agrees(expected[name] ?? null, got[name] ?? null, tolerance)) &&
      others.every(([name, value]) => value === 0 || name === restOfDay)
    );
  }
  return expected === got || (got === restOfDay && (expected === null || expected === 0));
}

function shown(value: Value, key: Key): Json {
  if (typeof value === 'number') return fromCanonical(value, key.unit);
  if (Array.isArray(value)) return (value as readonly Json[]).map((each) => shown(each, key));
  return value;
}

/** Compares one expected value with the core's, which is in SI. */
export function compare(expected: Json, value: Value, key: Key, tolerance: Tolerance): Verdict {
  const got = shown(value, key);
  return { key: key.raw, expected, got, agrees: agrees(expected, got, tolerance) };
}
