import { referenceCases } from './referenceCases.ts';

/** A case whose inputs and answers are all numbers, with its tolerance as a share of the answer. */
export interface NumericCase {
  readonly what: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly relative: number;
}

/** Cases of one file of the reference set, read as plain numbers. */
export function casesOf(name: string): NumericCase[] {
  return referenceCases(name).map(({ what, inputs, expected, tolerance }) => ({
    what,
    inputs: inputs as Readonly<Record<string, number>>,
    expected,
    relative: tolerance.relative ?? 0,
  }));
}
