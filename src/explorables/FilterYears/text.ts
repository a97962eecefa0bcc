import type { TableData } from '#ui/charts/Table.tsx';
import type { Reading } from '#ui/figure/Readings.tsx';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import { type CycleDay, daysOfYear, type FilterYear, type YearSum } from './ask.ts';
import type { FilterYearsModel } from './model.ts';

/** How the two filters are called. */
export const filterNames = (model: FilterYearsModel): readonly [string, string] =>
  model.source.value === 'mine' && model.own.value !== undefined
    ? ['your filter', 'one of twice its area']
    : ['the small filter', 'the large filter'];

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const money = (model: FilterYearsModel, amount: number) =>
  formatMoney(amount, model.basis.value.currency, { places: Math.abs(amount) < 10 ? 2 : 0 });
const energy = (model: FilterYearsModel, joules: number) =>
  format('energy', joules, model.units.value, { digits: 3 });
const volume = (model: FilterYearsModel, cubicMetres: number) =>
  format('volume', cubicMetres, model.units.value, { digits: 3 });
const flow = (model: FilterYearsModel, value: number) => format('flow', value, model.units.value);
const power = (model: FilterYearsModel, value: number) =>
  format('power', value, model.units.value, { digits: 3 });
const speed = (model: FilterYearsModel, value: number) =>
  format('speed', value, model.units.value, { places: 0 });
const hours = (minutes: number) => `${(minutes / 60).toFixed(1)}${hardSpace}h`;
const hoursADay = ({ minutes }: YearSum) => hours(minutes / daysOfYear);
const percent = (share: number) => `${Math.round(100 * share)}${hardSpace}%`;
const times = (count: number) => `${count}${hardSpace}${count === 1 ? 'cleaning' : 'cleanings'}`;

const days = (count: number) => `${count}${hardSpace}${count === 1 ? 'day' : 'days'}`;
const every = (interval: number) => `every ${interval === 1 ? 'day' : days(interval)}`;

/** Just cleaned, and on the last day before the next cleaning. */
function ends({ cycle }: FilterYear): readonly [CycleDay, CycleDay] {
  const [first, last] = [cycle[0], cycle.at(-1)];
  if (first === undefined || last === undefined)
    throw new RangeError('A cycle has a day at least.');
  return [first, last];
}

const perWater = (day: CycleDay) => day.power / day.flow;

/** The speed and hours left alone: less water, fewer watts, and each gallon at a greater price. */
function leftText(model: FilterYearsModel): string {
  const { filters } = model.worked.value;
  const [name, otherName] = filterNames(model);
  const [first, last] = ends(filters[0]);
  const less = 1 - filters[0].water / filters[1].water;
  const [drawn, drawnLast] = [power(model, first.power), power(model, last.power)];
  const draw =
    drawn === drawnLast
      ? `The draw stays at ${drawn}`
      : `The draw ${last.power < first.power ? 'sinks too,' : 'goes'} from ${drawn} to ${drawnLast}`;
  const beside =
    Math.abs(less) < 0.005
      ? `Over the year it moves as much as with ${otherName}.`
      : `Over the year it moves ${percent(Math.abs(less))} ${less > 0 ? 'less' : 'more'} than with ${otherName}.`;
  return `Left alone at ${speed(model, model.speed.value.value)}, the flow through ${name} sinks from ${flow(model, first.flow)} to ${flow(model, last.flow)} before each cleaning. ${draw}; but the same water takes ${percent(perWater(last) / perWater(first) - 1)} more energy. ${beside}`;
}

/** The water kept, by hours or by speed. */
function keptText(model: FilterYearsModel): string {
  const { filters, asked } = model.worked.value;
  const [name, otherName] = filterNames(model);
  const [mine, other] = filters;
  const [first, last] = ends(mine);
  const water = `${volume(model, asked)} a day`;
  const work =
    model.way.value === 'hours'
      ? `${hours(first.minutes)} just cleaned and ${hours(last.minutes)} before the next cleaning`
      : `at ${speed(model, first.speed)} and ${power(model, first.power)} just cleaned, at ${speed(model, last.speed)} and ${power(model, last.power)} before the next cleaning: ${percent(last.speed / first.speed - 1)} more speed, ${percent(last.power / first.power - 1)} more power`;
  const saved = mine.energy - other.energy;
  const beside =
    Math.abs(saved) < 3.6e6
      ? `Over the year that takes as much energy as with ${otherName}.`
      : `Over the year that takes ${energy(model, mine.energy)}, ${energy(model, Math.abs(saved))} ${saved > 0 ? 'more' : 'less'} than with ${otherName}.`;
  return `To move ${water} through ${name} the pump must run ${work}. ${beside}${lackText(model)}`;
}

function lackText(model: FilterYearsModel): string {
  const names = filterNames(model);
  const top =
    model.way.value === 'hours' ? 'round the clock' : speed(model, model.basis.value.topSpeed);
  return model.worked.value.filters
    .map(({ lackDays }, at) =>
      lackDays === 0
        ? ''
        : ` With ${names[at]} even ${top} is too little on ${days(lackDays)}: clean it sooner.`,
    )
    .join('');
}

/** What cleaning the first filter twice as often would save, and for how many cleanings. */
function oftenerText(model: FilterYearsModel): string {
  const { filters, oftener } = model.worked.value;
  const [mine] = filters;
  const more = oftener.cleanings - mine.cleanings;
  const [name] = filterNames(model);
  if (more <= 0) return '';
  const lead = ` Cleaned ${every(oftener.interval)} instead of ${every(model.filters[0].interval.value.value)}, ${name}`;
  if (model.way.value === 'left') {
    return `${lead} would let ${volume(model, oftener.water - mine.water)} more through, for ${times(more)} more.`;
  }
  const [saved, gained] = [mine.energy - oftener.energy, mine.cost - oftener.cost];
  if (saved < 3.6e6) return '';
  return `${lead} would save ${energy(model, saved)} and ${money(model, gained)} a year, for ${times(more)} more: ${money(model, gained / more)} each.`;
}

/** The finding. */
export function sentence(model: FilterYearsModel): string {
  const { filters } = model.worked.value;
  if (filters.some((each) => ends(each).some((day) => day.flow === 0))) {
    return `At ${speed(model, model.speed.value.value)} no water moves. Turn the pump up.`;
  }
  const told = model.way.value === 'left' ? leftText(model) : keptText(model);
  return `${told}${oftenerText(model)}`;
}

/** Both years in figures. */
export function readings(model: FilterYearsModel): readonly Reading[] {
  const { filters } = model.worked.value;
  const names = filterNames(model);
  return filters.map((each, at) => ({
    id: `filter-${at}`,
    label: `${capital(names[at] ?? '')}, the year`,
    of: 'money',
    value: money(model, each.cost),
    note: `${energy(model, each.energy)}, ${volume(model, each.water)}, ${hoursADay(each)} a day, ${times(each.cleanings)}`,
  }));
}

/** The two years beside each other. */
export function table(model: FilterYearsModel): TableData {
  const { filters } = model.worked.value;
  const row = (name: string, cell: (each: FilterYear) => string) => [name, ...filters.map(cell)];
  const both = (name: string, cell: (day: CycleDay) => string) =>
    row(name, (each) => ends(each).map(cell).join(' to '));
  return {
    caption: 'The same pump and plan under two filters, over a year',
    columns: ['What', ...filterNames(model).map(capital)],
    rows: [
      row('Energy', (each) => energy(model, each.energy)),
      row('Its price, without daily charges', (each) => money(model, each.cost)),
      row('Water moved', (each) => volume(model, each.water)),
      row('Hours a day, on average', hoursADay),
      row('Cleanings', ({ cleanings }) => String(cleanings)),
      both('Flow, just cleaned to due', (day) => flow(model, day.flow)),
      both('Power', (day) => power(model, day.power)),
      both('Speed', (day) => speed(model, day.speed)),
      both('Hours of the day', (day) => hours(day.minutes)),
    ],
  };
}

/** Spoken with the days between cleanings. */
export function spokenInterval(model: FilterYearsModel, at: 0 | 1): string {
  const { cleanings, energy: taken } = model.worked.value.filters[at];
  const { interval } = model.filters[at];
  return `${interval.value.value} days, ${times(cleanings)}, ${energy(model, taken)}`;
}

/** Says what is invented and how it is worked out. */
export function note(model: FilterYearsModel): string {
  const whose =
    model.source.value === 'mine' && model.own.value !== undefined
      ? 'Your pump, pipes, prices and filter; the second filter is the same with twice the area, so the water in it is half as fast and it takes twice as long to get so dirty.'
      : 'Pump, pipes, prices and filters are invented; the large filter is the small one with twice the area.';
  return `${whose} Dirt gathers evenly by the day, and the head rises with it in a straight line. The first cleaning is on 1 January. The water asked for is what the easier filter lets through just cleaned. Daily charges, and what a cleaning costs in water and work, are left out.`;
}
