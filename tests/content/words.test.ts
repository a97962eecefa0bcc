import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { capstoneSteps } from '#course/CapstoneSteps/steps.ts';
import { drawFrom } from '#course/Check/question.ts';
import { banks, findQuestion } from '#course/Check/questions.ts';
import { metric, us } from '#units/choice.ts';

/** Old-book English that a learner trips on; our own choice, no source. */
const bookish =
  /\b(?:reckon\w*|dear(?:er|est)?|flat out|told (?:as|by)|becomes? of|lets? be|cry out|(?:laid|lay) anew|call off|held? against|most near|one (?:can|cannot|could)|shall|to be had)\b/i;

const folder = join(import.meta.dirname, '../../content/lessons');

const found = (lines: readonly string[]) => lines.filter((line) => bookish.test(line));

test.each(readdirSync(folder))('%s is written in today’s English', (file) => {
  expect(found(readFileSync(join(folder, file), 'utf8').split('\n'))).toEqual([]);
});

test.each(Object.values(banks).flatMap((bank) => Object.keys(bank)))(
  'the self-check %s too',
  (name) => {
    const question = findQuestion(name).make(drawFrom(1), us);
    const says =
      question.kind === 'choice'
        ? question.options.flatMap((option) => [option.label, option.says])
        : question.slips.map((slip) => slip.says);
    expect(found([question.prompt, ...question.working, ...says])).toEqual([]);
  },
);

test('and the steps of the capstone', () => {
  const lines = [us, metric].flatMap((units) =>
    capstoneSteps(units).flatMap(({ prompt, working, slips }) => [
      prompt,
      ...working,
      ...slips.map(({ says }) => says),
    ]),
  );
  expect(found(lines)).toEqual([]);
});
