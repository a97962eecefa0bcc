import { type Signal, useComputed, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { drawAgain, learning, markPassed, recallLearning } from '#pad/learning.ts';
import { us } from '#units/choice.ts';
import { format, symbolFor } from '#units/format.ts';
import { quantitySpec } from '#units/quantities.ts';
import { quantityEntry } from '#widgets/kit/quantityEntry.ts';
import { QuantityField } from '#widgets/kit/TextFields.tsx';
import {
  type ChoiceQuestion,
  drawFrom,
  judge,
  type NumberQuestion,
  type Question,
} from './question.ts';
import { type QuestionName, questions } from './questions.ts';

export interface CheckProps {
  /** Unique in the course: progress hangs on it. */
  readonly id: string;
  readonly of: QuestionName;
}

interface Verdict {
  readonly right: boolean;
  readonly says: string;
}

/** A self-check: fresh numbers on demand, and an answer to every answer. */
export default function Check({ id, of }: CheckProps): JSX.Element {
  useEffect(recallLearning, []);
  const drawNumber = useComputed(() => learning.value.draws[id] ?? 1);
  const question = useMemo<Question>(
    () => questions[of](drawFrom(drawNumber.value), us),
    [of, drawNumber.value],
  );
  const verdict = useSignal<Verdict | undefined>(undefined);
  const tell = (next: Verdict) => {
    verdict.value = next;
    if (next.right) markPassed(id);
  };
  const again = () => {
    verdict.value = undefined;
    drawAgain(id);
  };
  return (
    <section class="check" aria-labelledby={`${id}-prompt`} data-check={of}>
      <p class="check-prompt" id={`${id}-prompt`}>
        {question.prompt}
      </p>
      {question.kind === 'number' ? (
        <NumberAnswer key={drawNumber.value} id={id} question={question} tell={tell} />
      ) : (
        <ChoiceAnswer id={id} question={question} tell={tell} />
      )}
      <p class="check-verdict" role="status" data-right={verdict.value?.right}>
        {verdict.value?.says}
      </p>
      <details class="check-working">
        <summary>Show the working</summary>
        {question.working.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </details>
      {question.kind === 'number' && (
        <p class="needs-script">
          <button type="button" class="button button-quiet" onClick={again}>
            Other numbers
          </button>
        </p>
      )}
    </section>
  );
}

interface AnswerProps<T> {
  readonly id: string;
  readonly question: T;
  readonly tell: (verdict: Verdict) => void;
}

function NumberAnswer({ id, question, tell }: AnswerProps<NumberQuestion>): JSX.Element {
  const given: Signal<number | undefined> = useSignal(undefined);
  const entry = useMemo(() => quantityEntry(question.quantity, us), [question.quantity]);
  const submit = (event: Event) => {
    event.preventDefault();
    tell(
      given.value === undefined
        ? {
            right: false,
            says: `Give a number first, such as ${format(question.quantity, quantitySpec(question.quantity).usual, us)}.`,
          }
        : judge(question, given.value),
    );
  };
  return (
    <form class="check-answer needs-script" onSubmit={submit}>
      <QuantityField
        id={`${id}-answer`}
        label="Your answer"
        value={given}
        entry={entry}
        unit={symbolFor(us, question.quantity)}
        apply={(value) => {
          given.value = value;
        }}
      />
      <button type="submit" class="button">
        Check
      </button>
    </form>
  );
}

function ChoiceAnswer({ id, question, tell }: AnswerProps<ChoiceQuestion>): JSX.Element {
  return (
    <fieldset class="check-options needs-script">
      <legend class="visually-hidden">Your answer</legend>
      {question.options.map((option) => (
        <label key={option.id} class="ask-option">
          <input
            type="radio"
            name={`${id}-answer`}
            value={option.id}
            onChange={() => tell({ right: option.right, says: option.says })}
          />
          <span>{option.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
