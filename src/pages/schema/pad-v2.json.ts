import { padJsonSchema } from '#pad/document/jsonSchema.ts';

/** The published definition of the pad file. */
export function GET(): Response {
  return new Response(`${JSON.stringify(padJsonSchema(), null, 2)}\n`, {
    headers: { 'content-type': 'application/schema+json' },
  });
}
