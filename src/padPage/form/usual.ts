/**
 * Usual figures to begin with: common practice, no source. The form says so wherever it uses one,
 * and says that the label or the manual of the unit governs.
 */
import { newEquipment, newFitting, newNeed, newPipe } from '#pad/document/parts.ts';
import type { EquipmentSection, Pad, PadNeed, Plumbing } from '#pad/document/schema.ts';
import type { Preset } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';

/** The same figure in round numbers of either system. */
type Pair = readonly [us: number, metric: number];

const pick = (pair: Pair, preset: Preset): number => pair[preset === 'us' ? 0 : 1];
const flow = (pair: Pair, preset: Preset): number =>
  toSI('flow', pick(pair, preset), preset === 'us' ? 'gpm' : 'm3/h');
const head = (pair: Pair, preset: Preset): number =>
  toSI('head', pick(pair, preset), preset === 'us' ? 'ft' : 'm');
const length = (pair: Pair, preset: Preset): number =>
  toSI('length', pick(pair, preset), preset === 'us' ? 'ft' : 'm');

/** Flow at which the usual losses of equipment are stated. */
const statedFlow: Pair = [60, 14];

const usualHeads: Readonly<Partial<Record<EquipmentSection['equipment'], Pair>>> = {
  strainer: [1.5, 0.5],
  filter: [4, 1.2],
  heater: [7, 2],
  saltCell: [2, 0.6],
  checkValve: [1, 0.3],
  valve: [1, 0.3],
};

type EquipmentPoint = Pick<EquipmentSection, 'head' | 'flow' | 'dirtyHead' | 'loading'>;

/** The usual loss of a kind of equipment; nothing for one that could be anything. */
export function usualEquipment(
  kind: EquipmentSection['equipment'],
  preset: Preset,
): EquipmentPoint | null {
  const stated = usualHeads[kind];
  if (stated === undefined) return null;
  const point = { head: head(stated, preset), flow: flow(statedFlow, preset) };
  if (kind !== 'filter') return { ...point, dirtyHead: null, loading: null };
  return { ...point, dirtyHead: head([24, 7], preset), loading: 0.3 };
}

/** Whether equipment still stands at its usual loss, in either system. */
export function isUsualEquipment(equipment: EquipmentSection): boolean {
  return (['us', 'metric'] as const).some((preset) => {
    const usual = usualEquipment(equipment.equipment, preset);
    return usual !== null && usual.head === equipment.head && usual.flow === equipment.flow;
  });
}

/** A usual loop, for whoever cannot measure theirs yet. The ids are given. */
export function usualPlumbing(preset: Preset): Plumbing {
  const sizeId = preset === 'us' ? 'sch40-2' : 'pn10-63';
  const run = (id: string, pair: Pair) => newPipe(id, { sizeId, length: length(pair, preset) });
  const equipment = (id: string, kind: EquipmentSection['equipment'], name: string) =>
    newEquipment(id, kind, { name, ...usualEquipment(kind, preset) });
  return {
    staticHead: 0,
    suction: [
      newFitting('usual1', 'squareInlet', { sizeId }),
      run('usual2', [40, 12]),
      newFitting('usual3', 'elbow90', { sizeId, count: 4 }),
      equipment('usual4', 'strainer', 'Strainer basket (assumed)'),
    ],
    discharge: [
      newFitting('usual5', 'elbow90', { sizeId, count: 3 }),
      equipment('usual6', 'filter', 'Filter (assumed)'),
      run('usual7', [60, 18]),
      newFitting('usual8', 'elbow90', { sizeId, count: 6 }),
      newFitting('usual9', 'teeBranch', { sizeId, count: 2 }),
      newFitting('usual10', 'exit', { sizeId }),
    ],
  };
}

/** Kept in the notes of the pad, so that whoever opens the file reads it too. */
export const assumedNote =
  'Pipes and fittings are a usual set, an assumption (common practice, no source), not measured.';

/** The pad with the usual loop, and a note that says so. */
export function withUsualPlumbing(pad: Pad): Pad {
  const notes = pad.notes.includes(assumedNote) ? pad.notes : `${pad.notes} ${assumedNote}`.trim();
  return { ...pad, notes, plumbing: usualPlumbing(pad.units.preset) };
}

interface UsualNeed {
  readonly name: string;
  readonly flow: Pair;
  readonly minutes: number | null;
  readonly shortestRun: number | null;
}

export const usualNeeds: Readonly<Record<PadNeed['kind'], UsualNeed>> = {
  skimming: { name: 'Skimming', flow: [40, 9], minutes: 240, shortestRun: 60 },
  heating: { name: 'Heating', flow: [40, 9], minutes: 240, shortestRun: 30 },
  saltCell: { name: 'Salt cell', flow: [25, 6], minutes: 480, shortestRun: 30 },
  cleaner: { name: 'Cleaner', flow: [30, 7], minutes: 180, shortestRun: 60 },
  solar: { name: 'Solar heating', flow: [35, 8], minutes: 300, shortestRun: 30 },
  spillway: { name: 'Spillway', flow: [40, 9], minutes: 120, shortestRun: null },
  filtering: { name: 'Filtering', flow: [20, 5], minutes: 720, shortestRun: null },
};

/** A need of a kind with usual figures. */
export function usualNeed(id: string, kind: PadNeed['kind'], preset: Preset): PadNeed {
  const { name, flow: least, minutes, shortestRun } = usualNeeds[kind];
  const windows = kind === 'solar' ? [{ start: 600, end: 960 }] : [];
  return newNeed(id, kind, { name, leastFlow: flow(least, preset), minutes, shortestRun, windows });
}

/** Whether a need still stands at its usual flow, in either system. */
export function isUsualNeed(need: PadNeed): boolean {
  return (['us', 'metric'] as const).some(
    (preset) => flow(usualNeeds[need.kind].flow, preset) === need.leastFlow,
  );
}

/** Usual greatest velocities: 6 ft/s before the pump and 8 after, or 1.8 and 2.4 m/s. */
export function usualVelocities(preset: Preset): { suction: number; discharge: number } {
  const velocity = (pair: Pair) =>
    toSI('velocity', pick(pair, preset), preset === 'us' ? 'ft/s' : 'm/s');
  return { suction: velocity([6, 1.8]), discharge: velocity([8, 2.4]) };
}
