/** A lesson as the map shows it. */
export interface CourseLesson {
  readonly id: string;
  readonly href: string;
  /** Place in the course, from 1. */
  readonly number: number;
  readonly title: string;
  readonly question: string;
  readonly minutes: number;
  /** Lessons that come before, by id. */
  readonly before: readonly string[];
  /** Its self-checks, or the steps of a capstone, by the id that progress hangs on. */
  readonly checks: readonly string[];
}

export interface CourseUnit {
  readonly id: string;
  readonly name: string;
  readonly lessons: readonly CourseLesson[];
}

export const lessonsOf = (units: readonly CourseUnit[]): readonly CourseLesson[] =>
  units.flatMap(({ lessons }) => lessons);
