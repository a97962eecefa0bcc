/** `npm run answers -- FILE…`: one line of JSON for each pad file, on standard output. */
import { readFileSync } from 'node:fs';
import { answersTo } from './answers.ts';

function textOf(file: string): string | Error {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error));
  }
}

const files = process.argv.slice(2);
if (files.length === 0) {
  process.stderr.write('Name one or more pad files: npm run answers -- FILE…\n');
  process.exitCode = 2;
}
for (const file of files) {
  const text = textOf(file);
  const answer =
    text instanceof Error
      ? {
          file,
          accepted: false,
          sentence: `This file cannot be read: ${text.message}`,
          problems: [],
        }
      : answersTo(file, text);
  process.stdout.write(`${JSON.stringify(answer)}\n`);
}
