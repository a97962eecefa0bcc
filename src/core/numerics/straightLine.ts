/** The straight line that lies closest to points, and how firmly they hold it. */
import { CoreError, requirePositive } from '#core/base/errors.ts';

/** A point that a line is laid through. */
export interface LinePoint {
  /** Where it stands [any unit], any finite number. */
  readonly x: number;
  /** What was seen there [any unit], any finite number. */
  readonly y: number;
  /** How much it counts beside the others [-], above 0. */
  readonly weight: number;
}

/** A fitted line. */
export interface StraightLine {
  /** Rise of y for a step of x [unit of y over unit of x], any finite number. */
  readonly slope: number;
  /** Value at x = 0 [unit of y], any finite number. */
  readonly intercept: number;
  /** Standard error of the slope [as the slope], 0 or more. */
  readonly slopeError: number;
  /** Standard error of the intercept [unit of y], 0 or more. */
  readonly interceptError: number;
  /** Residual standard deviation of a point of weight 1 [unit of y], 0 or more. */
  readonly deviation: number;
}

/**
 * The line with the least weighted sum of squares, with its standard errors.
 *
 * Law: slope = Sxy / Sxx about the weighted means; s2 = sum of w r2 / (n - 2); error of the slope
 * s / sqrt(Sxx), of the intercept s sqrt(1 / sum of w + xm2 / Sxx).
 * @param points The points [see LinePoint], three or more, fields as there.
 * @returns The line [see StraightLine]; null when all x are the same, so that no line is held.
 * @throws CoreError when there are fewer than three points, or one is not finite or weighs nothing.
 * Accuracy: the certified values of a reference data set (Norris) to 11 figures or more.
 * Source: linear least squares (NIST/SEMATECH e-Handbook of Statistical Methods, 4.4.3, from memory).
 * @example straightLine([{ x: 0, y: 1, weight: 1 }, { x: 1, y: 3, weight: 1 }, { x: 2, y: 5, weight: 1 }]).slope // 2.000
 */
export function straightLine(points: readonly LinePoint[]): StraightLine | null {
  if (points.length < 3) throw new CoreError('points', points.length, 'three points or more');
  requirePoints(points);
  const sum = (value: (point: LinePoint) => number) =>
    points.reduce((total, point) => total + value(point), 0);
  const weight = sum((point) => point.weight);
  const meanX = sum((point) => point.weight * point.x) / weight;
  const meanY = sum((point) => point.weight * point.y) / weight;
  const squares = sum((point) => point.weight * (point.x - meanX) ** 2);
  const largest = points.reduce((most, { x }) => Math.max(most, Math.abs(x)), 0);
  // What rounding alone leaves of points that all stand at one x.
  if (squares <= weight * (largest * 1e-9) ** 2) return null;
  const slope = sum((point) => point.weight * (point.x - meanX) * (point.y - meanY)) / squares;
  const rest = ({ x, y }: LinePoint) => y - meanY - slope * (x - meanX);
  const variance = sum((point) => point.weight * rest(point) ** 2) / (points.length - 2);
  return {
    slope,
    intercept: meanY - slope * meanX,
    slopeError: Math.sqrt(variance / squares),
    interceptError: Math.sqrt(variance * (1 / weight + meanX ** 2 / squares)),
    deviation: Math.sqrt(variance),
  };
}

function requirePoints(points: readonly LinePoint[]): void {
  points.forEach(({ x, y, weight }, index) => {
    if (!Number.isFinite(x)) throw new CoreError(`points[${index}].x`, x, 'a finite number');
    if (!Number.isFinite(y)) throw new CoreError(`points[${index}].y`, y, 'a finite number');
    requirePositive(`points[${index}].weight`, weight, '');
  });
}
