/** What is known of a unit and of a quantity. */

export interface UnitSpec {
  /** Written after a number. */
  readonly symbol: string;
  /** Spoken after exactly 1. */
  readonly one: string;
  /** Spoken after any other number. */
  readonly many: string;
  readonly factor: number;
  /** What this unit reads at the stored value 0; 0 for everything but degF. */
  readonly zero?: number;
  /** Figures worth showing, counted from the first that is not 0. */
  readonly figures: number;
  /** Never more places after the point than this. */
  readonly places: number;
  /** Other ways to type it, lower case, without spaces; symbol, id and words are known anyway. */
  readonly typed?: readonly string[];
}

export interface QuantitySpec {
  /** As it stands in a sentence after "the". */
  readonly name: string;
  readonly us: string;
  readonly metric: string;
  /** A usual stored value, shown as the example in an error sentence. */
  readonly usual: number;
  readonly units: Readonly<Record<string, UnitSpec>>;
}

type Extra = Partial<Pick<UnitSpec, 'zero' | 'typed'>>;

/** One unit in one line. */
export function unit(
  symbol: string,
  words: readonly [one: string, many: string],
  factor: number,
  shown: readonly [figures: number, places: number],
  extra: Extra = {},
): UnitSpec {
  const [one, many] = words;
  const [figures, places] = shown;
  return { symbol, one, many, factor, figures, places, ...extra };
}
