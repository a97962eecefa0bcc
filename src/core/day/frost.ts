/** Frost laid over a plan: water that moves freezes later than water that stands. */

import { requireNotNegative } from '#core/base/errors.ts';
import { complementOf, intersectionOf, type Span, unionOf } from '#core/time/spans.ts';
import type { Block } from './day.ts';
import { segmentsOf } from './day.ts';

/**
 * A plan of blocks with frost laid over it: where frost calls for water, the pump turns at least so fast.
 *
 * Law: minute by minute the greater of the planned ratio and, in frost, the frost ratio.
 * @param blocks The plan [see Block], none overlapping.
 * @param frost Hours of frost [see Span], may overlap.
 * @param ratio Speed over reference speed that frost calls for [-], 0 or more.
 * @returns Blocks [see Block] that do not cross midnight; an added one has the id "frost-" and its first minute. The plan itself where there is no frost or no speed for it.
 * @throws CoreError when the blocks are not a day, a span is off the clock or the ratio is negative.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example withFrost([{ id: 'a', start: 60, end: 120, ratio: 0.5 }], [{ start: 0, end: 90 }], 0.3).length // 2.000
 */
export function withFrost(
  blocks: readonly Block[],
  frost: readonly Span[],
  ratio: number,
): readonly Block[] {
  requireNotNegative('ratio', ratio, '');
  const cold = unionOf(frost);
  if (cold.length === 0 || ratio === 0) return blocks;
  return segmentsOf(blocks).flatMap((segment): Block[] => {
    const id = (start: number) => segment.blockId ?? `frost-${start}`;
    const pieces = (of: ReturnType<typeof unionOf>, at: number) =>
      intersectionOf([segment], of).map(({ start, end }) => ({
        id: id(start),
        start,
        end,
        ratio: at,
      }));
    if (segment.ratio >= ratio) return pieces([segment], segment.ratio);
    const warm = segment.ratio > 0 ? pieces(complementOf(cold), segment.ratio) : [];
    return [...warm, ...pieces(cold, ratio)];
  });
}
