import type { JsonObject } from './caseFile.ts';
import { checkCase } from './check.ts';

/** What the check says of a case that a test makes up: `passed`, or why not. */
export function checkInvented(
  quantity: string,
  inputs: JsonObject,
  expected: JsonObject,
  { relative = 1e-9, what = 'invented' } = {},
): string {
  const each = { what, inputs, expected, tolerance: { relative }, source: 'invented' };
  const outcome = checkCase(quantity, each);
  if (outcome.kind === 'passed') return 'passed';
  if (outcome.kind === 'skipped') return `skipped: ${outcome.reason}`;
  if (outcome.kind === 'broke') return `broke: ${outcome.message}`;
  return `got ${JSON.stringify(outcome.verdicts.map(({ got }) => got))}`;
}
