import { minutesTo1970 } from '#pad/formats/series.ts';
import { type AskedFile, type FileNews, readSeries } from './readSeries.ts';

const tell = (news: FileNews) => self.postMessage(news);

/** News of progress is told no more often than this [ms]. */
const pause = 100;

/** The time zone of this device. */
function ownClock(utcMinute: number): number {
  return minutesTo1970 + utcMinute - new Date(utcMinute * 60_000).getTimezoneOffset();
}

self.onmessage = async ({ data }: MessageEvent<AskedFile>) => {
  let told = 0;
  try {
    for await (const news of readSeries(data, ownClock)) {
      const now = performance.now();
      if (news.kind === 'progress' && now - told < pause) continue;
      told = now;
      tell(news);
    }
  } catch (error) {
    // A file that went away under the reader is the browser's word; anything else is a fault of ours.
    const code = error instanceof DOMException ? 'unreadable' : 'failed';
    tell({ kind: 'refused', problem: { code }, look: null });
  }
};
