import type { Branch, Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { filterFactor } from '#core/hydraulics/equipment.ts';
import { fittingK } from '#core/hydraulics/fittings.ts';
import { smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { pipeSizes } from '#core/hydraulics/pipe.ts';
import type { Water } from '#core/water/water.ts';
import type {
  EquipmentSection,
  FittingSection,
  ParallelSection,
  PipeSection,
  Plumbing,
  Section,
} from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import { filterEnd } from './filterEnds.ts';

export interface AssembledCircuit {
  /** The circuit as far as it is described, or null while no part of it is. */
  readonly circuit: Circuit | null;
  readonly problems: readonly Problem[];
}

/** The bores the circuit accepts [m]. */
const leastBore = 0.005;
const greatestBore = 1;

const bores = new Map(pipeSizes.map(({ id, bore }) => [id, bore]));

type Note = (found: Problem) => void;

interface Sized {
  readonly sizeId: string | null;
  readonly bore: number | null;
}

/** Inside diameter of a part [m]: that of its size, else the one typed. */
export function boreOf({ sizeId, bore }: Sized): number | null {
  if (sizeId !== null) return bores.get(sizeId) ?? null;
  return bore;
}

function usableBore(part: Sized, path: Path, note: Note): number | null {
  const bore = boreOf(part);
  if (bore === null) {
    note(
      part.sizeId === null
        ? problem('partSize', [...path, 'sizeId'])
        : problem('unknownSize', [...path, 'sizeId'], { found: part.sizeId }),
    );
    return null;
  }
  if (bore >= leastBore && bore <= greatestBore) return bore;
  const shown = (value: number) => ({ quantity: 'diameter' as const, value });
  const range = { least: shown(leastBore), greatest: shown(greatestBore) };
  note(problem('partBore', [...path, 'bore'], { found: shown(bore), ...range }));
  return null;
}

function pipePart(pipe: PipeSection, path: Path, note: Note): CircuitPart | null {
  const bore = usableBore(pipe, path, note);
  if (pipe.length === null) note(problem('partLength', [...path, 'length']));
  if (bore === null || pipe.length === null) return null;
  const roughness = pipe.roughness ?? smoothPlasticRoughness;
  if (roughness > bore / 10) {
    const greatest = { quantity: 'roughness' as const, value: bore / 10 };
    note(problem('roughPipe', [...path, 'roughness'], { greatest }));
    return null;
  }
  return { kind: 'pipe', id: pipe.id, bore, length: pipe.length, roughness };
}

function fittingPart(fitting: FittingSection, path: Path, note: Note): CircuitPart | null {
  const bore = usableBore(fitting, path, note);
  const needsK = fitting.k === null && fitting.fitting === 'other';
  if (needsK) note(problem('fittingK', [...path, 'k']));
  if (bore === null || needsK) return null;
  const each =
    fitting.k ?? fittingK(fitting.fitting as Exclude<typeof fitting.fitting, 'other'>, bore);
  return { kind: 'fitting', id: fitting.id, k: each * fitting.count, bore };
}

function equipmentPart(equipment: EquipmentSection, path: Path, note: Note): CircuitPart | null {
  const { id, head, flow, dirtyHead } = equipment;
  const ends = filterEnd(equipment);
  if ((head === null && ends === null) || flow === null || flow < 1e-9) {
    note(problem('equipmentPoint', [...path, head === null ? 'head' : 'flow']));
    return null;
  }
  const isFilter = equipment.equipment === 'filter';
  if (isFilter && head !== null && dirtyHead !== null && dirtyHead < head) {
    note(problem('filterEnds', [...path, 'dirtyHead']));
  }
  if (head === null && ends !== null) {
    const dirty = { quantity: 'head' as const, value: ends.dirtyHead };
    note(problem('filterClean', [...path, 'head'], { dirty }));
  }
  return {
    kind: 'equipment',
    id,
    referenceHead: ends?.cleanHead ?? (head as number),
    referenceFlow: flow,
    exponent: equipment.exponent ?? 2,
    factor: ends === null ? 1 : filterFactor(ends, ends.now),
  };
}

function parallelPart(parallel: ParallelSection, path: Path, note: Note): CircuitPart | null {
  const branches = parallel.branches.flatMap((branch, place): readonly Branch[] => {
    const here: Path = [...path, 'branches', place];
    const parts = partsOf(branch.sections, [...here, 'sections'], note);
    if (branch.sections.length === 0) note(problem('branchEmpty', here));
    if (parts.length === 0) return [];
    return [{ id: branch.id, parts, lift: branch.lift ?? 0 }];
  });
  return branches.length === 0 ? null : { kind: 'parallel', id: parallel.id, branches };
}

function partOf(section: Section, path: Path, note: Note): CircuitPart | null {
  switch (section.kind) {
    case 'pipe':
      return pipePart(section, path, note);
    case 'fitting':
      return fittingPart(section, path, note);
    case 'equipment':
      return equipmentPart(section, path, note);
    case 'parallel':
      return parallelPart(section, path, note);
  }
}

function partsOf(sections: readonly Section[], path: Path, note: Note): readonly CircuitPart[] {
  return sections.flatMap((section, place) => partOf(section, [...path, place], note) ?? []);
}

/** Whether any part takes head at all; one that takes none cannot stop a pump. */
function resists(part: CircuitPart): boolean {
  switch (part.kind) {
    case 'pipe':
      return part.length > 0;
    case 'fitting':
      return part.k > 0;
    case 'equipment':
      return part.referenceHead > 0;
    case 'parallel':
      return part.branches.every(({ parts }) => parts.some(resists));
  }
}

/** The circuit from the parts that are fully described; the others are named as problems. */
export function assembleCircuit(plumbing: Plumbing, water: Water): AssembledCircuit {
  const problems: Problem[] = [];
  const note: Note = (found) => problems.push(found);
  const suction = partsOf(plumbing.suction, ['plumbing', 'suction'], note);
  const discharge = partsOf(plumbing.discharge, ['plumbing', 'discharge'], note);
  const circuit = { suction, discharge, staticHead: plumbing.staticHead ?? 0, water };
  const described = [...suction, ...discharge].some(resists);
  return { circuit: described ? circuit : null, problems };
}
