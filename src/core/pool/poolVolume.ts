import { CoreError, requireBetween } from '#core/base/errors.ts';
import { type BoundaryPiece, boundaryOf, type Outline } from './poolOutline.ts';

/** The floor at one place along the length. */
export interface Station {
  /** Distance from the first end of the outline along x [m], 0 to the length. */
  readonly distance: number;
  /** Depth of water there [m], 0 to 1000. */
  readonly depth: number;
}

/** The floor of a pool; it changes along the length (x) only. */
export type Depth =
  | { readonly kind: 'uniform' /** Depth [m], 0 to 1000. */; readonly depth: number }
  | {
      readonly kind: 'sloped';
      /** Depth at the first end of the outline [m], 0 to 1000. */
      readonly first: number;
      /** Depth at the other end [m], 0 to 1000. */
      readonly second: number;
    }
  | {
      readonly kind: 'stations';
      /** Straight floor between stations, from distance 0 to the length; two at one distance make a step. */
      readonly stations: readonly Station[];
    };

/** A pool: what it looks like from above and how deep it is. */
export interface PoolShape {
  readonly outline: Outline;
  readonly depth: Depth;
}

/** Litres and other rounding of a typed length leave this much play at the last station [-]. */
const stationSlack = 1e-9;

/**
 * Water in a pool.
 *
 * Law: integral of depth over the area inside the outline; by Green's theorem the integral of
 * depth x y dx once round the boundary, each piece in closed form.
 * @param shape Outline and floor [see PoolShape], fields as there.
 * @returns Volume [m3], 0 or more.
 * @throws CoreError when the outline is unsound (see boundaryOf), a depth leaves 0 to 1000 m, or stations are out of order or do not reach from end to end.
 * Accuracy: 1e-10 relative against reference file pool-volume.
 * Source: plane geometry; Green's theorem.
 * @example poolVolume({ outline: { kind: 'rectangle', length: 8, width: 4 }, depth: { kind: 'uniform', depth: 1.5 } }) // 48.00
 */
export function poolVolume(shape: PoolShape): number {
  const boundary = boundaryOf(shape.outline);
  const length = Math.max(...boundary.flatMap(({ fromX, toX }) => [fromX, toX]));
  const stations = stationsOf(shape.depth, length);
  return Math.abs(boundary.reduce((sum, piece) => sum + overStations(piece, stations), 0));
}

/**
 * Area of a pool's water surface.
 *
 * Law: as poolVolume with a depth of 1 m.
 * @param outline The outline [see Outline], fields as there.
 * @returns Area [m2], more than 0.
 * @throws CoreError when the outline is unsound (see boundaryOf).
 * Accuracy: 1e-10 relative against reference file pool-volume.
 * Source: plane geometry; Green's theorem.
 * @example outlineArea({ kind: 'ellipse', length: 9, width: 5 }) // 35.34
 */
export function outlineArea(outline: Outline): number {
  return poolVolume({ outline, depth: { kind: 'uniform', depth: 1 } });
}

/**
 * Mean depth of a pool.
 *
 * Law: volume over area.
 * @param shape Outline and floor [see PoolShape], fields as there.
 * @returns Mean depth [m], 0 or more.
 * @throws CoreError as poolVolume.
 * Accuracy: 1e-10 relative against reference file pool-volume.
 * Source: plane geometry.
 * @example meanDepth({ outline: { kind: 'circle', diameter: 6 }, depth: { kind: 'sloped', first: 1, second: 2 } }) // 1.500
 */
export function meanDepth(shape: PoolShape): number {
  return poolVolume(shape) / outlineArea(shape.outline);
}

/**
 * Water in a pool of one width whose depth is measured at stations along its length.
 *
 * Law: width x sum of trapezoids between stations.
 * @param width Width [m], 0.001 to 1e4.
 * @param stations Depth along the length [see Station], two or more, from distance 0; the last one sets the length.
 * @returns Volume [m3], 0 or more.
 * @throws CoreError when a number is out of range or stations are out of order.
 * Accuracy: 1e-10 relative against reference file pool-volume.
 * Source: plane geometry.
 * @example depthProfileVolume(4, [{ distance: 0, depth: 1 }, { distance: 8, depth: 2 }]) // 48.00
 */
export function depthProfileVolume(width: number, stations: readonly Station[]): number {
  const length = stations.at(-1)?.distance ?? 0;
  return poolVolume({
    outline: { kind: 'rectangle', length, width },
    depth: { kind: 'stations', stations },
  });
}

/**
 * The trade's rule of thumb for the area of a kidney-shaped pool.
 *
 * Law: 0.45 x (width A + width B) x length.
 * @param widthA Width across one lobe [m], 0.001 to 1e4.
 * @param widthB Width across the other lobe [m], 0.001 to 1e4.
 * @param length Overall length [m], 0.001 to 1e4.
 * @returns Area [m2], an estimate.
 * @throws CoreError when a length is out of range.
 * Accuracy: a rule of thumb; a drawn outline is better.
 * Source: common practice, no source.
 * @example thumbKidneyArea(3.6576, 5.1816, 9.144) // 36.37
 */
export function thumbKidneyArea(widthA: number, widthB: number, length: number): number {
  requireBetween('widthA', widthA, 1e-3, 1e4, 'm');
  requireBetween('widthB', widthB, 1e-3, 1e4, 'm');
  return 0.45 * (widthA + widthB) * requireBetween('length', length, 1e-3, 1e4, 'm');
}

/**
 * The trade's rule of thumb for a round pool, to set beside the exact volume.
 *
 * Law: gallons = 5.9 x diameter^2 x depth, in feet.
 * @param diameterFt Diameter [ft], 0 to 1e5.
 * @param depthFt Depth [ft], 0 to 1e4.
 * @returns Volume [US gal], 0.42 % above the exact one.
 * @throws CoreError when a length is out of range.
 * Accuracy: 1e-9 relative against reference file pool-volume.
 * Source: common practice, no source.
 * @example thumbCircleGallons(18, 4) // 7646.4
 */
export function thumbCircleGallons(diameterFt: number, depthFt: number): number {
  requireBetween('diameterFt', diameterFt, 0, 1e5, 'ft');
  return 5.9 * diameterFt ** 2 * requireBetween('depthFt', depthFt, 0, 1e4, 'ft');
}

function stationsOf(depth: Depth, length: number): readonly Station[] {
  if (depth.kind === 'stations') return requireStations(depth.stations, length);
  const [first, second] =
    depth.kind === 'uniform' ? [depth.depth, depth.depth] : [depth.first, depth.second];
  return [
    { distance: 0, depth: requireBetween('depth', first, 0, 1000, 'm') },
    { distance: length, depth: requireBetween('depth', second, 0, 1000, 'm') },
  ];
}

function requireStations(stations: readonly Station[], length: number): readonly Station[] {
  let reached = 0;
  stations.forEach(({ distance, depth }, index) => {
    requireBetween(`stations[${index}].depth`, depth, 0, 1000, 'm');
    requireBetween(`stations[${index}].distance`, distance, reached, 1e4, 'm');
    reached = distance;
  });
  const first = stations[0]?.distance;
  if (stations.length < 2 || first !== 0) {
    throw new CoreError('stations[0].distance', first, '0 m, with a second station to follow');
  }
  if (Math.abs(reached - length) > stationSlack * length) {
    const field = `stations[${stations.length - 1}].distance`;
    throw new CoreError(field, reached, `the length of the outline, ${length} m`);
  }
  return stations;
}

/** Stations nearer to each other than this [m] are a step in the floor, whose slope no number holds. */
const leastStretch = 1e-9;

/** Integral of depth x y dx along one piece, split where the floor bends. */
function overStations(piece: BoundaryPiece, stations: readonly Station[]): number {
  const low = Math.min(piece.fromX, piece.toX);
  const high = Math.max(piece.fromX, piece.toX);
  const sign = piece.fromX < piece.toX ? 1 : -1;
  const last = stations.length - 2;
  return stations.slice(0, -1).reduce((sum, start, index) => {
    const end = stations[index + 1] ?? start;
    // The outer two reach on past their station, to take up the play left at the ends.
    const from = index === 0 ? low : Math.max(low, start.distance);
    const to = index === last ? high : Math.min(high, end.distance);
    if (to <= from || end.distance - start.distance < leastStretch) return sum;
    const slope = (end.depth - start.depth) / (end.distance - start.distance);
    const depthAt = (x: number) => start.depth + slope * (x - start.distance);
    return sum + sign * integral(piece, from, to, depthAt, slope);
  }, 0);
}

function integral(
  piece: BoundaryPiece,
  from: number,
  to: number,
  depthAt: (x: number) => number,
  slope: number,
): number {
  if (piece.kind === 'line') {
    // Depth and y are both straight, so their product is a parabola: Simpson's rule is exact.
    const at = (x: number) => depthAt(x) * (piece.base + piece.slope * (x - piece.fromX));
    return ((to - from) / 6) * (at(from) + 4 * at((from + to) / 2) + at(to));
  }
  const { base, squash, centre, radius } = piece;
  const depthAtCentre = depthAt(centre);
  const straight = base * (to - from) * depthAt((from + to) / 2);
  const round =
    depthAtCentre * (underArc(to - centre, radius) - underArc(from - centre, radius)) +
    slope * (momentUnderArc(to - centre, radius) - momentUnderArc(from - centre, radius));
  return straight + squash * round;
}

/** Antiderivative of sqrt(r^2 - u^2). */
function underArc(u: number, radius: number): number {
  const share = Math.max(-1, Math.min(1, u / radius));
  const height = radius * Math.sqrt(1 - share * share);
  return (u * height + radius * radius * Math.asin(share)) / 2;
}

/** Antiderivative of u sqrt(r^2 - u^2). */
function momentUnderArc(u: number, radius: number): number {
  return -(Math.max(0, radius * radius - u * u) ** 1.5) / 3;
}
