/** How each input that can be swept is named, spoken, typed and marked on its axis. */

import { lengthText } from '#dayPage/day/text.ts';
import { turnoversText } from '#dayPage/planning/collisionText.ts';
import type { Side as PlotSide } from '#ui/charts/Frame.tsx';
import { quantitySide, shownUnit } from '#ui/charts/quantityAxis.ts';
import { niceAxis, type ShownUnit } from '#ui/charts/scale.ts';
import type { Entry } from '#ui/controls/entry.ts';
import { minutesEntry } from '#ui/controls/minutesEntry.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format, symbolFor } from '#units/format.ts';
import { formatMoney, type Money } from '#units/money.ts';
import { needName } from '#words/needsAndLimits.ts';
import type { Sweepable, Swept } from './sweepables.ts';

/** The reader's units and money. */
export interface Manner {
  readonly units: UnitChoice;
  readonly currency: Money;
}

export interface InputWords {
  /** As the list of inputs has it. */
  readonly name: string;
  /** A value by itself: "2.6 turnovers", "45 %". */
  readonly value: (value: number) => string;
  /** What one step of the finding is, as the subject of a sentence. */
  readonly more: string;
  /** Title and marks of the axis. */
  readonly side: PlotSide;
  /** How the value is typed; left out for steps, which are not typed. */
  readonly entry?: Entry<number>;
  readonly unit?: string;
  /** A remark below the picture. */
  readonly note?: string;
}

const sideWord = { suction: 'suction', discharge: 'return' } as const;
const percent = (share: number, units: UnitChoice) => format('share', share, units);

/** A nominal size without its unit: "2-1/2". */
const bare = (nominal: string) => nominal.split(' ')[0] ?? nominal;

/** As many places as the currency has, and one more where the price needs it. */
const placesOf = (price: number, { places }: Money) =>
  Math.abs(price - Number(price.toFixed(places))) < 1e-8 ? places : places + 1;

/** Minutes on an axis in the reader's unit of time. */
function minutesUnit(units: UnitChoice): ShownUnit {
  const { show, store } = shownUnit('duration', units);
  return { show: (minutes) => show(minutes * 60), store: (shown) => store(shown) / 60 };
}

/** Both ends of an input as a wish for its axis. */
function ends({ values }: Sweepable) {
  return { min: values[0] ?? 0, max: values.at(-1) ?? 1, exact: true };
}

type Makers = {
  readonly [Kind in Swept['kind']]: (
    of: Extract<Swept, { kind: Kind }>,
    input: Sweepable,
    manner: Manner,
  ) => InputWords;
};

const makers: Makers = {
  turnovers: (_, input) => ({
    name: 'Turnovers asked for',
    value: turnoversText,
    more: 'Half a turnover more',
    side: { axis: niceAxis(ends(input)), title: 'Turnovers asked for in a day', unit: '' },
    entry: plainEntry('number of turnovers', { least: 0 }),
    unit: 'turnovers',
  }),
  need: ({ need }, input, { units }) => ({
    name: `Hours of “${needName(need)}”`,
    value: (minutes) => lengthText(Math.round(minutes)),
    more: `An hour more of “${needName(need)}”`,
    side: {
      axis: niceAxis({ ...ends(input), unit: minutesUnit(units), count: 6 }),
      title: `Time a day for “${needName(need)}”`,
      unit: symbolFor(units, 'duration'),
    },
    entry: minutesEntry(needName(need), units),
    unit: symbolFor(units, 'duration'),
  }),
  prices: (_, input, { units }) => ({
    name: 'All prices of energy',
    value: (factor) => `${percent(factor, units)} of today’s prices`,
    more: 'A tenth on all prices',
    side: quantitySide('All prices, of what they are today', 'share', units, ends(input)),
    entry: quantityEntry('share', units, { least: 0 }, 'share of today’s prices'),
    unit: symbolFor(units, 'share'),
  }),
  dearPrice: (_, input, { currency }) => ({
    name: 'The dear price alone',
    value: (price) =>
      `${formatMoney(price, currency, { places: placesOf(price, currency) })} in the dear hours`,
    more: 'A tenth on the dear price',
    side: {
      axis: niceAxis(ends(input)),
      title: 'Price in the dear hours',
      unit: `${currency.sign} per kWh`,
    },
    entry: plainEntry('price', { least: 0 }),
    unit: `${currency.sign} per kWh`,
  }),
  pipes: ({ side, range }, input) => ({
    name: `Size of the ${sideWord[side]} pipes`,
    value: (steps) => `${range.mainSize(steps).nominal} pipe`,
    more: `Every ${sideWord[side]} pipe one size ${input.more > 0 ? 'larger' : 'smaller'}`,
    side: {
      axis: {
        min: (input.values[0] ?? 0) - 0.5,
        max: (input.values.at(-1) ?? 0) + 0.5,
        ticks: input.values.map((steps) => ({
          value: steps,
          label: bare(range.mainSize(steps).nominal),
        })),
        fine: [],
      },
      title: `Size of the longest ${sideWord[side]} pipe`,
      unit: range.mainSize(0).nominal.split(' ').at(-1) ?? '',
    },
    note: `Every ${sideWord[side]} pipe moves as many nominal sizes within its own standard, and its fittings with it. A limit on the velocity in the pipe moves as well.${
      range.typed === 0 ? '' : ' Parts with a bore that was typed stay as they are.'
    }`,
  }),
  loading: (_, input, { units }) => ({
    name: 'Loading of the filter',
    value: (loading) => `${percent(loading, units)} loaded`,
    more: 'A filter loaded a tenth further',
    side: quantitySide('From clean to due for cleaning', 'share', units, ends(input)),
    entry: quantityEntry('share', units, { least: 0, greatest: 1 }, 'loading'),
    unit: symbolFor(units, 'share'),
  }),
  temperature: (_, input, { units }) => ({
    name: 'Temperature of the water',
    value: (degrees) => format('temperature', degrees, units),
    more: `Water ${format('temperatureDifference', -input.more, units)} colder`,
    side: quantitySide('Temperature of the water', 'temperature', units, ends(input)),
    entry: quantityEntry('temperature', units, { least: 0, greatest: 45 }, 'temperature'),
    unit: symbolFor(units, 'temperature'),
  }),
};

/** The words of an input in the reader's units and money. */
export function wordsOf(input: Sweepable, manner: Manner): InputWords {
  const make = makers[input.of.kind] as (of: Swept, input: Sweepable, manner: Manner) => InputWords;
  return make(input.of, input, manner);
}
