/** A large file takes seconds to read, so it is read beside the page and can be called off. */
import type { AskedFile, FileNews } from './readSeries.ts';

export type StartReading = (asked: AskedFile, tell: (news: FileNews) => void) => () => void;

/** Starts the reading and tells its news; call the result to call it off. */
export const startReading: StartReading = (asked, tell) => {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<FileNews>) => {
    tell(data);
    if (data.kind !== 'progress') worker.terminate();
  };
  worker.onerror = () => {
    tell({ kind: 'refused', problem: { code: 'failed' }, look: null });
    worker.terminate();
  };
  worker.postMessage(asked);
  return () => worker.terminate();
};
