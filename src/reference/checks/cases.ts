/**
 * What the page of checks shows: every case of the project's own set, worked out by the code that
 * `npm run check:reference` runs. It runs while the site is built and nothing of it reaches a browser.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Json, type ReferenceCase, readCaseFile } from './caseFile.ts';
import { checkCase } from './check.ts';
import { spelledKey } from './units.ts';
import { keyWords, readable, shownSource, unitSymbol } from './words.ts';

/** One expected value beside ours. */
export interface CheckedValue {
  readonly name: string;
  readonly published: string;
  readonly ours: string;
  /** Of the published value; undefined where it is no number other than 0. */
  readonly share: number | undefined;
  readonly agrees: boolean;
}

export interface CheckedCase {
  readonly what: string;
  readonly given: string;
  readonly values: readonly CheckedValue[];
}

/** Cases of one source. */
export interface CheckedSource {
  readonly source: string;
  /** Whether the text itself could not be seen. */
  readonly fromMemory: boolean;
  readonly cases: readonly CheckedCase[];
}

/** The cases of one file. */
export interface CheckedFamily {
  readonly id: string;
  readonly name: string;
  readonly standards: readonly string[];
  readonly sources: readonly CheckedSource[];
}

const folder = join(process.cwd(), 'tests/reference/cases');
const longestList = 48;

/** A key of a case file in words and unit. */
function spelled(key: string): { readonly words: string; readonly unit: string } {
  const { words, spelling, celsius } = spelledKey(key);
  const at = celsius === undefined ? '' : ` at ${celsius} ${unitSymbol('c')}`;
  // A key that is nothing but a unit is its own name.
  if (words.length === 0) return { words: key, unit: '' };
  return { words: keyWords(words) + at, unit: unitSymbol(spelling) };
}

function valueText(value: Json, unit: string): string {
  if (typeof value === 'number')
    return unit === '' ? readable(value) : `${readable(value)} ${unit}`;
  if (value === null) return 'no such value';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  const text = JSON.stringify(value, (_, each: unknown) =>
    typeof each === 'number' ? Number(each.toPrecision(6)) : each,
  ).replace(/"/g, '');
  return text.length > longestList ? 'as listed in the case file' : text;
}

function givenText(inputs: ReferenceCase['inputs']): string {
  return Object.entries(inputs)
    .map(([key, value]) => {
      const { words, unit } = spelled(key);
      return `${words} = ${valueText(value, unit)}`;
    })
    .join(', ');
}

function shareOf(expected: Json, got: Json): number | undefined {
  if (typeof expected !== 'number' || typeof got !== 'number' || expected === 0) return undefined;
  return Math.abs(got - expected) / Math.abs(expected);
}

function checked(file: string, each: ReferenceCase): CheckedCase {
  const outcome = checkCase(file, each);
  if (!('verdicts' in outcome))
    throw new Error(`${file}: ${each.what}: ${JSON.stringify(outcome)}`);
  return {
    what: each.what,
    given: givenText(each.inputs),
    values: outcome.verdicts.map(({ key, expected, got, agrees }) => {
      const { words, unit } = spelled(key);
      return {
        name: words,
        published: valueText(expected, unit),
        ours: valueText(got, unit),
        share: shareOf(expected, got),
        agrees,
      };
    }),
  };
}

function readFamily(id: string): CheckedFamily {
  const content = readCaseFile(readFileSync(join(folder, `${id}.json`), 'utf8'));
  if (typeof content === 'string') throw new Error(`${id}: ${content}`);
  const { quantity, standards } = content;
  const bySource = new Map<string, { source: string; fromMemory: boolean; cases: CheckedCase[] }>();
  for (const each of content.cases) {
    if (typeof each === 'string') throw new Error(`${id}: ${each}`);
    const fromMemory = each.provenance === 'memory';
    const source = shownSource(each.source);
    const key = `${source} ${fromMemory}`;
    const group = bySource.get(key) ?? { source, fromMemory, cases: [] };
    group.cases.push(checked(id, each));
    bySource.set(key, group);
  }
  const name = quantity.charAt(0).toUpperCase() + quantity.slice(1);
  return { id, name, standards, sources: [...bySource.values()] };
}

/** Every family of cases, each value worked out anew. */
export const checkedFamilies: readonly CheckedFamily[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort()
  .map((name) => readFamily(name.replace(/\.json$/, '')));

/** How many cases a family has, how many values agree, and the largest difference among numbers. */
export function tally({ sources }: CheckedFamily): {
  cases: number;
  values: number;
  agree: number;
  largest: number;
} {
  const cases = sources.flatMap((each) => each.cases);
  const values = cases.flatMap((each) => each.values);
  return {
    cases: cases.length,
    values: values.length,
    agree: values.filter(({ agrees }) => agrees).length,
    largest: Math.max(0, ...values.map(({ share }) => share ?? 0)),
  };
}
