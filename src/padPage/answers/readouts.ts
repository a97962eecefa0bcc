/** The row of figures at the speed chosen, each with its band where it is wide. */
import { computed, type ReadonlySignal } from '@preact/signals';
import type { FastestPlace } from '#core/hydraulics/circuit.ts';
import type { Band } from '#core/numerics/band.ts';
import type { Reading } from '#ui/figure/Readings.tsx';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { formatPrice } from '#units/money.ts';
import { noValue } from '#units/numerals.ts';
import type { Here } from './figures.ts';
import type { AnswersModel } from './model.ts';
import {
  bandText,
  filteredText,
  hourText,
  quotientBand,
  rounded,
  rpm,
  scaledBand,
  timeText,
  waterPerEnergy,
} from './text.ts';

type Words = (here: Here, units: UnitChoice) => string;

const noPipe = 'no pipe described';

function velocityText(place: FastestPlace | undefined, units: UnitChoice): string {
  return place === undefined ? noValue : format('velocity', place.velocity, units);
}

function velocityNote(place: FastestPlace | undefined, here: Here, units: UnitChoice): string {
  if (place === undefined) return noPipe;
  const band = scaledBand(place.velocity, here.flow, here.band.flow);
  return bandText('velocity', place.velocity, band, units);
}

/** Energy falls into the quotient from below: more watts, less water. */
function waterBand(here: Here): Band {
  const { flow, power, band } = here;
  const each = quotientBand(flow, band.flow, power, band.power);
  return scaledBand(waterPerEnergy(here), flow / power, each);
}

function turnoverNote(here: Here, turnover: number, units: UnitChoice): string {
  const { low, high } = here.band.flow;
  if (low <= 0) return '';
  const band = { low: (turnover * here.flow) / high, high: (turnover * here.flow) / low };
  if (turnover >= 3600) return bandText('duration', turnover, band, units);
  const minutes = { ...units, overrides: { ...units.overrides, duration: 'min' } } as const;
  return bandText('duration', turnover, band, minutes);
}

/** What the pad lets be said at any speed; the words follow the speed. */
export function readoutsOf(model: AnswersModel): readonly Reading[] {
  const { here, units, prices, leastEnergy: thriftiest } = model;
  const live = (words: Words): ReadonlySignal<string> =>
    computed(() => (here.value === null ? '' : words(here.value, units.value)));
  const reading = (
    id: string,
    label: string,
    value: Words,
    note: Words | null,
    of?: Reading['of'],
  ): Reading => ({
    id,
    label,
    value: live(value),
    ...(note === null ? {} : { note: live(note) }),
    ...(of === undefined ? {} : { of }),
  });
  const measured = (quantity: 'flow' | 'head' | 'power', label: string): Reading =>
    reading(
      quantity,
      label,
      (now, in_) =>
        quantity === 'flow' && now.flow === 0 ? 'none' : format(quantity, now[quantity], in_),
      (now, in_) => bandText(quantity, now[quantity], now.band[quantity], in_),
      quantity,
    );
  const now = here.peek();
  const paid = prices.peek();
  const best = thriftiest.peek();
  return [
    measured('flow', 'Flow'),
    measured('head', 'Head'),
    measured('power', 'Wire power'),
    ...(now?.current == null
      ? []
      : [
          reading(
            'current',
            'Current',
            (at, in_) => format('current', at.current ?? 0, in_),
            () => 'read at this speed',
          ),
        ]),
    reading(
      'suction',
      'Suction velocity',
      (at, in_) => velocityText(at.suction, in_),
      (at, in_) => velocityNote(at.suction, at, in_),
      'velocity',
    ),
    reading(
      'discharge',
      'Return velocity',
      (at, in_) => velocityText(at.discharge, in_),
      (at, in_) => velocityNote(at.discharge, at, in_),
      'velocity',
    ),
    ...(model.scene.peek()?.known.volume == null ? [] : turnoverReadings(reading)),
    ...(paid === null
      ? []
      : [
          reading(
            'money',
            'Money an hour',
            (at) => hourText(at.power, paid),
            () =>
              paid.low === paid.high
                ? `at ${formatPrice(paid.low, paid.currency)}`
                : 'by the cheapest and the dearest price of the day',
            'money',
          ),
        ]),
    reading(
      'water',
      'Water per kWh',
      (at, in_) => (at.flow > 0 ? rounded('volume', waterPerEnergy(at), in_) : 'none'),
      (at, in_) =>
        [
          at.flow > 0 ? bandText('volume', waterPerEnergy(at), waterBand(at), in_) : '',
          best === null
            ? ''
            : `most at ${rpm(best.speed, in_)}: ${rounded('volume', waterPerEnergy(best), in_)}`,
        ]
          .filter((part) => part !== '')
          .join('; '),
    ),
  ];
}

function turnoverReadings(
  reading: (id: string, label: string, value: Words, note: Words | null) => Reading,
): readonly Reading[] {
  return [
    reading(
      'turnover',
      'Turnover',
      ({ turnover }, units) => (turnover === null ? 'never' : timeText(turnover, units)),
      (here, units) => (here.turnover === null ? '' : turnoverNote(here, here.turnover, units)),
    ),
    reading(
      'filtered',
      'Filtered in a day',
      ({ filtered }) => (filtered === null ? 'none' : filteredText(filtered)),
      () => 'of the water, at this speed all day',
    ),
  ];
}
