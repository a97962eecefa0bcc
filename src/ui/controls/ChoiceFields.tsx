import type { JSX } from 'preact';
import { type Live, read } from '#ui/charts/live.ts';
import { describedBy, Field } from './Field.tsx';

export interface Choice {
  readonly id: string;
  readonly label: string;
}

interface ChoiceProps {
  readonly id: string;
  readonly label: string;
  readonly choices: readonly Choice[];
  readonly value: Live<string>;
  readonly apply: (id: string) => void;
  readonly hint?: string;
  readonly problem?: Live<string | undefined>;
}

/** One of many, in a list that opens. */
export function SelectField(props: ChoiceProps): JSX.Element {
  const { id, label, hint, choices } = props;
  const problem = read(props.problem);
  const chosen = read(props.value);
  return (
    <Field id={id} label={label} hint={hint} problem={problem}>
      <select
        id={id}
        class="input"
        value={chosen}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(id, hint, problem)}
        onChange={(event) => props.apply(event.currentTarget.value)}
      >
        {choices.map((choice) => (
          <option key={choice.id} value={choice.id} selected={choice.id === chosen}>
            {choice.label}
          </option>
        ))}
      </select>
    </Field>
  );
}

/** One of a few, all in sight. */
export function ChoiceField(props: ChoiceProps): JSX.Element {
  const { id, label, hint, choices } = props;
  const chosen = read(props.value);
  return (
    <fieldset class="field choice" aria-describedby={describedBy(id, hint)}>
      <legend class="field-label">{label}</legend>
      {hint !== undefined && (
        <p class="field-help" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <div class="choice-row">
        {choices.map((choice) => (
          <label key={choice.id} class="choice-item">
            <input
              type="radio"
              name={id}
              id={`${id}-${choice.id}`}
              value={choice.id}
              checked={choice.id === chosen}
              onChange={() => props.apply(choice.id)}
            />
            <span>{choice.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface ToggleProps {
  readonly id: string;
  readonly label: string;
  readonly value: Live<boolean>;
  readonly apply: (on: boolean) => void;
  readonly hint?: string;
}

/** On or off. */
export function ToggleField({ id, label, value, apply, hint }: ToggleProps): JSX.Element {
  return (
    <div class="field toggle">
      <label class="toggle-row">
        <input
          id={id}
          type="checkbox"
          checked={value}
          aria-describedby={describedBy(id, hint)}
          onChange={(event) => apply(event.currentTarget.checked)}
        />
        <span>{label}</span>
      </label>
      {hint !== undefined && (
        <p class="field-help" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
