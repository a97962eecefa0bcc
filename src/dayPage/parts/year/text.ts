/** The words of the year. */

import type { ShortNeed } from '#core/year/yearBeside.ts';
import { kilowattHours } from '#dayPage/day/text.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import type { Quantity as Mark } from '#ui/charts/marks.tsx';
import { shownUnit } from '#ui/charts/quantityAxis.ts';
import { asStored, type ShownUnit } from '#ui/charts/scale.ts';
import { withUnit } from '#units/choice.ts';
import { coinOf } from '#units/coin.ts';
import { format, formatIn, symbolFor } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import { grouped, hardSpace } from '#units/numerals.ts';
import { limitShortNames, needName } from '#words/needsAndLimits.ts';
import type { Amounts, BesideKind, OtherPlan, YearBeside } from './beside.ts';
import type { Measure, YearModel } from './model.ts';

export const shortMonths = monthNames.map((name) => name.slice(0, 3));

export const otherPlanNames: Readonly<Record<OtherPlan, string>> = {
  usual: 'the usual three-block day',
  old: 'your old day',
  sheet: 'the day on your sheet',
};

/** A year beside the reader's, as it stands in a sentence. */
export function besideName(model: YearModel, kind: BesideKind): string {
  switch (kind) {
    case 'plan':
      return `${otherPlanNames[model.otherPlan.value]} all year`;
    case 'oneSpeed':
      return 'top speed alone, for the same water';
    case 'oldPump':
      return 'the one-speed pump before';
  }
}

/** The same at the head of a column, or on a bar. */
export function besideTitle(model: YearModel, kind: BesideKind): string {
  switch (kind) {
    case 'plan':
      return capital(otherPlanNames[model.otherPlan.value]);
    case 'oneSpeed':
      return 'One speed, same water';
    case 'oldPump':
      return 'One-speed pump before';
  }
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Sums of a year: cents would say more than is known, except of small sums. */
export function say(model: YearModel, amount: number): string {
  return formatMoney(amount, model.currency.value, Math.abs(amount) >= 100 ? { places: 0 } : {});
}

export const days = (count: number): string =>
  `${count}${hardSpace}${count === 1 ? 'day' : 'days'}`;

/** "3.4 years"; a time too short for a tenth of a year in whole months. */
export function years(count: number): string {
  if (count < 1 / 24) return 'less than a month';
  if (count < 0.15) {
    const months = Math.round(12 * count);
    return `${months}${hardSpace}${months === 1 ? 'month' : 'months'}`;
  }
  const number = count.toFixed(count < 10 ? 1 : 0);
  return `${number}${hardSpace}${number === '1.0' ? 'year' : 'years'}`;
}

export const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** Needs that a sentence names; more of them it counts. */
const mostNamed = 4;

/** "Skimming on 31 days and Heater on 12 days"; the worst first where there are many. */
export function shortText(short: readonly ShortNeed<NamedNeed>[]): string {
  const say = (each: ShortNeed<NamedNeed>) => `${needName(each.need)} on ${days(each.days)}`;
  if (short.length <= mostNamed) return joined(short.map(say));
  const worst = [...short].sort((one, other) => other.days - one.days).slice(0, mostNamed - 1);
  return joined([...worst.map(say), `${short.length - worst.length} more needs`]);
}

const gasUnit = (model: YearModel) => (model.units.value.preset === 'us' ? 'lb' : 'kg');

const mass = (model: YearModel, kilograms: number): string =>
  formatIn('mass', kilograms, gasUnit(model));

/** The finding, in a few sentences. */
export function findingText(model: YearModel): string {
  const mine = model.mine.value;
  if (mine === null)
    return 'The pad does not say enough yet for a year: it needs pump, pool and prices.';
  if (!model.runs.value) return nothingRuns(model);
  const units = model.units.value;
  const takes = `The year ${model.number.value} takes ${kilowattHours(mine.energy, units)} and costs ${say(model, mine.cost)}; it moves ${format('volume', mine.volumeMoved, units, { digits: 3 })}.`;
  // What must not be, and what is not done, come before what is saved.
  return [
    stopText(model),
    takes,
    lacksText(model),
    besideText(model),
    gasText(model),
    worthText(model),
  ]
    .filter((words) => words !== '')
    .join(' ');
}

const nothingRuns = ({ number }: YearModel): string =>
  `Nothing runs in the year ${number.value} yet. Lay blocks on the sheet above, or give a season a day of its own below.`;

/** What nothing may cross. */
function stopText({ crossed }: YearModel): string {
  const hard = crossed.value.find(({ limit }) => limit.hard);
  if (hard === undefined) return '';
  return `Stop: on ${days(hard.days)} the flow is above what is marked on the suction covers. Do not run this plan.`;
}

function besideText(model: YearModel): string {
  const [mine, other] = [model.mine.value, model.shown.value];
  if (mine === null || other === null) return '';
  const saved = other.cost - mine.cost;
  const name = besideName(model, other.kind);
  const but = extraText(other);
  if (Math.abs(saved) < 50 * coinOf(model.currency.value))
    return `It costs as much as ${name}${but}.`;
  return saved > 0
    ? `It costs ${say(model, saved)} less than ${name}${but}.`
    : `It costs ${say(model, -saved)} more than ${name}${but}.`;
}

/** Where one speed cannot move the very same water. */
function extraText({ extra }: YearBeside): string {
  const share = `${Math.round(100 * Math.abs(extra))}${hardSpace}%`;
  if (extra < -0.01) return `, which moves ${share} less although it runs round the clock`;
  return extra > 0.01 ? `, which moves ${share} more, because in frost it has no slower speed` : '';
}

function gasText(model: YearModel): string {
  const gas = model.gas.value;
  return gas === null ? '' : `With it comes ${mass(model, gas)} of greenhouse gas.`;
}

function worthText(model: YearModel): string {
  const worth = model.worth.value;
  if (worth === null) return '';
  const { outlay, payback, present, lifetime } = worth;
  if (payback === null) return `The ${say(model, outlay)} for the pump never come back this way.`;
  const back = `The ${say(model, outlay)} for the pump are back in ${years(payback)}.`;
  if (present === null || lifetime === null) return back;
  const over = `Over ${years(lifetime)}, with interest, it is worth ${say(model, Math.abs(present))}`;
  return `${back} ${over} ${present >= 0 ? 'more' : 'less'} than it costs.`;
}

function lacksText({ crossed, short }: YearModel): string {
  const of = short.value;
  const soft = crossed.value.filter(({ limit }) => !limit.hard);
  const named = soft.map(
    (each) => `that on ${limitShortNames[each.limit.kind]} on ${days(each.days)}`,
  );
  return [
    ...(of.length > 0 ? [`Short of their hours: ${shortText(of)}.`] : []),
    ...(named.length > 0 ? [`Limits crossed: ${joined(named)}.`] : []),
  ].join(' ');
}

/** How a measure of the year is drawn and told. */
export interface MeasureWords {
  readonly name: string;
  /** Over the axis. */
  readonly title: string;
  readonly mark: Mark;
  readonly unit: string;
  readonly shownAs: ShownUnit;
  /** Null where it is not known. */
  readonly of: (amounts: Amounts) => number | null;
  readonly say: (value: number) => string;
}

export const measureNames: Readonly<Record<Measure, string>> = {
  money: 'Money',
  energy: 'Energy',
  water: 'Water',
  hours: 'Hours',
  gas: 'Greenhouse gas',
};

export const hourText = (minutes: number) => `${grouped((minutes / 60).toFixed(0))}${hardSpace}h`;

/** All that is to be said of a measure in the reader's units. */
export function measureWords(model: YearModel, which: Measure): MeasureWords {
  const units = model.units.value;
  const name = measureNames[which];
  switch (which) {
    case 'money':
      return {
        name,
        title: 'Price of the month',
        mark: 'money',
        unit: model.currency.value.sign,
        shownAs: asStored,
        of: ({ cost }) => cost,
        say: (amount) => say(model, amount),
      };
    case 'energy':
      return {
        name,
        title: 'Energy of the month',
        mark: 'power',
        unit: symbolFor(units, 'energy'),
        shownAs: shownUnit('energy', units),
        of: ({ energy }) => energy,
        say: (energy) => kilowattHours(energy, units),
      };
    case 'water':
      return {
        name,
        title: 'Water moved in the month',
        mark: 'flow',
        unit: `1000${hardSpace}${symbolFor(units, 'volume')}`,
        shownAs: thousands(shownUnit('volume', units)),
        of: ({ water }) => water,
        say: (water) => format('volume', water, units, { digits: 3 }),
      };
    case 'hours':
      return {
        name,
        title: 'Hours of running in the month',
        mark: 'plain',
        unit: 'h',
        shownAs: { show: (minutes) => minutes / 60, store: (hours) => hours * 60 },
        of: ({ minutes }) => minutes,
        say: hourText,
      };
    case 'gas':
      return {
        name,
        title: 'Greenhouse gas of the month',
        mark: 'plain',
        unit: gasUnit(model),
        shownAs: shownUnit('mass', withUnit(units, 'mass', gasUnit(model))),
        of: model.gasOf,
        say: (kilograms) => mass(model, kilograms),
      };
  }
}

function thousands({ show, store }: ShownUnit): ShownUnit {
  return { show: (value) => show(value) / 1000, store: (shown) => store(1000 * shown) };
}
