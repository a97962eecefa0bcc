import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { clearLearning, type Learning } from '#pad/store/learning.ts';
import { type CourseLesson, type CourseUnit, lessonsOf } from './course.ts';

/** How far a reader has come with a lesson. */
export type Stage = 'done' | 'begun' | 'ready' | 'waiting';

export interface Progress {
  readonly stage: Stage;
  /** Self-checks answered right, of how many. */
  readonly passed: number;
  readonly checks: number;
}

export interface CourseMapModel {
  readonly progress: ReadonlySignal<ReadonlyMap<string, Progress>>;
  readonly done: ReadonlySignal<number>;
  readonly passed: ReadonlySignal<number>;
  /** The first lesson not done whose own ground is laid; none when all is done. */
  readonly next: ReadonlySignal<CourseLesson | undefined>;
  /** Whether there is anything to forget. */
  readonly hasAny: ReadonlySignal<boolean>;
  /** Whether the reader is being asked if they mean it. */
  readonly asking: Signal<boolean>;
  clear(): void;
}

const isAnswered = ({ checks }: CourseLesson, passed: Learning['passed']) =>
  checks.length > 0 && checks.every((check) => passed[check] === true);

/** The course, and what of it is done by what this browser remembers. */
export function createModel(
  units: readonly CourseUnit[],
  learning: ReadonlySignal<Learning>,
): CourseMapModel {
  const lessons = lessonsOf(units);
  const asking = signal(false);
  const finished = computed(
    () =>
      new Set(
        lessons.filter((each) => isAnswered(each, learning.value.passed)).map(({ id }) => id),
      ),
  );
  const progressOf = (lesson: CourseLesson): Progress => {
    const passed = lesson.checks.filter((check) => learning.value.passed[check] === true).length;
    const isReady = lesson.before.every((id) => finished.value.has(id));
    const open: Stage = isReady ? 'ready' : 'waiting';
    const stage: Stage = passed > 0 ? 'begun' : open;
    return {
      stage: finished.value.has(lesson.id) ? 'done' : stage,
      passed,
      checks: lesson.checks.length,
    };
  };
  const progress = computed(() => new Map(lessons.map((each) => [each.id, progressOf(each)])));
  return {
    progress,
    done: computed(() => finished.value.size),
    passed: computed(() =>
      [...progress.value.values()].reduce((sum, { passed }) => sum + passed, 0),
    ),
    next: computed(() =>
      lessons.find(
        ({ id, before }) =>
          !finished.value.has(id) && before.every((earlier) => finished.value.has(earlier)),
      ),
    ),
    hasAny: computed(() =>
      Object.values(learning.value).some((answers) => Object.keys(answers).length > 0),
    ),
    asking,
    clear: () => {
      clearLearning();
      asking.value = false;
    },
  };
}
