import { area, curveLinear, curveStepAfter, line } from 'd3-shape';
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

const present = (value: number | undefined): value is number =>
  value !== undefined && Number.isFinite(value);

interface Shape {
  /** Hold each value until the next point, as a plan of speeds does. */
  readonly stepped?: boolean;
}

/** Path of a line through the points; gaps where a value is missing. */
export function linePath(points: Iterable<Point>, x: Axis, y: Axis, shape: Shape = {}): string {
  const draw = line<Point>()
    .defined((point) => present(point.x) && present(point.y))
    .x((point) => across(x, point.x))
    .y((point) => upward(y, point.y ?? 0))
    .curve(shape.stepped ? curveStepAfter : curveLinear)
    .digits(1);
  return draw(points) ?? '';
}

/** Path of the area between two lines; gaps where either is missing. */
export function bandPath(slices: Iterable<Slice>, x: Axis, y: Axis, shape: Shape = {}): string {
  const draw = area<Slice>()
    .defined((slice) => present(slice.x) && present(slice.low) && present(slice.high))
    .x((slice) => across(x, slice.x))
    .y0((slice) => upward(y, slice.low ?? 0))
    .y1((slice) => upward(y, slice.high ?? 0))
    .curve(shape.stepped ? curveStepAfter : curveLinear)
    .digits(1);
  return draw(slices) ?? '';
}

/** Evenly spaced values from `from` to `to`, both included exactly. */
export function evenly(from: number, to: number, count: number): number[] {
  const last = count - 1;
  return Array.from({ length: count }, (_, index) =>
    index === last ? to : from + ((to - from) * index) / last,
  );
}
