/** Priming laid over a plan: each time the pump starts it runs first at a speed of its own. */

import { requireBetween, requireNotNegative } from '#core/base/errors.ts';
import {
  complementOf,
  intersectionOf,
  type Piece,
  ringRuns,
  spanMinutes,
  unionOf,
} from '#core/time/spans.ts';
import { type Block, type Segment, segmentsOf } from './day.ts';

/** How a pump primes. */
export interface Priming {
  /** Speed over reference speed [-], above 0. */
  readonly ratio: number;
  /** How long at each start [min], whole, 0 to 1440. */
  readonly minutes: number;
}

/** A part of the day at one speed, priming or not. */
export interface PrimedSegment extends Segment {
  /** Present where the pump primes in it. */
  readonly isPriming?: true;
}

/**
 * The whole day as sorted segments with priming at every start.
 *
 * Law: a start is a running minute after a minute off, round the clock; its run turns at the priming speed for the priming minutes or to its end, whichever comes first.
 * @param blocks The plan [see Block], none overlapping.
 * @param priming Speed and minutes [see Priming], fields as there; nothing primes when left out.
 * @returns Segments [see PrimedSegment] from minute 0 to 1440 without gap; a priming one keeps the name of the block it starts.
 * @throws CoreError when the blocks are not a day or a field of the priming is out of range.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example primedSegments([{ id: 'a', start: 60, end: 120, ratio: 0.5 }], { ratio: 1, minutes: 5 })[1].end // 65.00
 */
export function primedSegments(
  blocks: readonly Block[],
  priming?: Priming,
): readonly PrimedSegment[] {
  const segments = segmentsOf(blocks);
  if (priming === undefined) return segments;
  const starts = startsOf(segments, priming);
  const rest = complementOf(starts);
  return segments
    .flatMap((segment): PrimedSegment[] => [
      ...intersectionOf([segment], rest).map((piece) => ({ ...segment, ...piece })),
      ...intersectionOf([segment], starts).map((piece) => ({
        ...segment,
        ...piece,
        ratio: priming.ratio,
        isPriming: true as const,
      })),
    ])
    .sort((a, b) => a.start - b.start);
}

/** The minutes in which a plan primes. */
function startsOf(segments: readonly Segment[], { ratio, minutes }: Priming): readonly Piece[] {
  requireNotNegative('priming ratio', ratio, '');
  requireBetween('priming minutes', minutes, 0, 1440, 'min');
  const running = segments.filter((segment) => segment.ratio > 0);
  if (minutes === 0 || ratio === 0) return [];
  const runs = ringRuns(unionOf(running)).filter((run) => spanMinutes(run) < 1440);
  return unionOf(
    runs.map((run) => {
      const length = Math.min(minutes, spanMinutes(run));
      return { start: run.start, end: (run.start + length) % 1440 || 1440 };
    }),
  );
}
