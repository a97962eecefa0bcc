import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demos } from '#pad/demos/demos.ts';
import { checkDocument } from '#pad/document/check.ts';
import { padJsonSchema } from '#pad/document/jsonSchema.ts';
import { padFileText } from '#pad/document/written.ts';
import { type Path, valueAt, withValueAt } from '#pad/messages/path.ts';

/*
 * The oracle is an independent validator of JSON Schema, draft 2020-12: whoever reads the published
 * schema with it must come to the same verdict as this site.
 */
const allows = new Ajv2020({ strict: true, allErrors: true, strictTuples: false }).compile(
  withoutOwnWords(padJsonSchema()),
);

/** The schema without annotations of our own, which a strict validator does not know. */
function withoutOwnWords(schema: unknown): Record<string, unknown> {
  return JSON.parse(
    JSON.stringify(schema, (name, value) => (name === 'quantity' ? undefined : value)),
  ) as Record<string, unknown>;
}

function placesIn(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [
    path,
    ...Object.entries(value).flatMap(([name, inner]) =>
      placesIn(inner, [...path, Array.isArray(value) ? Number(name) : name]),
    ),
  ];
}

describe('an independent validator', () => {
  test('allows every example as it is written to a file', () => {
    for (const { pad, title } of demos) {
      expect(
        allows(JSON.parse(padFileText(pad))),
        `${title}: ${JSON.stringify(allows.errors)}`,
      ).toBe(true);
    }
  });

  test('agrees with the site on examples with one value spoiled', () => {
    const documents = demos.map(({ pad }): unknown => JSON.parse(padFileText(pad)));
    const places = documents.flatMap((document) =>
      placesIn(document)
        .slice(1)
        .map((path) => ({ document, path })),
    );
    const spoiled = fc
      .tuple(
        fc.nat(places.length - 1),
        fc.constantFrom<unknown>(-1e9, 1e9, 0.5, -3, '', 'nonsense', null, true, [], {}),
      )
      .map(([at, value]) => {
        const { document, path } = places[at] as (typeof places)[number];
        return { path, document: withValueAt(document, path, value) };
      });
    let refused = 0;
    fc.assert(
      fc.property(spoiled, ({ path, document }) => {
        const ours = checkDocument(document);
        // That ids differ is a rule between entries, which a schema cannot say.
        fc.pre(ours.ok || ours.problems.every(({ code }) => code !== 'sameId'));
        if (!ours.ok) refused += 1;
        expect(
          allows(document),
          `${path.join('/')} = ${JSON.stringify(valueAt(document, path))}`,
        ).toBe(ours.ok);
      }),
      { numRuns: 200 },
    );
    expect(refused).toBeGreaterThan(30);
  }, 30_000);
});
