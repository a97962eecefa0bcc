import { type CollectionEntry, getCollection } from 'astro:content';
import { type UnitId, units } from '#content/units.ts';

/** A lesson as the content collection gives it. */
export type Lesson = CollectionEntry<'lessons'>;

/** All lessons in teaching order. */
export async function lessonsInOrder(): Promise<Lesson[]> {
  const lessons = await getCollection('lessons');
  return lessons.sort((a, b) => a.data.order - b.data.order);
}

/** The units that have lessons, each with its lessons in order. */
export async function lessonsByUnit(): Promise<{ id: UnitId; name: string; lessons: Lesson[] }[]> {
  const lessons = await lessonsInOrder();
  return units
    .map(({ id, name }) => ({ id, name, lessons: lessons.filter(({ data }) => data.unit === id) }))
    .filter((unit) => unit.lessons.length > 0);
}

/** Address of a lesson. */
export function lessonPath(lesson: { id: string }): string {
  return `/lessons/${lesson.id}/`;
}
