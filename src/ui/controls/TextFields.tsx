import type { JSX } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { onOneLine } from '#pad/document/oneLine.ts';
import { type Live, read } from '#ui/charts/live.ts';
import { createFieldState, type Entry, type FieldState } from './entry.ts';
import { describedBy, Field } from './Field.tsx';

export interface UnitChoice {
  readonly id: string;
  readonly label: string;
}

interface EntryProps<T> {
  readonly id: string;
  readonly label: string;
  readonly value: Live<T | undefined>;
  readonly entry: Live<Entry<T>>;
  readonly apply: (value: T | undefined) => void;
  readonly hint?: string;
  /** The sentence for an empty field; without it the field may stay empty. */
  readonly whenEmpty?: string;
  /** A problem found elsewhere, shown when the text itself is understood. */
  readonly problem?: Live<string | undefined>;
}

interface QuantityFieldProps extends EntryProps<number> {
  /** The unit written after the number, or the units to choose from. */
  readonly unit?: Live<string>;
  readonly units?: readonly UnitChoice[];
  readonly onUnit?: (unit: string) => void;
}

/** Field memory that lives as long as the component and always calls the newest handlers. */
function useFieldState<T>(props: EntryProps<T>): FieldState {
  const latest = useRef(props);
  latest.current = props;
  return useMemo(
    () =>
      createFieldState<T>({
        value: props.value,
        entry: props.entry,
        apply: (value) => latest.current.apply(value),
        whenEmpty: props.whenEmpty,
      }),
    [props.value, props.entry, props.whenEmpty],
  );
}

interface BoxProps {
  readonly id: string;
  readonly state: FieldState;
  readonly hint?: string | undefined;
  readonly problem: string | undefined;
  readonly kind: 'number' | 'text';
}

function Box({ id, state, hint, problem, kind }: BoxProps): JSX.Element {
  return (
    <input
      id={id}
      class={kind === 'number' ? 'input input-number' : 'input'}
      type="text"
      inputMode={kind === 'number' ? 'decimal' : 'text'}
      autocomplete="off"
      spellcheck={false}
      value={state.text}
      aria-invalid={problem !== undefined}
      aria-describedby={describedBy(id, hint, problem)}
      onInput={(event) => state.type(event.currentTarget.value)}
      onBlur={state.leave}
    />
  );
}

/** A number with its unit, typed as the reader would write it. */
export function QuantityField(props: QuantityFieldProps): JSX.Element {
  const { id, label, hint, unit, units } = props;
  const state = useFieldState(props);
  const problem = state.problem.value ?? read(props.problem);
  return (
    <Field id={id} label={label} hint={hint} problem={problem}>
      <div class="field-row">
        <Box id={id} state={state} hint={hint} problem={problem} kind="number" />
        {units === undefined ? (
          unit !== undefined && <span class="field-unit">{unit}</span>
        ) : (
          <select
            class="input"
            aria-label={`Unit of ${label.toLowerCase()}`}
            value={read(unit)}
            onChange={(event) => props.onUnit?.(event.currentTarget.value)}
          >
            {units.map((choice) => (
              <option key={choice.id} value={choice.id}>
                {choice.label}
              </option>
            ))}
          </select>
        )}
      </div>
    </Field>
  );
}

/** Words, such as the name of a pad or of a part. */
export function TextField(props: Omit<EntryProps<string>, 'entry'> & { max?: number }) {
  const entry = useMemo(() => textEntry(props.max ?? 120), [props.max]);
  const state = useFieldState<string>({ ...props, entry });
  const problem = state.problem.value ?? read(props.problem);
  return (
    <Field id={props.id} label={props.label} hint={props.hint} problem={problem}>
      <Box id={props.id} state={state} hint={props.hint} problem={problem} kind="text" />
    </Field>
  );
}

function textEntry(max: number): Entry<string> {
  return {
    format: (value) => value,
    parse: (text) =>
      text.length <= max
        ? { ok: true, value: onOneLine(text) }
        : { ok: false, problem: `This is ${text.length} letters long; ${max} is the most.` },
  };
}

interface TimeFieldProps {
  readonly id: string;
  readonly label: string;
  /** Minute of the day, 0 to 1439. */
  readonly value: Live<number>;
  readonly apply: (minute: number) => void;
  readonly hint?: string;
  readonly problem?: Live<string | undefined>;
}

/** Minute of the day as a clock field writes it. */
export function clockText(minute: number): string {
  const two = (part: number) => String(part).padStart(2, '0');
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

/** Reads "06:30", or nothing when it is no time of the day. */
export function clockMinute(text: string): number | undefined {
  const match = /^(\d{1,2}):(\d{2})(?::\d{2})?$/.exec(text.trim());
  if (match === null) return undefined;
  const minute = Number(match[1]) * 60 + Number(match[2]);
  return Number(match[2]) < 60 && minute < 1440 ? minute : undefined;
}

/** A time of the day. The browser's own field knows the reader's clock and phone best. */
export function TimeField(props: TimeFieldProps): JSX.Element {
  const problem = read(props.problem);
  return (
    <Field id={props.id} label={props.label} hint={props.hint} problem={problem}>
      <input
        id={props.id}
        class="input"
        type="time"
        step={60}
        value={clockText(read(props.value))}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(props.id, props.hint, problem)}
        onInput={(event) => {
          const minute = clockMinute(event.currentTarget.value);
          if (minute !== undefined) props.apply(minute);
        }}
      />
    </Field>
  );
}
