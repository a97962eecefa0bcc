/** The search with few changes takes a second or more, so it runs beside the page and can be called off. */

import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import type { SearchNews } from './searchNews.ts';

/** Starts the search and tells its news; call the result to call it off. */
export function startSearch(
  inputs: CheapestDayInputs,
  tell: (news: SearchNews) => void,
): () => void {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<SearchNews>) => {
    tell(data);
    if (data.kind !== 'progress') worker.terminate();
  };
  worker.onerror = () => {
    tell({ kind: 'failed' });
    worker.terminate();
  };
  worker.postMessage(inputs);
  return () => worker.terminate();
}
