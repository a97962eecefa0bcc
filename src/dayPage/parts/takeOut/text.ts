/** The words of the files that are taken along. */

import { segmentOf, type WorkedDay } from '#dayPage/day/figures.ts';
import { rpmText } from '#dayPage/day/text.ts';
import type { PadBlock } from '#pad/document/schema.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';

/** Files are read elsewhere, where a hard or a thin space may show as a box. */
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

export const onlyAPlan =
  'This is only a plan on paper: it sets nothing at the pump. Set the times at the pump itself.';

/** Name and note of a block in a calendar. */
export function blockWords(block: PadBlock, worked: WorkedDay, units: UnitChoice) {
  const segment = segmentOf(worked.report, block.id);
  const figures =
    segment === undefined
      ? []
      : [
          segment.kind === 'noFlow'
            ? 'No flow: too slow to move water.'
            : `Flow ${format('flow', segment.flow, units)}.`,
          `Power ${format('power', segment.power, units)}.`,
        ];
  const reason = block.reason === '' ? [] : [`Reason: ${block.reason}`];
  return {
    summary: plain(`Pool pump ${rpmText(block.speed, units)}`),
    description: [plain(figures.join(' ')), ...reason, onlyAPlan].join('\n'),
  };
}

export const lacks = {
  day: 'The pad does not say enough yet for a day: it needs a pump and its plumbing.',
  year: 'The pad does not say enough yet for a year: it needs pump, pool and prices.',
  calendar: 'There is no block with a speed to put into a calendar.',
} as const;
