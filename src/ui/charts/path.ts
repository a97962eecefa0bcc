import { type Path, pathRound } from 'd3-path';
import { type Axis, across, upward } from './scale.ts';

/** One point of a line; a missing or non-finite y breaks the line there. */
export interface Point {
  readonly x: number;
  readonly y: number | undefined;
}

/** One slice of a band between two lines. */
export interface Slice {
  readonly x: number;
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/** Where something stands in the drawing. */
type Place = readonly [across: number, down: number];

/*
 * Only straight lines are drawn here, so what strings the numbers together is enough; the library of
 * curves above it weighs more than all our pictures.
 */
const newPath = () => pathRound(1);

function place(x: Axis, y: Axis, atX: number, atY: number | undefined): Place | null {
  if (atY === undefined || !Number.isFinite(atX) || !Number.isFinite(atY)) return null;
  return [across(x, atX), upward(y, atY)];
}

/** The runs of items that are there, split where one is missing. */
function runsOf<Item>(items: Iterable<Item | null>): readonly (readonly Item[])[] {
  const runs: Item[][] = [[]];
  for (const item of items) {
    if (item === null) runs.push([]);
    else runs.at(-1)?.push(item);
  }
  return runs.filter((run) => run.length > 0);
}

function trace(into: Path, places: readonly Place[]): void {
  places.forEach(([x, y], index) => {
    if (index === 0) into.moveTo(x, y);
    else into.lineTo(x, y);
  });
}

/** Path of a line through the points; gaps where a value is missing. */
export function linePath(points: Iterable<Point>, x: Axis, y: Axis): string {
  const drawn = newPath();
  const places = Array.from(points, (point) => place(x, y, point.x, point.y));
  for (const run of runsOf(places)) {
    trace(drawn, run);
    // A lone point shows as a dot under round line ends.
    if (run.length === 1) drawn.closePath();
  }
  return drawn.toString();
}

/** Path of the area between two lines; gaps where either is missing. */
export function bandPath(slices: Iterable<Slice>, x: Axis, y: Axis): string {
  const drawn = newPath();
  const sides = Array.from(slices, (slice) => {
    const low = place(x, y, slice.x, slice.low);
    const high = place(x, y, slice.x, slice.high);
    return low === null || high === null ? null : { low, high };
  });
  for (const run of runsOf(sides)) {
    trace(drawn, [...run.map(({ high }) => high), ...run.map(({ low }) => low).reverse()]);
    drawn.closePath();
  }
  return drawn.toString();
}

/** Evenly spaced values from `from` to `to`, both included exactly. */
export function evenly(from: number, to: number, count: number): number[] {
  const last = count - 1;
  return Array.from({ length: count }, (_, index) =>
    index === last ? to : from + ((to - from) * index) / last,
  );
}
