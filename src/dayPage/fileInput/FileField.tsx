import type { JSX } from 'preact';
import type { CellUnit, CsvChoice, Wanted } from '#pad/formats/csvLook.ts';
import { SelectField } from '#ui/controls/ChoiceFields.tsx';
import { Field } from '#ui/controls/Field.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { comingText } from './comingText.ts';
import type { FileIn } from './fileIn.ts';

interface FileInProps<Result> {
  readonly id: string;
  readonly want: Wanted;
  readonly label: string;
  readonly hint: string;
  /** File endings to offer first. */
  readonly accept: string;
  readonly model: FileIn<Result>;
}

/** A field for a file, how far it has come, and the columns of a table. */
export function FileField<Result>(props: FileInProps<Result>): JSX.Element {
  const { id, want, label, hint, accept, model } = props;
  const wrong = useComputed(() =>
    model.coming.value.kind === 'refused'
      ? comingText(model.coming.value, want, model.loaded.value !== null)
      : undefined,
  );
  const take = (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (file !== undefined) model.take({ name: file.name, file, isInvented: false });
    // The same file can be taken again once it is mended.
    input.value = '';
  };
  return (
    <>
      <Field id={id} label={label} hint={hint} problem={wrong}>
        <input
          id={id}
          class="file-field"
          type="file"
          accept={accept}
          aria-invalid={wrong.value !== undefined}
          aria-describedby={wrong.value === undefined ? `${id}-hint` : `${id}-error ${id}-hint`}
          onChange={(event) => take(event.currentTarget)}
        />
      </Field>
      <Progress id={id} want={want} model={model} />
      <Columns id={id} want={want} model={model} />
    </>
  );
}

type PartProps<Result> = Pick<FileInProps<Result>, 'id' | 'want' | 'model'>;

function Progress<Result>({ want, model }: PartProps<Result>): JSX.Element {
  const coming = model.coming.value;
  const words = comingText(coming, want, model.loaded.value !== null);
  return (
    <>
      {coming.kind === 'reading' && (
        <div class="file-progress">
          <progress max={1} value={coming.share} aria-label="How much of the file is read" />
          <button type="button" class="button button-quiet form-small" onClick={model.cancel}>
            Stop reading
          </button>
        </div>
      )}
      {/* A number that runs is not spoken; what comes of it is. */}
      <p role="status" class="file-said">
        {coming.kind === 'reading' || coming.kind === 'refused' ? '' : words}
      </p>
    </>
  );
}

const units: Readonly<
  Record<Wanted, readonly { readonly id: CellUnit; readonly label: string }[]>
> = {
  meter: [
    { id: 'kWh', label: 'kWh in the interval' },
    { id: 'Wh', label: 'Wh in the interval' },
    { id: 'kW', label: 'kW, mean of the interval' },
    { id: 'W', label: 'W, mean of the interval' },
  ],
  temperature: [
    { id: 'degC', label: 'degrees Celsius' },
    { id: 'degF', label: 'degrees Fahrenheit' },
  ],
};

const orders = [
  { id: 'ymd', label: 'year, month, day' },
  { id: 'mdy', label: 'month, day, year' },
  { id: 'dmy', label: 'day, month, year' },
];

/** How the table is read; whatever was guessed can be put right. */
function Columns<Result>({ id, want, model }: PartProps<Result>): JSX.Element | null {
  const table = model.table.value;
  if (table === null) return null;
  const { look, choice } = table;
  const isAsked = model.coming.value.kind === 'asks';
  const column = (index: number) => ({ id: String(index), label: look.columns[index] ?? '' });
  const set = (change: Partial<CsvChoice>) => model.choose(change);
  const fields = (
    <div class="file-columns">
      <SelectField
        id={`${id}-time`}
        label="Time stands in"
        choices={look.times.map(column)}
        value={String(choice.time)}
        apply={(text) => set({ time: Number(text) })}
      />
      <SelectField
        id={`${id}-amount`}
        label={want === 'meter' ? 'The amount stands in' : 'The temperature stands in'}
        choices={look.amounts.map(column)}
        value={String(choice.amount)}
        apply={(text) => set({ amount: Number(text) })}
      />
      <SelectField
        id={`${id}-unit`}
        label="It is in"
        choices={units[want]}
        value={choice.unit}
        apply={(text) => set({ unit: text as CellUnit })}
      />
      <SelectField
        id={`${id}-order`}
        label="Dates are written"
        choices={orders}
        value={choice.order}
        apply={(text) => set({ order: text as CsvChoice['order'] })}
      />
      <SelectField
        id={`${id}-decimal`}
        label="Decimal mark"
        choices={[
          { id: '.', label: 'point' },
          { id: ',', label: 'comma' },
        ]}
        value={choice.decimal}
        apply={(text) => set({ decimal: text === ',' ? ',' : '.' })}
      />
      {want === 'meter' && (
        <SelectField
          id={`${id}-at`}
          label="The time is"
          choices={[
            { id: 'start', label: 'the start of the interval' },
            { id: 'end', label: 'the end of the interval' },
          ]}
          value={choice.atEnd ? 'end' : 'start'}
          apply={(text) => set({ atEnd: text === 'end' })}
        />
      )}
    </div>
  );
  if (!isAsked) {
    return (
      <details class="file-read">
        <summary>How the table was read</summary>
        {fields}
      </details>
    );
  }
  return (
    <fieldset class="file-asks">
      <legend>{askText(look.unsure)}</legend>
      {fields}
      <button type="button" class="button" onClick={model.readAsked}>
        Read it this way
      </button>
    </fieldset>
  );
}

const questions = {
  amount: 'which column is meant',
  unit: 'the unit',
  order: 'the order of day and month',
} as const;

/** "This table does not say the unit and the order of day and month." */
function askText(unsure: readonly (keyof typeof questions)[]): string {
  const parts = unsure.map((each) => questions[each]);
  const last = parts.at(-1) ?? '';
  const words = parts.length > 1 ? `${parts.slice(0, -1).join(', ')} and ${last}` : last;
  return `This table does not say ${words}.`;
}
