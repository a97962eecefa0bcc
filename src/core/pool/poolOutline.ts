import { CoreError, requireBetween } from '#core/base/errors.ts';
import { requirePolygon, type Vertex } from './polygon.ts';

/** How one long side of a two-radius outline joins its two end circles, touching both smoothly. */
export type OutlineSide =
  | { readonly kind: 'straight' }
  | {
      /** inward: bends towards the middle of the pool, as a kidney does; outward: bulges. */
      readonly kind: 'inward' | 'outward';
      /** Radius of the arc [m], 0.001 to 1e4. */
      readonly radius: number;
    };

/**
 * Two end circles, joined on each side by a straight line or an arc that touches both. The circles
 * stand on the long axis with their outer ends `length` apart, so their centres are
 * length - firstRadius - secondRadius apart.
 */
export interface TwoRadiusOutline {
  readonly kind: 'twoRadius';
  /** Overall length [m], 0.001 to 1e4, more than both diameters' greater. */
  readonly length: number;
  /** Radius of the end at distance 0 [m], 0.001 to 1e4. */
  readonly firstRadius: number;
  /** Radius of the other end [m], 0.001 to 1e4. */
  readonly secondRadius: number;
  readonly sides: readonly [OutlineSide, OutlineSide];
}

/** The outline of a pool seen from above; its length runs along x. */
export type Outline =
  | { readonly kind: 'rectangle'; readonly length: number; readonly width: number }
  | { readonly kind: 'circle'; readonly diameter: number }
  | { readonly kind: 'ellipse'; readonly length: number; readonly width: number }
  | { readonly kind: 'stadium'; readonly length: number; readonly width: number }
  | TwoRadiusOutline
  | { readonly kind: 'polygon'; readonly vertices: readonly Vertex[] };

/**
 * A piece of boundary, walked from `fromX` to `toX`: y = base + slope (x - fromX) for a line, and
 * y = base + squash sqrt(radius^2 - (x - centre)^2) for an arc (squash below 0 is its lower half).
 */
export type BoundaryPiece =
  | {
      readonly kind: 'line';
      readonly fromX: number;
      readonly toX: number;
      readonly base: number;
      readonly slope: number;
    }
  | {
      readonly kind: 'arc';
      readonly fromX: number;
      readonly toX: number;
      readonly base: number;
      readonly squash: number;
      readonly centre: number;
      readonly radius: number;
    };

/**
 * The boundary of an outline as pieces that each are a function of x; parts that run straight across
 * are left out, since they enclose nothing.
 *
 * Law: walked once round, so that the signed sum of integrals of y dx is the area.
 * @param outline The outline [see Outline], lengths [m] 0.001 to 1e4.
 * @returns Pieces [see BoundaryPiece], x from 0 at the outline's first end.
 * @throws CoreError when a length is out of range, a stadium is wider than long, a polygon crosses itself, or a two-radius outline cannot close.
 * Accuracy: exact up to rounding of doubles.
 * Source: plane geometry.
 * @example boundaryOf({ kind: 'rectangle', length: 8, width: 4 }).length // 2.000
 */
export function boundaryOf(outline: Outline): readonly BoundaryPiece[] {
  switch (outline.kind) {
    case 'rectangle':
      return rectangle(
        requireLength('length', outline.length),
        requireLength('width', outline.width),
      );
    case 'circle':
      return ellipse(requireLength('diameter', outline.diameter), outline.diameter);
    case 'ellipse':
      return ellipse(
        requireLength('length', outline.length),
        requireLength('width', outline.width),
      );
    case 'stadium':
      return stadium(
        requireLength('length', outline.length),
        requireLength('width', outline.width),
      );
    case 'twoRadius':
      return twoRadius(outline);
    case 'polygon':
      return polygon(requirePolygon(outline.vertices));
  }
}

function requireLength(field: string, value: number): number {
  return requireBetween(field, value, 1e-3, 1e4, 'm');
}

function rectangle(length: number, width: number): readonly BoundaryPiece[] {
  return [
    { kind: 'line', fromX: 0, toX: length, base: width, slope: 0 },
    { kind: 'line', fromX: length, toX: 0, base: 0, slope: 0 },
  ];
}

function ellipse(length: number, width: number): readonly BoundaryPiece[] {
  const radius = length / 2;
  const half = { kind: 'arc' as const, base: 0, centre: radius, radius };
  const squash = width / length;
  return [
    { ...half, fromX: 0, toX: length, squash },
    { ...half, fromX: length, toX: 0, squash: -squash },
  ];
}

function stadium(length: number, width: number): readonly BoundaryPiece[] {
  if (width > length) throw new CoreError('width', width, `the length of ${length} m or less`);
  if (width === length) return ellipse(length, width);
  const radius = width / 2;
  const sides = [{ kind: 'straight' }, { kind: 'straight' }] as const;
  return twoRadius({ kind: 'twoRadius', length, firstRadius: radius, secondRadius: radius, sides });
}

function polygon(vertices: readonly Vertex[]): readonly BoundaryPiece[] {
  const startX = Math.min(...vertices.map(([x]) => x));
  const startY = Math.min(...vertices.map(([, y]) => y));
  return vertices.flatMap(([x, y], index): readonly BoundaryPiece[] => {
    const [nextX, nextY] = vertices[(index + 1) % vertices.length] ?? [x, y];
    if (nextX === x) return [];
    const slope = (nextY - y) / (nextX - x);
    return [{ kind: 'line', fromX: x - startX, toX: nextX - startX, base: y - startY, slope }];
  });
}

interface EndCircles {
  readonly length: number;
  readonly first: number;
  readonly second: number;
  /** Distance between the two centres. */
  readonly apart: number;
}

function twoRadius(outline: TwoRadiusOutline): readonly BoundaryPiece[] {
  const length = requireLength('length', outline.length);
  const first = requireLength('firstRadius', outline.firstRadius);
  const second = requireLength('secondRadius', outline.secondRadius);
  const apart = length - first - second;
  if (!(apart > Math.abs(first - second))) {
    const least = 2 * Math.max(first, second);
    throw new CoreError('length', length, `more than the greater diameter of ${least} m`);
  }
  const circles: EndCircles = { length, first, second, apart };
  const upper = sidePieces(circles, outline.sides[0], 'sides[0]');
  const lower = sidePieces(circles, outline.sides[1], 'sides[1]');
  return [...upper, ...lower.map(mirrored).reverse()];
}

/** The other way round and on the other side of the axis. */
function mirrored(piece: BoundaryPiece): BoundaryPiece {
  const { fromX: toX, toX: fromX } = piece;
  if (piece.kind === 'arc')
    return { ...piece, fromX, toX, base: -piece.base, squash: -piece.squash };
  const end = piece.base + piece.slope * (piece.toX - piece.fromX);
  return { ...piece, fromX, toX, base: -end, slope: -piece.slope };
}

function sidePieces(
  circles: EndCircles,
  side: OutlineSide,
  field: string,
): readonly BoundaryPiece[] {
  const { length, first, second } = circles;
  const { link, fromX, toX } =
    side.kind === 'straight' ? tangent(circles) : arcLink(circles, side, field);
  const circle = { kind: 'arc' as const, base: 0, squash: 1 };
  return [
    { ...circle, fromX: 0, toX: fromX, centre: first, radius: first },
    link,
    { ...circle, fromX: toX, toX: length, centre: length - second, radius: second },
  ];
}

interface Link {
  readonly link: BoundaryPiece;
  /** Where it leaves the first circle. */
  readonly fromX: number;
  /** Where it reaches the second circle. */
  readonly toX: number;
}

/** The outer tangent of both circles; its normal leans towards the smaller one. */
function tangent({ length, first, second, apart }: EndCircles): Link {
  const lean = (first - second) / apart;
  const rise = Math.sqrt(1 - lean * lean);
  const fromX = first + first * lean;
  const toX = length - second + second * lean;
  const slope = ((second - first) * rise) / (toX - fromX);
  return { fromX, toX, link: { kind: 'line', fromX, toX, base: first * rise, slope } };
}

/**
 * An arc that touches both circles. Its centre is radius + r from a circle it bends around from
 * outside (inward), radius - r from one it encloses (outward); along and across place that centre.
 */
function arcLink(
  { length, first, second, apart }: EndCircles,
  { kind, radius }: Exclude<OutlineSide, { kind: 'straight' }>,
  field: string,
): Link {
  requireLength(`${field}.radius`, radius);
  const inward = kind === 'inward';
  if (!inward && !(radius > length / 2)) {
    throw new CoreError(`${field}.radius`, radius, `more than half the length, ${length / 2} m`);
  }
  const toFirst = inward ? radius + first : radius - first;
  const toSecond = inward ? radius + second : radius - second;
  const along = (apart * apart + toFirst * toFirst - toSecond * toSecond) / (2 * apart);
  const across = Math.sqrt(Math.max(0, toFirst * toFirst - along * along));
  const sign = inward ? 1 : -1;
  const fromX = first + (sign * first * along) / toFirst;
  const toX = length - second - (sign * second * (apart - along)) / toSecond;
  const centre = first + along;
  // The arc must stay on its own side of the axis, or the two sides could cross. Its lowest point
  // matters only when the arc reaches it; else an end is lowest, and the ends lie on the circles.
  const dips = fromX < centre && centre < toX;
  if (inward && (across === 0 || (dips && across <= radius))) {
    throw new CoreError(`${field}.radius`, radius, 'greater: the arc would reach the middle');
  }
  const link = {
    kind: 'arc' as const,
    fromX,
    toX,
    base: sign * across,
    squash: -sign,
    centre,
    radius,
  };
  return { fromX, toX, link };
}

/**
 * How far an outline reaches along x.
 *
 * Law: greatest x less least x.
 * @param outline The outline [see Outline], fields as there.
 * @returns Length [m], more than 0.
 * @throws CoreError as boundaryOf.
 * Accuracy: exact up to rounding of doubles.
 * Source: plane geometry.
 * @example outlineLength({ kind: 'circle', diameter: 6 }) // 6.000
 */
export function outlineLength(outline: Outline): number {
  return Math.max(...boundaryOf(outline).flatMap(({ fromX, toX }) => [fromX, toX]));
}

/**
 * Points along an outline, for drawing it.
 *
 * Law: each piece of boundary at steps that bunch where an arc is steep.
 * @param outline The outline [see Outline], fields as there.
 * @param steps Steps for each arc [-], whole, 1 to 1000; 24 unless set.
 * @returns Points [see Vertex] once round, from the first end; lines have their two ends only.
 * @throws CoreError as boundaryOf, or when steps is out of range.
 * Accuracy: points lie on the outline up to rounding of doubles.
 * Source: plane geometry.
 * @example outlinePoints({ kind: 'rectangle', length: 8, width: 4 }).length // 4.000
 */
export function outlinePoints(outline: Outline, steps = 24): readonly Vertex[] {
  requireBetween('steps', steps, 1, 1000, '');
  return boundaryOf(outline).flatMap((piece) =>
    piece.kind === 'line' ? linePoints(piece) : arcPoints(piece, Math.ceil(steps)),
  );
}

function linePoints(piece: Extract<BoundaryPiece, { kind: 'line' }>): readonly Vertex[] {
  const { fromX, toX, base, slope } = piece;
  return [
    [fromX, base],
    [toX, base + slope * (toX - fromX)],
  ];
}

function arcPoints(
  piece: Extract<BoundaryPiece, { kind: 'arc' }>,
  steps: number,
): readonly Vertex[] {
  const { fromX, toX, base, squash, centre, radius } = piece;
  const angleAt = (x: number) => Math.acos(Math.min(1, Math.max(-1, (x - centre) / radius)));
  const [from, to] = [angleAt(fromX), angleAt(toX)];
  return Array.from({ length: steps + 1 }, (_, step): Vertex => {
    const angle = from + ((to - from) * step) / steps;
    return [centre + radius * Math.cos(angle), base + squash * radius * Math.sin(angle)];
  });
}
