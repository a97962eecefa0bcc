import { useSignal } from '@preact/signals';
import type { ComponentChildren, JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { commitGuess, learning, recallLearning } from '#pad/store/learning.ts';
import { guarded } from '#ui/loading/Guard.tsx';

export interface AskOption {
  readonly id: string;
  readonly label: string;
}

export interface AskProps {
  readonly id: string;
  readonly question: string;
  readonly options: readonly AskOption[];
  /** Id of the option that is right. */
  readonly truth: string;
  /** What is so, and why; shown once the reader has committed. */
  readonly children?: ComponentChildren;
}

function verdict(options: readonly AskOption[], guess: string, truth: string): string {
  const words = (id: string) => options.find((option) => option.id === id)?.label ?? id;
  return guess === truth
    ? `You guessed: ${words(guess)}. That is right.`
    : `You guessed: ${words(guess)}. It is: ${words(truth)}.`;
}

/** A question the reader commits to before the picture answers it. */
function Ask({ id, question, options, truth, children }: AskProps): JSX.Element {
  const chosen = useSignal<string | undefined>(undefined);
  useEffect(recallLearning, []);
  const guess = learning.value.guesses[id];
  const commit = (event: Event) => {
    event.preventDefault();
    if (chosen.value !== undefined) commitGuess(id, chosen.value);
  };
  return (
    <section class="ask" aria-labelledby={`${id}-question`}>
      <form onSubmit={commit}>
        <fieldset class="ask-options">
          <legend class="ask-question" id={`${id}-question`}>
            {question}
          </legend>
          {options.map((option) => (
            <label key={option.id} class="ask-option needs-script">
              <input
                type="radio"
                name={id}
                value={option.id}
                checked={(guess ?? chosen.value) === option.id}
                disabled={guess !== undefined}
                onChange={() => {
                  chosen.value = option.id;
                }}
              />
              <span>{option.label}</span>
            </label>
          ))}
        </fieldset>
        {guess === undefined && (
          <p class="needs-script">
            <button type="submit" class="button" disabled={chosen.value === undefined}>
              Lock in my guess
            </button>
          </p>
        )}
      </form>
      <div class="ask-answer" hidden={guess === undefined} aria-live="polite">
        {guess !== undefined && <p class="ask-verdict">{verdict(options, guess, truth)}</p>}
        {children}
      </div>
    </section>
  );
}

export default guarded(Ask);
