/** A pad whose filter can be set from clean to dirty: the lesson's example, or the reader's own. */
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { type CompiledCircuit, compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { type FilterEnds, filterFactor } from '#core/hydraulics/equipment.ts';
import type { PumpPower } from '#core/pump/power.ts';
import type { PumpCurve } from '#core/pump/pump.ts';

export interface FilterBench {
  readonly curve: PumpCurve;
  readonly power: PumpPower;
  /** Circuit at each whole step of loading, from clean to due for cleaning. */
  readonly loaded: readonly CompiledCircuit[];
  /** The suction side alone, which the filter does not touch. */
  readonly suction: CompiledCircuit;
  /** Of the water [kg/m3]. */
  readonly density: number;
  /** Speeds [rpm]. */
  readonly speeds: { readonly reference: number; readonly least: number; readonly top: number };
  /** Price of energy [per kWh] and its currency; null while it is not one number. */
  readonly price: { readonly perKilowattHour: number; readonly currency: string } | null;
}

/** Weeks from clean to due, and how finely they are followed; invented, said beside the picture. */
export const weeksToDue = 8;
export const stepsPerWeek = 4;

interface BenchInputs extends Omit<FilterBench, 'loaded' | 'suction' | 'density'> {
  /** The circuit with its filter clean: factor 1 on the filter. */
  readonly clean: Circuit;
  readonly filterId: string;
  readonly ends: FilterEnds;
}

function withFactor(part: CircuitPart, id: string, factor: number): CircuitPart {
  if (part.kind === 'parallel') {
    const branches = part.branches.map((branch) => ({
      ...branch,
      parts: branch.parts.map((inner) => withFactor(inner, id, factor)),
    }));
    return { ...part, branches };
  }
  return part.kind === 'equipment' && part.id === id ? { ...part, factor } : part;
}

/** The same circuit with its filter so far from clean [-], 0 to 1. */
export function loadedCircuit(
  clean: Circuit,
  filterId: string,
  ends: FilterEnds,
  loading: number,
): Circuit {
  const factor = filterFactor(ends, loading);
  const load = (part: CircuitPart) => withFactor(part, filterId, factor);
  return { ...clean, suction: clean.suction.map(load), discharge: clean.discharge.map(load) };
}

export function createBench({ clean, filterId, ends, ...rest }: BenchInputs): FilterBench {
  const steps = weeksToDue * stepsPerWeek;
  return {
    ...rest,
    loaded: Array.from({ length: steps + 1 }, (_, step) =>
      compileCircuit(loadedCircuit(clean, filterId, ends, step / steps)),
    ),
    suction: compileCircuit({ ...clean, discharge: [], staticHead: 0 }),
    density: clean.water.density,
  };
}
