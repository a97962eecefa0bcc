/** Runs the cases of a folder through the core. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { type ReferenceCase, readCaseFile } from './caseFile.ts';
import { compare, type Verdict } from './compare.ts';
import { NotUnderstood } from './given.ts';
import { answer } from './rule.ts';
import { families } from './rules/index.ts';

export type Outcome =
  | { readonly kind: 'passed' }
  | { readonly kind: 'failed'; readonly verdicts: readonly Verdict[] }
  /** The core threw, or a rule broke: a miss, with its message. */
  | { readonly kind: 'broke'; readonly message: string }
  | { readonly kind: 'skipped'; readonly reason: string };

export interface Result {
  readonly file: string;
  readonly quantity: string;
  /** undefined where the file or the case has not the shape of one. */
  readonly case?: ReferenceCase;
  readonly outcome: Outcome;
}

export function checkCase(quantity: string, each: ReferenceCase): Outcome {
  try {
    const { keys, values } = answer(families, quantity, each);
    const verdicts = keys.map((key, index) =>
      compare(each.expected[key.raw] ?? null, values[index] ?? null, key, each.tolerance),
    );
    return verdicts.every(({ agrees }) => agrees)
      ? { kind: 'passed' }
      : { kind: 'failed', verdicts };
  } catch (error) {
    if (error instanceof NotUnderstood) return { kind: 'skipped', reason: error.message };
    return { kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
}

export function checkText(file: string, text: string): readonly Result[] {
  const content = readCaseFile(text);
  if (typeof content === 'string') {
    return [{ file, quantity: '', outcome: { kind: 'skipped', reason: content } }];
  }
  const { quantity, cases } = content;
  return cases.map((each) =>
    typeof each === 'string'
      ? { file, quantity, outcome: { kind: 'skipped', reason: each } as const }
      : { file, quantity, case: each, outcome: checkCase(quantity, each) },
  );
}

/** Every `.json` file under the folder, by name. */
export function checkFolder(folder: string): readonly Result[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.json'))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .flatMap((path) => checkText(relative(folder, path), readFileSync(path, 'utf8')));
}
