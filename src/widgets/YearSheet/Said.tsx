import { useComputed, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Path } from '#pad/path.ts';
import type { PadYear } from '#pad/schema.ts';
import { symbolFor } from '#units/format.ts';
import { monthNames } from '#units/monthNames.ts';
import type { Quantity } from '#units/quantities.ts';
import { SelectField } from '#widgets/kit/ChoiceFields.tsx';
import { plainEntry } from '#widgets/kit/plainEntry.ts';
import { quantityEntry } from '#widgets/kit/quantityEntry.ts';
import { QuantityField } from '#widgets/kit/TextFields.tsx';
import type { YearModel } from './model.ts';
import { planText, shortMonths } from './text.ts';
import { typicalYear } from './typical.ts';

interface PartProps {
  readonly id: string;
  readonly model: YearModel;
}

/** What the reader says of the year; nothing here is needed, and all of it sharpens the answer. */
export function Said({ id, model }: PartProps): JSX.Element {
  return (
    <div class="year-said needs-script">
      <Plans id={id} model={model} />
      <fieldset class="year-group">
        <legend>Filter, frost and gas</legend>
        <PlainField
          id={`${id}-cleaning`}
          model={model}
          field="cleaningDays"
          label="Days between two cleanings of the filter"
          name="number of days"
          least={1}
          greatest={3660}
          unit="days"
          hint="The filter of the pad loads evenly from clean to due, the first time from 1 January."
        />
        <MeasuredField
          id={`${id}-frost`}
          model={model}
          field="frostSpeed"
          quantity="speed"
          label="Speed in frost"
          least={0}
          greatest={10_000}
          hint="Common practice: water must keep moving in frost. Left empty, frost changes nothing."
        />
        <PlainField
          id={`${id}-emission`}
          model={model}
          field="emission"
          label="Greenhouse gas of a kilowatt-hour"
          name="mass of gas"
          least={0}
          greatest={5000}
          unit="g/kWh"
          hint="Your supplier names it."
        />
      </fieldset>
      <Monthly id={id} model={model} />
      <fieldset class="year-group">
        <legend>A pump that is to pay for itself</legend>
        <PlainField
          id={`${id}-price`}
          model={model}
          field="price"
          label="Price of the pump, fitted"
          name="price"
          least={0}
          greatest={1e6}
          unit={model.currency.value}
        />
        <MeasuredField
          id={`${id}-old-power`}
          model={model}
          field="oldPower"
          quantity="power"
          label="The one-speed pump before drew"
          least={0}
          greatest={20_000}
        />
        <HoursField id={`${id}-old-hours`} model={model} />
        <MeasuredField
          id={`${id}-interest`}
          model={model}
          field="interest"
          quantity="share"
          label="Interest a year"
          least={-0.5}
          greatest={1}
        />
        <PlainField
          id={`${id}-lifetime`}
          model={model}
          field="lifetime"
          label="Years it is to last"
          name="number of years"
          least={1}
          greatest={100}
          unit="years"
        />
      </fieldset>
    </div>
  );
}

/** Day plans by season: the day on the sheet can be kept as one. */
function Plans({ id, model }: PartProps): JSX.Element {
  const month = useSignal('5');
  const day = useSignal('1');
  const { plans } = model.given.value;
  return (
    <fieldset class="year-group">
      <legend>Days by season</legend>
      {plans.length === 0 ? (
        <p class="field-help">The day on your sheet holds all year.</p>
      ) : (
        <ul class="year-plans">
          {plans.map((plan) => (
            <li key={plan.id}>
              {planText(plan)}{' '}
              <button
                type="button"
                class="button button-quiet form-small"
                onClick={() => model.removePlan(plan.id)}
              >
                Remove
              </button>
            </li>
          ))}
        </ul>
      )}
      <div class="year-row">
        <SelectField
          id={`${id}-from-day`}
          label="Day"
          choices={Array.from({ length: 31 }, (_, index) => ({
            id: String(index + 1),
            label: String(index + 1),
          }))}
          value={day}
          apply={(choice) => {
            day.value = choice;
          }}
        />
        <SelectField
          id={`${id}-from-month`}
          label="Month"
          choices={monthNames.map((label, index) => ({ id: String(index + 1), label }))}
          value={month}
          apply={(choice) => {
            month.value = choice;
          }}
        />
        <button
          type="button"
          class="button button-quiet"
          onClick={() => model.addPlan(Number(month.value), Number(day.value))}
        >
          Use the day on the sheet from then on
        </button>
      </div>
    </fieldset>
  );
}

type NumberKey = {
  [Key in keyof PadYear]: PadYear[Key] extends number | null ? Key : never;
}[keyof PadYear];

interface FieldProps extends PartProps {
  readonly field: NumberKey;
  readonly label: string;
  readonly least: number;
  readonly greatest: number;
  readonly hint?: string;
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

function useYearNumber({ model, field, label }: FieldProps) {
  const value = useComputed(() => model.given.value[field] ?? undefined);
  const apply = (next: number | undefined) => model.set([field], next ?? null, `“${lower(label)}”`);
  return { value, apply };
}

/** A number without a quantity of its own. */
function PlainField(
  props: FieldProps & { readonly name: string; readonly unit: string },
): JSX.Element {
  const { id, label, name, least, greatest, unit, hint } = props;
  const entry = useMemo(() => plainEntry(name, { least, greatest }), [name, least, greatest]);
  return (
    <QuantityField
      id={id}
      label={label}
      entry={entry}
      unit={unit}
      {...(hint !== undefined && { hint })}
      {...useYearNumber(props)}
    />
  );
}

/** A measured number, in the reader's unit. */
function MeasuredField(props: FieldProps & { readonly quantity: Quantity }): JSX.Element {
  const { id, label, least, greatest, quantity, model, hint } = props;
  const entry = useComputed(() =>
    quantityEntry(quantity, model.units.value, { least, greatest }, lower(label)),
  );
  const unit = useComputed(() => symbolFor(model.units.value, quantity));
  return (
    <QuantityField
      id={id}
      label={label}
      entry={entry}
      unit={unit}
      {...(hint !== undefined && { hint })}
      {...useYearNumber(props)}
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
  const has = waterTemperatures.length === 12 || frostHours.length === 12;
  const fill = () => {
    model.day.store.edit(
      (now) => ({ ...now, year: { ...now.year, ...typicalYear } }),
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
      <legend>Month by month</legend>
      <p class="field-help">
        Cold water is thicker, and frost calls for hours of its own. The year to begin with is
        invented: put your own months in its place.
      </p>
      {has ? (
        <div class="year-months">
          {shortMonths.map((label, index) => (
            <Month key={label} id={`${id}-${index}`} model={model} month={index} label={label} />
          ))}
        </div>
      ) : null}
      <button type="button" class="button button-quiet" onClick={has ? clear : fill}>
        {has ? 'Clear the months' : 'Begin with an invented year'}
      </button>
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
      <QuantityField
        id={`${id}-water`}
        label={`${label}, water`}
        value={temperature}
        entry={entry}
        unit={unit}
        whenEmpty="Give a temperature here."
        apply={(value) => put(['waterTemperatures', month], value, 'the water of a month')}
      />
      <QuantityField
        id={`${id}-frost`}
        label={`${label}, frost`}
        value={frost}
        entry={hours}
        unit="h"
        whenEmpty="Give the hours here; 0 for none."
        apply={(value) => put(['frostHours', month], value, 'the frost of a month')}
      />
    </div>
  );
}
