/** A sweep takes longer than one frame, so it is worked out in slices between which the page can breathe. */
import { CoreError } from '#core/errors.ts';
import type { Sweep } from '#core/sweepCheapestDay.ts';

/** Works a sweep out and tells its end, null where the core refuses; call the result to call it off. */
export type RunSweep = (
  steps: Generator<number, Sweep>,
  done: (sweep: Sweep | null) => void,
) => () => void;

/** Longest slice [ms]; a single day may take a little more. */
const slice = 10;

export const inSlices: RunSweep = (steps, done) => {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const go = () => {
    const until = performance.now() + slice;
    do {
      const step = next(steps);
      if (step === null || step.done) {
        done(step === null ? null : (step.value as Sweep));
        return;
      }
    } while (performance.now() < until);
    waiting = setTimeout(go);
  };
  waiting = setTimeout(go);
  return () => clearTimeout(waiting);
};

/** All of it at once, for where no page waits. */
export const atOnce: RunSweep = (steps, done) => {
  for (;;) {
    const step = next(steps);
    if (step === null || step.done) {
      done(step === null ? null : (step.value as Sweep));
      return () => {};
    }
  }
};

/** The next step; null where figures that each are allowed make no sense together. */
function next(steps: Generator<number, Sweep>): IteratorResult<number, Sweep> | null {
  try {
    return steps.next();
  } catch (error) {
    if (error instanceof CoreError) return null;
    throw error;
  }
}
