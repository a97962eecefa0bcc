import type * as fc from 'fast-check';
import { checkDocument } from '#pad/check.ts';
import { padJsonSchema } from '#pad/jsonSchema.ts';
import type { Pad } from '#pad/schema.ts';
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
