/**
 * Loss coefficients of fittings, valves, pipe ends and sudden changes of bore.
 */
import { standardGravity } from '#core/base/constants.ts';
import { CoreError, requireBetween } from '#core/base/errors.ts';
import { inch } from './pipe.ts';

/** Fittings and valves whose coefficient follows the pipe size. */
export type FittingKind =
  | 'elbow90'
  | 'elbow90Long'
  | 'bend90Wide'
  | 'elbow45'
  | 'streetElbow90'
  | 'streetElbow45'
  | 'returnBend'
  | 'teeRun'
  | 'teeBranch'
  | 'gateValve'
  | 'ballValve'
  | 'butterflyValve'
  | 'globeValve'
  | 'angleValve'
  | 'swingCheckValve'
  | 'swingCheckValveClearway'
  | 'threeWayValveStraight'
  | 'threeWayValveBranch';

/** Ends of a pipe, whose coefficient is the same at every size. */
export type EndKind =
  | 'squareInlet'
  | 'roundedInlet'
  | 'bellMouthInlet'
  | 'projectingInlet'
  | 'exit';

/** Roughness of new commercial steel [m], 0.0018 in, on which Crane's f_T rests. */
const commercialSteelRoughness = 0.0018 * inch;

/**
 * Crane's multiplier n [-] of each fitting, K = n f_T (TP-410, pages ). Those of
 * craneFromMemory could not be read in the handbook; the others were read in tables that quote it.
 */
export const craneMultipliers: Readonly<Record<FittingKind, number>> = {
  elbow90: 30, // standard 90 degree elbow
  elbow90Long: 14, // 90 degree bend, radius 1.5 bores
  bend90Wide: 12, // 90 degree bend, radius 3 bores
  elbow45: 16, // standard 45 degree elbow
  streetElbow90: 50,
  streetElbow45: 26,
  returnBend: 50, // close pattern
  teeRun: 20, // straight through
  teeBranch: 60, // turning into or out of the branch
  gateValve: 8, // fully open, full bore
  ballValve: 3, // fully open, full bore
  butterflyValve: 45, // fully open, 2 to 8 in, centric
  globeValve: 340, // fully open, full bore
  angleValve: 150, // fully open, full bore
  swingCheckValve: 100, // conventional, angled seat
  swingCheckValveClearway: 50, // straight through
  threeWayValveStraight: 30, // plug valve with three ways, straight through
  threeWayValveBranch: 90, // the same, turning
};

/** Multipliers that could not be read in the handbook: from memory. */
export const craneFromMemory: readonly FittingKind[] = [
  'elbow90',
  'elbow45',
  'streetElbow90',
  'streetElbow45',
  'returnBend',
  'teeRun',
  'teeBranch',
];

/**
 * Coefficient K [-] of each pipe end (Hydraulic Institute Engineering Data Book; the projecting
 * inlet, and the one rounded by 0.15 bores or more, from Crane TP-410, the latter from memory; the exit by Borda–Carnot into still water, where all velocity is lost).
 */
export const endCoefficients: Readonly<Record<EndKind, number>> = {
  squareInlet: 0.5,
  roundedInlet: 0.04,
  bellMouthInlet: 0.05,
  projectingInlet: 0.78,
  exit: 1,
};

function requirePipeBore(field: string, bore: number): number {
  return requireBetween(field, bore, 0.005, 2, 'm');
}

/**
 * Friction factor of fully turbulent flow in commercial steel pipe, Crane's f_T.
 *
 * Law: f_T = 0.25 / log10(e / 3.7 D)^2, e = 0.0018 in.
 * @param bore Inside diameter [m], 0.005 to 2.
 * @returns Darcy friction factor [-].
 * @throws CoreError when the bore lies outside its range or is not a number.
 * Accuracy: rounds to the 2009 edition's printed f_T for 1, 1-1/2, 2-1/2, 4 and 6 in within 0.001; older printings are up to 0.002 higher in small sizes.
 * Source: Crane TP-410 (2009), as quoted in fluids 1.0.22, friction.ft_Crane.
 * @example fullyTurbulentFriction(0.0525018) // 0.0189906962
 */
export function fullyTurbulentFriction(bore: number): number {
  const log = Math.log10(commercialSteelRoughness / (3.7 * requirePipeBore('bore', bore)));
  return 0.25 / (log * log);
}

/**
 * Loss coefficient of a fitting, valve or pipe end in a pipe of given bore.
 *
 * Law: K = n f_T for fittings and valves, with n from craneMultipliers; a constant from endCoefficients for ends.
 * @param kind Kind [-], one of FittingKind or EndKind.
 * @param bore Inside diameter the velocity is taken in [m], 0.005 to 2.
 * @returns Loss coefficient K [-].
 * @throws CoreError when the kind is unknown or the bore lies outside its range.
 * Accuracy: handbook figures; single fittings may differ by a quarter.
 * Source: Crane TP-410 pages A-26 to A-30 (multipliers of elbows, tees and return bends from memory); Hydraulic Institute Engineering Data Book for ends.
 * @example fittingK('elbow90', 0.0525018) // 0.569720885
 */
export function fittingK(kind: FittingKind | EndKind, bore: number): number {
  requirePipeBore('bore', bore);
  if (Object.hasOwn(endCoefficients, kind)) return endCoefficients[kind as EndKind];
  if (Object.hasOwn(craneMultipliers, kind)) {
    return craneMultipliers[kind as FittingKind] * fullyTurbulentFriction(bore);
  }
  throw new CoreError('fitting kind', kind, 'a kind in craneMultipliers or endCoefficients');
}

/**
 * Loss coefficient of a sudden enlargement, on the velocity in the smaller bore.
 *
 * Law: K = (1 - (D1/D2)^2)^2, Borda–Carnot.
 * @param firstBore Bore before the change [m], 0.005 to 2.
 * @param secondBore Bore after it [m], from the first bore to 2.
 * @returns Loss coefficient K [-], 0 to 1; 0 when the bores are equal.
 * @throws CoreError when a bore lies outside its range or the second is the smaller.
 * Accuracy: 1e-9 of the reference cases; the law itself holds for turbulent flow with a flat profile.
 * Source: Borda–Carnot; Crane TP-410 page A-26.
 * @example suddenEnlargement(0.0409, 0.0525) // 0.154515665696
 */
export function suddenEnlargement(firstBore: number, secondBore: number): number {
  requirePipeBore('first bore', firstBore);
  requireBetween('second bore', secondBore, firstBore, 2, 'm');
  return (1 - (firstBore / secondBore) ** 2) ** 2;
}

/**
 * Loss coefficient of a sudden contraction, on the velocity in the smaller bore.
 *
 * Law: K = 0.5 (1 - (D2/D1)^2).
 * @param firstBore Bore before the change [m], 0.005 to 2.
 * @param secondBore Bore after it [m], 0.005 to the first bore.
 * @returns Loss coefficient K [-], 0 to 0.5; 0 when the bores are equal.
 * @throws CoreError when a bore lies outside its range or the second is the larger.
 * Accuracy: 1e-9 of the reference cases; the law itself is a handbook fit.
 * Source: Crane TP-410 page A-26, included angle 180 degrees.
 * @example suddenContraction(0.0525, 0.0409) // 0.196542403628
 */
export function suddenContraction(firstBore: number, secondBore: number): number {
  requirePipeBore('first bore', firstBore);
  requireBetween('second bore', secondBore, 0.005, firstBore, 'm');
  return 0.5 * (1 - (secondBore / firstBore) ** 2);
}

/**
 * Head lost in anything described by a coefficient K.
 *
 * Law: h = K V^2 / 2g.
 * @param k Loss coefficient [-], 0 to 1e9.
 * @param velocity Mean velocity in the bore K is stated for [m/s], 0 to 1e6.
 * @returns Head [m]; 0 at no velocity.
 * @throws CoreError when either lies outside its range or is not a number.
 * Accuracy: exact arithmetic.
 * Source: Crane TP-410, chapter 2; standard gravity from NIST SP 811.
 * @example minorLoss(0.57, 1.8288) // 0.0971978393
 */
export function minorLoss(k: number, velocity: number): number {
  requireBetween('loss coefficient', k, 0, 1e9, '');
  requireBetween('velocity', velocity, 0, 1e6, 'm/s');
  return (k * velocity * velocity) / (2 * standardGravity);
}
