import { type ReadonlySignal, type Signal, useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { Frame } from '#charts/Frame.tsx';
import { Band } from '#charts/marks.tsx';
import { across, niceAxis, type TickedAxis, upward } from '#charts/scale.ts';
import { monthNames } from '#units/monthNames.ts';
import { SelectField } from '#widgets/kit/ChoiceFields.tsx';
import { Figure } from '#widgets/kit/Figure.tsx';
import { dialInLink, type LinkField, useLinkState } from '#widgets/kit/linkState.ts';
import { useOwnPad } from '#widgets/kit/ownPad.ts';
import { RangeField } from '#widgets/kit/RangeField.tsx';
import { type Reading, Readings } from '#widgets/kit/Readings.tsx';
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

/** Twelve months as bars for two pumps, and how soon the dearer one is paid back. */
export default function YearBars({ id, carried }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel(placeFrom(carried)), []);
  useOwnPad(async () => {
    const { takePad } = await import('./own.ts');
    return (pad) => takePad(model, pad);
  });
  const fields = useMemo(
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
    [model],
  );
  useLinkState('yearbars', fields);
  const words = useComputed(() => sentence(model));
  const numbers = useComputed(() => table(model));
  const hasOwn = useComputed(() => model.own.value !== undefined);
  return (
    <Figure
      id={id}
      title="A year of two pumps"
      sentence={words}
      table={numbers}
      onReset={model.reset}
      source={model.source}
      hasOwn={hasOwn}
      note={note(model)}
    >
      <Picture model={model} />
      <Key model={model} />
      <Amounts model={model} />
      <Settings id={id} model={model} />
    </Figure>
  );
}

/** One bar a month, side by side with the other plan's. */
function barsPath(
  months: readonly MonthPrice[],
  x: TickedAxis,
  y: TickedAxis,
  side: 'left' | 'right',
): string {
  const offset = side === 'left' ? 0.12 : 0.52;
  return months
    .map(({ month, cost }) => {
      const from = across(x, month - 1 + offset).toFixed(1);
      const to = across(x, month - 1 + offset + 0.36).toFixed(1);
      return `M${from},${upward(y, 0).toFixed(1)}V${upward(y, Math.max(cost, 0)).toFixed(1)}H${to}V${upward(y, 0).toFixed(1)}Z`;
    })
    .join('');
}

function Picture({ model }: { model: YearBarsModel }): JSX.Element {
  const one = model.oneSpeed.value.months;
  const other = model.variable.value.months;
  const currency = model.place.value.tariff.currency;
  const x: TickedAxis = {
    min: 0,
    max: 12,
    ticks: one.map(({ month }) => ({ value: month - 0.5, label: shortMonth(month) })),
  };
  const y = niceAxis({ max: Math.max(1, ...[...one, ...other].map(({ cost }) => cost)) });
  const season = model.inSeason.value
    .map((inside, index) =>
      inside ? `M${across(x, index).toFixed(1)},0V1000H${across(x, index + 1).toFixed(1)}V0Z` : '',
    )
    .join('');
  return (
    <Frame
      x={{ axis: x, title: 'Month; the season is tinted', unit: '' }}
      y={{ axis: y, title: 'Price of the month', unit: currency }}
      title="Price of each month with the one-speed pump and with the variable-speed pump"
      drawing={
        <>
          <Band d={season} of="plain" />
          <path class="year-bar" data-quantity="money" d={barsPath(one, x, y, 'left')} />
          <path
            class="year-bar year-bar-solid"
            data-quantity="money"
            d={barsPath(other, x, y, 'right')}
          />
        </>
      }
    />
  );
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
          <span class={solid ? 'year-swatch is-solid' : 'year-swatch'} aria-hidden="true" />
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
