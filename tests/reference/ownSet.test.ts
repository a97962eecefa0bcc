import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import {
  caseFileJsonSchema,
  isObject,
  type Json,
  type ReferenceCase,
} from '#reference/checks/caseFile.ts';
import { checkCase } from '#reference/checks/check.ts';
import { ownCases, ownTexts } from './ownSet.ts';

const schema = JSON.parse(
  readFileSync(new URL('case.schema.json', import.meta.url), 'utf8'),
) as object;

/** The set's own count; a case that is added or taken away is meant to be. */
const count = 485;

function outcomes(change: (each: ReferenceCase) => ReferenceCase) {
  return ownCases.map(([file, each]) => ({ file, each, outcome: checkCase(file, change(each)) }));
}

/** One case for each expected value, that value alone. */
const single = ownCases.flatMap(([file, each]) =>
  Object.entries(each.expected).map(([key, value]) => ({ file, each, key, value })),
);

/** As far off as ten tolerances; what has no size becomes something else. */
function altered(value: Json, { relative = 0, absolute = 0 }: ReferenceCase['tolerance']): Json {
  if (typeof value === 'number') {
    const off = 10 * Math.max(relative * Math.abs(value), absolute);
    return value + (off > 0 ? off : Math.max(1e-9, 1e-9 * Math.abs(value)));
  }
  if (isObject(value)) {
    const [[name, first] = ['', 0]] = Object.entries(value);
    return { ...value, [name]: altered(first, { relative, absolute }) };
  }
  if (typeof value === 'boolean') return !value;
  return value === null ? 0 : `${String(value)} `;
}

describe('the own set', () => {
  it('passes whole', () => {
    const all = outcomes((each) => each);
    expect(all.filter(({ outcome }) => outcome.kind !== 'passed')).toEqual([]);
    expect(all.length).toBe(count);
  });

  it('names its sources and how each was got', () => {
    const bare = ownCases.filter(([, each]) => each.source === '' || each.provenance === undefined);
    expect(bare).toEqual([]);
  });

  it('keeps the JSON Schema of a case file, which says what the reader takes', () => {
    expect(schema).toEqual(JSON.parse(JSON.stringify(caseFileJsonSchema())));
    const validate = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    for (const [file, text] of ownTexts) {
      validate(JSON.parse(text));
      expect([file, validate.errors]).toEqual([file, null]);
    }
  });
});

describe('any subset of the expected values, and nothing else', () => {
  it('each value alone passes', () => {
    const missed = single.filter(
      ({ file, each, key, value }) =>
        checkCase(file, { ...each, expected: { [key]: value } }).kind !== 'passed',
    );
    expect(missed).toEqual([]);
  });

  it('each value ten tolerances off, or another word, or null, fails', () => {
    const changed = single.flatMap((item) => [
      { ...item, other: altered(item.value, item.each.tolerance) },
      { ...item, other: item.value === null ? 'null' : null },
    ]);
    expect(changed.length).toBeGreaterThan(2 * count);
    const passed = changed.filter(
      ({ file, each, key, other }) =>
        checkCase(file, { ...each, expected: { ...each.expected, [key]: other } }).kind !==
        'failed',
    );
    expect(passed).toEqual([]);
  });

  it('a number alone is missed on either side', () => {
    const { file, each } = single.find(({ key }) => key === 'share') ?? expect.fail('no share');
    const share = each.expected['share'] as number;
    for (const factor of [1 - 1e-8, 1 + 1e-8])
      expect(checkCase(file, { ...each, expected: { share: share * factor } }).kind).toBe('failed');
  });

  it('one key too many on either side skips the case and is named', () => {
    const stray = { moon_phase: 1 };
    for (const { outcome } of [
      ...outcomes((each) => ({ ...each, inputs: { ...each.inputs, ...stray } })),
      ...outcomes((each) => ({ ...each, expected: { ...each.expected, ...stray } })),
    ])
      expect(outcome).toMatchObject({
        kind: 'skipped',
        reason: expect.stringContaining('moon_phase'),
      });
  });

  it('a key of another unit than the file has skips the case and is named', () => {
    for (const { each, outcome } of outcomes((item) => ({
      ...item,
      inputs: Object.fromEntries(
        Object.entries(item.inputs).map(([key, value], place) => [
          place === 0 ? `${key}_furlongs` : key,
          value,
        ]),
      ),
    })))
      expect(outcome).toMatchObject({
        kind: 'skipped',
        reason: expect.stringContaining(`${Object.keys(each.inputs)[0]}_furlongs`),
      });
  });

  it('a file of another name skips every case', () => {
    for (const [, each] of ownCases) expect(checkCase('tides', each).kind).toBe('skipped');
  });
});
