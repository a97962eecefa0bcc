import { type CourseLesson, type CourseUnit, lessonsOf } from './course.ts';

/**
 * The lines of the map: beside the list runs a trunk from each lesson down to the last one that needs
 * it, with a branch to each that does.
 */
export interface Trunk {
  readonly from: string;
  /** Rows of the grid, from 1. */
  readonly top: number;
  readonly bottom: number;
  /** Rows of the lessons that need it. */
  readonly branches: readonly number[];
  /** How far from the list it runs, from 0; trunks that overlap never share one. */
  readonly lane: number;
}

/** The row of the grid each lesson stands in; a unit's heading takes one too. */
export function rowsOf(units: readonly CourseUnit[]): ReadonlyMap<string, number> {
  const rows = new Map<string, number>();
  let row = 0;
  for (const { lessons } of units) {
    row += 1;
    for (const { id } of lessons) {
      row += 1;
      rows.set(id, row);
    }
  }
  return rows;
}

/** Everything that comes before a lesson, near or far. */
function allBefore(id: string, byId: ReadonlyMap<string, CourseLesson>): Set<string> {
  const found = new Set<string>();
  const waiting = [...(byId.get(id)?.before ?? [])];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (found.has(next)) continue;
    found.add(next);
    waiting.push(...(byId.get(next)?.before ?? []));
  }
  return found;
}

/** What a lesson rests on directly: none that another of them rests on already. */
export function directlyBefore(
  { before }: CourseLesson,
  lessons: readonly CourseLesson[],
): readonly string[] {
  const byId = new Map(lessons.map((lesson) => [lesson.id, lesson]));
  const implied = new Set(before.flatMap((id) => [...allBefore(id, byId)]));
  return before.filter((id) => !implied.has(id));
}

/** The lines between lessons, short ones nearest to the list. */
export function trunksOf(units: readonly CourseUnit[]): readonly Trunk[] {
  const lessons = lessonsOf(units);
  const rows = rowsOf(units);
  const spans = lessons.flatMap(({ id }) => {
    const top = rows.get(id) ?? 0;
    const branches = lessons
      .filter((lesson) => directlyBefore(lesson, lessons).includes(id))
      .map((lesson) => rows.get(lesson.id) ?? 0)
      .filter((row) => row > top);
    return branches.length === 0
      ? []
      : [{ from: id, top, bottom: Math.max(...branches), branches }];
  });
  const taken: { top: number; bottom: number }[][] = [];
  return spans
    .sort((a, b) => a.bottom - a.top - (b.bottom - b.top) || a.top - b.top)
    .map((span) => {
      const isFree = (lane: { top: number; bottom: number }[]) =>
        lane.every(({ top, bottom }) => span.bottom <= top || bottom <= span.top);
      const free = taken.findIndex(isFree);
      const lane = free === -1 ? taken.length : free;
      taken[lane] = [...(taken[lane] ?? []), span];
      return { ...span, lane };
    });
}
