/**
 * The grammar of case files: the file's name, the set of input keys and the set of expected keys
 * choose a row of the table, and the row names the function of the core for each expected key.
 */
import type { z } from 'zod';
import { complaints, type Json, type ReferenceCase } from './caseFile.ts';
import { toCanonical } from './units.ts';

/** The case asks for something the table does not hold. It is skipped, never counted as a miss. */
export class NotInGrammar extends Error {
  override readonly name = 'NotInGrammar';
}

/** One input: how its unit may be spelled, and how its value is read. */
export interface Input<T> {
  /** Spellings that may follow the name; none where the name stands alone. */
  readonly units: readonly string[];
  readonly read: (key: string, value: Json) => T;
}

/** A number with a unit, read in SI; a bare number where no unit is named. */
export function number(...units: readonly string[]): Input<number> {
  return {
    units,
    read: (key, value) => {
      if (typeof value === 'number') return toCanonical(key, value);
      throw new NotInGrammar(`${key} is not a number`);
    },
  };
}

/** A text that chooses; it takes the texts of the table. */
export function choice<T>(texts: Readonly<Record<string, T>>): Input<T> {
  return {
    units: [],
    read: (key, value) => {
      if (typeof value === 'string' && Object.hasOwn(texts, value)) return texts[value] as T;
      throw new NotInGrammar(`${key} does not take ${JSON.stringify(value)}`);
    },
  };
}

/** A list, an object or a text of its own form. */
export function formed<T>(schema: z.ZodType<T>, ...units: readonly string[]): Input<T> {
  return {
    units,
    read: (key, value) => {
      const read = schema.safeParse(value);
      if (read.success) return read.data;
      throw new NotInGrammar(`${key}: ${complaints(read.error)}`);
    },
  };
}

type Inputs = Readonly<Record<string, Input<unknown>>>;
type Read<I> = I extends Input<infer T> ? T : never;
export type Given<I extends Inputs, O extends Inputs> = {
  readonly [K in keyof I]: Read<I[K]>;
} & { readonly [K in keyof O]?: Read<O[K]> | undefined };

export interface Row {
  readonly inputs: Inputs;
  readonly optional: Inputs;
  /** For each expected key the value, in SI, that the core gives. */
  readonly gives: Readonly<Record<string, (given: never, what: string) => Json>>;
}

/** A row of the table. */
export function row<const I extends Inputs, const O extends Inputs>(
  inputs: I,
  optional: O,
  gives: Readonly<Record<string, (given: Given<I, O>, what: string) => Json>>,
): Row {
  return { inputs, optional, gives };
}

/** An optional input that this answer cannot do without. */
export function need(value: number | undefined, name: string): number {
  if (value === undefined) throw new NotInGrammar(`${name} is missing`);
  return value;
}

/** A value given, else one that follows from others; both must agree to 1 %, or the case contradicts itself. */
export function agreed(name: string, given: number | undefined, other: number | undefined): number {
  const value = need(given ?? other, name);
  if (other !== undefined && Math.abs(value - other) > 0.01 * Math.abs(value))
    throw new NotInGrammar(`${name} is stated in two ways that differ`);
  return value;
}

/** The name of the input that a key stands for in a row. */
function nameIn({ inputs, optional }: Row, key: string): string | undefined {
  return Object.entries({ ...inputs, ...optional }).find(([name, { units }]) =>
    units.length === 0 ? key === name : units.some((unit) => key === `${name}_${unit}`),
  )?.[0];
}

/** What keeps a case from a row. */
function obstacles(row: Row, { inputs, expected }: ReferenceCase): readonly string[] {
  const keys = Object.keys(inputs);
  const names = keys.map((key) => nameIn(row, key));
  return [
    ...keys.filter((_, place) => names[place] === undefined).map((key) => `takes no ${key}`),
    ...keys
      .filter((_, place) => names[place] && names.indexOf(names[place]) < place)
      .map((key) => `takes no ${key} beside its like`),
    ...Object.keys(row.inputs)
      .filter((name) => !names.includes(name))
      .map((name) => `needs ${name}`),
    ...Object.keys(expected)
      .filter((key) => !Object.hasOwn(row.gives, key))
      .map((key) => `gives no ${key}`),
  ];
}

function rowFor(rows: readonly Row[], file: string, each: ReferenceCase): Row {
  const strangers = [
    ...Object.keys(each.inputs).filter((key) => rows.every((row) => !nameIn(row, key))),
    ...Object.keys(each.expected).filter((key) =>
      rows.every(({ gives }) => !Object.hasOwn(gives, key)),
    ),
  ];
  if (strangers.length > 0)
    throw new NotInGrammar(`not in the grammar of ${file}: ${strangers.join(', ')}`);
  const [nearest] = rows
    .map((row) => ({ row, stops: obstacles(row, each) }))
    .toSorted((one, other) => one.stops.length - other.stops.length);
  if (nearest?.stops.length === 0) return nearest.row;
  throw new NotInGrammar(
    `no row of ${file} has these keys: the nearest ${nearest?.stops.join(', ')}`,
  );
}

/** What the core says to each expected key of a case, in SI. Throws NotInGrammar where no row does. */
export function answers(
  table: Readonly<Record<string, readonly Row[]>>,
  file: string,
  each: ReferenceCase,
): readonly (readonly [key: string, value: Json])[] {
  const rows = Object.hasOwn(table, file) ? table[file] : undefined;
  if (rows === undefined) throw new NotInGrammar(`there is no file ${file} in the grammar`);
  const row = rowFor(rows, file, each);
  const given = Object.fromEntries(
    Object.entries(each.inputs).map(([key, value]) => {
      const name = nameIn(row, key) ?? key;
      return [name, (row.inputs[name] ?? row.optional[name])?.read(key, value)];
    }),
  );
  return Object.keys(each.expected).map((key) => [
    key,
    row.gives[key]?.(given as never, each.what) ?? null,
  ]);
}
