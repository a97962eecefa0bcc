import { readdirSync, readFileSync } from 'node:fs';
import { type ReferenceCase, readCaseFile } from '#reference/checks/caseFile.ts';

const folder = new URL('cases/', import.meta.url);

/** The text of each file of the own set, by its name without ending. */
export const ownTexts: ReadonlyMap<string, string> = new Map(
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => [name.slice(0, -5), readFileSync(new URL(name, folder), 'utf8')]),
);

/** Every case of the own set with the name of its file. */
export const ownCases: readonly (readonly [file: string, each: ReferenceCase])[] = [
  ...ownTexts,
].flatMap(([file, text]) => {
  const content = readCaseFile(text);
  if (typeof content === 'string') throw new Error(`${file}: ${content}`);
  return content.cases.map((each) => {
    if (typeof each === 'string') throw new Error(`${file}: ${each}`);
    return [file, each] as const;
  });
});
