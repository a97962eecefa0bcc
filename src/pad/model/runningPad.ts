import type { RunningPoint } from '#core/day/dayReport.ts';
import { type HeadShare, headShares, largestVelocity } from '#core/hydraulics/circuit.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { type OperatingPoint, operatingPoint, speedSweep } from '#core/pump/operatingPoint.ts';
import { type PumpPower, wirePower } from '#core/pump/power.ts';
import type { PumpCurve } from '#core/pump/pump.ts';

/** A pad that is known well enough to run: ask it anything at any speed ratio. */
export interface RunningPad {
  readonly circuit: Circuit;
  readonly curve: PumpCurve;
  readonly power: PumpPower;
  /** Where pump and circuit meet. */
  pointAt(ratio: number): OperatingPoint;
  /** The same for many speeds at once, from slow to fast. */
  sweep(ratios: readonly number[]): readonly OperatingPoint[];
  /** Flow, wire power and greatest velocities, for the day. */
  runningAt(ratio: number): RunningPoint;
  /** Wire power at a speed [W], whether or not water flows. */
  powerAt(ratio: number): number;
  /** Head each part takes where the pump runs at this speed; none when nothing flows. */
  sharesAt(ratio: number): readonly HeadShare[];
}

export function runningPad(circuit: Circuit, curve: PumpCurve, power: PumpPower): RunningPad {
  const compiled = compileCircuit(circuit);
  const pointAt = (ratio: number) => operatingPoint(curve, compiled, ratio);
  const powerOf = (point: OperatingPoint, ratio: number) =>
    wirePower(power, point.kind === 'flowing' ? point.flow : 0, ratio);
  const fastest = (flow: number, side: 'suction' | 'discharge') =>
    largestVelocity(circuit, flow, side)?.velocity ?? 0;
  return {
    circuit,
    curve,
    power,
    pointAt,
    sweep: (ratios) => speedSweep(curve, compiled, ratios),
    powerAt: (ratio) => powerOf(pointAt(ratio), ratio),
    runningAt: (ratio) => {
      const point = pointAt(ratio);
      const drawn = powerOf(point, ratio);
      if (point.kind === 'noFlow') return { kind: 'noFlow', power: drawn };
      return {
        kind: 'flowing',
        flow: point.flow,
        power: drawn,
        // Tables of many speeds ask for flow and power alone.
        get suctionVelocity() {
          return fastest(point.flow, 'suction');
        },
        get dischargeVelocity() {
          return fastest(point.flow, 'discharge');
        },
      };
    },
    sharesAt: (ratio) => {
      const point = pointAt(ratio);
      return point.kind === 'flowing' ? headShares(circuit, point.flow) : [];
    },
  };
}
