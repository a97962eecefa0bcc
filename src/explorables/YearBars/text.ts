import type { TableData } from '#ui/charts/Table.tsx';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import { hardSpace } from '#units/numerals.ts';
import type { PlanDay, PlanYear, YearBarsModel } from './model.ts';

/** Money without cents: a year is not known better than that. */
export const money = (model: YearBarsModel, amount: number) =>
  formatMoney(amount, model.place.value.tariff.currency, { places: 0 });

const energy = (model: YearBarsModel, joules: number) =>
  format('energy', joules, model.units.value, { digits: 3 });

/** "8 h", "18.6 h". */
export const hours = (minutes: number) => `${Number((minutes / 60).toFixed(1))}${hardSpace}h`;

/** "1.1 years", "under a month", "never". */
export function paybackText(years: number | null): string {
  if (years === null) return 'never';
  if (years === 0) return 'at once';
  if (years < 1 / 12) return 'under a month';
  if (years > 50) return 'more than 50 years';
  return `${years.toFixed(1)}${hardSpace}years`;
}

/** What the slow day lacks against the fast one, in a sentence; empty when nothing. */
function lack(model: YearBarsModel, { at, minutes, wanted }: PlanDay, when: string): string {
  if (wanted <= 1440 || minutes === 0) return '';
  const speed = format('speed', at.speed, model.units.value, { places: 0 });
  if (!Number.isFinite(wanted)) return ` ${when}, ${speed} moves no water at all.`;
  const short = Math.round((1 - 1440 / wanted) * 100);
  return ` ${when}, ${speed} round the clock still moves ${short}${hardSpace}% less water than the one-speed pump.`;
}

/** The finding. */
export function sentence(model: YearBarsModel): string {
  const { oneSpeed, variable, saving, payback } = model;
  const outlay = money(model, model.outlay.value.value);
  const costs = `Over the year the one-speed pump takes ${energy(model, oneSpeed.value.energy)} and costs ${money(model, oneSpeed.value.cost)}; the variable-speed pump takes ${energy(model, variable.value.energy)} and costs ${money(model, variable.value.cost)}.`;
  const lacks =
    lack(model, variable.value.season, 'In the season') +
    lack(model, variable.value.rest, 'Out of season');
  const years = payback.value;
  const pays =
    years === null
      ? `It saves nothing, so the extra ${outlay} never come back.`
      : `It saves ${money(model, saving.value)} a year, so the extra ${outlay} are back ${years === 0 ? 'at once' : `in ${paybackText(years)}`}.`;
  return `${costs}${lacks} ${pays}`;
}

/** "8 h a day at 3450 rpm". */
const dayText = (model: YearBarsModel, { at, minutes }: PlanDay) =>
  `${hours(minutes)} a day at ${format('speed', at.speed, model.units.value, { places: 0 })}`;

/** What a plan does, for the key of the picture. */
export const planText = (model: YearBarsModel, plan: PlanYear) =>
  `${dayText(model, plan.season)} in the season, ${dayText(model, plan.rest)} out of it`;

/** Told with the speed of a part of the year. */
export function speedSpoken(model: YearBarsModel, part: 'season' | 'rest'): string {
  const day = model.variable.value[part];
  return `${dayText(model, day)}, ${format('power', day.at.power, model.units.value, { digits: 3 })}`;
}

/** Told with the hours of the one-speed pump. */
export const hoursSpoken = (model: YearBarsModel, part: 'season' | 'rest') =>
  `${hours(model.oneSpeed.value[part].minutes)} a day`;

export const shortMonth = (month: number) => (monthNames[month - 1] ?? '').slice(0, 3);

/** Which months frost falls in, in the order they come: "December, January and February". */
export function frostText(model: YearBarsModel): string {
  const cold = model.inFrost.value;
  const first = cold.findIndex((is, index) => is && !cold[(index + 11) % 12]);
  const names = monthNames
    .map((_, step) => (first + step) % 12)
    .flatMap((index) => (cold[index] ? [monthNames[index]] : []));
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

export function table(model: YearBarsModel): TableData {
  const { oneSpeed, variable, inSeason } = model;
  const row = (name: string, one: { energy: number; cost: number }, other: typeof one) => [
    name,
    energy(model, one.energy),
    money(model, one.cost),
    energy(model, other.energy),
    money(model, other.cost),
  ];
  const months = oneSpeed.value.months.map((one, index) => {
    const other = variable.value.months[index] ?? one;
    const part = inSeason.value[index] ? ', season' : '';
    return row(`${monthNames[index]}${part}`, one, other);
  });
  return {
    caption: 'Energy and price of both plans, month by month, daily charge included',
    columns: ['Month', 'One speed', 'Its price', 'Variable speed', 'Its price '],
    rows: [...months, row('The year', oneSpeed.value, variable.value)],
  };
}

/** Says what is invented and how it is worked out. */
export function note(model: YearBarsModel): string {
  const whose =
    model.source.value === 'mine'
      ? 'Your pump and tariff; the one-speed pump is yours, at full speed.'
      : 'Pump, pipes and prices are invented.';
  return `${whose} Both start at 08:00; the slow one runs until it has moved the same water. Frost runs from 22:00 to 08:00, with a variable speed at half of top, the default of an energy rule and no proof of protection. No interest, no change of prices.`;
}
