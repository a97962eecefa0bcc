import { minutesPerDay } from '#core/base/constants.ts';
import { CoreError, requireBetween, requireNotNegative } from '#core/base/errors.ts';
import {
  complementOf,
  intersectionOf,
  isSpan,
  piecesOf,
  requireSpan,
  ringRuns,
  type Span,
  spanHolds,
  spanMinutes,
} from '#core/time/spans.ts';

/** One stretch of the daily plan at one speed. Minutes in no block are off. */
export interface Block extends Span {
  /** Name of the block, unique in its day. */
  readonly id: string;
  /** Speed over reference speed [-], 0 or more; 0 is off. */
  readonly ratio: number;
}

/** A part of the day at one speed that does not cross midnight. */
export interface Segment {
  /** First minute inside [min], whole, 0 to 1439. */
  readonly start: number;
  /** First minute after it [min], whole, 1 to 1440. */
  readonly end: number;
  /** The block it comes from, or null where no block lies. */
  readonly blockId: string | null;
  /** Speed over reference speed [-], 0 or more; 0 is off. */
  readonly ratio: number;
}

/** Two blocks that claim the same minutes. */
export interface Overlap extends Span {
  readonly firstId: string;
  readonly secondId: string;
  /** How many minutes both claim in this stretch [min], 1 to 1440. */
  readonly minutes: number;
}

/** What is wrong with a list of blocks, as a value a page can turn into a sentence. */
export type DayProblem =
  | { readonly code: 'blockMinute'; readonly blockId: string; readonly field: 'start' | 'end' }
  | { readonly code: 'blockRatio'; readonly blockId: string; readonly field: 'ratio' }
  | { readonly code: 'blockIdTwice'; readonly blockId: string }
  | ({ readonly code: 'overlap' } & Overlap);

/**
 * The stretches of the clock that two blocks claim at once.
 *
 * Law: set intersection on the ring of 1440 minutes, for every pair.
 * @param blocks The plan [see Block], any order, whole minutes.
 * @returns One entry [min] per stretch and pair, named by block id, empty when none overlap.
 * @throws CoreError when an end of a block is not a whole minute on the clock.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example findOverlaps([{ id: 'a', start: 1320, end: 360, ratio: 1 }, { id: 'b', start: 300, end: 600, ratio: 1 }])[0].minutes // 60.00
 */
export function findOverlaps(blocks: readonly Block[]): readonly Overlap[] {
  return blocks.flatMap((first, index) =>
    blocks.slice(index + 1).flatMap((second) =>
      ringRuns(sharedPieces(first, second)).map((run) => ({
        firstId: first.id,
        secondId: second.id,
        ...run,
        minutes: spanMinutes(run),
      })),
    ),
  );
}

function sharedPieces(first: Span, second: Span) {
  return intersectionOf(piecesOf(first), piecesOf(second));
}

/**
 * Everything that keeps a list of blocks from being a day.
 *
 * Law: whole minutes on the clock, finite ratios of 0 or more, ids unique, no overlap.
 * @param blocks The plan [see Block], any numbers, as typed.
 * @returns Problems [-] in the order of the blocks, overlaps last; empty when the plan is sound.
 * @throws nothing; overlaps are looked for only among blocks whose minutes are sound.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example dayProblems([{ id: 'a', start: 0, end: 1500, ratio: 1 }]).length // 1.000
 */
export function dayProblems(blocks: readonly Block[]): readonly DayProblem[] {
  const seen = new Set<string>();
  const problems: DayProblem[] = [];
  for (const block of blocks) {
    const blockId = block.id;
    if (seen.has(blockId)) problems.push({ code: 'blockIdTwice', blockId });
    seen.add(blockId);
    if (!isSpan({ start: block.start, end: 0 }))
      problems.push({ code: 'blockMinute', blockId, field: 'start' });
    if (!isSpan({ start: 0, end: block.end }))
      problems.push({ code: 'blockMinute', blockId, field: 'end' });
    if (!Number.isFinite(block.ratio) || block.ratio < 0)
      problems.push({ code: 'blockRatio', blockId, field: 'ratio' });
  }
  const overlaps = findOverlaps(blocks.filter(isSpan));
  return [...problems, ...overlaps.map((overlap) => ({ code: 'overlap' as const, ...overlap }))];
}

/**
 * The whole day as sorted segments, off minutes included, cut at midnight.
 *
 * Law: the blocks and their complement cover the 1440 minutes once each.
 * @param blocks The plan [see Block], any order, none overlapping.
 * @returns Segments [see Segment] from minute 0 to 1440 without gap; a block across midnight gives two.
 * @throws CoreError when a block is off the clock, a ratio is negative or not finite, or two blocks overlap (both named).
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example segmentsOf([{ id: 'night', start: 1320, end: 360, ratio: 0.5 }]).length // 3.000
 */
export function segmentsOf(blocks: readonly Block[]): readonly Segment[] {
  blocks.forEach(requireBlock);
  const on = blocks.flatMap((block) =>
    piecesOf(block).map((piece) => ({ ...piece, blockId: block.id, ratio: block.ratio })),
  );
  on.sort((a, b) => a.start - b.start);
  requireNoOverlap(blocks, on);
  const off = complementOf(on).map((piece) => ({ ...piece, blockId: null, ratio: 0 }));
  return [...on, ...off].sort((a, b) => a.start - b.start);
}

function requireBlock(block: Block): void {
  requireSpan(`block ${block.id}`, block);
  requireNotNegative(`block ${block.id}.ratio`, block.ratio, '');
}

/** Sorted pieces make an overlap show as a start before the last end; only then are pairs sought. */
function requireNoOverlap(blocks: readonly Block[], sorted: readonly Segment[]): void {
  let reached = 0;
  for (const piece of sorted) {
    if (piece.start < reached) {
      const [overlap] = findOverlaps(blocks);
      throw new CoreError(
        'blocks',
        `${overlap?.firstId} over ${overlap?.secondId} from minute ${overlap?.start} to ${overlap?.end}`,
        'blocks that share no minute',
      );
    }
    reached = piece.end;
  }
}

/**
 * The block that runs at a minute of the day.
 *
 * Law: the block whose span holds the minute.
 * @param blocks The plan [see Block], any order; of overlapping blocks the first listed answers.
 * @param minute Minute of the day [min], 0 to 1439.
 * @returns The block [see Block], or null when the pump is off then.
 * @throws CoreError when a block or the minute is not on the clock.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example blockAt([{ id: 'night', start: 1320, end: 360, ratio: 0.5 }], 5).ratio // 0.5000
 */
export function blockAt(blocks: readonly Block[], minute: number): Block | null {
  return blocks.find((block) => spanHolds(block, minute)) ?? null;
}

/**
 * How many minutes of the day a plan spends at one speed.
 *
 * Law: sum of the lengths of the blocks at that ratio; for ratio 0 the unplanned minutes count too.
 * @param blocks The plan [see Block], any order, none overlapping.
 * @param ratio Speed over reference speed [-], 0 or more, matched exactly.
 * @returns Minutes [min], 0 to 1440.
 * @throws CoreError when the blocks are not a day, as in segmentsOf.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example minutesAt([{ id: 'night', start: 1320, end: 360, ratio: 0.5 }], 0) // 960.0
 */
export function minutesAt(blocks: readonly Block[], ratio: number): number {
  return segmentsOf(blocks)
    .filter((segment) => segment.ratio === ratio)
    .reduce((sum, segment) => sum + segment.end - segment.start, 0);
}

/** What the usual three-block day is built from. */
export interface ThreeBlockPlan {
  /** Speed ratio of the high block [-], 0 or more. */
  readonly high: number;
  /** Speed ratio of the middle block [-], 0 or more. */
  readonly middle: number;
  /** Speed ratio of the rest of the day [-], 0 or more. */
  readonly low: number;
  /** Length of the high block [min], 120 to 240; 180 unless set. */
  readonly highMinutes?: number;
  /** Length of the middle block [min], 240 to 480; 360 unless set. */
  readonly middleMinutes?: number;
  /** Where the high block starts [min], whole, 0 to 1439; 540 (nine in the morning) unless set. */
  readonly start?: number;
}

/**
 * The usual day of the trade: some hours high, some middle, the rest low.
 *
 * Law: high for 2 to 4 h, then middle for 4 to 8 h, then low until the high block starts again.
 * @param plan The three speeds and two lengths [see ThreeBlockPlan], fields as there.
 * @returns Three blocks [see Block] named high, middle and low that cover the 24 hours.
 * @throws CoreError when a length leaves its range or a minute is not whole.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example usualThreeBlockDay({ high: 0.9, middle: 0.6, low: 0.4 })[2].end // 540.0
 */
export function usualThreeBlockDay(plan: ThreeBlockPlan): readonly Block[] {
  const { highMinutes = 180, middleMinutes = 360, start = 540 } = plan;
  requireBetween('highMinutes', highMinutes, 120, 240, 'min');
  requireBetween('middleMinutes', middleMinutes, 240, 480, 'min');
  const middleStart = (start + highMinutes) % minutesPerDay;
  const lowStart = (middleStart + middleMinutes) % minutesPerDay;
  const blocks = [
    { id: 'high', start, end: middleStart, ratio: plan.high },
    { id: 'middle', start: middleStart, end: lowStart, ratio: plan.middle },
    { id: 'low', start: lowStart, end: start, ratio: plan.low },
  ];
  blocks.forEach(requireBlock);
  return blocks;
}

/** What a one-speed day is built from. */
export interface OneSpeedPlan {
  /** Speed ratio [-], 0 or more. */
  readonly ratio: number;
  /** How long the pump runs [min], whole, 0 to 1440. */
  readonly minutes: number;
  /** When it starts [min], whole, 0 to 1439; 480 (eight in the morning) unless set. */
  readonly start?: number;
}

/**
 * A day with one block at one speed.
 *
 * Law: one block from start for so many minutes, off for the rest.
 * @param plan Speed, length and start [see OneSpeedPlan], fields as there.
 * @returns One block [see Block], or none when minutes is 0.
 * @throws CoreError when minutes leaves 0 to 1440, or a minute is not whole.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example oneSpeedDay({ ratio: 1, minutes: 480 })[0].end // 960.0
 */
export function oneSpeedDay(plan: OneSpeedPlan): readonly Block[] {
  const { ratio, minutes, start = 480 } = plan;
  requireBetween('minutes', minutes, 0, minutesPerDay, 'min');
  if (minutes === 0) return [];
  const block = { id: 'run', start, end: (start + minutes) % minutesPerDay, ratio };
  requireBlock(block);
  return [block];
}
