import * as fc from 'fast-check';
import { demos } from '#pad/demos/demos.ts';
import { checkDocument } from '#pad/document/check.ts';
import { padJsonSchema } from '#pad/document/jsonSchema.ts';
import type { Pad } from '#pad/document/schema.ts';
import { type Path, withValueAt } from '#pad/messages/path.ts';
import { documents } from './fromJsonSchema.ts';

/** Gives every entry with an id one that nothing else has. */
function withOwnIds(value: unknown, next: { number: number }): unknown {
  if (Array.isArray(value)) return value.map((item) => withOwnIds(item, next));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([name, inner]) => {
    if (name !== 'id') return [name, withOwnIds(inner, next)] as const;
    next.number += 1;
    return [name, `id-${next.number}`] as const;
  });
  return Object.fromEntries(entries);
}

/** Documents that the published JSON Schema allows, with ids that tell their entries apart. */
export const padDocuments: fc.Arbitrary<unknown> = documents(padJsonSchema()).map((document) =>
  withOwnIds(document, { number: 0 }),
);

/** Whole pads of any content the definition allows. */
export const pads: fc.Arbitrary<Pad> = padDocuments.map((document) => {
  const checked = checkDocument(document);
  if (!checked.ok) throw new Error(JSON.stringify(checked.problems[0]));
  return checked.pad;
});

/** Where the numbers of a document stand. */
function numberPaths(value: unknown, path: Path = []): readonly Path[] {
  if (typeof value === 'number') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) =>
    numberPaths(inner, [...path, Array.isArray(value) ? Number(name) : name]),
  );
}

const oddNumbers = fc.oneof(
  fc.constantFrom(null, 0, 1e-12, 1e-6, 0.01, 1, 100, 1000),
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.integer({ min: 0, max: 5000 }),
);

/** Examples with a few of their numbers replaced by others that the definition allows. */
export const alteredDemos: fc.Arbitrary<Pad> = fc.constantFrom(...demos).chain(({ pad }) =>
  fc
    .array(fc.tuple(fc.constantFrom(...numberPaths(pad)), oddNumbers), { maxLength: 6 })
    .map((changes) =>
      changes.reduce((before, [path, value]) => {
        const after = withValueAt(before, path, value);
        return checkDocument(after).ok ? after : before;
      }, pad),
    ),
);
