/** What a run prints. */
import type { Outcome, Result } from '#reference/checks/check.ts';

const json = (value: unknown): string => JSON.stringify(value);

function outcomeLines(outcome: Outcome): readonly string[] {
  switch (outcome.kind) {
    case 'broke':
      return [`  got        an error: ${outcome.message}`];
    case 'skipped':
      return [`  because    ${outcome.reason}`];
    default:
      return outcome.verdicts.map(
        ({ key, got, agrees }) => `  got        ${key} ${json(got)}${agrees ? '' : '   <- misses'}`,
      );
  }
}

function block({ file, case: each, outcome }: Result): readonly string[] {
  const title = outcome.kind === 'skipped' ? 'SKIPPED' : 'MISS';
  if (each === undefined) return [`${title}  ${file}`, ...outcomeLines(outcome), ''];
  return [
    `${title}  ${file} · ${each.what}`,
    `  inputs     ${json(each.inputs)}`,
    `  expected   ${json(each.expected)}`,
    `  tolerance  ${json(each.tolerance)}`,
    `  source     ${each.source}`,
    ...outcomeLines(outcome),
    '',
  ];
}

/** Every case that did not pass, and the count as the closing line. */
export function report(results: readonly Result[]) {
  const count = (...kinds: readonly Outcome['kind'][]) =>
    results.filter(({ outcome }) => kinds.includes(outcome.kind)).length;
  const [passed, failed, skipped] = [count('passed'), count('failed', 'broke'), count('skipped')];
  const others = results.filter(({ outcome }) => outcome.kind !== 'passed');
  const closing = `${passed} passed, ${failed} failed, ${skipped} skipped`;
  return { passed, failed, skipped, lines: [...others.flatMap(block), closing] };
}
