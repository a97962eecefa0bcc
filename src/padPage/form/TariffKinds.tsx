/** The kinds of day of a season, and the prices over each. */

import type { JSX } from 'preact';
import { ToggleField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { formatTimeOfDay } from '#units/timeOfDay.ts';
import { AddButton, focusSoon, RemoveButton } from './Entry.tsx';
import { ClockField, Faults, NumberField, WordsField } from './fields.tsx';
import { type Form, useForm } from './form.ts';
import { elementId, type Spot, valueAtSpot } from './spot.ts';
import {
  type Band,
  changed,
  type DayType,
  withDayType,
  withEdge,
  withOneMore,
  withoutBand,
  withoutDayType,
  withWeekday,
} from './tariffEdits.ts';

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
/** The week as it is read, Monday first. */
const week = [1, 2, 3, 4, 5, 6, 0];

function kindsAt(form: Form, at: Spot): readonly DayType[] {
  return (valueAtSpot(form.pad.value, at) as readonly DayType[] | undefined) ?? [];
}

/** An id that no kind of day of any season has. */
function freshKindId(form: Form): string {
  const taken = new Set(
    form.pad.peek().tariff.seasons.flatMap(({ dayTypes }) => dayTypes.map(({ id }) => id)),
  );
  let number = taken.size + 1;
  while (taken.has(`days${number}`)) number += 1;
  return `days${number}`;
}

/** Workdays, weekends and the like. */
export function Kinds({ at }: { at: Spot }): JSX.Element {
  const form = useForm();
  const many = useComputed(() => kindsAt(form, at).length);
  const addId = `${elementId(at)}-add`;
  const add = () =>
    form.change(
      at,
      (kinds: readonly DayType[]) => withDayType(kinds, freshKindId(form)),
      'a new kind of day',
    );
  return (
    <>
      {Array.from({ length: many.value }, (_, place) => (
        <Kind key={String(place)} list={at} place={place} isOnly={many.value === 1} addId={addId} />
      ))}
      <Faults at={at} />
      <AddButton id={addId} onAdd={add}>
        {many.value === 1 ? 'Other prices at the weekend' : 'Kind of day'}
      </AddButton>
    </>
  );
}

interface KindProps {
  readonly list: Spot;
  readonly place: number;
  readonly isOnly: boolean;
  readonly addId: string;
}

function Kind({ list, place, isOnly, addId }: KindProps): JSX.Element {
  const form = useForm();
  const at = [...list, place];
  const name = useComputed(() => kindsAt(form, list)[place]?.name || `Kind of day ${place + 1}`);
  const remove = () => {
    form.change(
      list,
      (kinds: readonly DayType[]) => withoutDayType(kinds, place),
      'taking away a kind of day',
    );
    focusSoon(addId);
  };
  return (
    <fieldset class="form-kind">
      <legend>{name}</legend>
      {!isOnly && (
        <>
          <WordsField at={[...at, 'name']} label="Name" what="the name of a kind of day" />
          <Weekdays list={list} place={place} />
        </>
      )}
      <Faults at={[...at, 'weekdays']} />
      <Bands at={[...at, 'bands']} />
      {!isOnly && <RemoveButton name={name.value} onRemove={remove} />}
    </fieldset>
  );
}

function Weekdays({ list, place }: { list: Spot; place: number }): JSX.Element {
  const form = useForm();
  const days = useComputed(() => (kindsAt(form, list)[place]?.weekdays ?? []).join(' '));
  const held = days.value === '' ? [] : days.value.split(' ').map(Number);
  const turn = (weekday: number, on: boolean) =>
    form.change(
      list,
      (kinds: readonly DayType[]) =>
        on
          ? withWeekday(kinds, place, weekday)
          : changed(kinds, place, (kind) => ({
              ...kind,
              weekdays: kind.weekdays.filter((each) => each !== weekday),
            })),
      'the days of the week',
    );
  return (
    // biome-ignore lint/a11y/useSemanticElements: it stands in a fieldset already
    <div class="form-weekdays" role="group" aria-label="Days of the week">
      {week.map((weekday) => (
        <ToggleField
          key={weekday}
          id={`${elementId([...list, place])}-${weekday}`}
          label={weekdays[weekday] ?? ''}
          value={held.includes(weekday)}
          apply={(on) => turn(weekday, on)}
        />
      ))}
    </div>
  );
}

function bandsAt(form: Form, at: Spot): readonly Band[] {
  return (valueAtSpot(form.pad.value, at) as readonly Band[] | undefined) ?? [];
}

/** Prices over the day; moving an edge moves its neighbour along. */
function Bands({ at }: { at: Spot }): JSX.Element {
  const form = useForm();
  const many = useComputed(() => bandsAt(form, at).length);
  const change = (update: (bands: readonly Band[]) => readonly Band[], what: string) =>
    form.change(at, update, what);
  const addId = `${elementId(at)}-add`;
  return (
    <>
      <ol class="form-rows">
        {Array.from({ length: many.value }, (_, place) => (
          <li key={String(place)} class="form-row form-band">
            <BandFields at={at} place={place} isOnly={many.value === 1} change={change} />
          </li>
        ))}
      </ol>
      <Faults at={at} />
      <AddButton id={addId} onAdd={() => change(withOneMore, 'a new price')}>
        Price at another time
      </AddButton>
    </>
  );
}

interface BandProps {
  readonly at: Spot;
  readonly place: number;
  readonly isOnly: boolean;
  readonly change: (update: (bands: readonly Band[]) => readonly Band[], what: string) => void;
}

function BandFields({ at, place, isOnly, change }: BandProps): JSX.Element {
  const form = useForm();
  const currency = form.pad.value.tariff.currency;
  const here = [...at, place];
  const edge = (which: 'start' | 'end', label: string) => (
    <ClockField
      at={[...here, which]}
      label={label}
      what="when a price holds"
      apply={(minute) =>
        form.set(at, withEdge(bandsAt(form, at), place, which, minute), 'when a price holds')
      }
    />
  );
  return (
    <>
      {!isOnly && (
        <>
          {edge('start', 'From')}
          {edge('end', 'To')}
        </>
      )}
      <NumberField at={[...here, 'price']} label={`${currency} per kWh`.trim()} what="a price" />
      {!isOnly && <WordsField at={[...here, 'name']} label="Called" what="the name of a price" />}
      {!isOnly && (
        <RemoveButton
          isNarrow
          name={bandText(bandsAt(form, at)[place])}
          onRemove={() => {
            change((bands) => withoutBand(bands, place), 'taking away a price');
            focusSoon(`${elementId(at)}-add`);
          }}
        />
      )}
    </>
  );
}

function bandText(band: Band | undefined): string {
  if (band === undefined) return 'price';
  return `price from ${formatTimeOfDay(band.start)} to ${formatTimeOfDay(band.end)}`;
}
