/** Work cut into short slices, so that the page stays in the hand of its reader. */
import { unlessRefused } from '#pad/model/memo.ts';

/** How long a slice may hold the page [ms]. */
const slice = 12;

/**
 * Takes one step after the other until there is none left, with a pause for the page now and then; a
 * step that the core refuses is the last. Gives a function that calls the rest off.
 */
export function inSlices(steps: Iterator<unknown>): () => void {
  let timer: ReturnType<typeof setTimeout>;
  const go = () => {
    const until = performance.now() + slice;
    while (performance.now() < until) {
      const step = unlessRefused(() => steps.next());
      if (step === null || step.done === true) return;
    }
    timer = setTimeout(go);
  };
  timer = setTimeout(go);
  return () => clearTimeout(timer);
}
