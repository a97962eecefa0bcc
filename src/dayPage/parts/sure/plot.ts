/** Where the marks of one answer stand: trial pads piled over an axis, and the bars beneath. */

import type { DayAnswer } from '#core/uncertainty/dayBands.ts';
import { shownUnit } from '#ui/charts/quantityAxis.ts';
import { asStored, fraction, niceAxis, type TickedAxis } from '#ui/charts/scale.ts';
import type { UnitChoice } from '#units/choice.ts';
import type { Shown } from './model.ts';

/** Width of the drawing in marks; a mark is one unit wide. */
export const columns = 40;

export interface Pile {
  /** Columns from the left, rows from the ground. */
  readonly column: number;
  readonly row: number;
  /** Whether it lies within the told band. */
  readonly isInside: boolean;
}

const unitOf = (of: DayAnswer, units: UnitChoice) => {
  if (of === 'cost') return asStored;
  return shownUnit(of === 'water' ? 'volume' : 'energy', units);
};

/** An axis that holds bar, strokes and marks with a little room; with no doubt at all, a tenth about the value. */
export function axisOf(shown: Shown, units: UnitChoice): TickedAxis {
  const { of, best, band, trial, dots } = shown;
  const all = [best, band.low, band.high, ...(trial ? [trial.low, trial.high] : []), ...dots];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = most > least ? 0.04 * (most - least) : 0.1 * (Math.abs(best) || 1);
  const unit = unitOf(of, units);
  return niceAxis({ min: least - room, max: most + room, count: 4, unit, exact: true });
}

/** The marks, each on top of those that came before it in its column. */
export function pileOf({ dots, told }: Shown, axis: TickedAxis): readonly Pile[] {
  const heights = new Map<number, number>();
  return [...dots]
    .sort((a, b) => a - b)
    .map((value) => {
      const column = Math.min(columns - 1, Math.floor(fraction(axis, value) * columns));
      const row = heights.get(column) ?? 0;
      heights.set(column, row + 1);
      return { column, row, isInside: value >= told.low && value <= told.high };
    });
}

/** Rows of marks that always have room, so that the picture does not jump with every change. */
const leastRows = 12;

/** A pile that would be higher is pressed together: a day without doubt is one pile of all pads. */
const mostRows = 24;

/** Rows of the highest pile of several pictures, so that they stand on one ground. */
export function rowsFor(all: readonly Shown[], units: UnitChoice): number {
  const heights = all.flatMap((shown) =>
    pileOf(shown, axisOf(shown, units)).map(({ row }) => row + 1),
  );
  return Math.min(mostRows, Math.max(leastRows, ...heights));
}

/** How far a mark of a pile stands above the one below it [rows], 1 unless the pile is too high. */
export function riseOf(pile: readonly Pile[], height: number): number {
  const most = Math.max(1, ...pile.map(({ row }) => row + 1));
  return most <= height ? 1 : (height - 1) / (most - 1);
}
