import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gaugeGrades as coreGrades } from '#core/fit/gauges.ts';
import { craneMultipliers } from '#core/hydraulics/fittings.ts';
import { demos } from '#pad/demos/demos.ts';
import { checkDocument, quantityAt, rangeAt } from '#pad/document/check.ts';
import { padJsonSchema, padSchemaPath } from '#pad/document/jsonSchema.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { fittingKinds } from '#pad/document/plumbingSchema.ts';
import { gaugeGrades } from '#pad/document/pumpSchema.ts';
import { padFormat, padVersion } from '#pad/document/version.ts';
import { GET } from '../../../src/pages/schema/pad-v2.json.ts';
import { padDocuments } from './arbitraryPads.ts';
import type { JsonSchema } from './fromJsonSchema.ts';

// Our own format: the checks here have no outside source, except where one is named.

function problemsOf(document: unknown) {
  const checked = checkDocument(document);
  return checked.ok ? [] : checked.problems.map(({ code, path }) => [code, path.join('/')]);
}

describe('the definition of the pad file', () => {
  test.each(demos.map(({ id, pad }) => [id, pad] as const))('accepts the %s example', (_, pad) => {
    expect(checkDocument(pad)).toEqual({ ok: true, pad });
  });

  test('accepts an empty pad, and fills in everything a bare file leaves out', () => {
    const bare = { format: padFormat, version: padVersion };
    expect(checkDocument(bare)).toEqual({ ok: true, pad: emptyPad('us') });
    expect(checkDocument(emptyPad('metric'))).toEqual({ ok: true, pad: emptyPad('metric') });
  });

  test('names a value that is too large, with its limit and its quantity', () => {
    const pad = { ...emptyPad(), site: { ...emptyPad().site, altitude: 9000 } };
    expect(checkDocument(pad)).toEqual({
      ok: false,
      problems: [
        {
          code: 'tooLarge',
          path: ['site', 'altitude'],
          values: {
            found: { quantity: 'length', value: 9000 },
            limit: { quantity: 'length', value: 5000 },
          },
        },
      ],
    });
  });

  test('refuses fields it does not know, so that a slip of the pen is not lost in silence', () => {
    expect(problemsOf({ ...emptyPad(), pomp: {} })).toEqual([['unknownField', '']]);
  });

  test('refuses what is no number, no finite number, or text in place of a number', () => {
    const withVolume = (volume: unknown) => ({ ...emptyPad(), pool: { kind: 'known', volume } });
    expect(problemsOf(withVolume('60'))).toEqual([['wrongType', 'pool/volume']]);
    expect(problemsOf(withVolume(Number.NaN))).toEqual([['wrongType', 'pool/volume']]);
    expect(problemsOf(withVolume(Number.POSITIVE_INFINITY))).toHaveLength(1);
  });

  test('refuses a kind of part that does not exist', () => {
    const plumbing = { suction: [{ kind: 'hose', id: 'a' }] };
    expect(problemsOf({ ...emptyPad(), plumbing })).toEqual([
      ['unknownKind', 'plumbing/suction/0/kind'],
    ]);
  });

  test('refuses an id that its list has already, however deep it lies', () => {
    const pipe = { kind: 'pipe', id: 'a' };
    const branches = [{ id: 'b', sections: [pipe] }];
    const plumbing = { suction: [pipe], discharge: [{ kind: 'parallel', id: 'c', branches }] };
    expect(problemsOf({ ...emptyPad(), plumbing })).toEqual([
      ['sameId', 'plumbing/discharge/0/branches/0/sections/0/id'],
    ]);
  });

  test('lets the same kind of day come back in each season', () => {
    const dayTypes = [{ id: 'weekday' }];
    const seasons = ['one', 'two'].map((id) => ({ id, from: { month: 1, day: 1 }, dayTypes }));
    expect(problemsOf({ ...emptyPad(), tariff: { seasons } })).toEqual([]);
  });

  test('knows the quantity of a field, also inside a choice of shapes', () => {
    expect(quantityAt(['pump', 'knowledge', 'points', 3, 'head'])).toBe('head');
    expect(quantityAt(['plumbing', 'discharge', 0, 'branches', 1, 'lift'])).toBe('length');
    expect(quantityAt(['limits', 'filterRate'])).toBe('filterRate');
    expect(quantityAt(['turnoverTarget'])).toBeNull();
    expect(quantityAt(['name'])).toBeNull();
    expect(quantityAt(['no', 'such', 'field'])).toBeNull();
  });

  test('knows the range of a field, so that a form need not repeat it', () => {
    expect(rangeAt(['site', 'altitude'])).toEqual({ least: -430, greatest: 5000 });
    expect(rangeAt(['needs', 0, 'minutes'])).toEqual({ least: 0, greatest: 1440 });
    expect(rangeAt(['name'])).toEqual({});
  });

  test('offers every fitting that the core has a coefficient for', () => {
    for (const kind of Object.keys(craneMultipliers)) expect(fittingKinds).toContain(kind);
  });

  // ASME B40.100: the grades are 4A to 1A, A, B, C and D; from memory.
  test('offers the accuracy grades of gauges that the core knows', () => {
    expect([...gaugeGrades].sort()).toEqual(Object.keys(coreGrades).sort());
  });
});

describe('the published JSON Schema', () => {
  const schema = padJsonSchema() as JsonSchema;

  test('says which dialect it is in, and is plain JSON', () => {
    // JSON Schema, draft 2020-12.
    expect(padJsonSchema()['$schema']).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  test('stands on the site at the address of its version', async () => {
    expect(padSchemaPath).toBe('/schema/pad-v2.json');
    expect(await GET().json()).toEqual(schema);
  });

  test('asks only for the format and the version', () => {
    expect(schema.required).toEqual(['format', 'version']);
  });

  test('describes every field', () => {
    const undescribed: string[] = [];
    const walk = (at: JsonSchema, path: string): void => {
      for (const [name, inner] of Object.entries(at.properties ?? {})) {
        const here = `${path}/${name}`;
        const plain = inner.const !== undefined || inner.$ref !== undefined;
        const isUnitChoice = path === '/units/overrides';
        if (inner.description === undefined && !plain && !isUnitChoice) undescribed.push(here);
        walk(inner, here);
      }
      for (const inner of [...(at.oneOf ?? []), ...(at.anyOf ?? []), ...(at.prefixItems ?? [])]) {
        walk(inner, path);
      }
      if (at.items !== undefined) walk(at.items, `${path}[]`);
      for (const [name, inner] of Object.entries(at.$defs ?? {})) walk(inner, `$${name}`);
    };
    walk(schema, '');
    expect(undescribed).toEqual([]);
  });

  test('allows nothing that the definition refuses', () => {
    fc.assert(
      fc.property(padDocuments, (document) => {
        expect(problemsOf(document)).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });
});
