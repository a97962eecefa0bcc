import { type CourseLesson, type CourseUnit, lessonsOf } from './course.ts';
import { directlyBefore } from './lines.ts';
import type { CourseMapModel, Progress } from './model.ts';

const list = (items: readonly string[]): string =>
  items.length < 2
    ? (items[0] ?? '')
    : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;

/** Which lessons come right before, by number and title; those before them go without saying. */
export function comesAfter(lesson: CourseLesson, units: readonly CourseUnit[]): string {
  const lessons = lessonsOf(units);
  const near = directlyBefore(lesson, lessons);
  const before = lessons.filter(({ id }) => near.includes(id));
  if (before.length === 0) return 'needs no other lesson';
  return `after ${list(before.map(({ number, title }) => `${number} ${title}`))}`;
}

/** How far the reader has come with one lesson; nothing before they have begun. */
export function progressText({ stage, passed, checks }: Progress): string {
  if (stage === 'done') return checks === 1 ? 'done' : `done, all ${checks} self-checks`;
  if (stage === 'begun') return `${passed} of ${checks} self-checks`;
  return '';
}

/** How far they have come in all. */
export function summary(model: CourseMapModel, lessons: number): string {
  const [done, passed] = [model.done.value, model.passed.value];
  if (passed === 0) {
    return 'Self-checks that you answer right are marked here; a lesson is done when all of its are.';
  }
  if (done === lessons) return `You have done all ${lessons} lessons.`;
  const checks = passed === 1 ? 'one self-check' : `${passed} self-checks`;
  return `You have answered ${checks} right and done ${done} of ${lessons} lessons.`;
}
