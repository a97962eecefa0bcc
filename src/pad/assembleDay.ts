import { type Block, findOverlaps } from '#core/day.ts';
import type { QuietHours } from '#core/dayReport.ts';
import type { PumpSpeeds } from './assemblePump.ts';
import type { Path } from './path.ts';
import { type Problem, problem } from './problems.ts';
import type { PadBlock, QuietHours as PadQuiet } from './schema.ts';

export interface AssembledDay {
  /** The blocks for the core, or null while two of them claim the same minutes. */
  readonly blocks: readonly Block[] | null;
  readonly problems: readonly Problem[];
}

const rpm = (value: number) => ({ quantity: 'speed' as const, value });

function speedProblem(block: PadBlock, path: Path, speeds: PumpSpeeds): readonly Problem[] {
  const { speed } = block;
  const at = [...path, 'speed'];
  if (speed === null) return [problem('blockSpeed', at)];
  const found = rpm(speed);
  if (speed > speeds.top) return [problem('blockFast', at, { found, limit: rpm(speeds.top) })];
  const tooSlow = speed > 0 && speed < speeds.least;
  return tooSlow ? [problem('blockSlow', at, { found, limit: rpm(speeds.least) })] : [];
}

function overlapProblems(blocks: readonly Block[], path: Path): readonly Problem[] {
  return findOverlaps(blocks).map(({ secondId, start, end }) => {
    const place = blocks.findIndex(({ id }) => id === secondId);
    return problem('blockOverlap', [...path, place], {
      start: { minute: start },
      end: { minute: end },
    });
  });
}

/** Blocks with speeds as ratios: none yet counts as off, one beyond the pump as its top speed. */
export function assembleBlocks(
  blocks: readonly PadBlock[],
  speeds: PumpSpeeds,
  path: Path,
): AssembledDay {
  const core = blocks.map(({ id, start, end, speed }) => ({
    id,
    start,
    end,
    ratio: Math.min(speed ?? 0, speeds.top) / speeds.reference,
  }));
  const overlaps = overlapProblems(core, path);
  return {
    blocks: overlaps.length === 0 ? core : null,
    problems: [
      ...blocks.flatMap((block, place) => speedProblem(block, [...path, place], speeds)),
      ...overlaps,
    ],
  };
}

export interface AssembledQuiet {
  readonly quiet: readonly (QuietHours & { readonly id: string })[];
  readonly problems: readonly Problem[];
}

/** Quiet hours with their ceilings as ratios. */
export function assembleQuiet(quiet: readonly PadQuiet[], speeds: PumpSpeeds): AssembledQuiet {
  return {
    quiet: quiet.flatMap(({ id, start, end, ceilingSpeed }) =>
      ceilingSpeed === null ? [] : [{ id, start, end, ceiling: ceilingSpeed / speeds.reference }],
    ),
    problems: quiet.flatMap(({ ceilingSpeed }, place) =>
      ceilingSpeed === null ? [problem('quietSpeed', ['quiet', place, 'ceilingSpeed'])] : [],
    ),
  };
}
