/**
 * The circuit of a pad with one thing changed: what its readings have taught of it stays, because
 * they were taken on the pad as it is today.
 */

import { changedParts } from '#core/fit/resistance.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { fittingK } from '#core/hydraulics/fittings.ts';
import { type PipeSize, pipeSizes } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import type { Plumbing, Section } from '#pad/document/schema.ts';
import { boreOf } from './assembleCircuit.ts';
import { filtersIn, withLoading } from './loadedFilters.ts';

export type Side = 'suction' | 'discharge';

/** How far the pipes of a side can be moved along their standards. */
export interface SizeRange {
  /** Nominal sizes down, 0 or less, and up, 0 or more, that every pipe can be moved. */
  readonly least: number;
  readonly most: number;
  /** Size of the longest pipe after so many steps. */
  readonly mainSize: (steps: number) => PipeSize;
  /** Parts with a bore that was typed, which stay as they are. */
  readonly typed: number;
}

/** Pipes and fittings of a section, also within its branches. */
function sizedIn(sections: readonly Section[]): readonly Extract<Section, { sizeId: unknown }>[] {
  return sections.flatMap((section) => {
    if (section.kind === 'parallel')
      return section.branches.flatMap((branch) => sizedIn(branch.sections));
    return section.kind === 'equipment' ? [] : [section];
  });
}

/** The sizes of one standard and series, the smallest first. */
const seriesOf = ({ series }: PipeSize): readonly PipeSize[] =>
  pipeSizes.filter((size) => size.series === series);

const sizeOf = (id: string | null): PipeSize | undefined =>
  pipeSizes.find((size) => size.id === id);

/** The size so many nominal sizes up in its own series; undefined past either end. */
function movedSize(id: string | null, steps: number): PipeSize | undefined {
  const size = sizeOf(id);
  if (size === undefined) return undefined;
  const series = seriesOf(size);
  return series[series.indexOf(size) + steps];
}

/** How far one side can be re-piped, or null where it has no pipe of a standard. */
export function sizeRange(plumbing: Plumbing, side: Side): SizeRange | null {
  const parts = sizedIn(plumbing[side]);
  const ofStandard = parts.filter(({ sizeId }) => sizeOf(sizeId) !== undefined);
  const pipes = ofStandard.flatMap((part) => (part.kind === 'pipe' ? [part] : []));
  const [first] = pipes;
  if (first === undefined) return null;
  const longest = pipes.reduce((best, pipe) =>
    (pipe.length ?? 0) > (best.length ?? 0) ? pipe : best,
  );
  const canMove = (steps: number) =>
    ofStandard.every(({ sizeId }) => movedSize(sizeId, steps) !== undefined);
  let [least, most] = [0, 0];
  while (canMove(least - 1)) least -= 1;
  while (canMove(most + 1)) most += 1;
  return {
    least,
    most,
    mainSize: (steps) => movedSize(longest.sizeId, steps) as PipeSize,
    typed: parts.length - ofStandard.length,
  };
}

/** The same parts in pipe so many nominal sizes larger; fittings follow by the table they come from. */
function resized(
  parts: readonly CircuitPart[],
  sections: readonly Extract<Section, { sizeId: unknown }>[],
  steps: number,
): readonly CircuitPart[] {
  return parts.map((part) => {
    if (part.kind === 'equipment') return part;
    if (part.kind === 'parallel') {
      const branches = part.branches.map((branch) => ({
        ...branch,
        parts: resized(branch.parts, sections, steps),
      }));
      return { ...part, branches };
    }
    const section = sections.find(({ id }) => id === part.id);
    const bore = movedSize(section?.sizeId ?? null, steps)?.bore;
    if (section === undefined || bore === undefined) return part;
    if (part.kind === 'pipe') return { ...part, bore };
    const own = section.kind === 'fitting' && section.k === null ? section.fitting : 'other';
    const before = boreOf(section);
    // The coefficient may have been fitted to readings, so it is moved and not set.
    const moved =
      own === 'other' || before === null ? 1 : fittingK(own, bore) / fittingK(own, before);
    return { ...part, bore, k: part.k * moved };
  });
}

/** The circuit with every pipe of a side moved so many nominal sizes within its own standard. */
export function circuitWithSizes(
  circuit: Circuit,
  plumbing: Plumbing,
  side: Side,
  steps: number,
): Circuit {
  return changedParts(circuit, (parts, of) =>
    of === side ? resized(parts, sizedIn(plumbing[side]), steps) : parts,
  );
}

/** How loaded the filters of the pad are now [-], or null where none has both its ends known. */
export function loadingNow(plumbing: Plumbing): number | null {
  const [first] = filtersIn([...plumbing.suction, ...plumbing.discharge]);
  return first?.now ?? null;
}

/** The circuit with its filters loaded so far [-], 0 to 1. */
export function circuitWithLoading(circuit: Circuit, plumbing: Plumbing, loading: number): Circuit {
  const filters = filtersIn([...plumbing.suction, ...plumbing.discharge]);
  return changedParts(circuit, (parts) => withLoading(parts, filters, loading));
}

/** The circuit with its water at another temperature [degC], 0 to 45. */
export function circuitWithWater(circuit: Circuit, temperature: number): Circuit {
  return { ...circuit, water: water(temperature) };
}
