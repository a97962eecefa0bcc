import { type Block, findOverlaps } from '#core/day/day.ts';
import type { QuietHours } from '#core/day/dayReport.ts';
import {
  complementOf,
  intersectionOf,
  type Piece,
  piecesOf,
  ringRuns,
  spanMinutes,
} from '#core/time/spans.ts';
import type { PadBlock, QuietHours as PadQuiet, PadYear } from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import type { PumpSpeeds } from './heldSpeed.ts';
import { heldProblems, heldRatio } from './heldSpeed.ts';

export interface AssembledDay {
  /** The blocks for the core, as `coreBlocks` makes them. */
  readonly blocks: readonly Block[];
  readonly problems: readonly Problem[];
}

/**
 * The blocks with no minute claimed twice: a later entry keeps its first free stretch, and goes when
 * it has none. A pad file written by hand may hold such a day.
 */
export function withoutOverlap(blocks: readonly PadBlock[]): readonly PadBlock[] {
  let taken: readonly Piece[] = [];
  const kept = blocks.flatMap((block): readonly PadBlock[] => {
    const left = leftOf(block, taken);
    if (left !== null) taken = [...taken, ...piecesOf(left)].sort((a, b) => a.start - b.start);
    return left === null ? [] : [left];
  });
  const same = kept.length === blocks.length && kept.every((each, at) => each === blocks[at]);
  return same ? blocks : kept;
}

/** What is left of a block beside minutes already taken; the block itself when all of it is. */
function leftOf(block: PadBlock, taken: readonly Piece[]): PadBlock | null {
  const free = intersectionOf(piecesOf(block), complementOf(taken));
  const minutes = free.reduce((sum, { start, end }) => sum + end - start, 0);
  if (minutes === spanMinutes(block)) return block;
  const runs = ringRuns(free);
  const first = runs.find(({ start }) => start === block.start) ?? runs[0];
  return first === undefined ? null : { ...block, start: first.start, end: first.end % 1440 };
}

/**
 * The blocks of any day as the core reads them, the one way there is: no minute twice, a block
 * without a speed yet counts as off, and one beyond the pump turns at the pump's limit.
 */
export function coreBlocks(blocks: readonly PadBlock[], speeds: PumpSpeeds): readonly Block[] {
  return withoutOverlap(blocks).map(({ id, start, end, speed }) => ({
    id,
    start,
    end,
    ratio: heldRatio(speed, speeds),
  }));
}

function speedProblems({ speed }: PadBlock, path: Path, speeds: PumpSpeeds): readonly Problem[] {
  const at = [...path, 'speed'];
  return speed === null ? [problem('blockSpeed', at)] : heldProblems(speed, at, speeds);
}

function overlapProblems(blocks: readonly PadBlock[], path: Path): readonly Problem[] {
  return findOverlaps(blocks.map((block) => ({ ...block, ratio: 0 }))).map(
    ({ secondId, start, end }) => {
      const place = blocks.findIndex(({ id }) => id === secondId);
      return problem('blockOverlap', [...path, place], {
        start: { minute: start },
        end: { minute: end },
      });
    },
  );
}

/** The blocks of a day for the core, and what is wrong with them. */
export function assembleBlocks(
  blocks: readonly PadBlock[],
  speeds: PumpSpeeds,
  path: Path,
): AssembledDay {
  return {
    blocks: coreBlocks(blocks, speeds),
    problems: [
      ...blocks.flatMap((block, place) => speedProblems(block, [...path, place], speeds)),
      ...overlapProblems(blocks, path),
    ],
  };
}

/** What is wrong with the speeds and days of the year. */
export function yearProblems(
  { plans, frostSpeed }: Pick<PadYear, 'plans' | 'frostSpeed'>,
  speeds: PumpSpeeds,
): readonly Problem[] {
  return [
    ...plans.flatMap(({ blocks }, place) => {
      const path = ['year', 'plans', place, 'blocks'];
      return assembleBlocks(blocks, speeds, path).problems;
    }),
    ...heldProblems(frostSpeed, ['year', 'frostSpeed'], speeds),
  ];
}

/** Problems of speeds and blocks that the answers do not wait for: they say what is taken instead. */
export function isTakenInstead({ code }: Problem): boolean {
  return code === 'speedTooFast' || code === 'speedTooSlow' || code === 'blockOverlap';
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
