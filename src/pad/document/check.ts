import * as z from 'zod/mini';
import { type Path, valueAt } from '#pad/messages/path.ts';
import type { ProblemValue } from '#pad/messages/problems.ts';
import type { Quantity } from '#units/quantities.ts';
import type { DocumentProblem } from './documentProblems.ts';
import { manyLines, oneLine } from './oneLine.ts';
import { type Pad, padSchema } from './schema.ts';

export type Checked =
  | { readonly ok: true; readonly pad: Pad }
  | { readonly ok: false; readonly problems: readonly DocumentProblem[] };

type Schema = z.core.$ZodType;

/** The definitions one step further in; a choice between shapes gives each of them. */
function inside(schema: Schema, step: string | number): readonly Schema[] {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object': {
      const field = Object.hasOwn(def.shape, step) ? def.shape[step] : undefined;
      return field === undefined ? [] : [field];
    }
    case 'array':
      return [def.element];
    case 'union':
      return def.options.flatMap((option) => inside(option, step));
    case 'default':
    case 'prefault':
    case 'nullable':
    case 'optional':
      return inside(def.innerType, step);
    default:
      return [];
  }
}

function schemasAt(path: Path): readonly Schema[] {
  return path.reduce<readonly Schema[]>(
    (schemas, step) => schemas.flatMap((schema) => inside(schema, step)),
    [padSchema],
  );
}

/** The quantity a field of the pad holds, or null for plain numbers and words. */
export function quantityAt(path: Path): Quantity | null {
  for (const schema of schemasAt(path)) {
    const kind = z.globalRegistry.get(schema)?.['quantity'];
    if (kind !== undefined) return kind as Quantity;
  }
  return null;
}

/** The numbers a field of the pad may hold, ends included, so that a form need not repeat them. */
export function rangeAt(path: Path): { readonly least?: number; readonly greatest?: number } {
  for (const schema of schemasAt(path)) {
    const least = boundOf(schema, 'greater_than');
    const greatest = boundOf(schema, 'less_than');
    if (least !== undefined && greatest !== undefined) return { least, greatest };
  }
  return {};
}

function boundOf(schema: Schema, kind: 'greater_than' | 'less_than'): number | undefined {
  for (const { _zod } of withoutDefaults(schema)._zod.def.checks ?? []) {
    const { check, value } = _zod.def as { readonly check: string; readonly value?: unknown };
    if (check === kind && typeof value === 'number') return value;
  }
  return undefined;
}

function withoutDefaults(schema: Schema): Schema {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  return 'innerType' in def ? withoutDefaults(def.innerType) : schema;
}

function measured(path: Path, value: number): ProblemValue {
  const quantity = quantityAt(path);
  return quantity === null ? value : { quantity, value };
}

const expectedWords: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'text',
  array: 'a list',
  object: 'a group of fields',
};

function pathOf(issue: z.core.$ZodIssue): Path {
  return issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
}

function limitProblem(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  found: unknown,
): DocumentProblem {
  const path = pathOf(issue);
  const limit = Number(issue.code === 'too_small' ? issue.minimum : issue.maximum);
  if (typeof found === 'number') {
    const code = issue.code === 'too_small' ? 'tooSmall' : 'tooLarge';
    return { code, path, values: { found: measured(path, found), limit: measured(path, limit) } };
  }
  if (found === '') return { code: 'missing', path, values: {} };
  return { code: Array.isArray(found) ? 'tooMany' : 'tooLong', path, values: { limit } };
}

function typeProblem(issue: z.core.$ZodIssueInvalidType, found: unknown): DocumentProblem {
  const path = pathOf(issue);
  if (found === undefined) return { code: 'missing', path, values: {} };
  const whole = issue.expected === 'int' || 'format' in issue;
  const expected = whole ? 'int' : issue.expected;
  return { code: 'wrongType', path, values: { expected: expectedWords[expected] ?? expected } };
}

/** Letters of a text that a sentence shows. */
const mostShown = 60;

const texts: readonly string[] = [oneLine, manyLines].map(String);

/** Whether a format was asked of words of the reader's own, and not of a name within the document. */
function isText(issue: z.core.$ZodIssueInvalidStringFormat): boolean {
  return issue.pattern !== undefined && texts.includes(issue.pattern);
}

function problemFrom(issue: z.core.$ZodIssue, document: unknown): DocumentProblem {
  const path = pathOf(issue);
  const found = valueAt(document, path);
  switch (issue.code) {
    case 'too_small':
    case 'too_big':
      return limitProblem(issue, found);
    case 'invalid_type':
      return typeProblem(issue, found);
    case 'unrecognized_keys':
      return {
        code: 'unknownField',
        path,
        values: { field: issue.keys.join(', ').slice(0, mostShown) },
      };
    case 'invalid_value':
      if (found === undefined) return { code: 'missing', path, values: {} };
      return {
        code: 'notOneOf',
        path,
        values: {
          found: String(found).slice(0, mostShown),
          allowed: issue.values.map(String).join(', '),
        },
      };
    case 'invalid_union':
      return { code: 'unknownKind', path, values: { found: String(found) } };
    case 'invalid_format':
      return isText(issue)
        ? { code: 'controlCharacter', path, values: {} }
        : { code: 'badName', path, values: { found: String(found).slice(0, mostShown) } };
    case 'custom':
      return { code: 'sameId', path, values: { id: String(found) } };
    default:
      return { code: 'badName', path, values: { found: String(found) } };
  }
}

/** Groups of branches may stand in one another so deep: more is no plumbing. */
const mostLevels = 3;

/** Groups that stand deeper than they may, before anything else is made of the document. */
function groupsTooDeep(document: unknown): readonly DocumentProblem[] {
  const found: DocumentProblem[] = [];
  const look = (sections: unknown, path: Path, level: number): void => {
    if (!Array.isArray(sections) || found.length > 0) return;
    for (const [place, section] of sections.entries()) {
      const here = [...path, place];
      const branches = valueAt(section, ['branches']);
      if (!Array.isArray(branches)) continue;
      if (level >= mostLevels) {
        found.push({ code: 'tooDeep', path: here, values: { limit: mostLevels } });
        return;
      }
      for (const [at, branch] of branches.entries())
        look(valueAt(branch, ['sections']), [...here, 'branches', at, 'sections'], level + 1);
    }
  };
  for (const side of ['suction', 'discharge'])
    look(valueAt(document, ['plumbing', side]), ['plumbing', side], 0);
  return found;
}

/** A document as a pad, with what was left out filled in, or everything that is wrong with it. */
export function checkDocument(document: unknown): Checked {
  const deep = groupsTooDeep(document);
  if (deep.length > 0) return { ok: false, problems: deep };
  const result = z.safeParse(padSchema, document);
  if (result.success) return { ok: true, pad: result.data as Pad };
  return { ok: false, problems: result.error.issues.map((issue) => problemFrom(issue, document)) };
}
