import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { freshId } from '#pad/document/ids.ts';
import type { PadTariff } from '#pad/document/schema.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { QuantityField } from '#ui/controls/TextFields.tsx';
import { formatPrice } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import { AddButton, Entry, focusSoon, More, RemoveButton, useIds } from './Entry.tsx';
import { CountField, Faults, Findings, NumberField, PickField, WordsField } from './fields.tsx';
import { useForm } from './form.ts';
import { inserted, without } from './lists.ts';
import { elementId, valueAtSpot } from './spot.ts';
import { Kinds } from './TariffKinds.tsx';
import {
  firstPrice,
  flatTariff,
  isFlat,
  type Season,
  withoutSeason,
  withSeason,
} from './tariffEdits.ts';

/** What electricity costs: one price, or prices by season, day and hour. */
export function StepTariff(): JSX.Element {
  const form = useForm();
  const flat = useComputed(() => isFlat(form.pad.value.tariff));
  return (
    <div class="form-fields">
      <div class="form-pair">
        <WordsField at={['tariff', 'currency']} label="Currency" hint="A sign or a code." max={8} />
        <NumberField
          at={['tariff', 'dailyCharge']}
          label="Fixed charge a day"
          hint="Whatever you use; empty for none."
        />
      </div>
      {flat.value ? <OnePrice /> : <Seasons />}
    </div>
  );
}

/** The common case. */
function OnePrice(): JSX.Element {
  const form = useForm();
  const price = useComputed(() => firstPrice(form.pad.value.tariff) ?? undefined);
  const entry = useMemo(() => plainEntry('price', { least: -100_000, greatest: 1_000_000 }), []);
  const unit = useComputed(() => `${form.pad.value.tariff.currency} per kWh`.trim());
  const set = (value: number | undefined) =>
    form.set(['tariff'], flatTariff(form.pad.peek().tariff, value ?? null), 'the price');
  const expand = () =>
    form.change(
      ['tariff'],
      (tariff: PadTariff) => {
        const whole = tariff.seasons.length === 0 ? flatTariff(tariff, null) : tariff;
        form.fresh.value = whole.seasons[0]?.id ?? null;
        return { ...whole, seasons: withTwoBands(whole.seasons) };
      },
      'prices by the hour',
    );
  return (
    <>
      <QuantityField
        id="form-price"
        label="Price of a kilowatt-hour"
        hint="All charges that grow with use, taken together."
        value={price}
        entry={entry}
        unit={unit}
        apply={set}
      />
      <button type="button" class="button button-quiet" onClick={expand}>
        Prices change by the hour or season
      </button>
    </>
  );
}

/** The first day cut in two, so that there is something to change. */
function withTwoBands(seasons: readonly Season[]): PadTariff['seasons'] {
  return seasons.map((season) => ({
    ...season,
    dayTypes: season.dayTypes.map((dayType) => {
      const [band] = dayType.bands;
      if (band === undefined) return dayType;
      const edges = [7 * 60, 21 * 60] as const;
      const bands = [
        { ...band, name: 'Day', start: edges[0], end: edges[1] },
        { ...band, name: 'Night', start: edges[1], end: edges[0] },
      ];
      return { ...dayType, bands };
    }),
  }));
}

function Seasons(): JSX.Element {
  const form = useForm();
  const ids = useIds(() => form.pad.value.tariff.seasons);
  const change = (update: (before: readonly Season[]) => readonly Season[], what: string) =>
    form.change(['tariff', 'seasons'], update, what);
  const add = () => {
    const id = freshId('season', form.pad.peek().tariff.seasons);
    form.fresh.value = id;
    change((seasons) => withSeason(seasons, id), 'a new season');
  };
  const flatten = () =>
    form.change(
      ['tariff'],
      (tariff: PadTariff) => flatTariff(tariff, firstPrice(tariff)),
      'one price for everything',
    );
  return (
    <>
      <ol class="form-entries">
        {ids.map((id) => (
          <SeasonEntry
            key={id}
            id={id}
            onRemove={() => {
              change(
                (seasons) =>
                  withoutSeason(
                    seasons,
                    seasons.findIndex((each) => each.id === id),
                  ),
                'taking away a season',
              );
              focusSoon('form-season-add');
            }}
          />
        ))}
      </ol>
      <div class="form-adders">
        <AddButton id="form-season-add" onAdd={add}>
          Season
        </AddButton>
        <button type="button" class="button button-quiet" onClick={flatten}>
          One price for everything
        </button>
      </div>
      <Faults at={['tariff', 'seasons']} />
      <Holidays />
    </>
  );
}

const monthChoices = monthNames.map((label, place) => ({ id: String(place + 1), label }));

interface DateProps {
  readonly at: readonly (string | number)[];
  readonly label: string;
  readonly what: string;
}

/** A day of the year. */
function DateFields({ at, label, what }: DateProps): JSX.Element {
  return (
    <div class="form-row">
      <PickField at={[...at, 'month']} label={label} what={what} choices={monthChoices} whole />
      <CountField at={[...at, 'day']} label="Day" what={what} />
    </div>
  );
}

/** A season in one line; one that lasts all year needs no dates. */
function seasonText(season: Season, currency: string, isOnly: boolean): string {
  const { name, from, to, dayTypes } = season;
  const prices = dayTypes.flatMap(({ bands }) => bands.flatMap(({ price }) => price ?? []));
  const date = ({ month, day }: Season['from']) => `${day} ${monthNames[month - 1]}`;
  const span = to === null ? `from ${date(from)}` : `${date(from)} to ${date(to)}`;
  const named = isOnly ? name || 'All year' : `${name || 'Season'}, ${span}`;
  const price =
    prices.length === 0 ? 'no price yet' : `up to ${formatPrice(Math.max(...prices), currency)}`;
  return `${named}, ${price}`;
}

function SeasonEntry({ id, onRemove }: { id: string; onRemove: () => void }): JSX.Element {
  const form = useForm();
  const at = ['tariff', 'seasons', `@${id}`];
  const season = useComputed(() => valueAtSpot(form.pad.value, at) as Season | undefined);
  const isOnly = useComputed(() => form.pad.value.tariff.seasons.length <= 1);
  const title = useComputed(() =>
    season.value === undefined
      ? ''
      : seasonText(season.value, form.pad.value.tariff.currency, isOnly.value),
  );
  const hasEnd = useComputed(() => (season.value?.to ?? null) !== null);
  return (
    <li>
      <Entry id={id} elementId={elementId(at)} title={title}>
        <div class="form-fields">
          <WordsField at={[...at, 'name']} label="Season" what="the name of a season" />
          {!isOnly.value && (
            <>
              <DateFields at={[...at, 'from']} label="From" what="when a season starts" />
              {hasEnd.value && (
                <>
                  <DateFields at={[...at, 'to']} label="To" what="when a season ends" />
                  <button
                    type="button"
                    class="button button-quiet form-small"
                    onClick={() => form.set([...at, 'to'], null, 'when a season ends')}
                  >
                    Until the next season
                  </button>
                </>
              )}
            </>
          )}
          <Faults at={at} />
          <Faults at={[...at, 'from']} />
          <Faults at={[...at, 'to']} />
          <Kinds at={[...at, 'dayTypes']} />
          <Findings at={at} />
        </div>
        {!isOnly.value && (
          <div class="form-tools">
            <RemoveButton name={title.value} onRemove={onRemove} />
          </div>
        )}
      </Entry>
    </li>
  );
}

type Holiday = PadTariff['holidays'][number];

/** Days that are priced as another kind of day. */
function Holidays(): JSX.Element {
  const form = useForm();
  const many = useComputed(() => form.pad.value.tariff.holidays.length);
  const kinds = useComputed(() => {
    const names = new Map<string, string>();
    for (const { dayTypes } of form.pad.value.tariff.seasons) {
      for (const { id, name } of dayTypes) names.set(id, name || id);
    }
    return JSON.stringify([...names].map(([id, label]) => ({ id, label })));
  });
  const choices = JSON.parse(kinds.value) as { id: string; label: string }[];
  const change = (update: (before: readonly Holiday[]) => readonly Holiday[], what: string) =>
    form.change(['tariff', 'holidays'], update, what);
  const add = () => {
    const dayTypeId = choices.at(-1)?.id;
    if (dayTypeId === undefined) return;
    change((list) => inserted(list, list.length, { month: 1, day: 1, dayTypeId }), 'a new holiday');
  };
  return (
    <More title={many.value === 0 ? 'Holidays' : `Holidays (${many.value})`}>
      {Array.from({ length: many.value }, (_, place) => (
        <div key={String(place)} class="form-entry-body">
          <DateFields
            at={['tariff', 'holidays', place]}
            label={`Holiday ${place + 1}`}
            what="the date of a holiday"
          />
          <PickField
            at={['tariff', 'holidays', place, 'dayTypeId']}
            label="Counts as"
            what="what a holiday counts as"
            choices={choices}
          />
          <Faults at={['tariff', 'holidays', place]} />
          <RemoveButton
            name={`holiday ${place + 1}`}
            onRemove={() => change((list) => without(list, place), 'taking away a holiday')}
          />
        </div>
      ))}
      <AddButton id="form-holiday-add" onAdd={add}>
        Add a holiday
      </AddButton>
    </More>
  );
}
