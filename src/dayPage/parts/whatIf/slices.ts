/** What takes longer than one frame is worked out in slices between which the page can breathe. */
import { CoreError } from '#core/base/errors.ts';

/** Takes all steps and tells their end, null where the core refuses; call the result to call it off. */
export type RunSteps = <Result>(
  steps: Generator<unknown, Result>,
  done: (result: Result | null) => void,
) => () => void;

/** Longest slice [ms]; a single day may take a little more. */
const slice = 10;

export const inSlices: RunSteps = (steps, done) => {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const go = () => {
    const until = performance.now() + slice;
    do {
      const step = next(steps);
      if (step === null || step.done) {
        done(step === null ? null : step.value);
        return;
      }
    } while (performance.now() < until);
    waiting = setTimeout(go);
  };
  waiting = setTimeout(go);
  return () => clearTimeout(waiting);
};

/** All of it at once, for where no page waits. */
export const atOnce: RunSteps = (steps, done) => {
  for (;;) {
    const step = next(steps);
    if (step === null || step.done) {
      done(step === null ? null : step.value);
      return () => {};
    }
  }
};

/** The next step; null where figures that each are allowed make no sense together. */
function next<Result>(steps: Generator<unknown, Result>): IteratorResult<unknown, Result> | null {
  try {
    return steps.next();
  } catch (error) {
    if (error instanceof CoreError) return null;
    throw error;
  }
}
