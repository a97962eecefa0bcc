import * as z from 'zod/mini';
import { padSchema } from './schema.ts';
import { padVersion } from './version.ts';

/** Where the site publishes the definition of the pad file. */
export const padSchemaPath = `/schema/pad-v${padVersion}.json`;

/** The definition of the pad file as a JSON Schema, made from the very one that validates it. */
export function padJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(padSchema, { io: 'input', reused: 'inline' });
  const { $schema, ...rest } = schema;
  return {
    $schema,
    title: `Cubelaw pad file, version ${padVersion}`,
    description:
      'Everything a reader enters about a pool pad. Stored values are SI, with rpm for speeds, ' +
      'minutes for times of day and the currency of the tariff for money. A value that is not known ' +
      'is null or left out. Ids must be unique within each list, the plumbing counting as one.',
    ...rest,
  };
}
