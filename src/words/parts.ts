/** The names of fittings and equipment, and one line that says what a part is. */
import { pipeSizes } from '#core/hydraulics/pipe.ts';
import type {
  EquipmentSection,
  FittingSection,
  PipeSection,
  Section,
} from '#pad/document/schema.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';

/** A size from the table, or a bore [m]. */
export type Sized = Pick<PipeSection, 'sizeId' | 'bore'>;

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

export const equipmentNames: Readonly<Record<EquipmentSection['equipment'], string>> = {
  strainer: 'Strainer basket',
  filter: 'Filter',
  heater: 'Heater',
  saltCell: 'Salt cell',
  checkValve: 'Check valve',
  valve: 'Valve',
  other: 'Other equipment',
};

const labelOfSize = new Map(pipeSizes.map(({ id, label }) => [id, label]));

/** Whether a part has a size. */
export const isSized = ({ sizeId, bore }: Sized): boolean => sizeId !== null || bore !== null;

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
