import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { type CompiledCircuit, compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import { type OperatingPoint, operatingPoint, speedSweep } from '#core/pump/operatingPoint.ts';
import {
  bestMileageRatio,
  bestMileageSpeed,
  hydraulicPower,
  type PumpPower,
  wirePower,
} from '#core/pump/power.ts';
import {
  affinityFlow,
  affinityPower,
  leastFlowRatio,
  type PumpCurve,
  pumpHead,
} from '#core/pump/pump.ts';

/** A pump in its pipes, as it comes: its own fixed draw and lift are where the picture opens. */
export interface Setup {
  readonly curve: PumpCurve;
  readonly circuit: Circuit;
  readonly power: PumpPower;
  /** Speeds [rpm]. */
  readonly referenceSpeed: number;
  readonly leastSpeed: number;
  readonly topSpeed: number;
}

/** The same pump with another fixed draw and another lift, ready to be asked. */
export interface Asked {
  readonly setup: Setup;
  readonly folded: CompiledCircuit;
  readonly power: PumpPower;
}

/** What one speed gives. */
export interface Step {
  /** [rpm] */
  readonly speed: number;
  /** [m3/s]; 0 when no water moves. */
  readonly flow: number;
  /** Head, or the head at no flow [m]. */
  readonly head: number;
  /** Wire power [W]. */
  readonly power: number;
  /** Water moved for the energy [m3/J]. */
  readonly mileage: number;
  /** Water power over wire power [-]. */
  readonly efficiency: number;
  readonly extrapolated: boolean;
}

export function asked(setup: Setup, fixed: number, lift: number): Asked {
  return {
    setup,
    folded: compileCircuit({ ...setup.circuit, staticHead: lift }),
    power: { ...setup.power, fixed },
  };
}

function stepOf(one: Asked, point: OperatingPoint): Step {
  const { setup, power } = one;
  const flowing = point.kind === 'flowing';
  const flow = flowing ? point.flow : 0;
  const head = flowing ? point.head : point.shutoffHead;
  const drawn = wirePower(power, flow, point.ratio);
  const water = hydraulicPower(setup.circuit.water.density, flow, head);
  return {
    speed: point.ratio * setup.referenceSpeed,
    flow,
    head,
    power: drawn,
    mileage: drawn > 0 ? flow / drawn : 0,
    efficiency: drawn > 0 ? water / drawn : 0,
    extrapolated: flowing && point.extrapolated,
  };
}

export function stepAt(one: Asked, speed: number): Step {
  const ratio = speed / one.setup.referenceSpeed;
  return { ...stepOf(one, operatingPoint(one.setup.curve, one.folded, ratio)), speed };
}

export function sweep(one: Asked, speeds: readonly number[]): Step[] {
  const ratios = speeds.map((speed) => speed / one.setup.referenceSpeed);
  return speedSweep(one.setup.curve, one.folded, ratios).map((point) => stepOf(one, point));
}

/** Height the water must reach before any moves [m]. */
export function openingHead(one: Asked): number {
  return compiledHead(one.folded, 0);
}

/** Speed at which water begins to move [rpm]. */
export function startSpeed(one: Asked): number {
  const { curve, referenceSpeed } = one.setup;
  return referenceSpeed * leastFlowRatio(curve, openingHead(one));
}

/** The lift under which water begins to move at a speed [m]: the head at no flow. */
export function liftStartingAt({ curve, referenceSpeed }: Setup, speed: number): number {
  return pumpHead(curve, 0, Math.max(speed, 0) / referenceSpeed);
}

/** The speed with the most water for a kilowatt-hour, or none where no speed moves any. */
export function bestStep(one: Asked): Step | undefined {
  const { leastSpeed, topSpeed, referenceSpeed } = one.setup;
  if (stepAt(one, topSpeed).flow === 0) return undefined;
  const costAt = (ratio: number) => {
    const { mileage } = stepAt(one, ratio * referenceSpeed);
    return mileage > 0 ? 1 / mileage : Number.POSITIVE_INFINITY;
  };
  const ratio = bestMileageSpeed(costAt, leastSpeed / referenceSpeed, topSpeed / referenceSpeed);
  return stepAt(one, ratio * referenceSpeed);
}

/** The plain laws from what the pump does at top speed without fixed draw and lift. */
export interface Plain {
  flowAt(speed: number): number;
  /** Power by the cube alone [W]. */
  powerAt(speed: number): number;
  /** Water for the energy [m3/J]. */
  mileageAt(speed: number): number;
  /** Best speed by the formula for a loop without lift [rpm]; 0 without a fixed draw. */
  bestSpeed(fixed: number): number;
}

export function plainLaw(setup: Setup): Plain {
  const { topSpeed } = setup;
  const top = stepAt(asked(setup, 0, 0), topSpeed);
  const flowAt = (speed: number) => affinityFlow(top.flow, topSpeed, speed);
  const powerAt = (speed: number) => affinityPower(top.power, topSpeed, speed);
  return {
    flowAt,
    powerAt,
    mileageAt: (speed) => (speed > 0 && top.power > 0 ? flowAt(speed) / powerAt(speed) : 0),
    bestSpeed: (fixed) =>
      top.power > 0 ? topSpeed * bestMileageRatio({ fixed, cube: top.power }) : 0,
  };
}
