import { machineTerms } from './glossary/machine.ts';
import { poolTerms } from './glossary/pool.ts';
import type { Term } from './glossary/term.ts';
import { waterTerms } from './glossary/water.ts';

export type { Term };

/** Every term of the trade that lessons and forms use, in alphabetical order. */
export const glossary: readonly Term[] = [...waterTerms, ...machineTerms, ...poolTerms].sort(
  (a, b) => a.term.localeCompare(b.term, 'en'),
);

/** Name of a term's place on the glossary page. */
export function termAnchor({ term }: Term): string {
  return term
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** Page the terms stand on. */
export const glossaryPath = '/reference/glossary/';

/** Spellings that lead to a term. */
export function formsOf({ term, forms }: Term): readonly string[] {
  return forms ?? [term.toLowerCase()];
}
