import { CoreError, requireBetween } from '#core/base/errors.ts';

/** A corner of an outline: x and y [m], each -1e4 to 1e4. */
export type Vertex = readonly [x: number, y: number];

/** Two edges that meet where they should not; edge i runs from vertex i to the next, from 0. */
export interface EdgeCrossing {
  /** Number of the first edge [-], from 0. */
  readonly firstEdge: number;
  /** Number of the second edge [-], from 0. */
  readonly secondEdge: number;
}

/**
 * Area inside a polygon.
 *
 * Law: half the sum of x_i y_(i+1) - x_(i+1) y_i, either sense of rotation.
 * @param vertices Corners in order [see Vertex], 3 or more, the last not repeating the first.
 * @returns Area [m2], more than 0.
 * @throws CoreError when there are fewer than 3 corners, one is out of range, edges cross or touch (named), or there is no area.
 * Accuracy: 1e-10 relative against reference file pool-volume.
 * Source: plane geometry (Gauss's area formula).
 * @example polygonArea([[0, 0], [6, 0], [6, 4], [0, 4]]) // 24.00
 */
export function polygonArea(vertices: readonly Vertex[]): number {
  return Math.abs(signedArea(requirePolygon(vertices)));
}

/** Taken from the first corner, so that a pool drawn far from the origin keeps its digits. */
function signedArea(vertices: readonly Vertex[]): number {
  const [originX, originY] = vertices[0] as Vertex;
  const moved = vertices.map(([x, y]): Vertex => [x - originX, y - originY]);
  return edgesOf(moved).reduce((sum, [[ax, ay], [bx, by]]) => sum + (ax * by - bx * ay) / 2, 0);
}

type Edge = readonly [Vertex, Vertex];

function edgesOf(vertices: readonly Vertex[]): readonly Edge[] {
  return vertices.map((vertex, index) => [
    vertex,
    vertices[(index + 1) % vertices.length] ?? vertex,
  ]);
}

/**
 * The pairs of edges of a polygon that cross, touch or run back over each other.
 *
 * Law: signs of the four triangles two edges span; neighbours may only share their corner.
 * @param vertices Corners in order [see Vertex], any number.
 * @returns Pairs of edges [see EdgeCrossing], numbered from 0; empty for a sound outline.
 * @throws nothing; an edge of no length is reported as crossing the edge after it.
 * Accuracy: exact but for rounding of doubles where edges all but touch.
 * Source: plane geometry.
 * @example crossingEdges([[0, 0], [4, 4], [4, 0], [0, 4]])[0].secondEdge // 2.000
 */
export function crossingEdges(vertices: readonly Vertex[]): readonly EdgeCrossing[] {
  const edges = edgesOf(vertices);
  return edges.flatMap((first, firstEdge) =>
    edges.slice(firstEdge + 1).flatMap((second, offset) => {
      const secondEdge = firstEdge + 1 + offset;
      const meets = meetsWrongly(first, second, secondEdge - firstEdge, edges.length);
      return meets ? [{ firstEdge, secondEdge }] : [];
    }),
  );
}

function meetsWrongly(first: Edge, second: Edge, apart: number, count: number): boolean {
  if (apart === 1) return turnsBack(first, second);
  if (apart === count - 1) return turnsBack(second, first);
  return segmentsMeet(first, second);
}

/** Neighbours, the second starting where the first ends: wrong only when one lies on the other. */
function turnsBack([a, b]: Edge, [, c]: Edge): boolean {
  if (turn(a, b, c) !== 0) return false;
  return (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) <= 0;
}

/** Each has the other's ends on both sides or on it; in one line they meet where they lie side by side. */
function segmentsMeet([a, b]: Edge, [c, d]: Edge): boolean {
  const turns = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)] as const;
  if (turns.every((each) => each === 0)) return lieBeside([a, b], [c, d]);
  const [abc, abd, cda, cdb] = turns;
  return abc * abd <= 0 && cda * cdb <= 0;
}

/** 1 for a left turn at b, -1 for a right turn, 0 for straight on or back. */
function turn(a: Vertex, b: Vertex, c: Vertex): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}

/** Whether two edges in one line share a point. */
function lieBeside([a, b]: Edge, [c, d]: Edge): boolean {
  return ([0, 1] as const).every(
    (axis) =>
      Math.max(Math.min(a[axis], b[axis]), Math.min(c[axis], d[axis])) <=
      Math.min(Math.max(a[axis], b[axis]), Math.max(c[axis], d[axis])),
  );
}

/**
 * Gives back the corners when they make a sound outline.
 *
 * Law: 3 corners or more, in range, no edge crossing or touching another, at least 1 mm long and wide, area above 0.
 * @param vertices Corners in order [see Vertex], any numbers.
 * @returns The same corners [see Vertex].
 * @throws CoreError that names the corner or the edges at fault; edge 1 runs from corner 1 to corner 2.
 * Accuracy: as crossingEdges.
 * Source: plane geometry.
 * @example requirePolygon([[0, 0], [6, 0], [6, 4]]).length // 3.000
 */
export function requirePolygon(vertices: readonly Vertex[]): readonly Vertex[] {
  if (vertices.length < 3) throw new CoreError('vertices', vertices.length, '3 corners or more');
  vertices.forEach(([x, y], index) => {
    requireBetween(`vertices[${index}] x`, x, -1e4, 1e4, 'm');
    requireBetween(`vertices[${index}] y`, y, -1e4, 1e4, 'm');
  });
  const [crossing] = crossingEdges(vertices);
  if (crossing)
    throw new CoreError(
      'vertices',
      crossingText(crossing, vertices.length),
      'an outline whose edges meet only at corners',
    );
  if (Math.min(extentOf(vertices, 0), extentOf(vertices, 1)) < leastExtent)
    throw new CoreError('vertices', 'narrower than 1 mm', 'an outline at least 1 mm long and wide');
  if (signedArea(vertices) === 0)
    throw new CoreError('vertices', 'without area', 'an outline with an area');
  return vertices;
}

/** Thinner than this [m] no pool is, and the products of its corners lose all their digits. */
const leastExtent = 1e-3;

function extentOf(vertices: readonly Vertex[], axis: 0 | 1): number {
  const along = vertices.map((vertex) => vertex[axis]);
  return Math.max(...along) - Math.min(...along);
}

function crossingText({ firstEdge, secondEdge }: EdgeCrossing, count: number): string {
  const name = (edge: number) =>
    `edge ${edge + 1} (corner ${edge + 1} to ${((edge + 1) % count) + 1})`;
  return `an outline in which ${name(firstEdge)} meets ${name(secondEdge)}`;
}
