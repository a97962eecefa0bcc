import { expect, it } from 'vitest';
import { lesson } from '../../src/content.config.ts';

const good = {
  title: 'Velocity and bore',
  unit: 'water-in-pipes',
  order: 1,
  minutes: 20,
  objectives: ['Work out a velocity.'],
  question: 'How much water may a pipe carry?',
  summary: 'Flow is what the pool gets; velocity is what the pipe feels.',
  sources: ['astm-d1785'],
};

it('a lesson with every field filled is taken', () => {
  expect(problemsOf({})).toEqual([]);
});

const refused: [string, object, string][] = [
  ['an unknown unit', { unit: 'attic' }, 'Lesson front matter: "unit" has "attic"; known are '],
  ['an unknown source', { sources: ['x'] }, 'Lesson front matter: "sources" has "x"; known are '],
  [
    'an unknown caution',
    { cautions: ['x'] },
    'Lesson front matter: "cautions" has "x"; known are ',
  ],
  ['no source', { sources: [] }, 'Lesson front matter: "sources" needs at least one.'],
  ['no objective', { objectives: [] }, 'Lesson front matter: "objectives" needs at least one.'],
  ['a blank title', { title: ' ' }, 'Lesson front matter: "title" is empty.'],
  ['a missing title', { title: undefined }, 'Lesson front matter: "title" must be text.'],
  [
    'half a minute',
    { minutes: 0.5 },
    'Lesson front matter: "minutes" must be a whole number from 1 to 90.',
  ],
  ['a field nobody knows', { colour: 'red' }, 'Lesson front matter: no field is called colour.'],
];

for (const [what, change, sentence] of refused) {
  it(`${what} is refused in plain words`, () => {
    const [problem] = problemsOf(change);
    expect(problem?.startsWith(sentence)).toBe(true);
  });
}

function problemsOf(change: object): string[] {
  const result = lesson.safeParse({ ...good, ...change });
  return result.success ? [] : result.error.issues.map(({ message }) => message);
}
