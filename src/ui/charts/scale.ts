import { nice, ticks } from 'd3-array';
import { grouped } from '#units/numerals.ts';

/**
 * Pictures are drawn in a square of `span` by `span` units that the browser stretches to the space
 * it has; words and dots are laid over it by fraction. So one drawing fits a phone and a projector.
 */
export const span = 1000;

/** A stretch of values along one side of a picture. */
export interface Axis {
  readonly min: number;
  readonly max: number;
}

/** How a stored value is shown to the reader; always a straight line through both. */
export interface ShownUnit {
  show(value: number): number;
  store(shown: number): number;
}

export interface Tick {
  readonly value: number;
  readonly label: string;
}

export interface TickedAxis extends Axis {
  readonly ticks: readonly Tick[];
  /** Values of the fine squares of the paper; a fifth of the way from mark to mark when left out. */
  readonly fine?: readonly number[];
}

/** Shows the value as it is stored. */
export const asStored: ShownUnit = { show: (value) => value, store: (shown) => shown };

/** Where a value lies along its axis: 0 at the start, 1 at the end, outside them beyond. */
export function fraction(axis: Axis, value: number): number {
  return (value - axis.min) / (axis.max - axis.min);
}

/** The value that lies at a fraction of the axis. */
export function valueAt(axis: Axis, part: number): number {
  return axis.min + part * (axis.max - axis.min);
}

/** Drawing position of a value along a horizontal axis. */
export function across(axis: Axis, value: number): number {
  return fraction(axis, value) * span;
}

/** Drawing position of a value along a vertical axis, which grows upward. */
export function upward(axis: Axis, value: number): number {
  return (1 - fraction(axis, value)) * span;
}

export interface AxisWish {
  readonly min?: number;
  readonly max: number;
  /** About how many marks. */
  readonly count?: number;
  readonly unit?: ShownUnit;
  /** Keep the ends as given instead of widening them to the next mark. */
  readonly exact?: boolean;
}

/** Below this there is nothing to see between the ends of an axis, whatever its unit. */
const leastRange = 1e-12;

/** An axis whose marks are round numbers in the reader's unit, whatever unit the values are kept in. */
export function niceAxis(wish: AxisWish): TickedAxis {
  const { min = 0, max, count = 5, unit = asStored, exact = false } = wish;
  const from = unit.show(min);
  const to = unit.show(max - min > leastRange ? max : min + 1);
  const [low, high] = exact ? [from, to] : nice(from, to, count);
  const marks = ticks(low, high, count);
  return {
    min: unit.store(low),
    max: unit.store(high),
    ticks: marks.map((shown) => ({ value: unit.store(shown), label: tickLabel(shown, marks) })),
  };
}

/** Writes a mark with as many decimals as its neighbours need. */
function tickLabel(shown: number, marks: readonly number[]): string {
  const step = Math.abs((marks[1] ?? 1) - (marks[0] ?? 0)) || 1;
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return grouped(shown.toFixed(decimals));
}
