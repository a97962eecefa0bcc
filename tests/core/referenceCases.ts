import { readFileSync } from 'node:fs';

/** One case of the shared reference set; its own source stands in the file. */
export interface ReferenceCase {
  readonly what: string;
  readonly inputs: Readonly<Record<string, number | string>>;
  readonly expected: Readonly<Record<string, number>>;
  readonly tolerance: { readonly relative?: number; readonly absolute?: number };
  readonly source: string;
}

/** The cases of one file in tests/reference/cases. */
export function referenceCases(name: string): ReferenceCase[] {
  const file = new URL(`../reference/cases/${name}.json`, import.meta.url);
  return (JSON.parse(readFileSync(file, 'utf8')) as { cases: ReferenceCase[] }).cases;
}

/** How far `got` may lie from `expected` in this case. */
export function allowance(item: ReferenceCase, expected: number): number {
  return item.tolerance.absolute ?? (item.tolerance.relative ?? 0) * Math.abs(expected);
}
