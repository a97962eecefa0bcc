/** What a run prints. */
import type { Awaited } from './awaiting.ts';
import type { Outcome, Result } from './check.ts';

export interface Report {
  readonly lines: readonly string[];
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

const json = (value: unknown): string => JSON.stringify(value);

function heading({ file, case: each }: Result): string {
  return each === undefined ? file : `${file} · ${each.what}`;
}

function contextLines({ case: each }: Result): readonly string[] {
  if (each === undefined) return [];
  return [
    `  inputs     ${json(each.inputs)}`,
    `  expected   ${json(each.expected)}`,
    `  tolerance  ${json(each.tolerance)}`,
    `  source     ${each.source}`,
  ];
}

function outcomeLines(outcome: Outcome): readonly string[] {
  switch (outcome.kind) {
    case 'passed':
      return [];
    case 'failed':
      return outcome.verdicts.map(
        ({ key, got, agrees }) => `  got        ${key} ${json(got)}${agrees ? '' : '   <- misses'}`,
      );
    case 'broke':
      return [`  got        an error: ${outcome.message}`];
    case 'skipped':
      return [`  because    ${outcome.reason}`];
  }
}

function block(result: Result): readonly string[] {
  const title = result.outcome.kind === 'skipped' ? 'NOT UNDERSTOOD' : 'MISS';
  return [
    `${title}  ${heading(result)}`,
    ...contextLines(result),
    ...outcomeLines(result.outcome),
    '',
  ];
}

function awaitedLines(results: readonly Result[], awaited: readonly Awaited[]): readonly string[] {
  return awaited.flatMap(({ quantity, reason }) => {
    const count = results.filter((result) => result.quantity === quantity).length;
    return count === 0 ? [] : [`${count} cases of "${quantity}" wait for ${reason}; not counted.`];
  });
}

/** The report of a run; families awaited are named and left out of the count. */
export function report(results: readonly Result[], awaited: readonly Awaited[] = []): Report {
  const waiting = (result: Result) =>
    result.outcome.kind === 'skipped' &&
    awaited.some(({ quantity }) => quantity === result.quantity);
  const counted = results.filter((result) => !waiting(result));
  const count = (...kinds: readonly Outcome['kind'][]) =>
    counted.filter(({ outcome }) => kinds.includes(outcome.kind)).length;
  const [passed, failed, skipped] = [count('passed'), count('failed', 'broke'), count('skipped')];
  return {
    passed,
    failed,
    skipped,
    lines: [
      ...counted.filter(({ outcome }) => outcome.kind !== 'passed').flatMap(block),
      ...awaitedLines(results.filter(waiting), awaited),
      `${passed} passed, ${failed} failed, ${skipped} skipped`,
    ],
  };
}
