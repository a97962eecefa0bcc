import { priceDay } from '#core/tariff/pricing.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { format, symbolFor } from '#units/format.ts';
import { formatMoney, formatPrice, moneyOf } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import type { HourHuntModel, Worked } from './model.ts';

const names = {
  1: ['on'],
  2: ['slow', 'fast'],
  3: ['slow', 'middle', 'fast'],
} as const;

/** What a level is called: "off", "slow", "middle", "fast". */
export function levelName(model: HourHuntModel, level: number): string {
  const count = Math.min(Math.max(model.place.value.settings.length, 1), 3) as 1 | 2 | 3;
  return level === 0 ? 'off' : (names[count][level - 1] ?? 'on');
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

/** "Slow, 1000 rpm"; with what it moves and draws under it. */
export function levels(model: HourHuntModel) {
  const units = model.units.value;
  const off = { id: '0', label: 'Off', gives: '' };
  const on = model.place.value.settings.map(({ speed, point }, place) => ({
    id: String(place + 1),
    label: `${capital(levelName(model, place + 1))}, ${format('speed', speed, units, { places: 0 })}`,
    gives: `${format('flow', point.kind === 'flowing' ? point.flow : 0, units)} for ${format('power', point.power, units, { digits: 3 })}`,
  }));
  return [off, ...on];
}

export const currencyOf = (model: HourHuntModel) => model.place.value.tariff.currency;
const moneyIn = (model: HourHuntModel) =>
  moneyOf(
    currencyOf(model),
    model.prices.value.map((price) => ({ price })),
  );
export const money = (model: HourHuntModel, amount: number) => formatMoney(amount, moneyIn(model));

/** "2 h", "1 h 30 min". */
export function hoursText(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), Math.round(minutes % 60)];
  if (hours === 0) return `${rest}${hardSpace}min`;
  return `${hours}${hardSpace}h${rest === 0 ? '' : ` ${rest}${hardSpace}min`}`;
}

export interface NeedLine {
  readonly id: string;
  readonly name: string;
  readonly asks: string;
  readonly met: boolean;
  readonly state: string;
  /** How much of it is there, 0 to 1. */
  readonly share: number;
}

function windowText(windows: readonly { start: number; end: number }[]): string {
  if (windows.length === 0) return '';
  return `, ${windows.map(({ start, end }) => `${clock(start)}–${clock(end)}`).join(' or ')}`;
}

/** Each need with how it stands, the water last. */
export function needLines(model: HourHuntModel): NeedLine[] {
  const units = model.units.value;
  const { volume, turnovers } = model.place.value;
  const { report, shortWater } = model.here.value;
  const lines = report.needs.map(
    ({ need, servedMinutes, shortMinutes, met }): NeedLine => ({
      id: need.id,
      name: need.name,
      asks: `${format('flow', need.leastFlow, units)} or more for ${hoursText(need.minutes)}${windowText(need.windows)}`,
      met,
      state: met
        ? `met, ${hoursText(servedMinutes)}`
        : `short by ${hoursText(shortMinutes)}, has ${hoursText(servedMinutes)}`,
      share: need.minutes > 0 ? Math.min(1, servedMinutes / need.minutes) : 1,
    }),
  );
  if (turnovers === null) return lines;
  const wanted = turnovers * volume;
  const moved = format('volume', report.volumeMoved, units);
  return [
    ...lines,
    {
      id: 'water',
      name: 'Water through the filter',
      asks: `${format('volume', wanted, units)}, ${Number(turnovers.toFixed(2))} turnovers`,
      met: shortWater === 0,
      state:
        shortWater === 0
          ? `met, ${moved}`
          : `short by ${format('volume', shortWater, units)}, has ${moved}`,
      share: wanted > 0 ? Math.min(1, report.volumeMoved / wanted) : 1,
    },
  ];
}

/** What keeps a day from being one, each in a few words. */
function faults(model: HourHuntModel): string[] {
  const units = model.units.value;
  const { report, shortWater } = model.here.value;
  const short = report.needs
    .filter(({ met }) => !met)
    .map(({ need, shortMinutes }) => `${need.name} is short by ${hoursText(shortMinutes)}`);
  const crossed = new Set(report.crossings.map(({ limit }) => limit.name));
  return [
    ...short,
    ...(shortWater > 0 ? [`the water is short by ${format('volume', shortWater, units)}`] : []),
    ...[...crossed].map((name) => `it crosses a limit (${name})`),
    ...(report.quietCrossings.length > 0 ? ['it is too fast in the quiet hours'] : []),
  ];
}

const joined = (parts: readonly string[]) =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

function against(model: HourHuntModel, day: Worked): string {
  const usual = model.usual.value.price.energyCost;
  const here = day.price.energyCost;
  const change = here - usual;
  if (Math.abs(change) < 0.005) return 'as much as the usual day';
  const share = usual > 0 ? `, ${Math.round((Math.abs(change) / usual) * 100)}${hardSpace}%` : '';
  return `${money(model, Math.abs(change))} ${change < 0 ? 'less' : 'more'} than the usual day${share}`;
}

/** The finding. */
export function sentence(model: HourHuntModel): string {
  const { here, best } = model;
  const day = here.value;
  const costs = `The energy of this day costs ${money(model, day.price.energyCost)}, ${against(model, day)}.`;
  const stands = day.sound
    ? 'Every need is met.'
    : `But the day isn’t good enough: ${joined(faults(model))}.`;
  const found = best.value;
  const kept =
    found === undefined
      ? 'No good day has been found yet.'
      : `Best found so far: ${money(model, found.price.energyCost)}.`;
  return `${costs} ${stands} ${kept}`;
}

/** The price of an hour with every place it has: "$0.2245", "70.50 HUF". */
const priceText = (model: HourHuntModel, hour: number) =>
  formatPrice(model.prices.value[hour] ?? 0, moneyIn(model)).replace(/ per.*$/, '');

/** Spoken with an hour: "slow, $0.18 a kilowatt-hour". */
export function hourSpoken(model: HourHuntModel, hour: number): string {
  const level = levelName(model, model.hours.value[hour] ?? 0);
  return `${level}, ${priceText(model, hour)} a kilowatt-hour`;
}

export const hourLabel = (hour: number) => `${clock(hour * 60)} to ${clock((hour + 1) * 60)}`;

export function kindChoices(model: HourHuntModel) {
  return model.kinds.value.map(({ season, dayType }, place) => ({
    id: String(place),
    label: `${season}, ${dayType.toLowerCase()}`,
  }));
}

/** How high the price of each hour stands among the day's own: 0 the lowest, then up in steps. */
export function priceSteps(prices: readonly number[]): number[] {
  const order = [...new Set(prices)].sort((a, b) => a - b);
  return prices.map((price) => Math.min(order.indexOf(price), 3));
}

export function table(model: HourHuntModel): TableData {
  const units = model.units.value;
  const { hours, report } = model.here.value;
  const { tariff, settings } = model.place.value;
  const { date } = model.kind.value;
  const bare = { withUnit: false };
  return {
    caption: `The day hour by hour; in all ${format('energy', report.energy, units, { digits: 3 })} for ${money(model, model.here.value.price.energyCost)}`,
    columns: [
      'Hour',
      'Price per kWh',
      'Runs',
      `Flow, ${symbolFor(units, 'flow')}`,
      `Power, ${symbolFor(units, 'power')}`,
      'Cost',
    ],
    rows: hours.map((level, hour) => {
      const point = settings[level - 1]?.point;
      const power = point?.power ?? 0;
      const span = { start: hour * 60, end: (hour + 1) * 60, power };
      return [
        hourLabel(hour),
        priceText(model, hour),
        levelName(model, level),
        format('flow', point?.kind === 'flowing' ? point.flow : 0, units, bare),
        format('power', power, units, bare),
        formatMoney(priceDay(tariff, date, [span]).energyCost, moneyIn(model), {
          places: moneyIn(model).places + 1,
        }),
      ];
    }),
  };
}

/** Says what is invented and what is left out. */
export function note(model: HourHuntModel): string {
  const charge = model.place.value.tariff.dailyCharge;
  const left =
    charge === 0
      ? ''
      : ` The daily charge of ${money(model, charge)} is left out: no day changes it.`;
  return model.source.value === 'mine'
    ? `Your pad, with the speeds its needs ask for, in whole hours.${left}`
    : `Pump, pool, needs and prices are invented. A run under an hour does not count.${left}`;
}
