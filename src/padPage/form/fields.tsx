/** The kit's controls, each tied to one spot of the pad. */

import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { type Choice, ChoiceField, SelectField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { QuantityField, TextField, TimeField } from '#ui/controls/TextFields.tsx';
import { useForm } from './form.ts';
import { numberField, type Writing } from './numberField.ts';
import { elementId, type Spot } from './spot.ts';

interface FieldProps {
  readonly at: Spot;
  readonly label: string;
  /** As it stands after "undo": "the length of a pipe"; the label unless given. */
  readonly what?: string;
  readonly hint?: string;
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const named = ({ what, label }: FieldProps): string => what ?? `the ${lower(label)}`;

/** Props that a control may be without are left out, not set to undefined. */
const given = <K extends string, T>(key: K, value: T | undefined) =>
  (value === undefined ? {} : { [key]: value }) as { [Key in K]?: T };

interface NumberProps extends FieldProps {
  readonly writing?: Writing;
}

/** A number of the pad in the reader's unit; empty when it is not known. */
export function NumberField(props: NumberProps): JSX.Element {
  const { at, label, hint, writing = 'measured' } = props;
  const form = useForm();
  const name = lower(label);
  const field = useMemo(
    () => numberField(form, at, name, writing),
    [form, elementId(at), name, writing],
  );
  return (
    <QuantityField
      id={field.id}
      label={label}
      value={field.value}
      entry={field.entry}
      problem={field.problem}
      {...given('hint', hint)}
      {...given('unit', field.unit)}
      apply={(value) => form.set(at, value ?? null, named(props))}
    />
  );
}

/** How many of something; never empty. */
export function CountField(props: FieldProps): JSX.Element {
  const { at, label } = props;
  const form = useForm();
  const field = useMemo(
    () => numberField(form, at, lower(label), 'whole'),
    [form, elementId(at), label],
  );
  return (
    <QuantityField
      id={field.id}
      label={label}
      value={field.value}
      entry={field.entry}
      whenEmpty="Enter how many; 0 leaves them out."
      {...given('hint', props.hint)}
      apply={(value) => value !== undefined && form.set(at, value, named(props))}
    />
  );
}

/** Words of the reader's own. */
export function WordsField(props: FieldProps & { readonly max?: number }): JSX.Element {
  const { at, label, hint, max } = props;
  const form = useForm();
  const field = useMemo(() => form.bound(at, ''), [form, elementId(at)]);
  return (
    <TextField
      id={field.id}
      label={label}
      value={field.value}
      problem={field.problem}
      {...given('hint', hint)}
      {...given('max', max)}
      apply={(value) => form.set(at, value ?? '', named(props))}
    />
  );
}

interface PickProps extends FieldProps {
  readonly choices: readonly Choice[];
  /** The words for having said nothing; without them something must be chosen. */
  readonly unsaid?: string;
  /** The choices stand for whole numbers. */
  readonly whole?: boolean;
}

/** One of many, or nothing said. */
export function PickField(props: PickProps): JSX.Element {
  const { at, label, hint, choices, unsaid, whole = false } = props;
  const form = useForm();
  const field = useMemo(() => form.bound<string | number>(at, ''), [form, elementId(at)]);
  const chosen = useComputed(() => String(field.value.value));
  const stored = (id: string) => (id === '' ? null : whole ? Number(id) : id);
  const all = unsaid === undefined ? choices : [{ id: '', label: unsaid }, ...choices];
  return (
    <SelectField
      id={field.id}
      label={label}
      choices={all}
      value={chosen}
      problem={field.problem}
      {...given('hint', hint)}
      apply={(id) => form.set(at, stored(id), named(props))}
    />
  );
}

/** One of a few, all in sight. */
export function OneOfField(props: Omit<PickProps, 'unsaid' | 'whole'>): JSX.Element {
  const form = useForm();
  const field = useMemo(() => form.bound(props.at, ''), [form, elementId(props.at)]);
  return (
    <ChoiceField
      id={field.id}
      label={props.label}
      choices={props.choices}
      value={field.value}
      {...given('hint', props.hint)}
      apply={(id) => form.set(props.at, id, named(props))}
    />
  );
}

/** A time of the day. */
export function ClockField(props: FieldProps & { apply?: (minute: number) => void }): JSX.Element {
  const form = useForm();
  const field = useMemo(() => form.bound(props.at, 0), [form, elementId(props.at)]);
  return (
    <TimeField
      id={field.id}
      label={props.label}
      value={field.value}
      problem={field.problem}
      {...given('hint', props.hint)}
      apply={props.apply ?? ((minute) => form.set(props.at, minute, named(props)))}
    />
  );
}

/** What nobody has said yet at a spot or inside it. */
export function Findings({ at }: { readonly at: Spot }): JSX.Element | null {
  const form = useForm();
  const notes = useComputed(() => form.notesIn(at).join('\n'));
  if (notes.value === '') return null;
  return (
    <ul class="form-notes">
      {notes.value.split('\n').map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}

/** The sentences of what is wrong with a spot that has no field of its own. */
export function Faults({ at }: { readonly at: Spot }): JSX.Element | null {
  const form = useForm();
  const faults = useComputed(() => form.errorsAt(at).join('\n'));
  if (faults.value === '') return null;
  return (
    <div class="form-faults">
      {faults.value.split('\n').map((sentence) => (
        <p key={sentence} class="field-error">
          <span class="visually-hidden">Error: </span>
          {sentence}
        </p>
      ))}
    </div>
  );
}
