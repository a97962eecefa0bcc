import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  isObject,
  type Json,
  type JsonObject,
  type ReferenceCase,
  readCaseFile,
} from './caseFile.ts';
import { checkCase, type Outcome } from './check.ts';
import { fromCanonical, type Key, parseKey, toCanonical } from './keys.ts';
import { bare, keyUnits } from './keyUnits.ts';

/*
 * The project's own set, rewritten: every number in another unit of its quantity. The sources are
 * those of the cases; the conversions are those of NIST SP 811 in keyUnits.
 */

const cases = join(new URL('.', import.meta.url).pathname, 'cases');

/** Numbers without a unit that may be written in percent. */
const shares = ['share', 'filterEfficiency', 'efficiency', 'outputShare', 'branchShare'];

interface Rewritten {
  readonly raw: string;
  readonly key: Key;
}

/** The same key with another unit: the next spelling of its dimension that still says the same. */
function otherKey(key: Key): Rewritten | undefined {
  const spellings = [...keyUnits].filter(
    ([, unit]) => unit.dimension === key.unit.dimension && unit.factor !== key.unit.factor,
  );
  const candidates =
    key.unit === bare
      ? shares.includes(key.name)
        ? [`${key.raw.replace(/_share$/, '')}_percent`]
        : []
      : spellings.map(([spelling]) => `${key.raw.slice(0, -ownSpelling(key).length)}${spelling}`);
  return candidates
    .map((raw) => ({ raw, key: parseKey(raw) }))
    .find((each): each is Rewritten => each.key?.id === key.id && each.key.unit !== key.unit);
}

function ownSpelling(key: Key): string {
  const spellings = [...keyUnits].filter(
    ([spelling, unit]) =>
      unit.factor === key.unit.factor && (key.raw === spelling || key.raw.endsWith(`_${spelling}`)),
  );
  return spellings.map(([spelling]) => spelling).sort((a, b) => b.length - a.length)[0] ?? '';
}

function rewriteValue(value: Json, from: Key, to: Key): Json {
  if (typeof value === 'number') {
    return fromCanonical(toCanonical(value, from.unit), to.unit);
  }
  if (Array.isArray(value)) {
    return (value as readonly Json[]).map((each) => rewriteValue(each, from, to));
  }
  return value;
}

/** Rewrites the keys that hold numbers; what is read in "the units of the case" stays. */
function rewrite(object: JsonObject): JsonObject {
  return Object.fromEntries(
    Object.entries(object).map(([raw, value]) => {
      if (Array.isArray(value) && (value as readonly Json[]).every(isObject)) {
        return [raw, (value as readonly JsonObject[]).map(rewrite)];
      }
      const key = parseKey(raw);
      const other = key === undefined || typeof value === 'string' ? undefined : otherKey(key);
      if (key === undefined || other === undefined || key.at !== undefined) return [raw, value];
      return [other.raw, rewriteValue(value, key, other.key)];
    }),
  );
}

/** The tolerance in the new units; a little wider for the conversion there and back. */
function rewriteTolerance({ tolerance, expected }: ReferenceCase, single: string) {
  const key = parseKey(single);
  const other =
    key === undefined || typeof expected[single] === 'string' ? undefined : otherKey(key);
  const size = key && other && key.at === undefined ? key.unit.factor / other.key.unit.factor : 1;
  return {
    relative: (tolerance.relative ?? 0) + 1e-11,
    absolute: (tolerance.absolute ?? 0) * size * (1 + 1e-9) + 1e-13 * size,
  };
}

/** One case per expected value, so that each tolerance is in one unit. */
function rewritten(each: ReferenceCase): readonly ReferenceCase[] {
  return Object.keys(each.expected).map((single) => ({
    ...each,
    inputs: rewrite(each.inputs),
    expected: rewrite({ [single]: each.expected[single] ?? null }),
    tolerance: rewriteTolerance(each, single),
  }));
}

/** A conversion between two units neither of which the site offers says nothing about the site. */
const isUnofferedConversion = (outcome: Outcome) =>
  outcome.kind === 'skipped' && outcome.reason.endsWith('neither unit is one the site offers');

const files = readdirSync(cases).filter((name) => name.endsWith('.json'));

/** A trade factor is for the unit it was rounded for, so those cases stay as they are. */
const isBoundToUnit = ({ inputs }: ReferenceCase) =>
  'factor' in inputs || 'pump_head_ft' in inputs || 'stations' in inputs;

describe('the own set says the same in other units', () => {
  it.each(files)('%s', (file) => {
    const content = readCaseFile(readFileSync(join(cases, file), 'utf8'));
    if (typeof content === 'string') return expect.fail(content);
    const wrong = content.cases
      .filter((each): each is ReferenceCase => typeof each !== 'string' && !isBoundToUnit(each))
      .flatMap(rewritten)
      .map((each) => ({ each, outcome: checkCase(content.quantity, each) }))
      .filter(({ outcome }) => outcome.kind !== 'passed' && !isUnofferedConversion(outcome));
    expect(wrong).toEqual([]);
  });
});
