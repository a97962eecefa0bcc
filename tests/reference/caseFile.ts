/** A file of cases as it lies on the disk, and how one is read. */

export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

export interface Tolerance {
  /** Share of the expected value. */
  readonly relative?: number;
  /** In the unit of the expected value. */
  readonly absolute?: number;
}

export interface ReferenceCase {
  readonly what: string;
  readonly inputs: JsonObject;
  readonly expected: JsonObject;
  readonly tolerance: Tolerance;
  readonly source: string;
}

export interface CaseFile {
  readonly quantity: string;
  /** One entry per case; text where a case lacks a part it cannot be judged without. */
  readonly cases: readonly (ReferenceCase | string)[];
}

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const textOf = (value: Json | undefined): string => (typeof value === 'string' ? value : '');

function readTolerance(value: Json | undefined): Tolerance | undefined {
  if (!isObject(value)) return undefined;
  const { relative, absolute } = value as { relative?: Json; absolute?: Json };
  const bounds = {
    ...(typeof relative === 'number' ? { relative } : {}),
    ...(typeof absolute === 'number' ? { absolute } : {}),
  };
  return Object.keys(bounds).length > 0 ? bounds : undefined;
}

function readCase(value: Json): ReferenceCase | string {
  if (!isObject(value)) return 'a case is not an object';
  const { what, inputs, expected, source } = value as Record<string, Json>;
  if (!isObject(inputs) || !isObject(expected)) return `${textOf(what)}: no inputs or expected`;
  const tolerance = readTolerance(value['tolerance']);
  const numbers = JSON.stringify(Object.values(expected)).replace(/"[^"]*"/g, '');
  if (tolerance === undefined && /\d/.test(numbers)) return `${textOf(what)}: no tolerance`;
  if (Object.keys(expected).length === 0) return `${textOf(what)}: nothing expected`;
  return {
    what: textOf(what),
    inputs,
    expected,
    tolerance: tolerance ?? {},
    source: textOf(source),
  };
}

/** Reads a file's text; text comes back where it is no file of cases. */
export function readCaseFile(text: string): CaseFile | string {
  let content: Json;
  try {
    content = JSON.parse(text) as Json;
  } catch (error) {
    return `not JSON: ${error instanceof Error ? error.message : String(error)}`;
  }
  if (!isObject(content) || !Array.isArray(content['cases'])) return 'no list of cases';
  const cases = content['cases'] as readonly Json[];
  return { quantity: textOf(content['quantity']), cases: cases.map(readCase) };
}
