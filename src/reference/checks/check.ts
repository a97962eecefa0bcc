/** Runs cases through the core. */
import { basename } from 'node:path';
import { type ReferenceCase, readCaseFile } from './caseFile.ts';
import { compare, type Verdict } from './compare.ts';
import { answers, NotInGrammar } from './grammar.ts';
import { table } from './table/index.ts';

export type Outcome =
  | { readonly kind: 'passed' | 'failed'; readonly verdicts: readonly Verdict[] }
  /** The core threw: a miss, with its message. */
  | { readonly kind: 'broke'; readonly message: string }
  | { readonly kind: 'skipped'; readonly reason: string };

export interface Result {
  readonly file: string;
  /** Undefined where the file or the case breaks the schema. */
  readonly case?: ReferenceCase;
  readonly outcome: Outcome;
}

/** One case of the file called so, without its ending. */
export function checkCase(file: string, each: ReferenceCase): Outcome {
  try {
    const verdicts = answers(table, file, each).map(([key, value]) =>
      compare(key, each.expected[key] ?? null, value, each.tolerance),
    );
    return { kind: verdicts.every(({ agrees }) => agrees) ? 'passed' : 'failed', verdicts };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return error instanceof NotInGrammar
      ? { kind: 'skipped', reason: message }
      : { kind: 'broke', message };
  }
}

/** The cases of a file's text; its name, not its folder, chooses the rows. */
export function checkText(file: string, text: string): readonly Result[] {
  const content = readCaseFile(text);
  const skipped = (reason: string): Result => ({ file, outcome: { kind: 'skipped', reason } });
  if (typeof content === 'string') return [skipped(content)];
  return content.cases.map((each) =>
    typeof each === 'string'
      ? skipped(each)
      : { file, case: each, outcome: checkCase(basename(file, '.json'), each) },
  );
}
