import { requireBetween, requireNotNegative } from '#core/base/errors.ts';
import { largestVelocity } from '#core/hydraulics/circuit.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { operatingPoint, ratioForFlow } from '#core/pump/operatingPoint.ts';
import { type PumpPower, wirePower } from '#core/pump/power.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import { crossedLimits, type Limit } from './limits.ts';

/** What the water is wanted for. */
export type NeedKind =
  | 'skimming'
  | 'heating'
  | 'saltCell'
  | 'cleaner'
  | 'solar'
  | 'spillway'
  | 'filtering';

/** Something on the pad that needs water moving past it. */
export interface Need {
  /** Name of the need, any text. */
  readonly id: string;
  readonly kind: NeedKind;
  /** Least flow through the pump that serves it [m3/s], 0 to 10. */
  readonly leastFlow: number;
  /** Greatest flow it bears [m3/s], 0 to 10; none when left out. */
  readonly greatestFlow?: number | undefined;
  /** Minutes a day it must be served [min], 0 to 1440. */
  readonly minutes: number;
  /** When it may run [minutes of the day], each 0 to 1440; may cross midnight; empty means at any time. */
  readonly windows: readonly { readonly start: number; readonly end: number }[];
  /** Shortest run that counts [min], 0 to 1440. */
  readonly shortestRun: number;
}

/** What the ladder is built from. */
export interface LadderInputs {
  /** The needs [see Need], any number. */
  readonly needs: readonly Need[];
  /** Pump curve at reference speed [see PumpCurve]. */
  readonly curve: PumpCurve;
  /** The circuit [see Circuit]. */
  readonly circuit: Circuit;
  /** Wire power of the pump [see PumpPower]. */
  readonly power: PumpPower;
  /** Limits no plan may cross [see Limit]. */
  readonly limits: readonly Limit[];
  /** Slowest speed the pump can be set to, over reference speed [-], 0.01 to 2. */
  readonly minRatio: number;
  /** Fastest speed the pump can be set to, over reference speed [-], the slowest to 2. */
  readonly maxRatio: number;
  /** Step in which the speed is set, over reference speed [-], 0 to 1; steps count from standstill; any speed when left out or 0. */
  readonly ratioStep?: number | undefined;
}

/** Why no speed serves a need. */
export type Unreachable =
  | { readonly kind: 'leastAboveGreatest' }
  | { readonly kind: 'tooSlowToLift'; readonly leastRatio: number }
  | { readonly kind: 'beyondTopSpeed' }
  | { readonly kind: 'beyondLimit'; readonly limit: Limit }
  | { readonly kind: 'tooMuchAtSlowest'; readonly flow: number }
  | { readonly kind: 'speedStepTooCoarse'; readonly flow: number };

/** One rung of the ladder: a need with its slowest speed, or with why there is none. */
export type Rung =
  | {
      readonly kind: 'served';
      readonly need: Need;
      /** Slowest speed that serves the need, over reference speed [-]. */
      readonly ratio: number;
      readonly flow: number;
      readonly head: number;
      readonly power: number;
      /** Largest velocity on each side [m/s]; none where there is no pipe. */
      readonly velocity: {
        readonly suction: number | undefined;
        readonly discharge: number | undefined;
      };
      /** Limits crossed at this speed; never a hard one. */
      readonly crossed: readonly Limit[];
    }
  | {
      readonly kind: 'unreachable';
      readonly need: Need;
      readonly reason: Unreachable;
      /** Greatest flow the pump can move here without crossing a hard limit [m3/s]. */
      readonly greatestReachableFlow: number;
    };

/**
 * The slowest speed that serves each need, with what it takes and what it crosses.
 *
 * Law: least r on the speed step with Q(r) at or above the least flow, Q the operating point; power P_fixed + r^3 P(Q/r).
 * @param inputs Needs, pump, circuit, limits and speeds [see LadderInputs], fields as there.
 * @returns One rung [see Rung] per need, in the order given; a need no speed serves says why and how far the pump gets.
 * @throws CoreError when a field is outside its range; an unreachable need is a value, not an error.
 * Accuracy: flow to 1e-9; the speed is rounded up to the step, never down.
 * Source: affinity laws, ANSI/HI 14.6; needs and limits by the manual of each unit.
 * @example speedLadder({ needs: [], curve: { shutoffHead: 20, lastFlow: 0.01, head: (q) => 20 - 1e5 * q * q, slope: (q) => -2e5 * q, provenance: 'threePoints' }, circuit: { suction: [], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, power: { fixed: 40, atReference: () => 1000 }, limits: [], minRatio: 0.3, maxRatio: 1 }).length // 0.000
 */
export function speedLadder(inputs: LadderInputs): Rung[] {
  requireBetween('minRatio', inputs.minRatio, 0.01, 2, '');
  requireBetween('maxRatio', inputs.maxRatio, inputs.minRatio, 2, '');
  requireBetween('ratioStep', inputs.ratioStep ?? 0, 0, 1, '');
  const pad = padOf(inputs);
  return inputs.needs.map((need) => rungOf(need, inputs, pad));
}

/**
 * What running at a power costs.
 *
 * Law: money per hour = P/1000 x price.
 * @param power Wire power [W], 0 or more.
 * @param price Price of energy [money/kWh], any finite number; negative when the supplier pays.
 * @returns Cost [money/h].
 * @throws CoreError when the power is negative or either is not a finite number.
 * Accuracy: exact; daily fixed charges are left out.
 * Source: definition of the kilowatt-hour, NIST SP 811 B.8.
 * @example costPerHour(1500, 0.30) // 0.4500
 */
export function costPerHour(power: number, price: number): number {
  requireNotNegative('power', power, 'W');
  requireBetween('price', price, -1e9, 1e9, 'money/kWh');
  return (power / 1000) * price;
}

interface Pad {
  flowAt(ratio: number): { readonly flow: number; readonly head: number };
  /** Slowest ratio that moves a flow; undefined when none within reach does. */
  ratioFor(flow: number): number | undefined;
  /** Least ratio at which anything flows, when the slowest speed moves nothing. */
  readonly leastRatio: number | undefined;
  readonly greatestReachableFlow: number;
}

function padOf({ curve, circuit, limits, minRatio, maxRatio }: LadderInputs): Pad {
  const compiled = compileCircuit(circuit);
  const flowAt = (ratio: number) => {
    const point = operatingPoint(curve, compiled, ratio);
    if (point.kind === 'flowing') return { flow: point.flow, head: point.head };
    return { flow: 0, head: point.shutoffHead };
  };
  const hard = limits.filter((limit) => limit.hard);
  const stop = Math.min(...hard.map(({ greatestRatio = maxRatio }) => greatestRatio), maxRatio);
  const atTop = operatingPoint(curve, compiled, maxRatio);
  const hardest = hard.map((limit) => limit.greatestFlow);
  return {
    flowAt,
    ratioFor: (flow) => {
      // A drop a second is as good as the first movement of the water.
      const found = ratioForFlow(curve, compiled, Math.max(flow, 1e-9), {
        min: minRatio,
        max: maxRatio,
      });
      return found.kind === 'found' ? found.ratio : undefined;
    },
    leastRatio: atTop.kind === 'noFlow' ? atTop.leastRatio : undefined,
    greatestReachableFlow: Math.min(flowAt(stop).flow, ...hardest),
  };
}

function rungOf(need: Need, inputs: LadderInputs, pad: Pad): Rung {
  requireNeed(need);
  const unreachable = (reason: Unreachable): Rung => ({
    kind: 'unreachable',
    need,
    reason,
    greatestReachableFlow: pad.greatestReachableFlow,
  });
  const greatest = need.greatestFlow ?? Number.POSITIVE_INFINITY;
  if (need.leastFlow > greatest) return unreachable({ kind: 'leastAboveGreatest' });
  const limit = tightestHard(inputs.limits, need.leastFlow);
  if (limit !== undefined) return unreachable({ kind: 'beyondLimit', limit });
  const exact = slowestExact(need.leastFlow, inputs, pad);
  if (exact === undefined) {
    return unreachable(
      pad.leastRatio === undefined
        ? { kind: 'beyondTopSpeed' }
        : { kind: 'tooSlowToLift', leastRatio: pad.leastRatio },
    );
  }
  const ratio = onStep(exact, inputs);
  const { flow, head } = pad.flowAt(ratio);
  if (flow > greatest * (1 + 1e-9)) {
    const kind = exact <= inputs.minRatio ? 'tooMuchAtSlowest' : 'speedStepTooCoarse';
    return unreachable({ kind, flow });
  }
  const crossed = crossedLimits(inputs.limits, flow, ratio);
  const hard = crossed.find((one) => one.hard);
  if (hard !== undefined) return unreachable({ kind: 'beyondLimit', limit: hard });
  return servedRung(need, inputs, { ratio, flow, head, crossed });
}

function servedRung(
  need: Need,
  { circuit, power }: LadderInputs,
  at: { ratio: number; flow: number; head: number; crossed: readonly Limit[] },
): Rung {
  const velocity = (side: 'suction' | 'discharge') =>
    largestVelocity(circuit, at.flow, side)?.velocity;
  return {
    kind: 'served',
    need,
    ...at,
    power: wirePower(power, at.flow, at.ratio),
    velocity: { suction: velocity('suction'), discharge: velocity('discharge') },
  };
}

/** Slowest speed for a flow, before the speed step; a pump that moves enough at its slowest stays there. */
function slowestExact(leastFlow: number, { minRatio }: LadderInputs, pad: Pad): number | undefined {
  if (pad.flowAt(minRatio).flow >= leastFlow * (1 - 1e-9)) return minRatio;
  return pad.ratioFor(leastFlow);
}

/** Up to the next step; the ends of the range can always be set. */
function onStep(ratio: number, { minRatio, maxRatio, ratioStep = 0 }: LadderInputs): number {
  if (ratioStep === 0 || ratio <= minRatio) return ratio;
  // A ratio that sits on a step but for rounding must not climb to the next one.
  return Math.min(maxRatio, Math.ceil(ratio / ratioStep - 1e-7) * ratioStep);
}

function tightestHard(limits: readonly Limit[], flow: number): Limit | undefined {
  return crossedLimits(limits, flow)
    .filter((limit) => limit.hard)
    .sort((a, b) => a.greatestFlow - b.greatestFlow)[0];
}

function requireNeed(need: Need): void {
  requireBetween('leastFlow', need.leastFlow, 0, 10, 'm3/s');
  requireBetween('greatestFlow', need.greatestFlow ?? 0, 0, 10, 'm3/s');
}
