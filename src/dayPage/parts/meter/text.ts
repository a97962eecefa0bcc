/** The words of a meter held against the day. */

import type { MeterTotals, PumpCheck } from '#core/meter/meter.ts';
import { fewestDays, type HouseCheck } from '#core/meter/meterHouse.ts';
import { kilowattHours, lengthText, percentText } from '#dayPage/day/text.ts';
import { dateOfMinute } from '#pad/formats/dateOfMinute.ts';
import { noteSentence } from '#pad/formats/fileSentences.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { hardSpace } from '#units/numerals.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import type { Held, MeterModel } from './model.ts';

/** A difference of this share is nothing to look into; common practice, no source. */
const alike = 0.05;

const daysText = (count: number, which = ''): string =>
  `${count}${hardSpace}${which}${count === 1 ? 'day' : 'days'}`;

/** The finding, in a sentence or two; empty while no file is loaded. */
export function findingText(model: MeterModel): string {
  const held = model.held.value;
  if (held === null) return '';
  return model.measures.value === 'pump' ? pumpText(held, model.units.value) : houseText(held);
}

/** What goes with the finding: what may be behind it, and how far it holds. */
export function besideText(model: MeterModel): string {
  const held = model.held.value;
  if (held === null) return '';
  const texts =
    model.measures.value === 'pump'
      ? [causeText(held.pump), spreadText(held.pump)]
      : held.house.kind === 'told'
        ? [restText(held.house, model.units.value), lastWord]
        : [];
  return texts.filter((text) => text !== '').join(' ');
}

function pumpText({ stretch, pump }: Held, units: UnitChoice): string {
  const { ratio } = pump;
  const counted = kilowattHours(stretch.metered, units);
  const over = `over ${daysText(stretch.byDay.length)}`;
  if (ratio === null) {
    return `The meter counted ${counted} ${over}, but by the model the pump never runs. There is nothing to check it against.`;
  }
  return `${verdictOn(ratio)}: ${counted} counted ${over}, ${kilowattHours(stretch.modelled, units)} by the model.`;
}

function verdictOn(ratio: number): string {
  if (Math.abs(ratio - 1) <= alike) return `The model holds within ${percentText(alike)}`;
  const apart = percentText(Math.abs(ratio - 1));
  return `The meter shows ${apart} ${ratio > 1 ? 'more' : 'less'} than the model`;
}

function causeText({ ratio }: PumpCheck): string {
  if (ratio === null || Math.abs(ratio - 1) <= alike) return '';
  return ratio > 1
    ? 'The pump may run longer or faster than laid out, or draw more than the pad says, or something else hangs on this meter.'
    : 'The pump may run shorter or slower than laid out, or draw less than the pad says.';
}

function spreadText({ ratio, spread, wholeDays }: PumpCheck): string {
  if (ratio === null || spread === null) return '';
  const share = spread / ratio;
  const days = daysText(wholeDays, 'whole ');
  if (share < 0.01) return `From day to day it hardly varies (${days}).`;
  const size = `${percentText(share)}, standard deviation over ${days}`;
  return share > 0.5
    ? `From day to day it varies widely (${size}): the pump did not keep to one day.`
    : `From day to day it varies (${size}).`;
}

function houseText({ house, stretch }: Held): string {
  switch (house.kind) {
    case 'fewDays':
      return `Nothing can be told yet: the file covers ${daysText(house.wholeDays, 'whole ')}, and at least ${fewestDays} are needed.`;
    case 'longIntervals':
      return 'Nothing can be told: the intervals of this file are longer than an hour, and hide the minutes at which the pump changes its speed. A file of hours, half hours or quarters would show them.';
    case 'steadyPump':
      return stretch.modelled === 0
        ? 'Nothing can be told: by the model the pump never runs.'
        : 'Nothing can be told: by the model the pump draws the same all the time, so it cannot be told from the rest of the house. A day with two speeds would show it.';
    case 'noHold':
      return `Nothing can be told: the rest of the house draws so unevenly that of each modelled watt anything ${rangeText(house)} could be in the meter. More days would help, or shorter intervals, or a meter on the pump alone.`;
    case 'told':
      return toldText(house);
  }
}

const perWatt = (watts: number) => watts.toFixed(2);

/** Two standard errors to either side. */
function rangeText({ share, shareError }: HouseCheck): string {
  const [middle, reach] = [share ?? 0, 2 * (shareError ?? 0)];
  return `from ${perWatt(Math.max(0, middle - reach))} to ${perWatt(middle + reach)}${hardSpace}W`;
}

function toldText(house: HouseCheck): string {
  const { share, shareError } = house;
  if (share === null || shareError === null) return '';
  return `${houseVerdict(share, shareError)}: when the pump changes its speed, the meter moves ${perWatt(share)}${hardSpace}W for each watt of the model (likely ${rangeText(house)}).`;
}

function houseVerdict(share: number, error: number): string {
  if (Math.abs(share - 1) <= Math.max(alike, 2 * error)) {
    return 'The meter does not speak against the model';
  }
  return share > 1
    ? 'The pump draws more than the model says'
    : 'The pump draws less than the model says, or not all of it hangs on this meter';
}

const restText = ({ base }: HouseCheck, units: UnitChoice): string =>
  base !== null && base > 0
    ? `The rest of the house draws ${format('power', base, units, { digits: 2 })} on the mean.`
    : '';

const lastWord = 'This holds only if nothing else in the house keeps the same minutes as the pump.';

/** What the file holds: its stretch, its steps and what was odd in it. */
export function fileText(model: MeterModel): readonly string[] {
  const there = model.file.loaded.value;
  if (there === null) return [];
  const { intervals, step, count, notes } = there.result;
  const [first, last] = [intervals[0], intervals.at(-1)];
  if (first === undefined || last === undefined) return [];
  const until = dateOfMinute(last.start + last.duration - 1);
  const what = `${there.isInvented ? 'Invented file' : `“${there.name}”`}: ${count} intervals of ${lengthText(step)}, ${dateOfMinute(first.start)} to ${until}.`;
  return [what, ...notes.map((note) => noteSentence(note, 'meter'))];
}

const meanPower = (joules: number, { minutes }: MeterTotals) =>
  minutes > 0 ? joules / (60 * minutes) : Number.NaN;

/** Metered and modelled power by the hour of the day. */
export function hourTable(model: MeterModel): TableData {
  const units = model.units.value;
  const hours = model.held.value?.stretch.byHour ?? [];
  return {
    caption: 'Mean power by the hour of the day, all days together',
    columns: ['Hour', 'Metered', 'Pump as modelled'],
    rows: hours.map((hour, index) => [
      `${clock(60 * index)}–${index === 23 ? '24:00' : clock(60 * (index + 1))}`,
      format('power', meanPower(hour.metered, hour), units),
      format('power', meanPower(hour.modelled, hour), units),
    ]),
  };
}

/** More days than this are summed by the month. */
const mostDays = 62;

/** Metered and modelled energy by the day, or by the month where there are many. */
export function dayTable(model: MeterModel): TableData {
  const units = model.units.value;
  const days = model.held.value?.stretch.byDay ?? [];
  const byMonth = days.length > mostDays;
  const rows = new Map<string, { minutes: number; metered: number; modelled: number }>();
  for (const { day, minutes, metered, modelled } of days) {
    const date = dateOfMinute((day - 1) * 1440);
    const name = byMonth ? date.replace(/^\d+ /, '') : date;
    const row = rows.get(name) ?? { minutes: 0, metered: 0, modelled: 0 };
    row.minutes += minutes;
    row.metered += metered;
    row.modelled += modelled;
    rows.set(name, row);
  }
  return {
    caption: byMonth ? 'Energy by the month' : 'Energy by the day',
    columns: [
      byMonth ? 'Month' : 'Day',
      'Covered',
      'Metered',
      'Pump as modelled',
      'Metered of modelled',
    ],
    rows: [...rows].map(([name, { minutes, metered, modelled }]) => [
      name,
      lengthText(minutes),
      kilowattHours(metered, units),
      kilowattHours(modelled, units),
      modelled > 0 ? percentText(metered / modelled) : '–',
    ]),
  };
}
