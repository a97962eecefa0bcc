import { searchCheapestDay } from '#core/planner/cheapestDay.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import type { SearchNews } from './searchNews.ts';

const tell = (news: SearchNews) => self.postMessage(news);

/** News is told no more often than this [ms]. */
const pause = 100;

self.onmessage = ({ data }: MessageEvent<CheapestDayInputs>) => {
  try {
    const steps = searchCheapestDay(data);
    let told = 0;
    for (;;) {
      const step = steps.next();
      if (step.done) {
        tell({ kind: 'done', found: step.value });
        return;
      }
      const now = performance.now();
      if (now - told < pause) continue;
      told = now;
      tell({ kind: 'progress', progress: step.value });
    }
  } catch {
    tell({ kind: 'failed' });
  }
};
