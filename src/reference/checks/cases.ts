/*
 * The one place of the site that reads the tests: what this page shows is worked out by the very
 * harness that `npm run check:reference` runs, over the very files. It runs while the site is built
 * and nothing of it reaches a browser.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Json, ReferenceCase } from '../../../tests/reference/caseFile.ts';
import { readCaseFile } from '../../../tests/reference/caseFile.ts';
import { compare } from '../../../tests/reference/compare.ts';
import { parseKey } from '../../../tests/reference/keys.ts';
import { type KeyUnit, keyUnits } from '../../../tests/reference/keyUnits.ts';
import { answer } from '../../../tests/reference/rule.ts';
import { families as rules } from '../../../tests/reference/rules/index.ts';
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

interface Spelled {
  readonly words: string;
  readonly unit: string;
}

const condition = /^(.+)_at_(-?\d+)_([cf])$/;

/** A key of a case file in words and unit. */
function spelled(raw: string): Spelled {
  const [, before = raw, degrees, scale = ''] = condition.exec(raw) ?? [];
  const at = degrees === undefined ? '' : ` at ${degrees} ${unitSymbol(scale)}`;
  const unit = parseKey(before)?.unit;
  const tokens = before.split('_');
  for (let from = 1; from < tokens.length; from += 1) {
    const spelling = tokens.slice(from).join('_').toLowerCase();
    const known = keyUnits.get(spelling);
    if (known !== undefined && isSame(known, unit)) {
      return { words: keyWords(tokens.slice(0, from)) + at, unit: unitSymbol(spelling) };
    }
  }
  return { words: keyWords(tokens) + at, unit: '' };
}

/** A difference of temperature is spelled like a temperature. */
function isSame(known: KeyUnit, unit: KeyUnit | undefined): boolean {
  const dimension = unit?.dimension === 'temperatureDifference' ? 'temperature' : unit?.dimension;
  return known.dimension === dimension && known.factor === unit?.factor;
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

function checked(quantity: string, each: ReferenceCase): CheckedCase {
  const { keys, values } = answer(rules, quantity, each);
  return {
    what: each.what,
    given: givenText(each.inputs),
    values: keys.map((key, index) => {
      const { expected, got, agrees } = compare(
        each.expected[key.raw] ?? null,
        values[index] ?? null,
        key,
        each.tolerance,
      );
      const { words, unit } = spelled(key.raw);
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

interface Described {
  readonly source?: { readonly standards?: readonly string[] };
  readonly cases: readonly { readonly provenance?: string }[];
}

function readFamily(file: string): CheckedFamily {
  const text = readFileSync(join(folder, file), 'utf8');
  const content = readCaseFile(text);
  if (typeof content === 'string') throw new Error(`${file}: ${content}`);
  const { source, cases: described } = JSON.parse(text) as Described;
  const bySource = new Map<string, { source: string; fromMemory: boolean; cases: CheckedCase[] }>();
  content.cases.forEach((each, index) => {
    if (typeof each === 'string') throw new Error(`${file}: ${each}`);
    const fromMemory = described[index]?.provenance === 'memory';
    const name = shownSource(each.source);
    const key = `${name} ${fromMemory}`;
    const group = bySource.get(key) ?? { source: name, fromMemory, cases: [] };
    group.cases.push(checked(content.quantity, each));
    bySource.set(key, group);
  });
  return {
    id: file.replace(/\.json$/, ''),
    name: content.quantity.charAt(0).toUpperCase() + content.quantity.slice(1),
    standards: source?.standards ?? [],
    sources: [...bySource.values()],
  };
}

/** Every family of cases, each value worked out anew. */
export const checkedFamilies: readonly CheckedFamily[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort()
  .map(readFamily);

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
