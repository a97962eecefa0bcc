/**
 * Where pump and circuit meet, at any speed.
 */

import { requireBetween } from '#core/base/errors.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { type CompiledCircuit, compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { aimAt, headAndSlope, spread, takeStep } from '#core/hydraulics/compiledHead.ts';
import { leastFlowRatio, type PumpCurve } from './pump.ts';

/** Where pump and circuit meet, or why no water moves. */
export type OperatingPoint =
  | {
      readonly kind: 'flowing';
      /** Speed over reference speed [-]. */
      readonly ratio: number;
      /** Flow [m3/s]. */
      readonly flow: number;
      /** Head [m]. */
      readonly head: number;
      /** Whether the flow lies past the end of the curve's data at this speed. */
      readonly extrapolated: boolean;
    }
  | {
      readonly kind: 'noFlow';
      /** Speed over reference speed [-]. */
      readonly ratio: number;
      /** Stopped: no speed. Below lift: the pump does not reach the height the water must. */
      readonly reason: 'stopped' | 'belowLift';
      /** Head at no flow and this speed [m]. */
      readonly shutoffHead: number;
      /** Height the water must reach before any moves [m]. */
      readonly staticHead: number;
      /** Ratio above which water begins to move [-]. */
      readonly leastRatio: number;
    };

/** The speed for a flow, or how far the pump gets. */
export type RatioForFlow =
  | {
      readonly kind: 'found';
      /** Speed over reference speed [-]. */
      readonly ratio: number;
      /** Head [m]. */
      readonly head: number;
    }
  | {
      readonly kind: 'outOfReach';
      /** Ratio the flow would ask for [-], when it is below the search's end. */
      readonly ratioNeeded: number | undefined;
      /** Flow at the fastest ratio allowed [m3/s]; 0 when none moves. */
      readonly greatestFlow: number;
    };

/** Relative change of flow at which an operating point counts as found. */
const settled = 1e-9;

const work = { head: 0, slope: 0 };
const drive = { head: 0, slope: 0 };

function isCompiled(circuit: Circuit | CompiledCircuit): circuit is CompiledCircuit {
  return 'quadratic' in circuit;
}

/** Height the water must reach before any moves: the lift, and the lowest way out of every group. */
function openingHead(compiled: CompiledCircuit): number {
  headAndSlope(compiled, 0, work);
  return work.head;
}

/**
 * Relative step after which Newton's next one would be below the tolerance: steps square, so the
 * flow reached by a step of this size is off by about its square.
 */
const lastStep = 1e-5;

/** A way that shuts is left by halves, some twenty steps; the rest settle within a few. */
const mostSteps = 30;

/**
 * The flow of the operating point by Newton's method on everything at once: the flow, the friction factors and the
 * split of every group. Fast from a near guess; gives no number when it does not settle soon, and
 * then `bracketedFlow` takes over.
 */
function newtonFlow(
  curve: PumpCurve,
  compiled: CompiledCircuit,
  ratio: number,
  guess: number,
): number {
  let flow = guess;
  spread(compiled, flow);
  for (let step = 0; step < mostSteps; step += 1) {
    drive.head = ratio * ratio * curve.head(flow / ratio);
    drive.slope = ratio * curve.slope(flow / ratio);
    const change = aimAt(compiled, flow, drive);
    const next = flow + change;
    if (!(next > 0)) return Number.NaN;
    const near = takeStep(compiled, next, lastStep);
    if (near && Math.abs(change) <= lastStep * next) return next;
    flow = next;
  }
  return Number.NaN;
}

/**
 * Flow at which the pump's head less the circuit's is zero. That difference falls all the way, so
 * the sign at any flow says on which side the answer lies: Newton's steps are kept inside the
 * bracket that they tighten, and halving takes over where they would leave it.
 */
function bracketedFlow(
  curve: PumpCurve,
  compiled: CompiledCircuit,
  ratio: number,
  guess: number,
): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let flow = guess;
  for (let step = 0; step < 200; step += 1) {
    headAndSlope(compiled, flow, work);
    const excess = ratio * ratio * curve.head(flow / ratio) - work.head;
    if (excess > 0) low = flow;
    else high = flow;
    const next = flow - excess / (ratio * curve.slope(flow / ratio) - work.slope);
    // Before the bracket: at the operating point rounding may throw so small a step out of it.
    if (Math.abs(next - flow) <= settled * flow) return next;
    if (next > low && next < high) flow = next;
    else flow = high === Number.POSITIVE_INFINITY ? 2 * flow : (low + high) / 2;
    if (high - low <= settled * low) break;
  }
  return flow;
}

function solve(
  curve: PumpCurve,
  compiled: CompiledCircuit,
  ratio: number,
  opening: number,
  guess: number,
): OperatingPoint {
  const shutoffHead = ratio * ratio * curve.shutoffHead;
  if (ratio < 1e-6 || shutoffHead <= opening) {
    return {
      kind: 'noFlow',
      ratio,
      reason: ratio < 1e-6 ? 'stopped' : 'belowLift',
      shutoffHead,
      staticHead: opening,
      leastRatio: leastFlowRatio(curve, opening),
    };
  }
  const quick = newtonFlow(curve, compiled, ratio, guess);
  const flow = quick > 0 ? quick : bracketedFlow(curve, compiled, ratio, guess);
  const head = ratio * ratio * curve.head(flow / ratio);
  return { kind: 'flowing', ratio, flow, head, extrapolated: flow > ratio * curve.lastFlow };
}

/**
 * Where pump and circuit meet at one speed.
 *
 * Law: r^2 H(Q/r) = H_sys(Q), by Newton's method on flow, friction and branches together; a bracket stands behind it, so it cannot fail.
 * @param curve Pump curve at the reference speed [see PumpCurve], any.
 * @param circuit The circuit [see Circuit], any, as it is or compiled.
 * @param ratio Speed over reference speed [-], 0 to 10.
 * @returns Flow [m3/s] and head [m], marked when past the curve's data; or no flow, and why.
 * @throws CoreError when the ratio or a part's field is out of range.
 * Accuracy: 1e-9 of the flow.
 * Source: definition of the operating point, Hydraulic Institute data tool, "system curves".
 * @example operatingPoint({ shutoffHead: 20, lastFlow: 0.01, provenance: 'points', head: (q) => 20 - 2e5 * q * q, slope: (q) => -4e5 * q }, { suction: [], discharge: [{ kind: 'equipment', id: 'loop', referenceHead: 15, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 0.5).flow // 0.0025000
 */
export function operatingPoint(
  curve: PumpCurve,
  circuit: Circuit | CompiledCircuit,
  ratio: number,
): OperatingPoint {
  requireBetween('speed ratio', ratio, 0, 10, '');
  const compiled = isCompiled(circuit) ? circuit : compileCircuit(circuit);
  const opening = openingHead(compiled);
  return solve(curve, compiled, ratio, opening, 0.7 * ratio * curve.lastFlow);
}

/**
 * Operating points at many speeds.
 *
 * Law: as operatingPoint; each starts from its neighbour by affinity.
 * @param curve Pump curve at the reference speed [see PumpCurve], any.
 * @param circuit The circuit [see Circuit], any, as it is or compiled.
 * @param ratios Speeds over reference speed [-], each 0 to 10; in order they are found fastest.
 * @returns One point per ratio, in the same order [see OperatingPoint].
 * @throws CoreError when a ratio or a part's field is out of range.
 * Accuracy: 1e-9 of the flow.
 * Source: as operatingPoint.
 * @example speedSweep({ shutoffHead: 20, lastFlow: 0.01, provenance: 'points', head: (q) => 20 - 2e5 * q * q, slope: (q) => -4e5 * q }, { suction: [], discharge: [{ kind: 'equipment', id: 'loop', referenceHead: 15, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, [0.5, 1])[1].flow // 0.0050000
 */
export function speedSweep(
  curve: PumpCurve,
  circuit: Circuit | CompiledCircuit,
  ratios: readonly number[],
): OperatingPoint[] {
  const compiled = isCompiled(circuit) ? circuit : compileCircuit(circuit);
  const opening = openingHead(compiled);
  let flowPerRatio = 0.7 * curve.lastFlow;
  return ratios.map((ratio) => {
    requireBetween('speed ratio', ratio, 0, 10, '');
    const point = solve(curve, compiled, ratio, opening, flowPerRatio * ratio);
    if (point.kind === 'flowing') flowPerRatio = point.flow / ratio;
    return point;
  });
}

/** Slowest and fastest ratio to look between. */
export interface RatioRange {
  /** Slowest ratio [-], above 0; 0.01 when left out. */
  readonly min?: number | undefined;
  /** Fastest ratio [-], the slowest or more, up to 10; 1 when left out. */
  readonly max?: number | undefined;
}

/** The fastest ratio that is looked at to tell how much too slow a pump is. */
const farRatio = 10;

/** Ratio at which the pump makes the circuit's head at this flow; its head there grows with speed. */
function ratioAt(curve: PumpCurve, flow: number, head: number, max: number): number | undefined {
  const excess = (ratio: number) => ratio * ratio * curve.head(flow / ratio) - head;
  if (excess(max) < 0) return undefined;
  let low = 0;
  let high = max;
  for (let step = 0; step < 200 && high - low > 1e-14 * high; step += 1) {
    const middle = (low + high) / 2;
    if (excess(middle) < 0) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Speed at which the pump gives a flow in the circuit.
 *
 * Law: the ratio r with r^2 H(Q/r) = H_sys(Q), by halving.
 * @param curve Pump curve at the reference speed [see PumpCurve], any.
 * @param circuit The circuit [see Circuit], any, as it is or compiled.
 * @param flow Flow [m3/s], above 0 to 10.
 * @param range Slowest and fastest ratio [see RatioRange], 0.01 to 1 when left out.
 * @returns Ratio [-] and head [m], the slowest ratio where that already gives the flow or more; or out of reach, with the most flow there is.
 * @throws CoreError when the flow, the range or a part's field is out of range.
 * Accuracy: 1e-14 of the ratio.
 * Source: as operatingPoint.
 * @example ratioForFlow({ shutoffHead: 20, lastFlow: 0.01, provenance: 'points', head: (q) => 20 - 2e5 * q * q, slope: (q) => -4e5 * q }, { suction: [], discharge: [{ kind: 'equipment', id: 'loop', referenceHead: 15, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 0.0025).ratio // 0.50000
 */
export function ratioForFlow(
  curve: PumpCurve,
  circuit: Circuit | CompiledCircuit,
  flow: number,
  range: RatioRange = {},
): RatioForFlow {
  const min = requireBetween('least ratio', range.min ?? 0.01, 1e-6, 10, '');
  const max = requireBetween('greatest ratio', range.max ?? 1, min, 10, '');
  requireBetween('flow', flow, 1e-12, 10, 'm3/s');
  const compiled = isCompiled(circuit) ? circuit : compileCircuit(circuit);
  headAndSlope(compiled, flow, work);
  const needed = ratioAt(curve, flow, work.head, farRatio);
  if (needed === undefined || needed > max * (1 + settled)) {
    const fastest = operatingPoint(curve, compiled, max);
    const greatestFlow = fastest.kind === 'flowing' ? fastest.flow : 0;
    return { kind: 'outOfReach', ratioNeeded: needed, greatestFlow };
  }
  if (needed >= min) return { kind: 'found', ratio: Math.min(needed, max), head: work.head };
  const slowest = operatingPoint(curve, compiled, min);
  return { kind: 'found', ratio: min, head: slowest.kind === 'flowing' ? slowest.head : 0 };
}
