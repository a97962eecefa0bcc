import type { Pad } from '#pad/document/schema.ts';
import type { Problem } from '#pad/messages/problems.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { Bench } from './figures.ts';

export interface AssembledBench {
  /** What a day is worked out on, or null while there is no pump to run. */
  readonly bench: Bench | null;
  /** What the day still lacks: without a pump nothing can be told, without the rest a part. */
  readonly missing: readonly Problem[];
  /** What is wrong with the blocks, tied to their fields. */
  readonly blockProblems: readonly Problem[];
  /** Speeds outside the plan that pass a hard stop: no day is safe while there is one. */
  readonly stopProblems: readonly Problem[];
}

const stopCodes: readonly string[] = ['primingTooFast', 'overrideTooFast', 'frostTooFast'];

/** The reader's pad as a bench for days. */
export function benchOf(pad: Pad): AssembledBench {
  const model = padModel(pad);
  const { running, speeds, volume, needs, limits, quiet, tariff, standbyPower, priming } = model;
  const { missing, problems } = model;
  const blockProblems = problems.filter(({ path }) => path[0] === 'day' && path[1] === 'blocks');
  const stopProblems = problems.filter(({ code }) => stopCodes.includes(code));
  const lacks = [...missing.running, ...missing.volume, ...missing.price].filter(isFirst);
  if (running === null || speeds === null)
    return { bench: null, missing: lacks, blockProblems, stopProblems };
  const pointAt = running.runningAt;
  return {
    bench: { speeds, pointAt, volume, needs, limits, quiet, tariff, standbyPower, priming },
    missing: lacks,
    blockProblems,
    stopProblems,
  };
}

function isFirst(problem: Problem, at: number, all: readonly Problem[]): boolean {
  return all.indexOf(problem) === at;
}
