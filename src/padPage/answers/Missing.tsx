import type { JSX } from 'preact';
import type { Problem } from '#pad/messages/problems.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { Answer } from '#pad/model/missing.ts';
import { stepElement, steps } from '#padPage/form/steps.ts';
import { allAnswers, type Lack, lacks } from './evidenceText.ts';
import type { AnswersModel } from './model.ts';

/** The step of the form that a problem belongs to. */
function stepOf({ path }: Problem) {
  return steps.find(({ parts }) => parts.some(([first]) => first === path[0]));
}

interface MissingProps {
  readonly model: AnswersModel;
  readonly of?: readonly Answer[];
}

/** What each answer still lacks, with the way to where it is typed. */
export function Missing({ model, of = allAnswers }: MissingProps): JSX.Element | null {
  const all = lacks(padModel(model.pad.value).missing, model.units.value, of);
  if (all.length === 0) return null;
  return (
    <ul class="answers-missing" role="list">
      {all.map((lack) => (
        <LackLine
          key={`${lack.problem.path.join('/')} ${lack.problem.code}`}
          lack={lack}
          sayFor={of.length > 1}
        />
      ))}
    </ul>
  );
}

interface LackProps {
  readonly lack: Lack;
  /** Whether to say which answers wait for it. */
  readonly sayFor: boolean;
}

function LackLine({ lack, sayFor }: LackProps): JSX.Element {
  const step = stepOf(lack.problem);
  return (
    <li>
      {sayFor && <span class="answers-waiting">{lack.waiting}: </span>}
      {lack.sentence}{' '}
      {step !== undefined && <a href={`#${stepElement(step.id)}`}>Go to “{step.title}”</a>}
      {lack.problem.path[0] === 'day' && <a href="/day/">Go to the day sheet</a>}
    </li>
  );
}

/** Stands where the answers will be, while the pad says too little for any. */
export function Nothing({ model }: { readonly model: AnswersModel }): JSX.Element {
  return (
    <div class="answers-nothing">
      <p class="answers-nothing-title">The answers will stand here.</p>
      <p>
        The least they need is on the pump’s nameplate: its rated power and its rated speed. From
        those two comes a first, rough answer that says how rough it is.
      </p>
      <p>
        Then take what readings you can, at two or three speeds: the watts that the drive shows and
        the filter gauge are the easy ones. Each makes the answers sharper.
      </p>
      <Missing model={model} of={['running']} />
    </div>
  );
}
