import { z } from 'zod';
import { minutesAt } from '#core/day/day.ts';
import { cheapestDay, type FoundDay } from '#core/planner/cheapestDay.ts';
import { hydraulicPower, lineCurrent, shaftPower } from '#core/pump/power.ts';
import { energyPerVolume, priceDays } from '#core/tariff/pricing.ts';
import type { Json } from '../caseFile.ts';
import { formed, need, number, row } from '../grammar.ts';
import { fromCanonical, toCanonical } from '../units.ts';

/** "23:17" as minutes after midnight; "24:00" is the end of the day. */
const clock = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'is no time of day')
  .transform((text) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3)));
const span = { start: clock, end: clock };

const blocks = formed(z.array(z.strictObject({ ...span, power_w: z.number() })));
const tariff = formed(z.array(z.strictObject({ ...span, price_per_kwh: z.number() })));

interface PricedDays {
  readonly blocks: ReturnType<typeof blocks.read>;
  readonly tariff: ReturnType<typeof tariff.read>;
  readonly days?: number | undefined;
  readonly daily_charge?: number | undefined;
}

/** Any date will do: these tariffs hold every day. */
const someDay = { year: 2027, month: 1, day: 1 };

function priced({ days = 1, daily_charge: dailyCharge = 0, ...given }: PricedDays) {
  const bands = given.tariff.map(({ price_per_kwh: price, ...times }) => ({ ...times, price }));
  const dayType = { id: 'all', name: 'all', weekdays: [0, 1, 2, 3, 4, 5, 6], bands };
  const season = { id: 'all', name: 'all', from: { month: 1, day: 1 }, dayTypes: [dayType] };
  const spans = given.blocks.map(({ power_w: power, ...times }) => ({ ...times, power }));
  return priceDays({ currency: '', dailyCharge, seasons: [season] }, someDay, days, spans);
}

const line = { voltage: number('v'), power_factor: number() };
const moving = { flow: number('gpm'), power: number('w') };
type Moving = Readonly<Record<keyof typeof moving, number>>;
const perVolume = ({ power, flow }: Moving) => energyPerVolume(power, flow);

export const electricity = [
  row(
    { blocks, tariff },
    { days: number(), daily_charge: number() },
    {
      energy_kwh: (given) => priced(given).energy,
      cost: (given) => priced(given).cost,
    },
  ),
  row(
    { ...line, current: number('a') },
    {},
    {
      power_w: ({ voltage, current, power_factor }) =>
        current / lineCurrent(1, voltage, power_factor),
    },
  ),
  row(
    { ...line, power: number('w') },
    {},
    {
      current_a: ({ voltage, power, power_factor }) => lineCurrent(power, voltage, power_factor),
    },
  ),
  row(
    { shaft_power: number('hp') },
    { efficiency: number() },
    {
      power_w: ({ shaft_power, efficiency }) => shaftPower(shaft_power, efficiency ?? 1),
    },
  ),
  row(
    { flow: number('gpm'), head: number('ft'), density: number('kg_m3') },
    {},
    {
      power_w: ({ flow, head, density }) => hydraulicPower(density, flow, head),
    },
  ),
  row(
    moving,
    { price: number('per_kwh') },
    {
      energy_kwh_per_1000_gal: perVolume,
      cost_per_1000_gal: ({ price, ...given }) =>
        fromCanonical('energy_kwh', perVolume(given)) * need(price, 'price'),
    },
  ),
];

const speeds = formed(
  z.array(z.strictObject({ name: z.string(), flow_gpm: z.number(), power_w: z.number() })),
);
const hours = z.array(z.int().min(0).max(23));
const needs = formed(
  z.array(z.strictObject({ min_flow_gpm: z.number(), min_hours: z.number(), hours })),
);
const quiet = formed(z.array(z.strictObject({ hours, max_flow_gpm: z.number() })));

const wishes = {
  min_volume: number('gal'),
  needs,
  quiet,
  max_flow: number('gpm'),
  always_on: formed(z.boolean()),
  max_changes: number(),
};
type Wishes = {
  readonly [K in keyof typeof wishes]?: ReturnType<(typeof wishes)[K]['read']> | undefined;
};
interface Optimum extends Wishes {
  readonly speeds: ReturnType<typeof speeds.read>;
  readonly price: readonly number[];
}

/** Hour h runs from h:00 to h+1:00. */
const hourFrom = (hour: number) => ({ start: hour * 60, end: hour * 60 + 60 });
const gallonsPerMinute = (value: number): number => toCanonical('flow_gpm', value);

/** In the order of their flows; only that order matters, so each has its place as ratio. */
const rowsOf = ({ speeds: list }: Optimum) =>
  list
    .toSorted((one, other) => one.flow_gpm - other.flow_gpm)
    .map(({ name, flow_gpm, power_w: power }, place) => ({
      name,
      ratio: (place + 1) / list.length,
      flow: gallonsPerMinute(flow_gpm),
      power,
    }));

/** The cheapest day on whole hours; null where there is none. */
function cheapest(given: Optimum): FoundDay | null {
  const rows = rowsOf(given);
  const below = (flow: number): number =>
    rows.findLast((each) => each.flow <= gallonsPerMinute(flow) * (1 + 1e-9))?.ratio ?? 0;
  const result = cheapestDay({
    speeds: rows,
    mayStop: given.always_on !== true,
    leastVolume: given.min_volume ?? 0,
    needs: (given.needs ?? []).map((each, place) => ({
      id: `need ${place + 1}`,
      leastFlow: gallonsPerMinute(each.min_flow_gpm),
      minutes: each.min_hours * 60,
      windows: each.hours.map(hourFrom),
      shortestRun: 0,
    })),
    limits: given.max_flow === undefined ? [] : [{ id: 'flow', greatestFlow: given.max_flow }],
    quiet: (given.quiet ?? []).flatMap((each) =>
      each.hours.map((hour) => ({ ...hourFrom(hour), ceiling: below(each.max_flow_gpm) })),
    ),
    prices: given.price.map((price, hour) => ({ ...hourFrom(hour), price })),
    mostChanges: given.max_changes,
    minuteStep: 60,
  });
  if (result.kind === 'unsettled') throw new Error('the search was not settled');
  return result.kind === 'found' ? result : null;
}

const ofDay = (value: (day: FoundDay, given: Optimum) => Json) => (given: Optimum) => {
  const day = cheapest(given);
  return day === null ? null : value(day, given);
};

const hoursPerSpeed = ({ blocks: plan }: FoundDay, given: Optimum) =>
  Object.fromEntries(rowsOf(given).map(({ name, ratio }) => [name, minutesAt(plan, ratio) / 60]));

export const scheduleOptimum = [
  row({ speeds, price: formed(z.array(z.number()).length(24), 'per_kwh') }, wishes, {
    feasible: (given) => cheapest(given) !== null,
    cost: ofDay(({ cost }) => cost),
    hours_per_speed: ofDay(hoursPerSpeed),
  }),
];
