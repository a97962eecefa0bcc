/** One line of the benchmark: ways to do the same work, timed in turns in one run. */
export interface Row {
  readonly name: string;
  /** What one unit of work is, in the plural. */
  readonly unit: string;
  /** The ways, ours first; each does `units` units of work a call. */
  readonly ways: readonly Way[];
  /** How many times as fast as the second way ours must be, where there is a goal. */
  readonly reach?: number;
  /** How long our way may take for so many units, where the goal is a time. */
  readonly within?: { readonly units: number; readonly millis: number };
  readonly close?: () => void;
}

export interface Way {
  readonly name: string;
  readonly units: number;
  /** Gives back something that depends on all the work, so that none can be left out. */
  readonly run: () => number;
}

export type RowMaker = () => Promise<Row>;
