import { readdirSync, readFileSync } from 'node:fs';
import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import type { CourseLesson, CourseUnit } from '#course/CourseMap/course.ts';
import { rowsOf, trunksOf } from '#course/CourseMap/lines.ts';
import { createModel } from '#course/CourseMap/model.ts';
import { comesAfter, progressText, summary } from '#course/CourseMap/text.ts';
import { checksIn } from '#course/lesson/checksIn.ts';
import { progressIds } from '#course/lesson/progressIds.ts';
import { clearLearning, type Learning, markPassed } from '#pad/store/learning.ts';

const lesson = (number: number, before: string[], checks = 2): CourseLesson => ({
  id: `l${number}`,
  href: `/lessons/l${number}/`,
  number,
  title: `Lesson ${number}`,
  question: 'Why?',
  minutes: 20,
  before,
  checks: Array.from({ length: checks }, (_, index) => `l${number}-${index + 1}`),
});

const units: CourseUnit[] = [
  { id: 'a', name: 'A', lessons: [lesson(1, []), lesson(2, ['l1']), lesson(3, ['l1', 'l2'])] },
  { id: 'b', name: 'B', lessons: [lesson(4, ['l1']), lesson(5, ['l3', 'l4'])] },
];

const nothing: Learning = { guesses: {}, draws: {}, passed: {} };
const passing = (...checks: string[]): Learning => ({
  ...nothing,
  passed: Object.fromEntries(checks.map((check) => [check, true])),
});
const at = (learning: Learning) => createModel(units, signal(learning));

describe('progress', () => {
  it('a lesson is done when all its self-checks are passed, and not before', () => {
    const half = at(passing('l1-1')).progress.value.get('l1');
    expect(half).toEqual({ stage: 'begun', passed: 1, checks: 2 });
    const whole = at(passing('l1-1', 'l1-2')).progress.value.get('l1');
    expect(whole).toEqual({ stage: 'done', passed: 2, checks: 2 });
  });

  it('a lesson is ready once what it rests on is done', () => {
    const stages = (learning: Learning) =>
      [...at(learning).progress.value.values()].map(({ stage }) => stage);
    expect(stages(nothing)).toEqual(['ready', 'waiting', 'waiting', 'waiting', 'waiting']);
    expect(stages(passing('l1-1', 'l1-2'))).toEqual([
      'done',
      'ready',
      'waiting',
      'ready',
      'waiting',
    ]);
  });

  it('a lesson without self-checks is never done', () => {
    const bare = [{ id: 'a', name: 'A', lessons: [lesson(1, [], 0)] }];
    expect(createModel(bare, signal(nothing)).done.value).toBe(0);
  });

  it('the next lesson is the first that is open and not done', () => {
    expect(at(nothing).next.value?.id).toBe('l1');
    expect(at(passing('l1-1', 'l1-2', 'l4-1', 'l4-2')).next.value?.id).toBe('l2');
    const all = units.flatMap((unit) => unit.lessons.flatMap(({ checks }) => checks));
    expect(at(passing(...all)).next.value).toBeUndefined();
  });

  it('answers to self-checks that are no longer there count for nothing', () => {
    const model = at(passing('gone-1', 'l1-9'));
    expect([model.done.value, model.passed.value]).toEqual([0, 0]);
    expect(model.hasAny.value).toBe(true);
  });

  it('clearing forgets all and stops asking', async () => {
    const { learning } = await import('#pad/store/learning.ts');
    markPassed('l1-1');
    const model = createModel(units, learning);
    model.asking.value = true;
    expect(model.passed.value).toBe(1);
    model.clear();
    expect([model.passed.value, model.asking.value, model.hasAny.value]).toEqual([0, false, false]);
    clearLearning();
  });
});

describe('lines', () => {
  it('each lesson has its row, and each heading too', () => {
    expect([...rowsOf(units)]).toEqual([
      ['l1', 2],
      ['l2', 3],
      ['l3', 4],
      ['l4', 6],
      ['l5', 7],
    ]);
  });

  it('run from a lesson to those that rest on it directly', () => {
    const trunks = trunksOf(units).map(({ from, branches }) => [from, branches]);
    // Lesson 3 names 1 and 2, and 2 rests on 1 already: only 2 leads there.
    expect(new Map(trunks as [string, number[]][])).toEqual(
      new Map([
        ['l1', [3, 6]],
        ['l2', [4]],
        ['l3', [7]],
        ['l4', [7]],
      ]),
    );
  });

  it('never lie on one another', () => {
    const trunks = trunksOf(units);
    for (const a of trunks) {
      for (const b of trunks) {
        if (a === b || a.lane !== b.lane) continue;
        expect(a.bottom <= b.top || b.bottom <= a.top).toBe(true);
      }
    }
  });

  it('of lessons that need none there are none', () => {
    expect(trunksOf([{ id: 'a', name: 'A', lessons: [lesson(1, [])] }])).toEqual([]);
  });
});

describe('words', () => {
  it('say what comes before', () => {
    const [first, , third] = units[0]?.lessons ?? [];
    if (!first || !third) throw new Error('no lessons');
    expect(comesAfter(first, units)).toBe('needs no other lesson');
    expect(comesAfter(third, units)).toBe('after 2 Lesson 2');
    const last = units[1]?.lessons[1];
    expect(last && comesAfter(last, units)).toBe('after 3 Lesson 3 and 4 Lesson 4');
  });

  it('say how far the reader has come', () => {
    expect(progressText({ stage: 'ready', passed: 0, checks: 5 })).toBe('');
    expect(progressText({ stage: 'begun', passed: 2, checks: 5 })).toBe('2 of 5 self-checks');
    expect(progressText({ stage: 'done', passed: 5, checks: 5 })).toBe('done, all 5 self-checks');
    expect(summary(at(nothing), 5)).toContain('are marked here');
    expect(summary(at(passing('l1-1')), 5)).toBe(
      'You have answered one self-check right and done 0 of 5 lessons.',
    );
    expect(summary(at(passing('l1-1', 'l1-2')), 5)).toBe(
      'You have answered 2 self-checks right and done 1 of 5 lessons.',
    );
  });
});

describe('self-checks of the lessons', () => {
  const folder = new URL('../../content/lessons/', import.meta.url);
  const texts = readdirSync(folder)
    .filter((name) => name.endsWith('.mdx'))
    .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));

  it.each(texts)('$name: each is counted, under an id of its own', ({ text }) => {
    const ids = checksIn(text);
    expect(ids.length).toBe(text.match(/<Check\s/g)?.length ?? 0);
    const all = progressIds(text);
    expect(all.length).toBeGreaterThanOrEqual(Math.max(5, ids.length));
    expect(new Set(all).size).toBe(all.length);
  });
});
