import type { SourceId } from '#content/sources.ts';

/** A symbol of a law, in TeX, with what it stands for and its unit. */
export type LawSymbol = readonly [tex: string, means: string, unit: string];

/** One law of the formula sheet. */
export interface Law {
  readonly name: string;
  /** The formula in TeX. */
  readonly tex: string;
  readonly symbols: readonly LawSymbol[];
  readonly sources: readonly SourceId[];
  /** Where it holds, or what to watch. */
  readonly note?: string;
}

/** Laws of one subject. */
export interface Subject {
  readonly id: string;
  readonly name: string;
  readonly laws: readonly Law[];
}
