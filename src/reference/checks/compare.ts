/** Whether a value that the core gives is the one a case expects. */
import { isObject, type Json, type Tolerance } from './caseFile.ts';
import { fromCanonical } from './units.ts';

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
  const allowed = Math.max(Math.max(relative, roundTrip) * Math.abs(expected), absolute);
  return Math.abs(got - expected) <= allowed;
}

/** Booleans, texts and null match exactly; a map may leave out what is 0. */
function agrees(expected: Json, got: Json, tolerance: Tolerance): boolean {
  if (typeof expected === 'number' && typeof got === 'number')
    return numbersAgree(expected, got, tolerance);
  if (isObject(expected) && isObject(got))
    return [...new Set([...Object.keys(expected), ...Object.keys(got)])].every((name) =>
      agrees(expected[name] ?? 0, got[name] ?? 0, tolerance),
    );
  return expected === got;
}

/** Compares one expected value with the core's, which is in SI. */
export function compare(key: string, expected: Json, value: Json, tolerance: Tolerance): Verdict {
  const got = typeof value === 'number' ? fromCanonical(key, value) : value;
  return { key, expected, got, agrees: agrees(expected, got, tolerance) };
}
