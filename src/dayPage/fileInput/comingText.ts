import { percentText } from '#dayPage/day/text.ts';
import { type FileKind, problemSentenceOf } from '#pad/formats/fileSentences.ts';
import type { Coming } from './fileIn.ts';

/** Where a file on its way in stands; empty when there is nothing to say. */
export function comingText(coming: Coming, kind: FileKind, hasOther: boolean): string {
  switch (coming.kind) {
    case 'idle':
      return '';
    case 'reading':
      return `Reading “${coming.of.name}”: ${percentText(coming.share)}.`;
    case 'asks':
      return `“${coming.of.name}” can be read in more than one way. Choose below, then read it.`;
    case 'calledOff':
      return `“${coming.of.name}” was not read to its end. ${stays(hasOther)}`.trim();
    case 'refused':
      return `“${coming.of.name}”: ${problemSentenceOf(coming.problem, kind)} ${stays(hasOther)}`.trim();
  }
}

const stays = (hasOther: boolean) => (hasOther ? 'What was loaded before stays.' : '');
