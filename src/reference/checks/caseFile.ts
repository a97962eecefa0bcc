/** A file of sourced cases as it lies on the disk. `caseFileJsonSchema` says the same in JSON Schema. */
import { z } from 'zod';

export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

const values = z
  .record(z.string(), z.json())
  .refine((keys) => Object.keys(keys).length > 0, 'is empty')
  .meta({ minProperties: 1 });
const bound = z.number().min(0);
const why = z.string().optional();

const caseSchema = z.object({
  what: z.string(),
  inputs: values,
  expected: values,
  /** A share of the expected value, or in its unit; of two the wider one holds. */
  tolerance: z.union([
    z.object({ relative: bound, absolute: bound.optional(), why }),
    z.object({ absolute: bound, why }),
  ]),
  source: z.string().default(''),
  provenance: z.enum(['computed', 'looked-up', 'memory']).optional(),
});

const fileSchema = z.object({
  quantity: z.string().default(''),
  source: z
    .object({ standards: z.array(z.string()).default([]), tools: z.string().optional() })
    .optional(),
  units: z.record(z.string(), z.string()).optional(),
  conventions: z.array(z.string()).optional(),
  cases: z.array(z.json()),
});

export interface Tolerance {
  readonly relative?: number | undefined;
  readonly absolute?: number | undefined;
}

export interface ReferenceCase {
  readonly what: string;
  readonly inputs: JsonObject;
  readonly expected: JsonObject;
  readonly tolerance: Tolerance;
  readonly source: string;
  readonly provenance?: 'computed' | 'looked-up' | 'memory' | undefined;
}

export interface CaseFile {
  readonly quantity: string;
  readonly standards: readonly string[];
  /** One entry for each case; text where one breaks the schema. */
  readonly cases: readonly (ReferenceCase | string)[];
}

/** The schema of a whole file, for editors and other readers. */
export const caseFileJsonSchema = (): object =>
  z.toJSONSchema(fileSchema.extend({ cases: z.array(caseSchema) }), { io: 'input' });

export function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What a schema says of a value that breaks it, each complaint with its place. */
export const complaints = ({ issues }: z.ZodError): string =>
  issues.map(({ path, message }) => [path.join('.'), message].join(' ').trim()).join('; ');

function readCase(value: unknown, place: number): ReferenceCase | string {
  const read = caseSchema.safeParse(value);
  return read.success ? read.data : `case ${place + 1}: ${complaints(read.error)}`;
}

/** Reads a file's text; text comes back where it is no file of cases. */
export function readCaseFile(text: string): CaseFile | string {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch (error) {
    return `not JSON: ${error instanceof Error ? error.message : String(error)}`;
  }
  const read = fileSchema.safeParse(content);
  if (!read.success) return `no file of cases: ${complaints(read.error)}`;
  const { quantity, source, cases } = read.data;
  return { quantity, standards: source?.standards ?? [], cases: cases.map(readCase) };
}
