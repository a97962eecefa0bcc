import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { type CompiledCircuit, compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import { type FilterEnds, filterFactor } from '#core/hydraulics/equipment.ts';
import { suddenEnlargement } from '#core/hydraulics/fittings.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { hydraulicPower, type PumpPower, wirePower } from '#core/pump/power.ts';
import { type PumpCurve, type PumpPoint, pumpHead } from '#core/pump/pump.ts';

export interface RigPump {
  readonly id: string;
  /** As it stands in a sentence: "pump A". */
  readonly label: string;
  readonly curve: PumpCurve;
  readonly power: PumpPower;
  /** The points of its sheet, at the speed it runs at; none where no sheet is known. */
  readonly points: readonly PumpPoint[];
}

/** A filter that can load; the circuit holds it as it is at `loading`. */
export interface RigFilter {
  readonly id: string;
  readonly ends: FilterEnds;
  readonly loading: number;
}

/** Pipes with a valve behind the pump, and pumps to put before them; all at one speed. */
export interface Rig {
  readonly pumps: readonly [RigPump, ...RigPump[]];
  /** The pipes without the valve. */
  readonly circuit: Circuit;
  readonly valveBore: number;
  readonly filter: RigFilter | undefined;
  /** Speed over reference speed [-]. */
  readonly ratio: number;
}

/** Where the pump meets the pipes, and where its head and its watts go. */
export interface Walk {
  /** [m3/s]; 0 when no water moves. */
  readonly flow: number;
  /** [m] */
  readonly head: number;
  /** Head that the dirt in the filter takes [m]. */
  readonly dirtHead: number;
  /** Head that the valve takes [m]. */
  readonly valveHead: number;
  /** Wire power [W]. */
  readonly power: number;
  /** Water power over wire power [-]. */
  readonly efficiency: number;
  /** Water moved for the energy [m3/J]. */
  readonly mileage: number;
  readonly extrapolated: boolean;
  /** Why no water moves, when none does. */
  readonly still: 'shut' | 'lift' | undefined;
}

/** The pipes at one state of the filter, with the valve wide open. */
export function pipesAt(rig: Rig, loading: number): CompiledCircuit {
  return compileCircuit({ ...rig.circuit, discharge: loadedParts(rig, loading) });
}

function loadedParts({ circuit, filter }: Rig, loading: number): Circuit['discharge'] {
  if (filter === undefined) return circuit.discharge;
  const change = filterFactor(filter.ends, loading) / filterFactor(filter.ends, filter.loading);
  return circuit.discharge.map((part) =>
    part.kind === 'equipment' && part.id === filter.id
      ? { ...part, factor: part.factor * change }
      : part,
  );
}

/** The pipes with the valve partly open: water jets through the gap and widens out again behind it. */
export function throttled(rig: Rig, loading: number, open: number): CompiledCircuit {
  const discharge = loadedParts(rig, loading);
  if (open >= 1) return compileCircuit({ ...rig.circuit, discharge });
  // On the velocity in the whole pipe, so the coefficient of the gap grows by the square of the area.
  const k = suddenEnlargement(Math.sqrt(open), 1) / open ** 2;
  const valve = { kind: 'fitting', id: 'valve', k, bore: rig.valveBore } as const;
  return compileCircuit({ ...rig.circuit, discharge: [...discharge, valve] });
}

/** Works out one setting of the valve and one state of the filter. */
export function walkAt(rig: Rig, pump: RigPump, loading: number, open: number): Walk {
  const { ratio } = rig;
  if (open <= 0) return standing(rig, pump, 'shut');
  const point = operatingPoint(pump.curve, throttled(rig, loading, open), ratio);
  if (point.kind === 'noFlow') return standing(rig, pump, 'lift');
  const { flow, head, extrapolated } = point;
  const loaded = compiledHead(pipesAt(rig, loading), flow);
  const clean = compiledHead(pipesAt(rig, 0), flow);
  const power = wirePower(pump.power, flow, ratio);
  return {
    flow,
    head,
    dirtHead: Math.max(loaded - clean, 0),
    valveHead: open < 1 ? Math.max(head - loaded, 0) : 0,
    power,
    efficiency: efficiencyAt(rig, pump, flow),
    mileage: power > 0 ? flow / power : 0,
    extrapolated,
    still: undefined,
  };
}

/** Water power over wire power at any flow along the curve [-]. */
export function efficiencyAt({ circuit, ratio }: Rig, pump: RigPump, flow: number): number {
  const head = Math.max(pumpHead(pump.curve, flow, ratio), 0);
  const power = wirePower(pump.power, flow, ratio);
  return power > 0 ? hydraulicPower(circuit.water.density, flow, head) / power : 0;
}

function standing({ ratio }: Rig, pump: RigPump, still: 'shut' | 'lift'): Walk {
  return {
    flow: 0,
    head: ratio * ratio * pump.curve.shutoffHead,
    dirtHead: 0,
    valveHead: 0,
    power: wirePower(pump.power, 0, ratio),
    efficiency: 0,
    mileage: 0,
    extrapolated: false,
    still,
  };
}

/** The opening of the valve at which this flow runs, by halving; wide open where it gives less. */
export function openingFor(rig: Rig, pump: RigPump, loading: number, flow: number): number {
  if (!(flow > 0)) return 0;
  let low = 0;
  let high = 1;
  for (let step = 0; step < 12; step += 1) {
    const middle = (low + high) / 2;
    const point = operatingPoint(pump.curve, throttled(rig, loading, middle), rig.ratio);
    if (point.kind === 'flowing' && point.flow > flow) high = middle;
    else low = middle;
  }
  return high;
}
