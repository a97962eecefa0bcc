/** What the picture knows of a pad and of its fit: plain data, so that the fit itself can wait. */

import type { Instrument, ReadQuantity } from '#core/fit/padEvidence.ts';
import type { Band } from '#core/numerics/band.ts';

/** One line of the notebook: what was read at one speed. */
export interface NoteLine {
  readonly id: string;
  /** [rpm] */
  readonly speed: number;
  /** On the drive's display [W]. */
  readonly power: number | undefined;
  /** On the filter gauge [Pa]. */
  readonly pressure: number | undefined;
}

export interface NotePad {
  /** Speeds [rpm]. */
  readonly speeds: { readonly least: number; readonly top: number };
  readonly lines: readonly NoteLine[];
}

/** Which of the notes are used. */
export interface Chosen {
  readonly ids: readonly string[];
  /** Gauges as well as watts. */
  readonly gauges: boolean;
  /** One figure is written down with its digits swapped. */
  readonly slip: boolean;
}

/** The two answers that are drawn. */
export type Answer = 'power' | 'flow';

/** What is known at one speed. */
export interface Known {
  /** [rpm] */
  readonly speed: number;
  /** Most likely value and its 95 % band [W]. */
  readonly power: Band & { readonly best: number };
  /** The same [m3/s]. */
  readonly flow: Band & { readonly best: number };
}

export interface Residual {
  readonly speed: number;
  readonly quantity: ReadQuantity;
  readonly measured: number;
  readonly predicted: number;
  /** In standard deviations of the reading. */
  readonly deviations: number;
}

/** The reading that would narrow the band of an answer most. */
export interface Next {
  readonly instrument: Instrument;
  readonly speed: number;
  /** Width of the band over the answer, averaged over the speeds [-]. */
  readonly before: number;
  readonly after: number;
}

/** The slowest line used, beside what the others alone would have said there [W]. */
export interface Foretold {
  readonly speed: number;
  readonly measured: number;
  readonly said: Band & { readonly best: number };
}

export interface Fitted {
  /** From slowest to fastest speed. */
  readonly known: readonly Known[];
  readonly residuals: readonly Residual[];
  /** What cannot be right together, in sentences. */
  readonly contradictions: readonly string[];
  readonly next: Readonly<Record<Answer, Next>>;
  readonly foretold: Foretold | undefined;
  /** How far the axes reach whatever notes are chosen: as far as without any, and a little further. */
  readonly reach: Readonly<Record<Answer, Reach>>;
}

/** Highest value of an answer's band, and half its greatest width as a share of the answer. */
export interface Reach {
  readonly high: number;
  readonly share: number;
}

/** Half a band as a share of its answer. */
export function halfWidth(known: Known, answer: Answer): number {
  const { low, high, best } = known[answer];
  return best > 0 ? (high - low) / 2 / best : 0;
}

/** How far the axes of each answer must reach for what is known. */
export function reachOf(known: readonly Known[]): Readonly<Record<Answer, Reach>> {
  const of = (answer: Answer): Reach => ({
    high: Math.max(...known.map((each) => each[answer].high)),
    share: Math.max(...known.map((each) => halfWidth(each, answer))),
  });
  return { power: of('power'), flow: of('flow') };
}

/** No note at all: no choice of notes leaves a band that is much wider. */
export const noNotes: Chosen = { ids: [], gauges: false, slip: false };

export type Fitter = (chosen: Chosen) => Fitted;
