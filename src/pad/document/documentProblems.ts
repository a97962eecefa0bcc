import { type ProblemOf, worded } from '#pad/messages/problems.ts';
import { type Sentences, sharedSentences } from '#pad/messages/sentences.ts';
import type { UnitChoice } from '#units/choice.ts';

/** What keeps a document from being a pad. */
const sentences = {
  ...sharedSentences,
  missing: () => 'This is missing; it must be given.',
  tooSmall: (say) => `${say('found')} is too little; it must be ${say('limit')} or more.`,
  tooLarge: (say) => `${say('found')} is too much; it must be ${say('limit')} or less.`,
  tooMany: (say) => `This list is too long; it may hold ${say('limit')} entries at most.`,
  tooLong: (say) => `This text is too long; it may hold ${say('limit')} characters at most.`,
  tooDeep: (say) =>
    `Groups of branches may stand inside one another ${say('limit')} deep at most; this one is deeper. ` +
    'Take it out, or put its pipes in the branch around it.',
  controlCharacter: () =>
    'This text holds a line break or another character that cannot be shown; write it on one line.',
  unknownField: (say) =>
    `A pad file has no field “${say('field')}” here; take it away or correct its name.`,
  notOneOf: (say) => `“${say('found')}” is not known here; it must be one of: ${say('allowed')}.`,
  unknownKind: () => 'The kind of this is missing or not known; its “kind” must be a known one.',
  badName: (say) =>
    `“${say('found')}” cannot be used here; use 1 to 40 letters, digits, hyphens or underscores.`,
} as const satisfies Sentences;

export type DocumentCode = keyof typeof sentences;

/** Every code, for tests that want to see each sentence. */
export const documentCodes = Object.keys(sentences) as readonly DocumentCode[];

/** What keeps a document, or one field of it, from being a pad. */
export type DocumentProblem = ProblemOf<DocumentCode>;

/** The problem as a sentence in the reader's units. */
export function documentProblemSentence(problem: DocumentProblem, units: UnitChoice): string {
  return worded(sentences, problem, units);
}
