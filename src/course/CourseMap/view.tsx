import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { learning, recallLearning } from '#pad/store/learning.ts';
import { guarded } from '#ui/loading/Guard.tsx';
import { type CourseLesson, type CourseUnit, lessonsOf } from './course.ts';
import { rowsOf, type Trunk, trunksOf } from './lines.ts';
import { type CourseMapModel, createModel } from './model.ts';
import { comesAfter, progressText, summary } from './text.ts';

interface CourseMapProps {
  readonly units: readonly CourseUnit[];
}

/** The lessons in order, what rests on what, and what of it is done. */
function CourseMap({ units }: CourseMapProps): JSX.Element {
  const model = useMemo(() => createModel(units, learning), [units]);
  const trunks = useMemo(() => trunksOf(units), [units]);
  // The page as built knows nothing of the reader, and the first render in the browser is the same.
  const isHere = useSignal(false);
  useEffect(() => {
    recallLearning();
    isHere.value = true;
  }, []);
  const lanes = 1 + Math.max(-1, ...trunks.map(({ lane }) => lane));
  return (
    <div class="course-map">
      <Standing model={model} isHere={isHere.value} lessons={lessonsOf(units).length} />
      <div class="course" style={{ '--lanes': lanes }}>
        {units.map((unit) => (
          <Unit key={unit.id} unit={unit} units={units} model={model} isHere={isHere.value} />
        ))}
        {trunks.map((trunk) => (
          <Line key={trunk.from} trunk={trunk} />
        ))}
      </div>
    </div>
  );
}

export default guarded(CourseMap);

interface StandingProps {
  readonly model: CourseMapModel;
  readonly isHere: boolean;
  readonly lessons: number;
}

function Standing({ model, isHere, lessons }: StandingProps): JSX.Element {
  const said = useRef<HTMLParagraphElement>(null);
  const next = isHere && model.passed.value > 0 ? model.next.value : undefined;
  const forget = () => {
    model.clear();
    said.current?.focus();
  };
  return (
    <div class="course-standing needs-script">
      <p role="status" tabIndex={-1} ref={said}>
        {isHere ? summary(model, lessons) : ''}
        {next !== undefined && (
          <>
            {' Next: '}
            <a href={next.href}>{next.title}</a>.
          </>
        )}
      </p>
      {isHere && model.hasAny.value && <Forget model={model} forget={forget} />}
    </div>
  );
}

function Forget({
  model,
  forget,
}: {
  readonly model: CourseMapModel;
  readonly forget: () => void;
}): JSX.Element {
  const keep = useRef<HTMLButtonElement>(null);
  const { asking } = model;
  useEffect(() => {
    if (asking.value) keep.current?.focus();
  }, [asking.value]);
  if (!asking.value) {
    return (
      <button
        type="button"
        class="button button-quiet"
        onClick={() => {
          asking.value = true;
        }}
      >
        Clear my progress
      </button>
    );
  }
  return (
    <fieldset class="course-forget">
      <legend>
        Forget every guess and every self-check on this device? They cannot be brought back.
      </legend>
      <button type="button" class="button button-quiet" onClick={forget}>
        Forget them
      </button>
      <button
        type="button"
        class="button"
        ref={keep}
        onClick={() => {
          asking.value = false;
        }}
      >
        Keep them
      </button>
    </fieldset>
  );
}

interface UnitProps {
  readonly unit: CourseUnit;
  readonly units: readonly CourseUnit[];
  readonly model: CourseMapModel;
  readonly isHere: boolean;
}

function Unit({ unit, units, model, isHere }: UnitProps): JSX.Element {
  const { id, name, lessons } = unit;
  // Placed by number, for the lines lie in the same rows.
  const heading = (rowsOf(units).get(lessons[0]?.id ?? '') ?? 2) - 1;
  return (
    <section
      class="course-unit"
      aria-labelledby={`unit-${id}`}
      style={{ gridRow: `${heading} / span ${lessons.length + 1}` }}
    >
      <h2 id={`unit-${id}`}>{name}</h2>
      <ol role="list" style={{ gridRow: `span ${lessons.length}` }}>
        {lessons.map((lesson) => (
          <Entry key={lesson.id} lesson={lesson} units={units} model={model} isHere={isHere} />
        ))}
      </ol>
    </section>
  );
}

interface EntryProps {
  readonly lesson: CourseLesson;
  readonly units: readonly CourseUnit[];
  readonly model: CourseMapModel;
  readonly isHere: boolean;
}

function Entry({ lesson, units, model, isHere }: EntryProps): JSX.Element {
  const hasBegun = isHere && model.passed.value > 0;
  const progress = hasBegun ? model.progress.value.get(lesson.id) : undefined;
  const words = progress === undefined ? '' : progressText(progress);
  return (
    <li class="course-entry" data-stage={progress?.stage}>
      <span class="course-number" aria-hidden="true">
        {progress?.stage === 'done' ? '✓' : lesson.number}
      </span>
      <a href={lesson.href}>{lesson.title}</a>
      <p>{lesson.question}</p>
      <p class="course-about">
        {`About ${lesson.minutes} minutes, ${comesAfter(lesson, units)}.`}
        {words !== '' && <strong>{` ${words}`}</strong>}
      </p>
    </li>
  );
}

/** For the eye only; the words beside each lesson say the same. */
function Line({ trunk }: { readonly trunk: Trunk }): JSX.Element {
  const { top, bottom, branches, lane } = trunk;
  return (
    <>
      <span
        class="course-trunk"
        aria-hidden="true"
        style={{ gridRow: `${top} / ${bottom}`, '--lane': lane }}
      />
      {[top, ...branches].map((row) => (
        <span
          key={row}
          class={row === top ? 'course-branch' : 'course-branch course-arrow'}
          aria-hidden="true"
          style={{ gridRow: `${row}`, '--lane': lane }}
        />
      ))}
    </>
  );
}
