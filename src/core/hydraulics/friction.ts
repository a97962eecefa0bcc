/**
 * Friction in straight round pipe: the friction factor by regime, Darcy–Weisbach and Hazen–Williams.
 *
 * The solver calls the friction factor millions of times, so the inner functions allocate nothing
 * and the slope against the Reynolds number is analytic.
 */
import { standardGravity } from '#core/base/constants.ts';
import { requireBetween } from '#core/base/errors.ts';
import { meanVelocity, reynoldsNumber } from './pipe.ts';

/** Absolute roughness of smooth plastic pipe [m], 1.5 micrometres (Moody's "drawn tubing", 1944). */
export const smoothPlasticRoughness = 1.5e-6;

/** Reynolds number below which flow is taken as laminar [-]. */
export const laminarLimit = 2000;

/** Reynolds number above which Colebrook–White holds [-]. */
export const turbulentLimit = 4000;

/** A straight run of pipe with water in it, for Darcy–Weisbach. */
export interface DarcyRun {
  /** Flow [m3/s], 0 or more. */
  readonly flow: number;
  /** Inside diameter [m], 0.0001 to 10. */
  readonly bore: number;
  /** Length [m], 0 or more. */
  readonly length: number;
  /** Absolute roughness [m], 0 to a tenth of the bore. */
  readonly roughness: number;
  /** Kinematic viscosity [m2/s], 1e-8 to 1. */
  readonly kinematicViscosity: number;
}

/** A friction factor and its slope, written in place so that a solver need not allocate. */
export interface FrictionPoint {
  /** Darcy friction factor [-], above 0. */
  factor: number;
  /** Slope of the factor against the Reynolds number [-], any. */
  slope: number;
}

// Colebrook–White written with the natural logarithm: x + scale ln(a + b x) = 0, x = 1/sqrt f,
// with a = roughness / 3.7 bores and b = 2.51 / Re.
const scale = 2 / Math.LN10;
const roughShare = 3.7;
const smoothShare = 2.51;

/** Steps below this relative size leave an error beyond double precision, for order four. */
const settled = 1e-4;

// The least keeps 64/Re and its slope finite; a run of pipe at less flow never asks for either.
const leastReynolds = 1e-100;
const greatestReynolds = 1e12;

function requireTurbulent(reynolds: number): void {
  requireBetween('Reynolds number', reynolds, 100, greatestReynolds, '');
}

function requireRoughness(relativeRoughness: number): void {
  requireBetween('relative roughness', relativeRoughness, 0, 0.1, '');
}

function requireReynolds(reynolds: number): void {
  requireBetween('Reynolds number', reynolds, leastReynolds, greatestReynolds, '');
}

/**
 * First guess of 1/sqrt f. With w = (a + b x) / (b scale) the law reads w + ln w = B, whose
 * root for large B is B - L + L/B + L(L - 2)/2B^2, L = ln B; the large a/b cancels in closed form.
 */
function guessInverseRoot(a: number, b: number): number {
  const negativeLog = -Math.log(b * scale);
  const big = a / (b * scale) + negativeLog;
  const log = Math.log(big);
  return scale * (negativeLog - log + (log / big) * (1 + (log - 2) / (2 * big)));
}

/** The fourth-order correction to a guess x of 1/sqrt f. */
function correction(a: number, b: number, x: number): number {
  const inside = a + b * x;
  const w = inside / (b * scale);
  const residual = -x / scale - Math.log(inside);
  const q = 2 * (1 + w) * (1 + w + (2 / 3) * residual);
  return ((scale * w * residual) / (1 + w)) * ((q - residual) / (q - 2 * residual));
}

function solveInverseRoot(reynolds: number, relativeRoughness: number): number {
  const a = relativeRoughness / roughShare;
  const b = smoothShare / reynolds;
  const guess = guessInverseRoot(a, b);
  const change = correction(a, b, guess);
  const x = guess + change;
  return Math.abs(change) < settled * x ? x : x + correction(a, b, x);
}

/** Slope of the Colebrook–White factor against Re, from the factor itself. */
function turbulentSlope(reynolds: number, relativeRoughness: number, factor: number): number {
  const b = smoothShare / reynolds;
  const inside = relativeRoughness / roughShare + b / Math.sqrt(factor);
  return (-2 * factor * scale * b) / (reynolds * (inside + scale * b));
}

const blendWidth = turbulentLimit - laminarLimit;
const blendStart = 64 / laminarLimit;
const blendStartSlope = -blendStart / laminarLimit;

/** Cubic through both ends with both end slopes (Hermite), or its derivative when asked. */
function blend(reynolds: number, relativeRoughness: number, wantSlope: boolean): number {
  const end = solveInverseRoot(turbulentLimit, relativeRoughness) ** -2;
  const endSlope = turbulentSlope(turbulentLimit, relativeRoughness, end);
  const t = (reynolds - laminarLimit) / blendWidth;
  const chord = end - blendStart;
  const bendStart = blendStartSlope * blendWidth - chord;
  const bendEnd = chord - endSlope * blendWidth;
  if (wantSlope) {
    const bend =
      (1 - 2 * t) * (bendStart * (1 - t) + bendEnd * t) + t * (1 - t) * (bendEnd - bendStart);
    return (chord + bend) / blendWidth;
  }
  return blendStart + t * chord + t * (1 - t) * (bendStart * (1 - t) + bendEnd * t);
}

/**
 * Darcy friction factor of laminar flow.
 *
 * Law: f = 64 / Re.
 * @param reynolds Reynolds number [-], 1e-100 to 1e12; the law holds below about 2000.
 * @returns Darcy friction factor [-].
 * @throws CoreError when the Reynolds number lies outside its range or is not a number.
 * Accuracy: exact for fully developed laminar flow.
 * Source: Hagen–Poiseuille; Hydraulic Institute Engineering Data Book.
 * @example laminarFriction(640) // 0.1000
 */
export function laminarFriction(reynolds: number): number {
  requireReynolds(reynolds);
  return 64 / reynolds;
}

/**
 * Darcy friction factor of turbulent flow, Colebrook–White solved to machine precision.
 *
 * Law: 1/sqrt f = -2 log10(e/3.7 + 2.51/(Re sqrt f)), e the relative roughness; solved by a logarithmic series for the start and one or two fourth-order steps.
 * @param reynolds Reynolds number [-], 100 to 1e12; the law describes flow above about 4000.
 * @param relativeRoughness Roughness over bore [-], 0 to 0.1; Moody's chart ends at 0.05.
 * @returns Darcy friction factor [-].
 * @throws CoreError when either lies outside its range or is not a number.
 * Accuracy: within 2e-14 of the law solved in 40 digits; the law itself is within 5 % of measured smooth pipe (McKeon et al. 2004).
 * Source: Colebrook, J. Inst. Civ. Eng. 11, 133 (1939), doi 10.1680/ijoti.1939.13150.
 * @example colebrookWhite(1e5, 1e-4) // 0.01851386607747
 */
export function colebrookWhite(reynolds: number, relativeRoughness: number): number {
  requireTurbulent(reynolds);
  requireRoughness(relativeRoughness);
  const inverseRoot = solveInverseRoot(reynolds, relativeRoughness);
  return 1 / (inverseRoot * inverseRoot);
}

/** A Colebrook–White root on its way, written in place. */
export interface ColebrookRoot {
  /** 1/sqrt f [-], above 0. */
  inverseRoot: number;
  /** Relative slope of the factor, (Re/f) df/dRe [-], -1 to 0. */
  slope: number;
}

/**
 * One fourth-order step towards the Colebrook–White root and the slope there, for a solver that already has a near guess.
 *
 * Law: the step of colebrookWhite, applied once to x = 1/sqrt f; (Re/f) df/dRe = -2 c b/(a + b x + c b) by implicit differentiation.
 * @param reynolds Reynolds number [-], 100 to 1e12; not checked, since this is called millions of times.
 * @param relativeRoughness Roughness over bore [-], 0 to 0.1; not checked.
 * @param guess Guess of 1/sqrt f [-], 0.5 to 100; not checked.
 * @param out Where to write the root and the slope [see ColebrookRoot], any such object.
 * @returns The same object, holding root and slope [-]; from a guess within 1 part in 1000 the root is exact to machine precision.
 * @throws nothing; numbers out of range give a root that means nothing.
 * Accuracy: the error shrinks with its fourth power.
 * Source: Fritsch, Shafer and Crowley, Comm. ACM 16, 123 (1973), doi 10.1145/361952.361970, for the step; Colebrook 1939 for the law.
 * @example colebrookStep(1e5, 1e-4, 7.35, { inverseRoot: 0, slope: 0 }).inverseRoot ** -2 // 0.01851386607747
 */
export function colebrookStep(
  reynolds: number,
  relativeRoughness: number,
  guess: number,
  out: ColebrookRoot,
): ColebrookRoot {
  const a = relativeRoughness / roughShare;
  const b = smoothShare / reynolds;
  out.inverseRoot = guess + correction(a, b, guess);
  out.slope = (-2 * scale * b) / (a + b * out.inverseRoot + scale * b);
  return out;
}

/**
 * Darcy friction factor at any Reynolds number: the front door.
 *
 * Law: 64/Re to Re 2000, Colebrook–White from 4000, between them the cubic in Re with the value and the slope of each at its end.
 * @param reynolds Reynolds number [-], 1e-100 to 1e12.
 * @param relativeRoughness Roughness over bore [-], 0 to 0.1.
 * @returns Darcy friction factor [-]; continuous with its slope.
 * @throws CoreError when either lies outside its range or is not a number.
 * Accuracy: exact below 2000, 2e-14 of Colebrook–White above 4000; between, flow is unstable and no law holds.
 * Source: Hagen–Poiseuille; Colebrook 1939; the blend is common practice, no source.
 * @example frictionFactor(91493.31163227433, 1.5e-6 / 0.0525018) // 0.01847370974
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  requireReynolds(reynolds);
  requireRoughness(relativeRoughness);
  if (reynolds <= laminarLimit) return 64 / reynolds;
  if (reynolds < turbulentLimit) return blend(reynolds, relativeRoughness, false);
  const inverseRoot = solveInverseRoot(reynolds, relativeRoughness);
  return 1 / (inverseRoot * inverseRoot);
}

/**
 * Slope of the friction factor against the Reynolds number, when the factor is already known.
 *
 * Law: df/dRe = -f/Re below 2000; the derivative of the cubic to 4000; above, by implicit differentiation of Colebrook–White, -2 f c b / (Re (a + b x + c b)), with a = e/3.7, b = 2.51/Re, c = 2/ln 10, x = 1/sqrt f.
 * @param reynolds Reynolds number [-], 1e-100 to 1e12.
 * @param relativeRoughness Roughness over bore [-], 0 to 0.1.
 * @param factor Darcy friction factor there [-], 1e-3 to 1e102, as frictionFactor gives it.
 * @returns Slope [-].
 * @throws CoreError when any of them lies outside its range or is not a number.
 * Accuracy: analytic; checked against finite differences.
 * Source: calculus on the laws of frictionFactor.
 * @example frictionSlope(1000, 0, 0.064) // -6.400e-5
 */
export function frictionSlope(reynolds: number, relativeRoughness: number, factor: number): number {
  requireReynolds(reynolds);
  requireRoughness(relativeRoughness);
  requireBetween('friction factor', factor, 1e-3, 1e102, '');
  if (reynolds <= laminarLimit) return -factor / reynolds;
  if (reynolds < turbulentLimit) return blend(reynolds, relativeRoughness, true);
  return turbulentSlope(reynolds, relativeRoughness, factor);
}

/**
 * Head lost to friction in a straight run, Darcy–Weisbach.
 *
 * Law: h = f (L/D) V^2 / 2g, f from frictionFactor; in laminar flow 32 nu L V / (g D^2), the same thing without a division by the Reynolds number.
 * @param run The run of pipe [see DarcyRun], fields as there.
 * @returns Head [m]; 0 at no flow or no length.
 * @throws CoreError when a field lies outside its range or is not a number, or the Reynolds number exceeds 1e12.
 * Accuracy: 1e-8 of the reference cases for 3/4 to 6 in pipe at 20 degC.
 * Source: Darcy–Weisbach; Colebrook 1939.
 * @example darcyWeisbach({ flow: 0.003785411784, bore: 0.0525018, length: 100, roughness: 1.5e-6, kinematicViscosity: 1.0033667563000113e-6 }) // 5.485029593
 */
export function darcyWeisbach(run: DarcyRun): number {
  requireBetween('length', run.length, 0, 1e9, 'm');
  const velocity = meanVelocity(run.flow, run.bore);
  requireBetween('roughness', run.roughness, 0, run.bore / 10, 'm');
  const reynolds = reynoldsNumber(velocity, run.bore, run.kinematicViscosity);
  if (reynolds <= laminarLimit) {
    const gradient = (32 * run.kinematicViscosity * velocity) / (standardGravity * run.bore ** 2);
    return gradient * run.length;
  }
  const factor = frictionFactor(reynolds, run.roughness / run.bore);
  return (factor * (run.length / run.bore) * velocity * velocity) / (2 * standardGravity);
}
