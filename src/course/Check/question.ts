import type { UnitChoice } from '#units/choice.ts';
import type { Quantity } from '#units/quantities.ts';

/** One way to go wrong, and the sentence that names the thought behind it. */
export interface Slip {
  readonly value: number;
  readonly says: string;
}

export interface NumberQuestion {
  readonly kind: 'number';
  readonly prompt: string;
  /** What is asked for; null for a plain number, such as a share, a price or a count. */
  readonly quantity: Quantity | null;
  /** Written after a plain number: "$", "turnovers". */
  readonly unit?: string;
  /** The stored value that is right. */
  readonly answer: number;
  /** How near counts as right, as a share of the answer; the prompt's own rounding sets it. */
  readonly near: number;
  readonly slips: readonly Slip[];
  readonly working: readonly string[];
}

export interface ChoiceQuestion {
  readonly kind: 'choice';
  readonly prompt: string;
  readonly options: readonly {
    readonly id: string;
    readonly label: string;
    readonly right: boolean;
    readonly says: string;
  }[];
  readonly working: readonly string[];
}

export type Question = NumberQuestion | ChoiceQuestion;

/** Makes a question from a draw of numbers, in the reader's units. */
export type QuestionMaker = (draw: Draw, units: UnitChoice) => Question;

/** The self-checks of one lesson, by name. */
export type QuestionBank = Readonly<Record<string, QuestionMaker>>;

/** Numbers that look drawn at random and are the same for the same seed on every machine. */
export interface Draw {
  /** One of the list, which must not be empty. */
  pick<T>(list: readonly T[]): T;
}

/** A linear congruential generator, modulus 2^32 (constants: Knuth, vol. 2, 3.3.4, line 26; from memory). */
export function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 4; i += 1) next();
  return {
    pick(list) {
      const drawn = list[Math.floor(next() * list.length)];
      if (drawn === undefined)
        throw new RangeError('list is empty; give at least one to pick from.');
      return drawn;
    },
  };
}

const nearer = (a: number, b: number, share: number) => Math.abs(a - b) <= Math.abs(b) * share;

/** What a typed answer deserves to hear. A slip is only named when it is not also the right answer. */
export function judge(question: NumberQuestion, given: number): { right: boolean; says: string } {
  if (nearer(given, question.answer, question.near)) return { right: true, says: 'Right.' };
  const slip = question.slips.find((known) => nearer(given, known.value, question.near));
  return {
    right: false,
    says: slip?.says ?? 'Not this. Try once more, or look at the working.',
  };
}
