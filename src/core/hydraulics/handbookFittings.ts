/**
 * Rows of the handbook that a pool's pipework seldom needs: bends by their radius, mitres, check
 * valves with a lifting disc. The fittings of the pad are in fittings.ts.
 */
import { CoreError, requireBetween } from '#core/base/errors.ts';

// Crane TP-410 page A-29: radius over bore [-], multiplier of f_T [-]. 1.5 and 3 were read in tables
// that quote it; the rest is from memory.
const bends: readonly (readonly [number, number])[] = [
  [1, 20],
  [1.5, 14],
  [2, 12],
  [3, 12],
  [4, 14],
  [6, 17],
  [8, 24],
  [10, 30],
  [12, 34],
  [14, 38],
  [16, 42],
  [20, 50],
];

// Crane TP-410 page A-29: angle of a mitre [deg], multiplier of f_T [-]; from memory.
const mitres: readonly (readonly [number, number])[] = [
  [15, 4],
  [30, 8],
  [45, 15],
  [60, 25],
  [75, 40],
  [90, 60],
];

// Crane TP-410 page A-29: radius of an inlet's edge over the bore [-], its K [-]; from memory. A
// larger radius than the last counts as the last.
const inlets: readonly (readonly [number, number])[] = [
  [0, 0.5],
  [0.02, 0.28],
  [0.04, 0.24],
  [0.06, 0.15],
  [0.1, 0.09],
  [0.15, 0.04],
];

/** Valves with a multiplier of their own (Crane TP-410, pages; from memory) [-]. */
export const handbookValves = {
  /** Fully open, straight through. */
  plugValve: 18,
  /** Butterfly, centric, 10 to 14 in; the pad's is 2 to 8 in. */
  largeButterflyValve: 35,
  /** Butterfly, centric, 16 to 24 in. */
  widestButterflyValve: 25,
  /** Globe pattern, disc lifts square to the seat. */
  liftCheckValve: 600,
  /** Angle pattern of the same. */
  liftCheckValveAngle: 55,
  /** With strainer; the disc lifts. */
  footValvePoppet: 420,
  /** With strainer; the disc swings. */
  footValveHinged: 75,
} as const;

function rowOf(table: readonly (readonly [number, number])[], at: number, field: string): number {
  const found = table.find(([each]) => Math.abs(each - at) < 1e-9);
  if (found === undefined)
    throw new CoreError(field, at, `one of ${table.map(([each]) => each).join(', ')}`);
  return found[1];
}

/**
 * Crane's multiplier of a smooth 90 degree bend.
 *
 * Law: the printed table; K = n f_T.
 * @param radiusOverBore Radius of the bend over the bore [-], one of 1, 1.5, 2, 3, 4, 6, 8, 10, 12, 14, 16, 20.
 * @returns Multiplier n [-].
 * @throws CoreError when the radius is not in the table.
 * Accuracy: as printed.
 * Source: Crane TP-410, page A-29, 1.5 and 3 second-hand, the rest from memory (year not seen).
 * @example bendMultiplier(3) // 12.00
 */
export function bendMultiplier(radiusOverBore: number): number {
  return rowOf(bends, requireBetween('radiusOverBore', radiusOverBore, 1, 20, ''), 'radius');
}

/**
 * Crane's multiplier of a mitre bend, two pieces of pipe cut and joined at an angle.
 *
 * Law: the printed table; K = n f_T.
 * @param angle Angle the water turns by [deg], one of 15, 30, 45, 60, 75, 90.
 * @returns Multiplier n [-].
 * @throws CoreError when the angle is not in the table.
 * Accuracy: as printed.
 * Source: Crane TP-410, page A-29, from memory (year not seen).
 * @example mitreMultiplier(90) // 60.00
 */
export function mitreMultiplier(angle: number): number {
  return rowOf(mitres, requireBetween('angle', angle, 0, 90, 'deg'), 'angle');
}

/**
 * Coefficient of a flush inlet whose edge is rounded.
 *
 * Law: the printed table, on the velocity in the pipe.
 * @param radiusOverBore Radius of the edge over the bore [-], one of 0, 0.02, 0.04, 0.06, 0.1, 0.15, or more.
 * @returns Coefficient K [-].
 * @throws CoreError when the radius is below 0.15 and not in the table.
 * Accuracy: as printed.
 * Source: Crane TP-410, page A-29, from memory (year not seen).
 * @example roundedInletK(0.06) // 0.1500
 */
export function roundedInletK(radiusOverBore: number): number {
  const radius = requireBetween('radiusOverBore', radiusOverBore, 0, 1, '');
  return rowOf(inlets, Math.min(radius, 0.15), 'radius');
}
