import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { affinityFlow, affinityHead, type PumpPoint } from '#core/pump/pump.ts';
import type { Rig, RigFilter } from '#explorables/example/rig.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { ValveWalkModel } from './model.ts';

/** Puts the reader's own pump, at its top speed, and their units beside the example. */
export function takePad(model: ValveWalkModel, pad: Pad): void {
  model.own.value = rigOf(pad);
  model.units.value = pad.units;
}

/** The pad as a pump before a valve, or nothing while it does not say enough. */
export function rigOf(pad: Pad): Rig | undefined {
  const { running, speeds } = padModel(pad);
  if (running === null || speeds === null) return undefined;
  const { curve, power, circuit } = running;
  return {
    pumps: [
      {
        id: 'mine',
        label: 'your pump',
        curve,
        power,
        points: sheetPoints(pad, speeds.reference, speeds.top),
      },
    ],
    circuit,
    valveBore: widestBore(circuit) ?? pipeSize('sch40-2').bore,
    filter: filterOf(pad, circuit),
    ratio: speeds.top / speeds.reference,
  };
}

/** The points of the sheet, brought to the speed the picture shows. */
function sheetPoints(pad: Pad, reference: number, top: number): readonly PumpPoint[] {
  const { knowledge } = pad.pump;
  if (knowledge.kind === 'nameplate') return [];
  return knowledge.points.flatMap(({ flow, head }) =>
    flow === null || head === null
      ? []
      : [{ flow: affinityFlow(flow, reference, top), head: affinityHead(head, reference, top) }],
  );
}

function widestBore({ discharge }: Circuit): number | undefined {
  const bores = discharge.flatMap((part) => (part.kind === 'pipe' ? [part.bore] : []));
  return bores.length === 0 ? undefined : Math.max(...bores);
}

/** The first filter whose two ends are known; it must stand where all the water passes. */
function filterOf(pad: Pad, circuit: Circuit): RigFilter | undefined {
  for (const section of pad.plumbing.discharge) {
    if (section.kind !== 'equipment' || section.equipment !== 'filter') continue;
    const { id, head, dirtyHead, loading } = section;
    const known = circuit.discharge.some((part) => part.id === id);
    if (!known || head === null || dirtyHead === null || head < 1e-6 || dirtyHead <= head) continue;
    return { id, ends: { cleanHead: head, dirtyHead }, loading: loading ?? 0 };
  }
  return undefined;
}
