import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { type Live, read } from '#ui/charts/live.ts';
import { createFieldState, type Entry, type FieldState } from './entry.ts';
import { describedBy, Problem } from './Field.tsx';
import { type NumberControl, onDialKey } from './numberControl.ts';

interface RangeFieldProps {
  readonly id: string;
  readonly label: string;
  readonly dial: NumberControl;
  /** How the value is spoken, with what follows from it: "1750 rpm, 51 gallons per minute". */
  readonly spoken: Live<string>;
  /** Lets the number be typed as well. */
  readonly entry?: Live<Entry<number>>;
  readonly unit?: Live<string>;
  readonly hint?: string;
}

/** A slider with minus and plus, and a field to type in: three ways to one number. */
export function RangeField(props: RangeFieldProps): JSX.Element {
  const { id, label, dial, spoken, entry, unit, hint } = props;
  const keys = useMemo(() => onDialKey(dial), [dial]);
  return (
    <div class="field range needs-script">
      <div class="range-head">
        <label class="field-label" for={id}>
          {label}
        </label>
        {entry !== undefined && (
          <NumberBox id={`${id}-number`} label={label} dial={dial} entry={entry} unit={unit} />
        )}
      </div>
      {hint !== undefined && (
        <p class="field-help" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <div class="range-row">
        <StepButton dial={dial} steps={-1} name={`Less ${label.toLowerCase()}`} sign="−" />
        <input
          id={id}
          class="slider"
          type="range"
          min={dial.min}
          max={dial.max}
          step={dial.step}
          value={dial.value}
          aria-valuetext={spoken}
          aria-describedby={describedBy(id, hint)}
          onInput={(event) => dial.apply(event.currentTarget.valueAsNumber)}
          onKeyDown={keys}
        />
        <StepButton dial={dial} steps={1} name={`More ${label.toLowerCase()}`} sign="+" />
      </div>
    </div>
  );
}

function StepButton(props: { dial: NumberControl; steps: number; name: string; sign: string }) {
  return (
    <button
      type="button"
      class="button button-quiet step-button"
      aria-label={props.name}
      onClick={() => props.dial.stepBy(props.steps)}
    >
      <span aria-hidden="true">{props.sign}</span>
    </button>
  );
}

interface NumberBoxProps {
  readonly id: string;
  readonly label: string;
  readonly dial: NumberControl;
  readonly entry: Live<Entry<number>>;
  readonly unit?: Live<string> | undefined;
}

function NumberBox({ id, label, dial, entry, unit }: NumberBoxProps): JSX.Element {
  const state = useMemo(() => dialField(dial, entry), [dial, entry]);
  const problem = state.problem.value;
  return (
    <div class={problem === undefined ? 'range-number' : 'range-number is-wrong'}>
      <input
        id={id}
        class="input input-number"
        type="text"
        inputMode="decimal"
        autocomplete="off"
        aria-label={unit === undefined ? label : `${label}, ${read(unit)}`}
        value={state.text}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(id, undefined, problem)}
        onInput={(event) => state.type(event.currentTarget.value)}
        onBlur={state.leave}
      />
      {unit !== undefined && <span class="field-unit">{unit}</span>}
      <Problem id={id} sentence={problem} />
    </div>
  );
}

/** A typed number outside the dial's range is a problem to tell, not one to mend behind the reader's back. */
export function dialField(dial: NumberControl, entry: Live<Entry<number>>): FieldState {
  const within: Entry<number> = {
    format: (value) => read(entry).format(value),
    parse: (text) => {
      const parsed = read(entry).parse(text);
      if (!parsed.ok || (parsed.value >= dial.min.value && parsed.value <= dial.max.value)) {
        return parsed;
      }
      const { format } = read(entry);
      const low = format(dial.min.value);
      return { ok: false, problem: `Give a number from ${low} to ${format(dial.max.value)}.` };
    },
  };
  return createFieldState<number>({
    value: dial.value,
    changes: dial.changes,
    entry: within,
    apply: (value) => value !== undefined && dial.apply(value),
    whenEmpty: 'Give a number here.',
  });
}
