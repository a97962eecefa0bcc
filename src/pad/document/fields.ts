import * as z from 'zod/mini';
import type { Quantity } from '#units/quantities.ts';
import { manyLines, oneLine } from './oneLine.ts';

/*
 * The site's policy for scripts forbids making code from strings. The validator would probe for
 * that and leave a report in the console, so it is told at once to work without.
 */
z.config({ jitless: true });

/** A type whose every level is read only: a pad is replaced, never changed in place. */
export type DeepReadonly<T> = T extends object
  ? { readonly [Key in keyof T]: DeepReadonly<T[Key]> }
  : T;

/**
 * A finite number that may be unknown; a file may leave it out, a pad always holds it or null.
 * `kind` names the quantity, so that a problem with it can be told in the reader's unit.
 */
export function quantity(
  kind: Quantity | null,
  description: string,
  least: number,
  greatest: number,
) {
  const number = z.number().check(z.gte(least), z.lte(greatest));
  const meta = kind === null ? { description } : { description, quantity: kind };
  return z._default(z.nullable(number), null).check(z.meta(meta));
}

/** A whole number of minutes that may be unknown. */
export function minutes(description: string) {
  const number = z.int().check(z.gte(0), z.lte(1440));
  return z._default(z.nullable(number), null).check(z.meta({ description }));
}

/** A minute of the day that must be present, 0 (midnight) to 1439. */
export function minuteOfDay(description: string) {
  return z.int().check(z.gte(0), z.lte(1439), z.meta({ description }));
}

/** Words of the reader's own on one line; empty when left out. */
export function words(description: string, longest = 120) {
  const text = z.string().check(z.maxLength(longest), z.regex(oneLine));
  return z._default(text, '').check(z.meta({ description }));
}

/** Words of the reader's own on any number of lines; empty when left out. */
export function lines(description: string, longest: number) {
  const text = z.string().check(z.maxLength(longest), z.regex(manyLines));
  return z._default(text, '').check(z.meta({ description }));
}

/** One of a few words, or null when the reader has not said. */
export function choice<const Words extends readonly [string, ...string[]]>(
  description: string,
  options: Words,
) {
  return z._default(z.nullable(z.enum(options)), null).check(z.meta({ description }));
}

/** A name that stays with one thing in the document for its whole life. */
export function identifier(description: string) {
  return z.string().check(z.regex(/^[A-Za-z0-9_-]{1,40}$/), z.meta({ description }));
}

/** A list, empty when left out, with a cap that keeps a hostile file from filling memory. */
export function list<Item extends z.core.$ZodType>(
  description: string,
  item: Item,
  longest: number,
) {
  return z._default(z.array(item).check(z.maxLength(longest)), []).check(z.meta({ description }));
}

/** A part of the document that may be left out of a file; it is then read from `whenLeftOut`. */
export function part<Schema extends z.core.$ZodType>(
  description: string,
  schema: Schema,
  whenLeftOut: z.core.util.NoUndefined<z.core.input<Schema>>,
) {
  return z.prefault(schema, whenLeftOut).check(z.meta({ description }));
}
