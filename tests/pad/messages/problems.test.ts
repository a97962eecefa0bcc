import { describe, expect, test } from 'vitest';
import { documentCodes, documentProblemSentence } from '#pad/document/documentProblems.ts';
import { assumption, assumptionCodes, assumptionSentence } from '#pad/messages/assumptions.ts';
import {
  isUnsaid,
  type Problem,
  problem,
  problemCodes,
  problemSentence,
  problemsAt,
} from '#pad/messages/problems.ts';
import { metric, us } from '#units/choice.ts';

// Our own wording: these checks have no outside source.

const space = '\u00a0';
const thin = '\u202f';

/** Stands in for any value, by its name, so that a sentence can be seen whole. */
const anyValues: Readonly<Record<string, string>> = new Proxy(
  {},
  { get: (_, name) => `‹${String(name)}›` },
);

function said(found: Problem): string {
  return problemSentence(found, us);
}

const everySentence = [
  ...documentCodes.map((code) => {
    const document = { code, path: [], values: anyValues };
    return [code, documentProblemSentence(document, us)] as const;
  }),
  ...problemCodes.map((code) => [code, said(problem(code, [], anyValues))] as const),
];

describe('the sentence of a problem', () => {
  const tooLong = {
    code: 'tooLarge',
    path: ['plumbing', 'suction', 0, 'length'],
    values: {
      found: { quantity: 'length', value: 3048 },
      limit: { quantity: 'length', value: 2000 },
    },
  } as const;

  test('speaks in the reader’s unit', () => {
    expect(documentProblemSentence(tooLong, metric)).toBe(
      `3048${space}m is too much; it must be 2000${space}m or less.`,
    );
    expect(documentProblemSentence(tooLong, us)).toBe(
      `10${thin}000${space}ft is too much; it must be 6562${space}ft or less.`,
    );
  });

  test('gives times of day as a clock shows them', () => {
    const overlap = problem('blockOverlap', ['day', 'blocks', 1], {
      start: { minute: 540 },
      end: { minute: 1440 },
    });
    expect(said(overlap)).toBe(
      'This block and another both hold from 09:00 to 00:00; the one listed first keeps ' +
        'them. Move or shorten one.',
    );
  });

  test('every one says what is wrong and what would be right, and is one plain paragraph', () => {
    for (const [code, sentence] of everySentence) {
      expect(sentence, code).toMatch(/^\S.*[.]$/s);
      expect(sentence, code).not.toMatch(/undefined|NaN|\[object|\n/);
      expect(sentence.length, code).toBeLessThan(200);
    }
  });

  test('the wording of each stays as it is', () => {
    expect(Object.fromEntries(everySentence)).toMatchSnapshot();
  });
});

describe('problems of a field', () => {
  test('are those of the field and of everything inside it, and no others', () => {
    const inside = problem('curveHalf', ['pump', 'knowledge', 'points', 1, 'head']);
    const other = problem('curveHalf', ['pump', 'knowledge', 'points', 11, 'head']);
    expect(problemsAt([inside, other], ['pump', 'knowledge', 'points', 1])).toEqual([inside]);
    expect(problemsAt([inside, other], ['pump'])).toEqual([inside, other]);
    expect(problemsAt([inside], ['pump', 'name'])).toEqual([]);
  });

  test('what is merely not typed yet is told apart from what is wrong', () => {
    expect(isUnsaid({ code: 'partLength' })).toBe(true);
    expect(isUnsaid({ code: 'curveRises' })).toBe(false);
  });
});

describe('the sentence of an assumption', () => {
  test('speaks in the reader’s unit', () => {
    const water = assumption('waterTemperature', { value: { quantity: 'temperature', value: 25 } });
    expect(assumptionSentence(water, metric)).toBe(`The water is taken to be at 25.0${space}°C.`);
    expect(assumptionSentence(water, us)).toBe(`The water is taken to be at 77.0${space}°F.`);
  });

  test('the wording of each stays as it is', () => {
    const all = Object.fromEntries(
      assumptionCodes.map((code) => [code, assumptionSentence(assumption(code, anyValues), us)]),
    );
    expect(all).toMatchSnapshot();
  });
});
