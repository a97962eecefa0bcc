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

/**
 * What two tabs hold, put together: the first guess on a question stands, a check passed in either is
 * passed, and its numbers are those drawn last.
 */
function together(here: Learning, there: Learning): Learning {
  const checks = [...Object.keys(here.draws), ...Object.keys(there.draws)];
  const draws = checks.map((id) => [id, Math.max(here.draws[id] ?? 1, there.draws[id] ?? 1)]);
  return {
    guesses: { ...here.guesses, ...there.guesses },
    draws: Object.fromEntries(draws) as Record<string, number>,
    passed: { ...here.passed, ...there.passed },
  };
}

function write(next: Learning): void {
  learning.value = next;
  try {
    localStorage.setItem(key, JSON.stringify(next));
  } catch {
    // A browser that keeps nothing still answers for as long as the page is open.
  }
}

/** What this tab and this browser hold together; nothing where another tab has cleared it all. */
function present(): Learning {
  const [here, there] = [learning.peek(), stored()];
  // A browser that keeps nothing says nothing of other tabs either.
  if (there === nothing) return here;
  const isCleared = Object.values(there).every((part) => Object.keys(part).length === 0);
  return isCleared ? nothing : together(here, there);
}

/** Makes a change of what this browser holds now, so that no other tab's answers are written over. */
function keep(change: (now: Learning) => Learning): void {
  write(change(present()));
}

/** Takes over what other tabs have answered meanwhile. */
function catchUp(): void {
  learning.value = present();
}

let isListening = false;

/** Brings back what was answered on an earlier visit, and follows other tabs from then on. Call it after mounting, never while rendering. */
export function recallLearning(): void {
  if (learning.peek() === nothing) learning.value = stored();
  if (isListening) return;
  isListening = true;
  addEventListener('storage', (event) => {
    if (event.key === key || event.key === null) catchUp();
  });
  addEventListener('pageshow', (event) => {
    if (event.persisted) catchUp();
  });
}

/** Commits a prediction; it stands until everything is cleared. */
export function commitGuess(question: string, option: string): void {
  keep((now) => ({ ...now, guesses: { ...now.guesses, [question]: option } }));
}

/** Moves a self-check on to fresh numbers. */
export function drawAgain(check: string): void {
  keep((now) => ({ ...now, draws: { ...now.draws, [check]: (now.draws[check] ?? 1) + 1 } }));
}

/** Notes that a self-check was answered right. */
export function markPassed(check: string): void {
  if (learning.peek().passed[check] === true) return;
  keep((now) => ({ ...now, passed: { ...now.passed, [check]: true } }));
}

/** Forgets every prediction and answer on this device. */
export function clearLearning(): void {
  write(nothing);
}
