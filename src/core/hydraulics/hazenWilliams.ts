/** Hazen–Williams, offered beside Darcy–Weisbach because handbook tables use it. */
import { standardGravity } from '#core/base/constants.ts';
import { requireBetween, requirePositive } from '#core/base/errors.ts';
import { flowArea, inch, meanVelocity } from './pipe.ts';

/** A straight run of pipe, for Hazen–Williams. */
export interface HazenRun {
  /** Flow [m3/s], 0 or more. */
  readonly flow: number;
  /** Inside diameter [m], 0.0001 to 10. */
  readonly bore: number;
  /** Length [m], 0 or more. */
  readonly length: number;
  /** Hazen–Williams coefficient [-], 10 to 200; 150 for new PVC. */
  readonly c: number;
}

/** The three spellings of Hazen–Williams. */
export type HazenWilliamsForm = 'si' | 'rational' | 'gpm';

// One foot and one US gallon of 231 cubic inches, exact by definition (NIST SP 811, B.8).
const foot = 12 * inch;
const gallonPerMinute = (231 * inch ** 3) / 60;

function hazenGradientSi(run: HazenRun): number {
  return (10.67 * run.flow ** 1.852) / (run.c ** 1.852 * run.bore ** 4.8704);
}

function hazenGradientRational(run: HazenRun): number {
  const velocityFeet = run.flow / flowArea(run.bore) / foot;
  const hydraulicRadiusFeet = run.bore / foot / 4;
  return (velocityFeet / (1.318 * run.c * hydraulicRadiusFeet ** 0.63)) ** (1 / 0.54);
}

function hazenGradientGpm(run: HazenRun): number {
  const flowGpm = run.flow / gallonPerMinute;
  const per100 = 0.2083 * (100 / run.c) ** 1.852 * flowGpm ** 1.852;
  return per100 / (run.bore / inch) ** 4.8655 / 100;
}

/**
 * Head lost to friction in a straight run, Hazen–Williams, in one of its three spellings.
 *
 * Law: si: h/L = 10.67 Q^1.852 / (C^1.852 D^4.8704) in metres; rational: V = 1.318 C R^0.63 S^0.54 in feet; gpm: h per 100 = 0.2083 (100/C)^1.852 Q^1.852 / d^4.8655 in gpm and inches.
 * @param run The run of pipe [see HazenRun], fields as there.
 * @param form Spelling [-], one of 'si', 'rational' and 'gpm'; 'si' when left out.
 * @returns Head [m]; 0 at no flow or no length.
 * @throws CoreError when a field lies outside its range or is not a number.
 * Accuracy: the spellings differ by up to 2 %; with C 150 in water at 20 degC within 2 % of Darcy–Weisbach near 6 ft/s in 2 in pipe, 12 % low at 10 gpm.
 * Source: Williams and Hazen, Hydraulic Tables (1905); 77 Ill. Adm. Code 906 App. A prints a table from it.
 * @example hazenWilliams({ flow: 0.003785411784, bore: 0.0525018, length: 100, c: 150 }, 'rational') // 5.5797202
 */
export function hazenWilliams(run: HazenRun, form: HazenWilliamsForm = 'si'): number {
  requireBetween('flow', run.flow, 0, 1e6, 'm3/s');
  requireBetween('bore', run.bore, 1e-4, 10, 'm');
  requireBetween('length', run.length, 0, 1e9, 'm');
  requireBetween('Hazen–Williams coefficient', run.c, 10, 200, '');
  if (form === 'gpm') return hazenGradientGpm(run) * run.length;
  if (form === 'rational') return hazenGradientRational(run) * run.length;
  return hazenGradientSi(run) * run.length;
}

/**
 * The Darcy friction factor that Hazen–Williams amounts to, to draw the two laws in one picture.
 *
 * Law: f = (h/L) D 2g/V^2, with h from hazenWilliams in its SI spelling.
 * @param flow Flow [m3/s], above 0 and up to 1e6.
 * @param bore Inside diameter [m], 0.0001 to 10.
 * @param c Hazen–Williams coefficient [-], 10 to 200; 150 for new PVC.
 * @returns Darcy friction factor [-].
 * @throws CoreError when any of them lies outside its range or is not a number.
 * Accuracy: exact; the factor does not depend on the viscosity, which is what the law leaves out.
 * Source: Darcy–Weisbach solved for f; Williams and Hazen, Hydraulic Tables (1905).
 * @example hazenWilliamsFactor(0.003785411784, 0.0525018, 150) // 0.01876
 */
export function hazenWilliamsFactor(flow: number, bore: number, c: number): number {
  requirePositive('flow', flow, 'm3/s');
  const gradient = hazenWilliams({ flow, bore, length: 1, c });
  return (gradient * bore * 2 * standardGravity) / meanVelocity(flow, bore) ** 2;
}
