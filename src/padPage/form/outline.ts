/** The freeform outline of a pool as a plan to draw on. */
import { CoreError } from '#core/base/errors.ts';
import { crossingEdges, type EdgeCrossing, type Vertex } from '#core/pool/polygon.ts';
import { outlinePoints } from '#core/pool/poolOutline.ts';
import type { Outline, Pool } from '#pad/document/schema.ts';
import { drawableOutline } from '#pad/model/assemblePool.ts';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { inserted } from './lists.ts';

export interface Corner {
  readonly x: number;
  readonly y: number;
}

/** The part of the plan that is shown: its lower left corner and its size [m]. */
export interface PlanFrame {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

/** Width of the plan over its height. */
export const planShape = 4 / 3;
const margin = 1.3;
const leastHeight = 3;
/** Corners are kept within what a pad may hold [m]. */
const reach = 500;

/** A frame in which the whole outline fits, with room around it to drag into. */
export function frameAround(corners: readonly Corner[]): PlanFrame {
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [left, right] = corners.length === 0 ? [0, 8] : [Math.min(...xs), Math.max(...xs)];
  const [low, high] = corners.length === 0 ? [0, 4] : [Math.min(...ys), Math.max(...ys)];
  const height = Math.max(leastHeight, margin * Math.max(high - low, (right - left) / planShape));
  const width = height * planShape;
  return { left: (left + right - width) / 2, bottom: (low + high - height) / 2, width, height };
}

/** Where a corner stands in the frame, by fraction from the top left. */
export function spotOf({ x, y }: Corner, frame: PlanFrame): Corner {
  return { x: (x - frame.left) / frame.width, y: 1 - (y - frame.bottom) / frame.height };
}

/** The corner at a place of the frame, by fraction from the top left. */
export function cornerAt(spot: Corner, frame: PlanFrame): Corner {
  return {
    x: frame.left + spot.x * frame.width,
    y: frame.bottom + (1 - spot.y) * frame.height,
  };
}

/** How far an arrow key moves a corner, and what a dragged one snaps to [m]. */
export function planStep(units: UnitChoice): number {
  return unitFor(units, 'length') === 'ft' ? toSI('length', 0.5, 'ft') : 0.1;
}

/** The side of a square of the plan [m]. */
export function gridStep(units: UnitChoice, frame: PlanFrame): number {
  const unit = unitFor(units, 'length');
  const wanted = frame.height / 6;
  const sizes = [1, 2, 5, 10, 20, 50, 100, 200, 500].map((size) => toSI('length', size, unit));
  return sizes.find((size) => size >= wanted) ?? wanted;
}

/** A corner on the nearest step, within reach. */
export function snapped({ x, y }: Corner, step: number): Corner {
  const onStep = (value: number) =>
    Math.min(reach, Math.max(-reach, Math.round(value / step) * step));
  return { x: onStep(x), y: onStep(y) };
}

const keyMoves: Readonly<Record<string, Corner>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

/** Where an arrow key brings a corner; null for any other key. With Shift it goes five steps. */
export function movedByKey(corner: Corner, key: string, step: number, far: boolean): Corner | null {
  const move = keyMoves[key];
  if (move === undefined) return null;
  const size = far ? 5 * step : step;
  const bounded = (value: number) => Math.min(reach, Math.max(-reach, value));
  return { x: bounded(corner.x + move.x * size), y: bounded(corner.y + move.y * size) };
}

/** The corners with one more, halfway along the side that starts at a corner. */
export function withCornerOn(corners: readonly Corner[], side: number): readonly Corner[] {
  const [from, to] = [corners[side], corners[(side + 1) % corners.length]];
  if (from === undefined || to === undefined) return corners;
  return inserted(corners, side + 1, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
}

/** The pairs of sides that meet where they should not. */
export function crossings(corners: readonly Corner[]): readonly EdgeCrossing[] {
  if (corners.length < 3) return [];
  return crossingEdges(corners.map(({ x, y }): Vertex => [x, y]));
}

/** Which sides cross, as a sentence; undefined for a sound outline. */
export function crossingSentence(corners: readonly Corner[]): string | undefined {
  const [first] = crossings(corners);
  if (first === undefined) return undefined;
  const side = (from: number) => `from corner ${from + 1} to ${((from + 1) % corners.length) + 1}`;
  return (
    `The side ${side(first.firstEdge)} meets the side ${side(first.secondEdge)}. ` +
    'Move a corner so that the sides meet only at corners.'
  );
}

/** Steps along each arc when a round outline is turned into corners. */
const cornersPerArc = 6;

/** The corners to start drawing from: those of the present shape, else of a plain rectangle. */
export function cornersOf(pool: Pool): readonly Corner[] {
  const plain = [
    { x: 0, y: 0 },
    { x: 8, y: 0 },
    { x: 8, y: 4 },
    { x: 0, y: 4 },
  ];
  try {
    const outline = drawableOutline(pool);
    if (outline === null) return plain;
    return withoutRepeats(outlinePoints(outline, cornersPerArc).map(([x, y]) => ({ x, y })));
  } catch (error) {
    if (error instanceof CoreError) return plain;
    throw error;
  }
}

const same = (one: Corner | undefined, other: Corner): boolean =>
  one !== undefined && Math.hypot(one.x - other.x, one.y - other.y) < 1e-6;

function withoutRepeats(corners: readonly Corner[]): readonly Corner[] {
  return corners.filter((corner, place) => !same(corners.at(place - 1), corner));
}

/** An outline of another kind that keeps as much of the present one as it can. */
export function outlineAs(kind: Outline['kind'], pool: Pool): Outline {
  const before = pool.kind === 'shape' ? pool.outline : null;
  const length = before !== null && 'length' in before ? before.length : null;
  const width = before !== null && 'width' in before ? before.width : null;
  switch (kind) {
    case 'rectangle':
    case 'ellipse':
    case 'stadium':
      return { kind, length, width };
    case 'circle':
      return { kind, diameter: length };
    case 'twoRadius':
      return {
        kind,
        length,
        firstRadius: width === null ? null : width / 2,
        secondRadius: width === null ? null : width / 2,
        sides: [
          { kind: 'straight', radius: null },
          { kind: 'straight', radius: null },
        ],
      };
    case 'polygon':
      return { kind, vertices: [...cornersOf(pool)] };
  }
}
