/** The names of parts, and one line that says what a part is. */
import { pipeSizes } from '#core/pipe.ts';
import { plumbingIds } from '#pad/ids.ts';
import type { EquipmentSection, FittingSection, Pad, PipeSection, Section } from '#pad/schema.ts';
import type { Preset, UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import type { Choice } from '#widgets/kit/ChoiceFields.tsx';
import { countParts } from './text.ts';

export const fittingNames: Readonly<Record<FittingSection['fitting'], string>> = {
  elbow90: 'Elbow 90°',
  elbow90Long: 'Elbow 90°, long radius',
  bend90Wide: 'Bend 90°, wide sweep',
  elbow45: 'Elbow 45°',
  streetElbow90: 'Street elbow 90°',
  streetElbow45: 'Street elbow 45°',
  returnBend: 'Return bend 180°',
  teeRun: 'Tee, straight through',
  teeBranch: 'Tee, into the branch',
  gateValve: 'Gate valve, open',
  ballValve: 'Ball valve, open',
  butterflyValve: 'Butterfly valve, open',
  globeValve: 'Globe valve, open',
  angleValve: 'Angle valve, open',
  swingCheckValve: 'Swing check valve',
  swingCheckValveClearway: 'Swing check valve, clearway',
  threeWayValveStraight: 'Three-way valve, straight through',
  threeWayValveBranch: 'Three-way valve, to the side',
  squareInlet: 'Pipe inlet, flush with the wall',
  roundedInlet: 'Pipe inlet, rounded',
  projectingInlet: 'Pipe inlet, sticking out',
  exit: 'Pipe outlet into the pool',
  other: 'Another fitting, with a K of its own',
};

export const fittingChoices: readonly Choice[] = Object.entries(fittingNames).map(
  ([id, label]) => ({ id, label }),
);

export const equipmentNames: Readonly<Record<EquipmentSection['equipment'], string>> = {
  strainer: 'Strainer basket',
  filter: 'Filter',
  heater: 'Heater',
  saltCell: 'Salt cell',
  checkValve: 'Check valve',
  valve: 'Valve',
  other: 'Other equipment',
};

export const equipmentChoices: readonly Choice[] = Object.entries(equipmentNames).map(
  ([id, label]) => ({ id, label }),
);

export const mediaChoices: readonly Choice[] = [
  { id: 'sand', label: 'Sand' },
  { id: 'cartridge', label: 'Cartridge' },
  { id: 'diatomaceousEarth', label: 'Diatomaceous earth' },
  { id: 'glass', label: 'Glass' },
  { id: 'other', label: 'Other' },
];

/** Stands for a bore that is typed instead of a size from the table. */
export const ownBore = 'own';

const isUs = (id: string): boolean => id.startsWith('sch');

/** Every size in the table, those of the reader's own system first. */
export function sizeChoices(preset: Preset): readonly Choice[] {
  const all = pipeSizes.map(({ id, label }) => ({ id, label }));
  const near = all.filter(({ id }) => isUs(id) === (preset === 'us'));
  const far = all.filter(({ id }) => isUs(id) !== (preset === 'us'));
  return [
    { id: '', label: 'Choose a size' },
    ...near,
    ...far,
    { id: ownBore, label: 'Type the bore' },
  ];
}

type Sized = Pick<PipeSection, 'sizeId' | 'bore'>;

/** What the list of sizes shows for a part. */
export function chosenSize({ sizeId, bore }: Sized): string {
  return sizeId ?? (bore === null ? '' : ownBore);
}

const boreOfSize = new Map(pipeSizes.map(({ id, bore }) => [id, bore]));

/** A part in another size; to type a bore, one starts from that of the size before. */
export function withSize<Part extends Sized>(part: Part, choice: string): Part {
  if (choice === ownBore) {
    const bore = part.bore ?? boreOfSize.get(part.sizeId ?? '') ?? 0.05;
    return { ...part, sizeId: null, bore };
  }
  return { ...part, sizeId: choice === '' ? null : choice, bore: null };
}

const labelOfSize = new Map(pipeSizes.map(({ id, label }) => [id, label]));

const isSized = ({ sizeId, bore }: Sized): boolean => sizeId !== null || bore !== null;

function sizeText({ sizeId, bore }: Sized, units: UnitChoice): string {
  if (sizeId !== null) return labelOfSize.get(sizeId) ?? sizeId;
  return bore === null ? 'no size yet' : `${format('diameter', bore, units)} bore`;
}

function pipeText(pipe: PipeSection, units: UnitChoice): string {
  const size = sizeText(pipe, units);
  if (pipe.length === null) {
    return isSized(pipe) ? `Pipe, ${size}, no length yet` : 'Pipe, no size or length yet';
  }
  const length = format('length', pipe.length, units);
  return isSized(pipe) ? `Pipe, ${length} of ${size}` : `Pipe, ${length}, ${size}`;
}

function fittingText(fitting: FittingSection, units: UnitChoice): string {
  const name =
    fitting.fitting === 'other' ? 'Fitting with its own K' : fittingNames[fitting.fitting];
  const times = fitting.count === 1 ? '' : `${fitting.count} × `;
  return `${times}${name}, ${sizeText(fitting, units)}`;
}

function equipmentText(equipment: EquipmentSection, units: UnitChoice): string {
  const name = equipment.name || equipmentNames[equipment.equipment];
  const { head, flow } = equipment;
  if (head === null || flow === null) return `${name}, head not said yet`;
  return `${name}, ${format('head', head, units)} at ${format('flow', flow, units)}`;
}

/** What a part is, in one line. */
export function partText(section: Section, units: UnitChoice): string {
  switch (section.kind) {
    case 'pipe':
      return pipeText(section, units);
    case 'fitting':
      return fittingText(section, units);
    case 'equipment':
      return equipmentText(section, units);
    case 'parallel': {
      const ways = `${section.branches.length} ways side by side`;
      return section.name === '' ? ways : `${section.name}, ${ways}`;
    }
  }
}

/** The name of one way of a place where the flow divides. */
export function branchText(
  { name, sections }: { readonly name: string; readonly sections: readonly Section[] },
  place: number,
): string {
  const parts = countParts(sections);
  return `${name || `Way ${place + 1}`}: ${parts === 1 ? '1 part' : `${parts} parts`}`;
}

/** An id that no part or branch of the plumbing has. */
export function freshPartIds(plumbing: Pad['plumbing'], many: number): readonly string[] {
  const taken = new Set(plumbingIds(plumbing).map(({ id }) => id));
  const ids: string[] = [];
  for (let number = taken.size + 1; ids.length < many; number += 1) {
    const id = `part${number}`;
    if (!taken.has(id)) ids.push(id);
  }
  return ids;
}

/** The size a new part starts with: that of the last part before it that has one. */
export function lastSize(sections: readonly Section[]): Sized {
  for (const section of sections.toReversed()) {
    if (section.kind === 'pipe' || section.kind === 'fitting') {
      const { sizeId, bore } = section;
      if (isSized(section)) return { sizeId, bore };
    }
  }
  return { sizeId: null, bore: null };
}
