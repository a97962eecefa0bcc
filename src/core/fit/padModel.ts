/**
 * A pad as a few uncertain numbers: how they turn a described circuit, a pump curve and a power
 * into what the instruments should show.
 */

import { standardGravity } from '#core/base/constants.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { cubePower, hydraulicPower, type PumpPower, wirePower } from '#core/pump/power.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import { splitPower } from '#core/pump/statedPower.ts';
import { fixedShareSpread, typicalFixedShare } from './fitPower.ts';
import type { PadEvidence, SettledPad } from './padEvidence.ts';
import { lackingExponentSpread, resistingCircuit, typicalLackingExponent } from './resistance.ts';

/**
 * How well each thing is believed to be known before any reading, as standard deviations of the
 * logarithm (the gauge level in metres). All common practice, no source, but for the data-sheet
 * curve: half the grade 2B limits of ISO 9906:2012, 5 % in head and 8 % in flow (from memory).
 */
export const priorSpread = {
  suction: 0.3,
  discharge: 0.35,
  dataSheetHead: 0.025,
  dataSheetFlow: 0.04,
  estimatedHead: 0.2,
  estimatedFlow: 0.2,
  gaugeLevel: 0.5,
  gaugeLevelStated: 0.1,
  efficiency: 0.25,
  knownPower: 0.1,
  fixedShare: fixedShareSpread,
  lackingExponent: lackingExponentSpread,
} as const;

/** Wire-to-water efficiency at reference speed taken when nothing says more [-]; common practice, no source. */
export const typicalEfficiency = 0.45;

/**
 * Furthest that a logarithm may stray: a factor of twenty. Readings that nothing real could give
 * must not drive a part past what its own law allows.
 */
const furthest = 3;

/** The uncertain numbers, in this order; each is 0 when all is as believed. */
export const parameterNames = [
  'suction',
  'discharge',
  'head',
  'flow',
  'gaugeLevel',
  'power',
  'fixed',
  'lackingExponent',
] as const;

/** What a settled pad does at one speed. */
export interface PadState {
  /** Flow [m3/s], 0 or more. */
  readonly flow: number;
  /** Head the pump adds [m], 0 or more. */
  readonly head: number;
  /** Wire power [W], 0 or more. */
  readonly power: number;
  /** Loss before the pump [m], 0 or more. */
  readonly suctionLoss: number;
}

/**
 * How far each uncertain number may be off beforehand.
 *
 * Law: the widths of priorSpread, by what is known of curve, power and gauge height.
 * @param evidence The pad [see PadEvidence], fields as there.
 * @returns One standard deviation per name in parameterNames [-; m for the gauge level].
 * @throws nothing.
 * Accuracy: judgement, not measurement.
 * Source: common practice, no source; ISO 9906:2012 grade 2B for data-sheet curves (from memory).
 * @example priorSpread.suction // 0.3000
 */
export function priorDeviations(evidence: PadEvidence): number[] {
  const known = evidence.curveKnown === 'dataSheet';
  return [
    priorSpread.suction,
    priorSpread.discharge,
    known ? priorSpread.dataSheetHead : priorSpread.estimatedHead,
    known ? priorSpread.dataSheetFlow : priorSpread.estimatedFlow,
    gaugeLevelStated(evidence) ? priorSpread.gaugeLevelStated : priorSpread.gaugeLevel,
    evidence.power === undefined ? priorSpread.efficiency : priorSpread.knownPower,
    priorSpread.fixedShare,
    priorSpread.lackingExponent,
  ];
}

/**
 * Whether the level of the filter gauge against the pool surface was given.
 *
 * Law: a gauge height counts from the pool surface only when there is no vacuum gauge.
 * @param evidence The pad [see PadEvidence], fields as there.
 * @returns True when some reading ties the gauge to the pool surface [-].
 * @throws nothing.
 * Accuracy: exact.
 * Source: hydrostatics.
 * @example Number(gaugeLevelStated({ readings: [{ id: 'a', ratio: 1, gaugeHeight: 0.5 }] })) // 1.000
 */
export function gaugeLevelStated(evidence: Pick<PadEvidence, 'readings'>): boolean {
  return evidence.readings.some(
    ({ gaugeHeight, suctionVacuum }) => gaugeHeight !== undefined && suctionVacuum === undefined,
  );
}

/**
 * The pad that a set of uncertain numbers stands for.
 *
 * Law: resistances, curve head and flow, power and fixed draw each times exp(number), a factor of twenty at most; what a side resists beyond its description goes with a power of the flow of its own (see resistingCircuit); watts of a data sheet hold the fixed draw and are split; power without a curve = rho g Q H/efficiency at reference speed, then P_fixed + c r^3.
 * @param evidence The pad as described [see PadEvidence], fields as there.
 * @param parameters One number per name in parameterNames [-; m for the gauge level], any finite number.
 * @returns Circuit, curve and power with those numbers in place.
 * @throws CoreError when the described circuit or curve breaks its own contract.
 * Accuracy: the cube law needs flow proportional to speed; with a static lift it is a little high at low speed.
 * Source: affinity laws, ANSI/HI 14.6; typical efficiency common practice, no source.
 * @example parameterNames.length // 8.000
 */
export function settle(evidence: PadEvidence, parameters: readonly number[]): SettledPad {
  const factor = (name: (typeof parameterNames)[number]) => {
    const strayed = parameters[parameterNames.indexOf(name)] ?? 0;
    return Math.exp(Math.min(furthest, Math.max(-furthest, strayed)));
  };
  const [suctionFactor, dischargeFactor] = [factor('suction'), factor('discharge')];
  const gaugeLevel = parameters[parameterNames.indexOf('gaugeLevel')] ?? 0;
  const exponent =
    typicalLackingExponent + (parameters[parameterNames.indexOf('lackingExponent')] ?? 0);
  const circuit = resistingCircuit(evidence.circuit, evidence.curve.lastFlow / 2, {
    suction: suctionFactor,
    discharge: dischargeFactor,
    exponent,
  });
  const compiled = compileCircuit(circuit);
  const compiledSuction = compileCircuit({ ...circuit, discharge: [], staticHead: 0 });
  const curve = scaleCurve(evidence.curve, factor('head'), factor('flow'));
  const power = settlePower(
    evidence,
    { circuit, compiled, curve },
    factor('power'),
    factor('fixed'),
  );
  const settled = { circuit, compiled, compiledSuction, curve, power };
  return { ...settled, suctionFactor, dischargeFactor, gaugeLevel };
}

/**
 * What a settled pad does at one speed.
 *
 * Law: pump meets circuit; power P_fixed + r^3 P(Q/r).
 * @param pad The settled pad [see SettledPad], fields as there.
 * @param ratio Speed over reference speed [-], 0.01 to 2.
 * @returns Flow [m3/s], head [m], wire power [W], loss before the pump [m]; no flow gives the shut-off head.
 * @throws CoreError when the ratio is outside the range of the operating point.
 * Accuracy: flow to 1e-9.
 * Source: affinity laws, ANSI/HI 14.6.
 * @example typicalEfficiency // 0.4500
 */
export function padState(pad: SettledPad, ratio: number): PadState {
  const point = operatingPoint(pad.curve, pad.compiled, ratio);
  const flow = point.kind === 'flowing' ? point.flow : 0;
  return {
    flow,
    head: point.kind === 'flowing' ? point.head : point.shutoffHead,
    power: wirePower(pad.power, flow, ratio),
    suctionLoss: compiledHead(pad.compiledSuction, flow),
  };
}

/**
 * What the two gauges should show in a state of the pad.
 *
 * Law: vacuum = rho g (h_suction + z); filter gauge = rho g (H - h_suction - z - gauge height); velocity heads left out.
 * @param pad The settled pad [see SettledPad], its water density and gauge level.
 * @param state What the pad does [see PadState], its head and loss before the pump [m].
 * @param gaugeHeight Height of the filter gauge above the vacuum gauge or, without one, the pool surface [m], -50 to 50.
 * @returns Filter gauge [Pa above atmosphere] and vacuum gauge [Pa below atmosphere].
 * @throws nothing.
 * Accuracy: exact but for velocity heads, about 0.2 m at 2 m/s, which the gauge level takes up.
 * Source: hydrostatics and the energy balance of the loop.
 * @example gaugesIn({ circuit: { water: { density: 1000 } }, gaugeLevel: 0 }, { head: 10, suctionLoss: 2 }, 0).dischargePressure // 78453.2
 */
export function gaugesIn(
  pad: Pick<SettledPad, 'circuit' | 'gaugeLevel'>,
  state: Pick<PadState, 'head' | 'suctionLoss'>,
  gaugeHeight: number,
): { dischargePressure: number; suctionVacuum: number } {
  const weight = pad.circuit.water.density * standardGravity;
  const suctionVacuum = weight * (state.suctionLoss + pad.gaugeLevel);
  return { suctionVacuum, dischargePressure: weight * (state.head - gaugeHeight) - suctionVacuum };
}

function scaleCurve(curve: PumpCurve, headScale: number, flowScale: number): PumpCurve {
  return {
    shutoffHead: curve.shutoffHead * headScale,
    lastFlow: curve.lastFlow * flowScale,
    head: (flow) => headScale * curve.head(flow / flowScale),
    slope: (flow) => (headScale / flowScale) * curve.slope(flow / flowScale),
    provenance: curve.provenance,
  };
}

function settlePower(
  { power, fixedDraw }: PadEvidence,
  pad: Pick<SettledPad, 'circuit' | 'compiled' | 'curve'>,
  scale: number,
  fixedScale: number,
): PumpPower {
  // Somebody told the fixed draw apart: it stands beside the rest, and 0 is 0.
  if (power !== undefined && 'atReference' in power) {
    const { atReference } = power;
    return {
      ...power,
      fixed: power.fixed * fixedScale,
      atReference: (flow) => scale * atReference(flow),
    };
  }
  const atTop = referencePoint(pad);
  if (power === undefined) {
    const hydraulic = hydraulicPower(pad.circuit.water.density, atTop.flow, atTop.head);
    // A positive number raises the power, as it does for a known power.
    const whole = (hydraulic / typicalEfficiency) * scale;
    const fixed = Math.min((fixedDraw ?? typicalFixedShare * whole) * fixedScale, whole);
    return cubePower({ fixed, cube: whole - fixed });
  }
  // Watts of a data sheet hold the fixed draw already: it is split off, never added.
  const fixed = fixedDraw ?? typicalFixedShare * power.wire(atTop.flow);
  return splitPower(power, fixed * fixedScale, scale);
}

/** Where the pump runs at reference speed; half way along its curve when it cannot lift the water. */
function referencePoint(pad: Pick<SettledPad, 'compiled' | 'curve'>): {
  flow: number;
  head: number;
} {
  const point = operatingPoint(pad.curve, pad.compiled, 1);
  if (point.kind === 'flowing') return point;
  const flow = pad.curve.lastFlow / 2;
  return { flow, head: Math.max(pad.curve.head(flow), pad.curve.shutoffHead / 2) };
}
