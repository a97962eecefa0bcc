import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { capstoneSteps } from '#course/CapstoneSteps/steps.ts';
import { drawFrom } from '#course/Check/question.ts';
import { banks, findQuestion } from '#course/Check/questions.ts';
import { lessonValue, shownUnits } from '#course/lesson/values.ts';
import { metric, us } from '#units/choice.ts';
import { formatIn } from '#units/format.ts';
import { printedSums, wrongSums } from './printedSums.ts';

const folder = join(import.meta.dirname, '../../content/lessons');

/** A figure as Value.astro writes it, in its first unit. */
function valueShown(tag: string): string {
  const given = Object.fromEntries(
    [...tag.matchAll(/([\w-]+)=(?:"([^"]*)"|\{(\d+)\})/g)].map(([, key, text, bare]) => [
      key,
      text ?? bare ?? '',
    ]),
  );
  const { of = '', in: units = '', digits, ...rest } = given;
  const found = lessonValue(of, rest);
  if (found.quantity === null) return found.shown;
  const [unit] = shownUnits(found.quantity, units);
  return unit === undefined
    ? ''
    : formatIn(
        found.quantity,
        found.value,
        unit,
        digits === undefined ? {} : { digits: Number(digits) },
      );
}

/** The worked examples of a lesson line by line, figures filled in and tags gone. */
function workedLines(file: string): string[] {
  const text = readFileSync(join(folder, file), 'utf8');
  return [...text.matchAll(/<Worked[\s\S]*?<\/Worked>/g)].flatMap(([section]) =>
    section
      .replace(/<Value\b[^>]*\/>/g, valueShown)
      .replace(/<[^>]*>/g, '\n')
      .split('\n')
      .filter((line) => line.trim() !== ''),
  );
}

describe('the reader of sums', () => {
  test('finds a sum, a product of watts and hours, a square and a share', () => {
    expect(printedSums('10 h × 94.0 W = 0.94 kWh')).toHaveLength(1);
    expect(wrongSums('10 h × 94.0 W = 0.94 kWh; 24 ft × (60 gpm / 40 gpm)² = 54.0 ft.')).toEqual(
      [],
    );
    expect(wrongSums('50.9 ft + 6.82 ft + 2.00 ft = 59.7 ft')).toEqual([]);
    expect(wrongSums('3 % × 60 psi = 1.8 psi. 21\u202f600 gal / 18\u202f000 gal = 1.20')).toEqual(
      [],
    );
  });

  test('and one that is off by a digit', () => {
    expect(wrongSums('10 h × 89.9 W = 0.89 kWh')).toHaveLength(1);
    expect(wrongSums('1.65 kW × 7 h = 11.53 kWh')).toHaveLength(1);
  });
});

describe('what is printed adds up as printed', () => {
  const names = Object.values(banks).flatMap((bank) => Object.keys(bank));
  const draws = Array.from({ length: 60 }, (_, at) => at + 1);

  test.each(names)('the working of %s', (name) => {
    const lines = [us, metric].flatMap((units) =>
      draws.flatMap((draw) => [...findQuestion(name).make(drawFrom(draw), units).working]),
    );
    expect([...new Set(lines.flatMap(wrongSums))]).toEqual([]);
  });

  test('most workings print sums at all', () => {
    const silent = names.filter((name) => {
      const question = findQuestion(name).make(drawFrom(1), us);
      return question.kind === 'number' && question.working.flatMap(printedSums).length === 0;
    });
    expect(silent.sort()).toEqual([
      'flowAtLimit',
      'flowForAll',
      'priceOfAnHour',
      'shareAfterTurnovers',
      'velocityOfFlow',
    ]);
  });

  test.each([
    ['US', us],
    ['metric', metric],
  ] as const)('the capstone, %s', (_, units) => {
    const lines = capstoneSteps(units).flatMap(({ working }) => [...working]);
    expect(lines.flatMap(wrongSums)).toEqual([]);
    expect(lines.flatMap(printedSums).length).toBeGreaterThan(10);
  });

  test.each(readdirSync(folder))('the worked examples of %s', (file) => {
    expect(workedLines(file).flatMap(wrongSums)).toEqual([]);
  });
});
