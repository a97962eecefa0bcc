import { signal } from '@preact/signals';

/*
 * What a reader has answered in the lessons. It stays in this browser, apart from the pad: a pad is
 * handed on, answers are not.
 */

const key = 'cubelaw-learning';

export interface Learning {
  /** Committed predictions by question id: the id of the option chosen. */
  guesses: Record<string, string>;
  /** Which draw of numbers a self-check stands at, from 1. */
  draws: Record<string, number>;
  /** Self-checks answered right at least once. */
  passed: Record<string, boolean>;
}

const nothing: Learning = { guesses: {}, draws: {}, passed: {} };

/** Read it while rendering; write it only through the functions below. */
export const learning = signal<Learning>(nothing);

function stored(): Learning {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    return isLearning(found) ? found : nothing;
  } catch {
    return nothing;
  }
}

/** Checked by hand: a schema library would weigh more than all else that a lesson loads for this. */
function isLearning(found: unknown): found is Learning {
  if (!isRecord(found)) return false;
  const { guesses, draws, passed } = found;
  return (
    holdsOnly(guesses, (guess) => typeof guess === 'string') &&
    holdsOnly(draws, (draw) => Number.isInteger(draw) && Number(draw) >= 1) &&
    holdsOnly(passed, (pass) => typeof pass === 'boolean')
  );
}

function isRecord(found: unknown): found is Record<string, unknown> {
  return typeof found === 'object' && found !== null && !Array.isArray(found);
}

function holdsOnly(found: unknown, fits: (value: unknown) => boolean): boolean {
  return isRecord(found) && Object.values(found).every(fits);
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
