import { type ReadonlySignal, type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { keptUnits } from '#pad/store/keptUnits.ts';
import { drawAgain, learning, markPassed, recallLearning } from '#pad/store/learning.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { QuantityField } from '#ui/controls/TextFields.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { type UnitChoice, us } from '#units/choice.ts';
import { format, symbolFor } from '#units/format.ts';
import { type Quantity, quantitySpec } from '#units/quantities.ts';
import {
  type ChoiceQuestion,
  drawFrom,
  judge,
  type NumberQuestion,
  type Question,
  type QuestionBank,
} from './question.ts';

export interface CheckProps {
  /** Unique in the course: progress hangs on it. */
  readonly id: string;
  readonly of: string;
  /** File the question stands in, fetched when other numbers are asked for. */
  readonly bank: string;
  /** The first draw in US units, made when the page was built. */
  readonly first: Question;
}

const fetchBank = import.meta.glob<QuestionBank>('./questions/*.ts', { import: 'bank' });

/** What stands there, and the units it is written in. */
interface Shown {
  readonly question: Question;
  readonly units: UnitChoice;
  readonly draw: number;
}

/** The question at the draw the reader stands at; it keeps the one before until the next has come. */
function useQuestion({ id, of, bank, first }: CheckProps): ReadonlySignal<Shown> {
  const shown = useSignal<Shown>({ question: first, units: us, draw: 1 });
  const wanted = useComputed(() => learning.value.draws[id] ?? 1);
  useEffect(() => {
    recallLearning();
    const units = keptUnits() ?? us;
    return wanted.subscribe((draw) => {
      if (draw === shown.peek().draw && units === shown.peek().units) return;
      void fetchBank[`./questions/${bank}.ts`]?.().then(
        (makers) => {
          const question = makers[of]?.(drawFrom(draw), units);
          if (question !== undefined && draw === wanted.peek()) {
            shown.value = { question, units, draw };
          }
        },
        () => {
          // Out of reach: the question that stands there is as good.
        },
      );
    });
  }, []);
  return shown;
}

interface Verdict {
  readonly right: boolean;
  readonly says: string;
}

/** A self-check: fresh numbers on demand, and an answer to every answer. */
function Check(props: CheckProps): JSX.Element {
  const { id, of } = props;
  const { question, units, draw } = useQuestion(props).value;
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
        <NumberAnswer
          key={`${draw}-${units.preset}`}
          id={id}
          question={question}
          units={units}
          tell={tell}
        />
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

export default guarded(Check);

interface AnswerProps<T> {
  readonly id: string;
  readonly question: T;
  readonly tell: (verdict: Verdict) => void;
}

function NumberAnswer({
  id,
  question,
  units,
  tell,
}: AnswerProps<NumberQuestion> & { readonly units: UnitChoice }): JSX.Element {
  const given: Signal<number | undefined> = useSignal(undefined);
  const { quantity } = question;
  const entry = useMemo(
    () => (quantity === null ? plainEntry('answer') : quantityEntry(quantity, units)),
    [quantity],
  );
  const unit = quantity === null ? question.unit : symbolFor(units, quantity);
  const submit = (event: Event) => {
    event.preventDefault();
    tell(
      given.value === undefined
        ? {
            right: false,
            says: `Give a number first${example(quantity, units)}.`,
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
        {...(unit !== undefined && { unit })}
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

function example(quantity: Quantity | null, units: UnitChoice): string {
  return quantity === null
    ? ''
    : `, such as ${format(quantity, quantitySpec(quantity).usual, units)}`;
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
