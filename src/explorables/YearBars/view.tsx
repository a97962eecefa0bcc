import { type ReadonlySignal, type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { MonthBars, MonthSwatch } from '#ui/charts/MonthBars.tsx';
import { across, span } from '#ui/charts/scale.ts';
import { SelectField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkField } from '#ui/figure/linkState.ts';
import { type Reading, Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { monthNames } from '#units/monthNames.ts';
import { createModel, type MonthPrice, type YearBarsModel } from './model.ts';
import { type CarriedYear, placeFrom } from './place.ts';
import {
  frostText,
  hoursSpoken,
  money,
  note,
  paybackText,
  planText,
  sentence,
  shortMonth,
  speedSpoken,
  table,
} from './text.ts';

/** A month in the page's address. */
function monthInLink(month: Signal<number>): LinkField {
  const opening = month.peek();
  return {
    read: () => (month.value === opening ? '' : String(month.value)),
    write: (text) => {
      const wish = Number(text);
      if (Number.isInteger(wish) && wish >= 1 && wish <= 12) month.value = wish;
    },
  };
}

interface ViewProps {
  readonly id: string;
  readonly carried: CarriedYear;
}

/** Twelve months as bars for two pumps, and how soon the more expensive one has paid for itself. */
function YearBars({ id, carried }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel(placeFrom(carried)), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: [
      'yearbars',
      () => ({
        first: monthInLink(model.firstMonth),
        last: monthInLink(model.lastMonth),
        hours: dialInLink(model.seasonHours),
        resthours: dialInLink(model.restHours),
        speed: dialInLink(model.seasonSpeed),
        restspeed: dialInLink(model.restSpeed),
        frost: dialInLink(model.frostNights),
        outlay: dialInLink(model.outlay),
      }),
    ],
    own: () => import('./own.ts'),
  });
  const resets = useSignal(0);
  return (
    <Figure
      id={id}
      title="A year of two pumps"
      {...figure}
      onReset={() => {
        figure.onReset();
        resets.value += 1;
      }}
      note={note(model)}
    >
      <Picture model={model} resets={resets.value} />
      <Key model={model} />
      <Amounts model={model} />
      <Settings id={id} model={model} />
    </Figure>
  );
}

export default guarded(YearBars);

function Picture({ model, resets }: { model: YearBarsModel; resets: number }): JSX.Element {
  const costs = (months: readonly MonthPrice[]) => months.map(({ cost }) => Math.max(cost, 0));
  const one = model.oneSpeed.value.months;
  return (
    <MonthBars
      first={{
        id: 'variable',
        name: 'variable speed',
        amounts: costs(model.variable.value.months),
      }}
      second={{ id: 'one', name: 'one speed', amounts: costs(one) }}
      of="money"
      title="Price of the month"
      unit={model.place.value.tariff.currency}
      months={one.map(({ month }) => shortMonth(month))}
      monthTitle="Month; the season is shaded"
      steady={`${model.source.value} ${resets}`}
    >
      <path class="year-season" d={seasonArea(model.inSeason.value)} />
    </MonthBars>
  );
}

/** The season reaches up to the names of the bars [span of a drawing]. */
const seasonTop = 110;

/** The months of the season as one area, or as two where the season runs over the new year. */
function seasonArea(inSeason: readonly boolean[]): string {
  const at = (month: number) => across({ min: 0, max: 12 }, month).toFixed(1);
  return inSeason
    .map((inside, month) => {
      const begins = inside && inSeason[month - 1] !== true;
      const ends = inside && inSeason[month + 1] !== true;
      return `${begins ? `M${at(month)},${span}V${seasonTop}` : ''}${ends ? `H${at(month + 1)}V${span}Z` : ''}`;
    })
    .join('');
}

function Key({ model }: { model: YearBarsModel }): JSX.Element {
  const plans = [
    { id: 'one', name: 'One speed', solid: false, plan: model.oneSpeed },
    { id: 'variable', name: 'Variable speed', solid: true, plan: model.variable },
  ];
  return (
    <ul class="year-key" data-quantity="money">
      {plans.map(({ id, name, solid, plan }) => (
        <li key={id}>
          <MonthSwatch isSolid={solid} />
          <span>
            <strong>{name}:</strong> {planText(model, plan.value)}
          </span>
        </li>
      ))}
    </ul>
  );
}

function Amounts({ model }: { model: YearBarsModel }): JSX.Element {
  const amount = (value: () => string): ReadonlySignal<string> => useComputed(value);
  const items: Reading[] = [
    {
      id: 'one',
      label: 'One speed, the year',
      value: amount(() => money(model, model.oneSpeed.value.cost)),
      of: 'money',
    },
    {
      id: 'variable',
      label: 'Variable speed, the year',
      value: amount(() => money(model, model.variable.value.cost)),
      of: 'money',
    },
    {
      id: 'saving',
      label: 'Saved in a year',
      value: amount(() => money(model, model.saving.value)),
      of: 'money',
    },
    {
      id: 'payback',
      label: 'Paid back in',
      value: amount(() => paybackText(model.payback.value)),
    },
  ];
  return <Readings items={items} />;
}

const months = monthNames.map((label, index) => ({ id: String(index + 1), label }));

function Settings({ id, model }: { id: string; model: YearBarsModel }): JSX.Element {
  const first = useComputed(() => String(model.firstMonth.value));
  const last = useComputed(() => String(model.lastMonth.value));
  const spoken = {
    seasonHours: useComputed(() => hoursSpoken(model, 'season')),
    restHours: useComputed(() => hoursSpoken(model, 'rest')),
    seasonSpeed: useComputed(() => speedSpoken(model, 'season')),
    restSpeed: useComputed(() => speedSpoken(model, 'rest')),
    frost: useComputed(() => `${model.frostNights.value.value} nights`),
    outlay: useComputed(() => money(model, model.outlay.value.value)),
  };
  return (
    <div class="year-settings needs-script">
      <SelectField
        id={`${id}-first`}
        label="Season from"
        choices={months}
        value={first}
        apply={(month) => {
          model.firstMonth.value = Number(month);
        }}
      />
      <SelectField
        id={`${id}-last`}
        label="Season to the end of"
        choices={months}
        value={last}
        apply={(month) => {
          model.lastMonth.value = Number(month);
        }}
      />
      <Slider
        id={`${id}-hours`}
        label="One speed: hours a day in the season"
        dial={model.seasonHours}
        spoken={spoken.seasonHours}
      />
      <Slider
        id={`${id}-rest-hours`}
        label="One speed: hours a day out of season"
        dial={model.restHours}
        spoken={spoken.restHours}
      />
      <Slider
        id={`${id}-speed`}
        label="Variable speed in the season"
        dial={model.seasonSpeed}
        spoken={spoken.seasonSpeed}
      />
      <Slider
        id={`${id}-rest-speed`}
        label="Variable speed out of season"
        dial={model.restSpeed}
        spoken={spoken.restSpeed}
      />
      <Slider
        id={`${id}-frost`}
        label={`Nights of frost in each of ${frostText(model)}`}
        dial={model.frostNights}
        spoken={spoken.frost}
      />
      <Slider
        id={`${id}-outlay`}
        label="What the variable-speed pump costs more"
        dial={model.outlay}
        spoken={spoken.outlay}
      />
    </div>
  );
}

type SliderProps = Parameters<typeof RangeField>[0] & { readonly spoken: ReadonlySignal<string> };

/** A slider with its setting written beside it. */
function Slider(props: SliderProps): JSX.Element {
  return (
    <div>
      <RangeField {...props} />
      <p class="year-set">{props.spoken}</p>
    </div>
  );
}
