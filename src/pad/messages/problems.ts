import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import type { Quantity } from '#units/quantities.ts';
import { formatTimeOfDay } from '#units/timeOfDay.ts';
import { type Path, pathKey } from './path.ts';
import {
  padSentences,
  planSentences,
  type Say,
  type Sentences,
  serviceSentences,
  sharedSentences,
} from './sentences.ts';

/** A value inside a sentence; with its quantity named it is shown in the reader's unit. */
export type ProblemValue =
  | string
  | number
  | {
      readonly quantity: Quantity;
      readonly value: number;
      /** Figures to show, where the value is no better known than that. */
      readonly digits?: number;
    }
  | { readonly minute: number };

/**
 * Every problem of a pad, with its sentence; documentProblems.ts has those of a text that is no pad.
 * Nothing else in the project words a problem.
 */
const sentences = {
  ...sharedSentences,
  ...padSentences,
  ...serviceSentences,
  ...planSentences,
};

export type ProblemCode = keyof typeof sentences;

/** Problems that only say what nobody has typed yet; the others say that something typed is wrong. */
const unsaid: ReadonlySet<ProblemCode> = new Set<ProblemCode>([
  'volumeMissing',
  'poolSize',
  'partSize',
  'partLength',
  'fittingK',
  'equipmentPoint',
  'filterClean',
  'branchEmpty',
  'referenceSpeed',
  'pumpUnknown',
  'curvePoints',
  'curveHalf',
  'readingSpeed',
  'readingEmpty',
  'noNeeds',
  'needFlow',
  'needMinutes',
  'needBasis',
  'filterArea',
  'coverFlow',
  'quietSpeed',
  'noSeason',
  'noDayType',
  'weekdayMissing',
  'bandPrice',
  'noBlocks',
  'blockSpeed',
]);

/** Whether a problem only says that something has not been typed yet. */
export function isUnsaid({ code }: Pick<Problem, 'code'>): boolean {
  return unsaid.has(code);
}

/** Every code, for tests that want to see each sentence. */
export const problemCodes = Object.keys(sentences) as readonly ProblemCode[];

/** Something wrong or missing, tied to its field. */
export interface ProblemOf<Code extends string> {
  readonly code: Code;
  readonly path: Path;
  readonly values: Readonly<Record<string, ProblemValue>>;
}

/** Something wrong or missing in a pad. */
export type Problem = ProblemOf<ProblemCode>;

export function problem(code: ProblemCode, path: Path, values: Problem['values'] = {}): Problem {
  return { code, path, values };
}

/** The value of a quantity as a sentence shows it, in the reader's unit. */
export function shownValue(value: ProblemValue | undefined, units: UnitChoice): string {
  if (value === undefined) return '';
  if (typeof value !== 'object') return String(value);
  if ('minute' in value) return formatTimeOfDay(value.minute % 1440);
  const { digits } = value;
  return format(value.quantity, value.value, units, digits === undefined ? {} : { digits });
}

/** A problem in the words that its table has for it. */
export function worded<Code extends string>(
  table: Sentences & Readonly<Record<Code, (say: Say) => string>>,
  { code, values }: ProblemOf<Code>,
  units: UnitChoice,
): string {
  return table[code]((name) => shownValue(values[name], units));
}

/** The problem as a sentence in the reader's units. */
export function problemSentence(problem: Problem, units: UnitChoice): string {
  return worded<ProblemCode>(sentences, problem, units);
}

/** The problems of a field and everything inside it. */
export function problemsAt(problems: readonly Problem[], path: Path): readonly Problem[] {
  const key = pathKey(path);
  return problems.filter((each) => `${pathKey(each.path)}/`.startsWith(`${key}/`));
}
