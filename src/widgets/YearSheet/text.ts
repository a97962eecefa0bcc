/** The words of the year. */
import type { TableData } from '#charts/Table.tsx';
import type { SeasonPlan } from '#pad/schema.ts';
import { format, formatIn } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import { hardSpace } from '#units/numerals.ts';
import { kilowattHours, lengthText } from '#widgets/DaySheet/text.ts';
import type { OtherYear, YearModel } from './model.ts';

export const shortMonths = monthNames.map((name) => name.slice(0, 3));

export const otherYearNames: Readonly<Record<OtherYear['kind'], string>> = {
  oldPump: 'the one-speed pump before',
  usual: 'the usual three-block day all year',
  oneSpeed: 'one speed, flat out, all year',
  old: 'your old day all year',
};

const say = (model: YearModel, amount: number) => formatMoney(amount, model.currency.value);
const years = (count: number) =>
  `${count.toFixed(count < 10 ? 1 : 0)}${hardSpace}${count.toFixed(1) === '1.0' ? 'year' : 'years'}`;

/** The finding, in a few sentences. */
export function findingText(model: YearModel): string {
  const mine = model.mine.value;
  if (mine === null)
    return 'The pad does not say enough yet for a year: it needs pump, pool and prices.';
  const units = model.units.value;
  const takes = `The year ${model.number.value} takes ${kilowattHours(mine.energy, units)} and costs ${say(model, mine.cost)}; it moves ${format('volume', mine.volumeMoved, units, { digits: 3 })}.`;
  return [takes, besideText(model), gasText(model), worthText(model), lacksText(model)]
    .filter((words) => words !== '')
    .join(' ');
}

function besideText(model: YearModel): string {
  const [mine, other] = [model.mine.value, model.other.value];
  if (mine === null || other === null) return '';
  const saved = other.cost - mine.cost;
  const name = otherYearNames[other.kind];
  if (Math.abs(saved) < 0.5) return `That is as much as ${name}.`;
  return saved > 0
    ? `That is ${say(model, saved)} less than ${name}.`
    : `That is ${say(model, -saved)} more than ${name}.`;
}

function gasText({ gas, units }: YearModel): string {
  return gas.value === null
    ? ''
    : `With it comes ${formatIn('mass', gas.value, units.value.preset === 'us' ? 'lb' : 'kg')} of greenhouse gas.`;
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

function lacksText({ mine }: YearModel): string {
  const report = mine.value;
  if (report === null) return '';
  const days = (count: number) => `${count}${hardSpace}${count === 1 ? 'day' : 'days'}`;
  return [
    ...(report.shortDays > 0 ? [`On ${days(report.shortDays)} a need stays short.`] : []),
    ...(report.crossedDays > 0 ? [`On ${days(report.crossedDays)} a limit is crossed.`] : []),
  ].join(' ');
}

/** The months as a table. */
export function monthTable(model: YearModel): TableData {
  const units = model.units.value;
  const [mine, other] = [model.mine.value, model.other.value];
  return {
    caption: `The year ${model.number.value}, month by month`,
    columns: [
      'Month',
      'Energy',
      'Price',
      ...(other === null ? [] : [`Price, ${otherYearNames[other.kind]}`]),
      'Water moved',
      'Frost',
      'Days a need is short',
    ],
    rows: (mine?.byMonth ?? []).map((month, index) => [
      monthNames[index] ?? '',
      kilowattHours(month.energy, units),
      say(model, month.cost),
      ...(other === null ? [] : [say(model, other.months[index]?.cost ?? 0)]),
      format('volume', month.volumeMoved, units, { digits: 3 }),
      lengthText(month.frostMinutes),
      String(month.shortDays),
    ]),
  };
}

/** "from 15 May: 2 blocks, 24 h a day". */
export function planText({ name, from, blocks }: SeasonPlan): string {
  const minutes = blocks.reduce(
    (sum, { start, end }) => sum + (((end - start + 1439) % 1440) + 1),
    0,
  );
  const what =
    blocks.length === 0
      ? 'the pump rests'
      : `${blocks.length} ${blocks.length === 1 ? 'block' : 'blocks'}, ${lengthText(minutes)} a day`;
  const title = name === '' ? '' : `${name}, `;
  return `${title}from ${from.day} ${monthNames[from.month - 1]}: ${what}`;
}
