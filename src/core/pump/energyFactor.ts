import {
  CoreError,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '#core/base/errors.ts';

/*
 * The rule is written in US units, so its own quantities keep them and carry them in their names;
 * flows, heads and powers come in SI like everywhere in the core.
 *
 * Read in the rule: 10 CFR 431.465(f) and (h). From memory, the text not seen: everything of
 * Appendix C to Subpart Y (curve C, load points, weights, the sum, the divisor 3956).
 */

/** One US gallon per minute [m3/s], exact: 231 in3, 1 in = 0.0254 m (NIST SP 811, B.8). */
const gallonPerMinute = (231 * 0.0254 ** 3) / 60;

/** One foot [m], exact (NIST SP 811, B.8). */
const foot = 0.3048;

/** Varieties of pool pump that the rule sets a least value for. */
export type PumpVariety = 'selfPriming' | 'nonSelfPriming' | 'pressureCleanerBooster';

/** One point at which the rule has the pump tested. */
export interface LoadPoint {
  /** Flow [m3/s], more than 0. */
  readonly flow: number;
  /** Wire power there [W], more than 0. */
  readonly power: number;
  /** Weight of the point [-], above 0 to 1; the weights of all points add up to 1. */
  readonly weight: number;
}

/** A point the rule asks for, before the power is measured. */
export interface DemandedPoint {
  /** Flow [m3/s], more than 0. */
  readonly flow: number;
  /** Head on curve C at that flow [m]. */
  readonly head: number;
  /** Weight of the point [-], above 0 to 1. */
  readonly weight: number;
}

/** Day from which pool pumps made must meet the table (10 CFR 431.465(f), 82 FR 5742, 2017). */
export const complianceDate = '2021-07-19';

/**
 * Greatest default settings of freeze protection as shipped (10 CFR 431.465(h), 82 FR 5742, 2017):
 * it may start at an air temperature of 40 degF or less, run for 1 h before it looks again, at no
 * more than half of the greatest speed.
 */
export const freezeProtection = { airTemperatureF: 40, runTimeHours: 1, speedRatio: 0.5 } as const;

/** Hydraulic horsepower = gpm x ft / this, in the rule (10 CFR 431 Subpart Y App. C, from memory). */
export const ruleDivisor = 3956;

/** Self-priming pumps at or above this fall in the class of large pumps [hp] (431.465(f), 2017). */
export const largePumpHorsepower = 0.711;

/** Filter-pump classes end below this [hp] (431.465(f), 2017). */
export const classEndHorsepower = 2.5;

/**
 * Volume per energy at one point.
 *
 * Law: EF = gpm x 60 / W.
 * @param flow Flow [m3/s], 0 or more.
 * @param power Wire power [W], more than 0.
 * @returns Energy factor [US gal/Wh], 0 or more; the same number in 1000 US gal/kWh.
 * @throws CoreError when the flow is negative or the power not positive.
 * Accuracy: 1e-9 relative against reference file energy-factor.
 * Source: ANSI/APSP/ICC-15, 2011, second-hand (read in the HPXML 3.1 data dictionary).
 * @example energyFactor(0.0037854, 1200) // 3.000
 */
export function energyFactor(flow: number, power: number): number {
  const gallonsPerHour = (requireNotNegative('flow', flow, 'm3/s') / gallonPerMinute) * 60;
  return gallonsPerHour / requirePositive('power', power, 'W');
}

/**
 * Hydraulic horsepower as the rule counts it.
 *
 * Law: gpm x ft / divisor.
 * @param flow Flow [m3/s], 0 or more.
 * @param head Head [m], 0 or more.
 * @param divisor Divisor [gpm ft/hp], more than 0; the rule's 3956 unless set, handbooks use 3960.
 * @returns Hydraulic horsepower [hp], 0 or more.
 * @throws CoreError when a number is out of range.
 * Accuracy: 1e-9 relative against reference file energy-factor.
 * Source: 10 CFR 431 Subpart Y Appendix C, 2017, from memory; 3960: Hydraulic Institute data tool, eq. 1.B.4.
 * @example hydraulicHorsepower(0.0041008, 16.764) // 0.9037
 */
export function hydraulicHorsepower(flow: number, head: number, divisor = ruleDivisor): number {
  const flowGpm = requireNotNegative('flow', flow, 'm3/s') / gallonPerMinute;
  const headFt = requireNotNegative('head', head, 'm') / foot;
  return (flowGpm * headFt) / requirePositive('divisor', divisor, 'gpm ft/hp');
}

/**
 * Head of the rule's system curve C.
 *
 * Law: ft = 0.0082 x gpm^2.
 * @param flow Flow [m3/s], 0 or more.
 * @returns Head [m], 0 or more.
 * @throws CoreError when the flow is negative or not finite.
 * Accuracy: 1e-9 relative against reference file energy-factor.
 * Source: 10 CFR 431 Subpart Y Appendix C, 2017, from memory.
 * @example curveCHead(0.0031545) // 6.248
 */
export function curveCHead(flow: number): number {
  const flowGpm = requireNotNegative('flow', flow, 'm3/s') / gallonPerMinute;
  return 0.0082 * flowGpm ** 2 * foot;
}

/**
 * Where a pump at top speed meets curve C.
 *
 * Law: pump head = curve C head, by halving a bracket down to neighbouring doubles.
 * @param pumpHead Head [m] of the pump at top speed at a flow [m3/s], above 0 at no flow, falling.
 * @param greatestFlow A flow at which the pump is certainly below curve C [m3/s], above 0 to 1; 1 unless set.
 * @returns Flow [m3/s], head [m] and hydraulic horsepower [hp] there.
 * @throws CoreError when the two do not cross between no flow and the greatest flow, or the head is not a number there.
 * Accuracy: 1e-8 relative against reference file energy-factor.
 * Source: 10 CFR 431 Subpart Y Appendix C, 2017, from memory.
 * @example curveCPoint((flow) => 24.384 - 306300 * flow ** 2).flow // 0.005109
 */
export function curveCPoint(
  pumpHead: (flow: number) => number,
  greatestFlow = 1,
): { readonly flow: number; readonly head: number; readonly hydraulicHorsepower: number } {
  requireBetween('greatestFlow', greatestFlow, Number.MIN_VALUE, 1, 'm3/s');
  const spare = (flow: number) => pumpHead(flow) - curveCHead(flow);
  if (!(spare(0) > 0)) throw new CoreError('pumpHead', pumpHead(0), 'above 0 m at no flow');
  if (!(spare(greatestFlow) <= 0)) {
    throw new CoreError('greatestFlow', greatestFlow, 'a flow where the pump is below curve C');
  }
  const flow = crossing(spare, greatestFlow);
  const head = curveCHead(flow);
  return { flow, head, hydraulicHorsepower: hydraulicHorsepower(flow, head) };
}

function crossing(spare: (flow: number) => number, greatest: number): number {
  let low = 0;
  let high = greatest;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (spare(middle) > 0) low = middle;
    else high = middle;
  }
}

/**
 * The two points at which a variable-speed filter pump is rated.
 *
 * Law: low flow 31.1 gpm above 0.75 hydraulic hp and 24.7 gpm up to it, weight 0.8; high flow 80 % of
 * the flow at top speed on curve C, weight 0.2; both at or above curve C.
 * @param topFlow Flow at top speed on curve C [m3/s], more than 0.
 * @param topHorsepower Hydraulic horsepower there [hp], more than 0.
 * @returns Low point and high point [see DemandedPoint].
 * @throws CoreError when a number is not positive.
 * Accuracy: 1e-8 relative against reference file energy-factor.
 * Source: 10 CFR 431 Subpart Y Appendix C, 2017, from memory.
 * @example variableSpeedPoints(0.005109, 1.1).low.flow // 0.001962
 */
export function variableSpeedPoints(
  topFlow: number,
  topHorsepower: number,
): { readonly low: DemandedPoint; readonly high: DemandedPoint } {
  requirePositive('topFlow', topFlow, 'm3/s');
  requirePositive('topHorsepower', topHorsepower, 'hp');
  const low = (topHorsepower > 0.75 ? 31.1 : 24.7) * gallonPerMinute;
  const high = 0.8 * topFlow;
  return {
    low: { flow: low, head: curveCHead(low), weight: 0.8 },
    high: { flow: high, head: curveCHead(high), weight: 0.2 },
  };
}

/**
 * The point at which a pressure cleaner booster pump is rated: flow [m3/s], least head [m], weight.
 * 10 gpm at not less than 60 ft (10 CFR 431 Subpart Y App. C, from memory).
 */
export const boosterPoint: DemandedPoint = {
  flow: 10 * gallonPerMinute,
  head: 60 * foot,
  weight: 1,
};

/**
 * Weighted energy factor.
 *
 * Law: sum(weight x gpm x 60/1000) / sum(weight x W/1000).
 * @param points The load points [see LoadPoint], at least one, weights adding up to 1. A single-speed pump has one, at top speed on curve C, with weight 1.
 * @returns Weighted energy factor [1000 US gal/kWh], more than 0.
 * @throws CoreError when there is no point, a number is not positive, or the weights do not add up to 1 within 1e-9.
 * Accuracy: 1e-8 relative against reference file energy-factor.
 * Source: 10 CFR 431 Subpart Y Appendix C, 2017, from memory.
 * @example weightedEnergyFactor([{ flow: 0.0037854, power: 1200, weight: 1 }]) // 3.000
 */
export function weightedEnergyFactor(points: readonly LoadPoint[]): number {
  let flow = 0;
  let power = 0;
  let weights = 0;
  for (const point of points) {
    requirePositive('weight', point.weight, '');
    weights += point.weight;
    flow += point.weight * requirePositive('flow', point.flow, 'm3/s');
    power += point.weight * requirePositive('power', point.power, 'W');
  }
  if (!(Math.abs(weights - 1) <= 1e-9)) throw new CoreError('weights', weights, '1 in all');
  return energyFactor(flow, power);
}

/**
 * Least weighted energy factor that the rule allows.
 *
 * Law: self-priming below 0.711 hp: 5.55 up to 0.13 hp, then -1.30 ln(hp) + 2.90; self-priming from
 * 0.711 hp: -2.30 ln(hp) + 6.59; non-self-priming: 4.60 up to 0.13 hp, then -0.85 ln(hp) + 2.87;
 * pressure cleaner booster: 0.42.
 * @param variety Variety of pump [see PumpVariety], one of those; self-priming pumps on single-phase supply only.
 * @param horsepower Hydraulic horsepower at top speed on curve C [hp], more than 0.
 * @returns Least value [1000 US gal/kWh], or null at and above 2.5 hp, where filter pumps have no row.
 * @throws CoreError when the horsepower is not positive.
 * Accuracy: 1e-9 relative against reference file energy-factor.
 * Source: 10 CFR 431.465(f), 82 FR 5742, 2017.
 * @example leastWef('selfPriming', 1) // 6.590
 */
export function leastWef(variety: PumpVariety, horsepower: number): number | null {
  requirePositive('horsepower', horsepower, 'hp');
  if (variety === 'pressureCleanerBooster') return 0.42;
  if (horsepower >= classEndHorsepower) return null;
  if (variety === 'nonSelfPriming') return smallPump(horsepower, 4.6, -0.85, 2.87);
  if (horsepower < largePumpHorsepower) return smallPump(horsepower, 5.55, -1.3, 2.9);
  return -2.3 * Math.log(horsepower) + 6.59;
}

function smallPump(horsepower: number, floor: number, slope: number, atOne: number): number {
  return horsepower <= 0.13 ? floor : slope * Math.log(horsepower) + atOne;
}
