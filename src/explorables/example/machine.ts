import type { CompiledCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { type PumpPower, wirePower } from '#core/pump/power.ts';
import { type PumpCurve, pumpHead } from '#core/pump/pump.ts';
import { evenly } from '#ui/charts/path.ts';

/** A pump in its pipes, from the lesson's example or from the reader's pad. */
export interface Machine {
  readonly curve: PumpCurve;
  readonly circuit: CompiledCircuit;
  readonly power: PumpPower;
  /** Speeds [rpm]. */
  readonly referenceSpeed: number;
  readonly leastSpeed: number;
  readonly topSpeed: number;
}

/** What one speed gives. */
export interface OperatingState {
  /** [rpm] */
  readonly speed: number;
  /** [m3/s]; 0 when no water moves. */
  readonly flow: number;
  /** [m] */
  readonly head: number;
  /** Wire power [W]. */
  readonly power: number;
  readonly extrapolated: boolean;
}

/** Where the pump meets its pipes at one speed. */
export function operatingStateAt(machine: Machine, speed: number): OperatingState {
  const { curve, circuit, power } = machine;
  const ratio = speed / machine.referenceSpeed;
  const point = operatingPoint(curve, circuit, ratio);
  const flowing = point.kind === 'flowing';
  const flow = flowing ? point.flow : 0;
  return {
    speed,
    flow,
    head: flowing ? point.head : point.shutoffHead,
    power: wirePower(power, flow, ratio),
    extrapolated: flowing && point.extrapolated,
  };
}

export interface HeadAt {
  readonly flow: number;
  readonly head: number;
}

const pointsOnCurve = 60;

/** The head that the pipes take, over a range of flows from none. */
export function systemLine(machine: Machine, greatestFlow: number): HeadAt[] {
  return evenly(0, greatestFlow, pointsOnCurve).map((flow) => ({
    flow,
    head: compiledHead(machine.circuit, flow),
  }));
}

/** The head that the pump makes at a speed, to the flow where none is left. */
export function pumpLine(machine: Machine, speed: number, greatestFlow: number): HeadAt[] {
  const ratio = speed / machine.referenceSpeed;
  return evenly(0, greatestFlow, pointsOnCurve)
    .map((flow) => ({ flow, head: pumpHead(machine.curve, flow, ratio) }))
    .filter(({ head }) => head >= 0);
}
