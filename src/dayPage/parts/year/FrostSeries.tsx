import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { FileField } from '#dayPage/fileInput/FileField.tsx';
import { noteSentence } from '#pad/formats/fileSentences.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { QuantityField } from '#ui/controls/TextFields.tsx';
import { format, symbolFor } from '#units/format.ts';
import { monthNames } from '#units/monthNames.ts';
import { hardSpace } from '#units/numerals.ts';
import type { YearModel } from './model.ts';

/** Frost hours from a table of air temperatures. */
export function FrostSeries({ id, model }: { id: string; model: YearModel }): JSX.Element {
  const { frost } = model;
  useEffect(() => frost.file.stop, [frost]);
  const entry = useComputed(() =>
    quantityEntry('temperature', model.units.value, { least: -30, greatest: 20 }, 'temperature'),
  );
  const unit = useComputed(() => symbolFor(model.units.value, 'temperature'));
  return (
    <fieldset class="year-group">
      <legend>Frost from a series of temperatures</legend>
      <QuantityField
        id={`${id}-threshold`}
        label="Water must move at and below"
        value={frost.threshold}
        entry={entry}
        unit={unit}
        hint="Temperature of the air; common practice, and not kept in the pad."
        whenEmpty="Give a temperature here."
        apply={(value) => {
          if (value !== undefined) frost.threshold.value = value;
        }}
      />
      <div class="year-file">
        <FileField
          id={`${id}-file`}
          want="temperature"
          label="Air temperatures"
          hint="A table saved as CSV: one row a time, with the temperature of the air. A year of hours is best. It is read on this device and sent nowhere."
          accept=".csv,.txt,text/csv"
          model={frost.file}
        />
      </div>
      <Found model={model} />
    </fieldset>
  );
}

function Found({ model }: { model: YearModel }): JSX.Element | null {
  const { frost } = model;
  const words = useComputed(() => frostText(model));
  const there = frost.file.loaded.value;
  if (there === null) return null;
  const notes = there.result.notes.map((note) => noteSentence(note, 'temperature'));
  return (
    <div class="year-frost">
      <p>{words}</p>
      {notes.length > 0 && (
        <ul>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {!frost.isUsed.value && (
        <button type="button" class="button" onClick={frost.use}>
          Put these frost hours into the year
        </button>
      )}
    </div>
  );
}

/** What the series says of frost, and whether the year goes by it. */
export function frostText(model: Pick<YearModel, 'frost' | 'units' | 'given'>): string {
  const { frost, units } = model;
  const found = frost.found.value;
  if (found === null) return '';
  const at = format('temperature', frost.threshold.value, units.value);
  const cold = found.byMonth.flatMap((hours, index) =>
    hours === null || hours < 0.05 ? [] : [`${monthNames[index]} ${hours.toFixed(0)}${hardSpace}h`],
  );
  const lacking = found.byMonth.flatMap((hours, index) =>
    hours === null ? [monthNames[index] ?? ''] : [],
  );
  const says =
    cold.length === 0
      ? `In ${found.days} days it never was ${at} or less.`
      : `At ${at} or less, in ${found.days} days: ${cold.join(', ')}.`;
  return [says, lackingText(lacking), usedText(model)].filter((text) => text !== '').join(' ');
}

function lackingText(months: readonly string[]): string {
  if (months.length === 0) return '';
  if (months.length === 1) return `${months[0]} has no value and stays as the year has it.`;
  const which = months.length > 4 ? `${months.length} months` : months.join(', ');
  return `${which} have no value and stay as the year has them.`;
}

function usedText({ frost, given }: Pick<YearModel, 'frost' | 'given'>): string {
  if (!frost.isUsed.value) return '';
  const speed =
    given.value.frostSpeed === null ? ' Name a speed in frost above, or they change nothing.' : '';
  return `The year goes by these very hours while this page is open; the pad keeps the sums of the months.${speed}`;
}
