import { signal } from '@preact/signals';
import * as z from 'zod/mini';

/*
 * What a reader has answered in the lessons. It stays in this browser, apart from the pad: a pad is
 * handed on, answers are not.
 */

const key = 'cubelaw-learning';

const learningSchema = z.object({
  /** Committed predictions by question id: the id of the option chosen. */
  guesses: z.record(z.string(), z.string()),
  /** Which draw of numbers a self-check stands at. */
  draws: z.record(z.string(), z.int().check(z.gte(1))),
  /** Self-checks answered right at least once. */
  passed: z.record(z.string(), z.boolean()),
});

export type Learning = z.infer<typeof learningSchema>;

const nothing: Learning = { guesses: {}, draws: {}, passed: {} };

/** Read it while rendering; write it only through the functions below. */
export const learning = signal<Learning>(nothing);

function stored(): Learning {
  try {
    const found = learningSchema.safeParse(JSON.parse(localStorage.getItem(key) ?? 'null'));
    return found.success ? found.data : nothing;
  } catch {
    return nothing;
  }
}

function keep(next: Learning): void {
  learning.value = next;
  try {
    localStorage.setItem(key, JSON.stringify(next));
  } catch {
    // A browser that keeps nothing still answers for as long as the page is open.
  }
}

/** Brings back what was answered on an earlier visit. Call it after mounting, never while rendering. */
export function recallLearning(): void {
  if (learning.peek() === nothing) learning.value = stored();
}

/** Commits a prediction; it stands until everything is cleared. */
export function commitGuess(question: string, option: string): void {
  const now = learning.peek();
  keep({ ...now, guesses: { ...now.guesses, [question]: option } });
}

/** Moves a self-check on to fresh numbers. */
export function drawAgain(check: string): void {
  const now = learning.peek();
  keep({ ...now, draws: { ...now.draws, [check]: (now.draws[check] ?? 1) + 1 } });
}

/** Notes that a self-check was answered right. */
export function markPassed(check: string): void {
  const now = learning.peek();
  if (now.passed[check] !== true) keep({ ...now, passed: { ...now.passed, [check]: true } });
}

/** Forgets every prediction and answer on this device. */
export function clearLearning(): void {
  keep(nothing);
}
