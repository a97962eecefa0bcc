import type { SourceId } from '#content/sources.ts';

/**
 * A symbol of a law, what it stands for and its unit. The symbol is plain letters, with what stands
 * low after an underscore: `H_sys`.
 */
export type LawSymbol = readonly [symbol: string, means: string, unit: string];

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
