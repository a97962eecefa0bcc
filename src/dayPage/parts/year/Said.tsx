import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
// This part is fetched on demand, when what checks a pad is at hand anyway.
import { quantityAt, rangeAt } from '#pad/document/check.ts';
import type { PadYear } from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { QuantityField } from '#ui/controls/TextFields.tsx';
import { symbolFor } from '#units/format.ts';
import { FrostSeries } from './FrostSeries.tsx';
import type { YearModel } from './model.ts';
import { Plans } from './Plans.tsx';
import { shortMonths } from './text.ts';
import { typicalYear } from './typical.ts';

interface PartProps {
  readonly id: string;
  readonly model: YearModel;
}

type NumberKey = {
  [Key in keyof PadYear]: PadYear[Key] extends number | null ? Key : never;
}[keyof PadYear];

/** One number of the year. What it measures, and its bounds, the definition of the pad says. */
interface Said {
  readonly field: NumberKey;
  readonly label: string;
  /** As it stands after "the", for a number without a quantity. */
  readonly name?: string;
  /** Written after a number without a quantity; "money" is the tariff's currency. */
  readonly unit?: string;
  readonly whole?: boolean;
  readonly hint?: string;
}

const conditions: readonly Said[] = [
  {
    field: 'cleaningDays',
    label: 'Days between two cleanings of the filter',
    name: 'number of days',
    unit: 'days',
    hint: 'The filter of the pad loads evenly from clean to due, the first time from 1 January.',
  },
  {
    field: 'frostSpeed',
    label: 'Speed in frost',
    hint: 'Common practice: water must keep moving in frost. Left empty, frost changes nothing.',
  },
  {
    field: 'emission',
    label: 'Greenhouse gas of a kilowatt-hour',
    name: 'mass of gas',
    unit: 'g/kWh',
    hint: 'Your supplier names it.',
  },
];

const purchase: readonly Said[] = [
  { field: 'price', label: 'Price of the pump, fitted', name: 'price', unit: 'money' },
  {
    field: 'oldPower',
    label: 'The one-speed pump before drew',
    name: 'power of the one-speed pump',
  },
  { field: 'interest', label: 'Interest a year', name: 'interest' },
  {
    field: 'lifetime',
    label: 'Years it is to last',
    name: 'number of years',
    unit: 'years',
    whole: true,
  },
];

/** What the reader says of the year; nothing here is needed, and all of it sharpens the answer. */
export function Said({ id, model }: PartProps): JSX.Element {
  const each = (said: Said) => (
    <NumberOfYear key={said.field} id={`${id}-${said.field}`} model={model} said={said} />
  );
  return (
    <div class="year-said needs-script">
      <Plans id={id} model={model} />
      <fieldset class="year-group">
        <legend>Filter, frost and gas</legend>
        {conditions.map(each)}
      </fieldset>
      <Monthly id={id} model={model} />
      <FrostSeries id={`${id}-series`} model={model} />
      <fieldset class="year-group">
        <legend>A pump that is to pay for itself</legend>
        {purchase.map(each)}
        <HoursField id={`${id}-old-hours`} model={model} />
      </fieldset>
    </div>
  );
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

function NumberOfYear({ id, model, said }: PartProps & { readonly said: Said }): JSX.Element {
  const { field, label, name = lower(label), whole = false, hint } = said;
  const [quantity, widest] = useMemo(
    () => [quantityAt(['year', field]), rangeAt(['year', field])],
    [field],
  );
  const speeds = model.day.speeds.value;
  // A speed that the pump cannot take is no speed in frost.
  const range =
    field === 'frostSpeed' && speeds !== null
      ? { least: speeds.least, greatest: speeds.top }
      : widest;
  const value = useComputed(() => model.given.value[field] ?? undefined);
  const entry = useComputed(() =>
    quantity === null
      ? plainEntry(name, range, whole)
      : quantityEntry(quantity, model.units.value, range, name),
  );
  const unit = useComputed(() => {
    if (quantity !== null) return symbolFor(model.units.value, quantity);
    return said.unit === 'money' ? model.currency.value.sign : (said.unit ?? '');
  });
  return (
    <QuantityField
      id={id}
      label={label}
      value={value}
      entry={entry}
      unit={unit}
      {...(hint !== undefined && { hint })}
      apply={(next) => model.set([field], next ?? null, `“${lower(label)}”`)}
    />
  );
}

function HoursField({ id, model }: PartProps): JSX.Element {
  const value = useComputed(() => {
    const { oldMinutes } = model.given.value;
    return oldMinutes === null ? undefined : oldMinutes / 60;
  });
  const entry = useMemo(() => plainEntry('number of hours', { least: 0, greatest: 24 }), []);
  return (
    <QuantityField
      id={id}
      label="It ran each day for"
      value={value}
      entry={entry}
      unit="h"
      apply={(hours) =>
        model.set(
          ['oldMinutes'],
          hours === undefined ? null : Math.round(60 * hours),
          'the hours of the pump before',
        )
      }
    />
  );
}

/** Water temperature and frost month by month. */
function Monthly({ id, model }: PartProps): JSX.Element {
  const { waterTemperatures, frostHours } = model.given.value;
  const whole = [waterTemperatures, frostHours].filter(({ length }) => length === 12).length;
  const fill = () => {
    model.day.store.edit(
      ({ year, ...now }) => ({
        ...now,
        year: {
          ...year,
          ...typicalYear,
          ...(waterTemperatures.length === 12 && { waterTemperatures }),
          ...(frostHours.length === 12 && { frostHours }),
        },
      }),
      'the months of the year',
    );
  };
  const clear = () => {
    model.day.store.edit(
      (now) => ({ ...now, year: { ...now.year, waterTemperatures: [], frostHours: [] } }),
      'clearing the months',
    );
  };
  return (
    <fieldset class="year-group">
      <legend>Water and frost, month by month</legend>
      <p class="field-help">
        Cold water is thicker, and frost calls for hours of its own. The year to begin with is
        invented: put your own months in its place.
      </p>
      {whole > 0 ? (
        <div class="year-months">
          {shortMonths.map((label, index) => (
            <Month key={label} id={`${id}-${index}`} model={model} month={index} label={label} />
          ))}
        </div>
      ) : null}
      {whole < 2 && (
        <button type="button" class="button button-quiet" onClick={fill}>
          {whole === 0 ? 'Begin with an invented year' : 'Invent the months that are missing'}
        </button>
      )}
      {whole > 0 && (
        <button type="button" class="button button-quiet" onClick={clear}>
          Clear the months
        </button>
      )}
    </fieldset>
  );
}

interface MonthProps extends PartProps {
  readonly month: number;
  readonly label: string;
}

function Month({ id, model, month, label }: MonthProps): JSX.Element {
  const temperature = useComputed(() => model.given.value.waterTemperatures[month]);
  const frost = useComputed(() => model.given.value.frostHours[month]);
  const entry = useComputed(() =>
    quantityEntry('temperature', model.units.value, { least: 0, greatest: 45 }, 'temperature'),
  );
  const unit = useComputed(() => symbolFor(model.units.value, 'temperature'));
  const hours = useMemo(() => plainEntry('number of hours', { least: 0, greatest: 744 }), []);
  const put = (path: Path, value: number | undefined, what: string) => {
    if (value !== undefined) model.set(path, value, what);
  };
  return (
    <div class="year-month">
      {temperature.value !== undefined && (
        <QuantityField
          id={`${id}-water`}
          label={`${label}, water`}
          value={temperature}
          entry={entry}
          unit={unit}
          whenEmpty="Give a temperature here."
          apply={(value) => put(['waterTemperatures', month], value, 'the water of a month')}
        />
      )}
      {frost.value !== undefined && (
        <QuantityField
          id={`${id}-frost`}
          label={`${label}, frost`}
          value={frost}
          entry={hours}
          unit="h"
          whenEmpty="Give the hours here; 0 for none."
          apply={(value) => put(['frostHours', month], value, 'the frost of a month')}
        />
      )}
    </div>
  );
}
