import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { createBench, type FilterBench, loadedCircuit } from '#explorables/example/filterBench.ts';
import type { EquipmentSection, Pad, Section } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { FilterWeeksModel } from './model.ts';

function filtersIn(sections: readonly Section[]): readonly EquipmentSection[] {
  return sections.flatMap((section) => {
    if (section.kind === 'parallel') {
      return section.branches.flatMap(({ sections: inner }) => filtersIn(inner));
    }
    return section.kind === 'equipment' && section.equipment === 'filter' ? [section] : [];
  });
}

/** Clean and dirty head of a filter, when the pad tells both. */
function endsOf({ head, dirtyHead }: EquipmentSection) {
  const told = head !== null && dirtyHead !== null && head >= 1e-6 && dirtyHead > head;
  return told ? { cleanHead: head, dirtyHead } : undefined;
}

/** The reader's pad with its first filter from clean to dirty, or nothing while it does not say both. */
export function benchOf(pad: Pad): FilterBench | undefined {
  const { running, speeds } = padModel(pad);
  const [filter] = filtersIn([...pad.plumbing.suction, ...pad.plumbing.discharge]);
  const ends = filter === undefined ? undefined : endsOf(filter);
  if (running === null || speeds === null || filter === undefined || ends === undefined) {
    return undefined;
  }
  const clean: Circuit = loadedCircuit(running.circuit, filter.id, ends, 0);
  return createBench({
    clean,
    filterId: filter.id,
    ends,
    curve: running.curve,
    power: running.power,
    speeds,
    price: null,
  });
}

/** Puts the reader's own filter and units beside the example. */
export function takePad(model: FilterWeeksModel, pad: Pad): void {
  model.own.value = benchOf(pad);
  model.units.value = pad.units;
}
