import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import type { Quantity } from '#units/quantities.ts';
import type { Path } from './path.ts';

/** A value inside a sentence; with its quantity named it is shown in the reader's unit. */
export type ProblemValue =
  | string
  | number
  | { readonly quantity: Quantity; readonly value: number };

type Say = (name: string) => string;

/**
 * What is wrong, and what would be right, for every code. `say` puts in a value of the problem by
 * its name. Nothing else in the project words a problem.
 */
const sentences = {
  missing: () => 'This is missing; it must be given.',
  wrongType: (say) => `This must be ${say('expected')}.`,
  tooSmall: (say) => `${say('found')} is too little; it must be ${say('limit')} or more.`,
  tooLarge: (say) => `${say('found')} is too much; it must be ${say('limit')} or less.`,
  tooMany: (say) => `This list is too long; it may hold ${say('limit')} entries at most.`,
  tooLong: (say) => `This text is too long; it may hold ${say('limit')} characters at most.`,
  unknownField: (say) =>
    `A pad file has no field “${say('field')}” here; take it away or correct its name.`,
  notOneOf: (say) => `“${say('found')}” is not known here; it must be one of: ${say('allowed')}.`,
  unknownKind: () => 'The kind of this is missing or not known; its “kind” must be a known one.',
  badName: (say) =>
    `“${say('found')}” cannot be used here; use 1 to 40 letters, digits, hyphens or underscores.`,
  sameId: (say) => `The id “${say('id')}” is used twice; give each entry an id of its own.`,
} as const satisfies Readonly<Record<string, (say: Say) => string>>;

export type ProblemCode = keyof typeof sentences;

/** Something wrong or missing in a document, tied to its field. */
export interface Problem {
  readonly code: ProblemCode;
  readonly path: Path;
  readonly values: Readonly<Record<string, ProblemValue>>;
}

function shown(value: ProblemValue | undefined, units: UnitChoice): string {
  if (value === undefined) return '';
  if (typeof value === 'object') return format(value.quantity, value.value, units);
  return String(value);
}

/** The problem as a sentence in the reader's units. */
export function problemSentence(problem: Problem, units: UnitChoice): string {
  return sentences[problem.code]((name) => shown(problem.values[name], units));
}
