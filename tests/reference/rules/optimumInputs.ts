/** The cheapest day a case asks for, as the core takes it. */

import type { ServiceNeed } from '#core/day/dayReport.ts';
import type { CheapestDayInputs, PricedSpan, SpeedRow } from '#core/planner/inputs.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Value } from '../keys.ts';
import { spanOf, windowInputs, windowsOf } from './clock.ts';

const day = 1440;

export interface NamedRow extends SpeedRow {
  readonly name: string;
  /** In rpm or as a ratio, as the case states it. */
  readonly stated: number | undefined;
}

export interface NamedNeed extends ServiceNeed {
  readonly name: string;
}

export interface OptimumInputs extends CheapestDayInputs {
  readonly speeds: readonly NamedRow[];
  readonly needs: readonly NamedNeed[];
}

export const optimumInputs = [
  ...['leastVolume', 'leastTurnovers', 'turnovers', 'volume', 'needs', 'quiet', 'limits'],
  ...['greatestFlow', 'mostChanges', 'alwaysOn', 'mayStop', 'slot', 'price', 'tariff'],
  ...['dailyCharge', 'time', 'days'],
];

export const speedFields = ['name', 'flow', 'power', 'speed', 'speedRatio'];

/** The speeds in the order of their flows; only that order matters, so each has its place as ratio. */
export function speedsOf(given: Given): readonly NamedRow[] {
  const rows = given.list('speeds').map((each, place) => {
    const inner = given.inside(each, speedFields);
    const stated = inner.maybe('speed') ?? inner.maybe('speedRatio');
    const name = inner.has('name') ? inner.value('name') : (stated ?? place + 1);
    return {
      name: String(name).trim(),
      stated,
      flow: inner.number('flow'),
      power: inner.number('power'),
    };
  });
  // A row without flow is the pump at rest, which the core adds itself.
  const sorted = rows
    .filter(({ flow, power }) => flow > 0 || power > 0)
    .toSorted((one, other) => one.flow - other.flow);
  return sorted.map((row, place) => ({ ...row, ratio: (place + 1) / sorted.length }));
}

/** One price for each part of an evenly divided day, the part from midnight first; or by bands. */
function pricesOf(given: Given): readonly PricedSpan[] {
  if (given.has('tariff'))
    return given.list('tariff').map((each) => {
      const inner = given.inside(each, ['name', 'start', 'end', 'price']);
      return { ...spanOf(inner), price: inner.number('price') };
    });
  const value = given.value('price');
  const prices = typeof value === 'number' ? [value] : given.numbers('price');
  const minutes = day / prices.length;
  if (!Number.isInteger(minutes)) throw new NotUnderstood('the prices do not divide the day');
  return prices.map((price, place) => ({
    start: place * minutes,
    end: (place + 1) * minutes,
    price,
  }));
}

/** Prices on a finer grid than the hour make it the grid; else these cases are hourly. */
function stepOf(given: Given, prices: readonly PricedSpan[]): number {
  if (given.has('slot')) return given.number('slot') / 60;
  return prices.every(({ start, end }) => start % 60 === 0 && end % 60 === 0)
    ? 60
    : day / prices.length;
}

/** One object may stand where a list of them is meant. */
function listed(given: Given, id: string): readonly Value[] {
  if (!given.has(id)) return [];
  const value = given.value(id);
  return Array.isArray(value) ? given.list(id) : [value];
}

function flag(given: Given, id: string): boolean {
  if (!given.has(id)) return false;
  const value = given.value(id);
  if (typeof value !== 'boolean') throw new NotUnderstood(`the input ${id} is not true or false`);
  return value;
}

const needFields = [
  ...['name', 'flow', 'leastFlow', 'greatestFlow', 'leastTime', 'shortestRun', 'oneRun'],
  ...windowInputs,
];

function needOf(given: Given, value: Value, place: number): NamedNeed {
  const inner = given.inside(value, needFields);
  const greatestFlow = inner.maybe('greatestFlow');
  const minutes = (inner.maybe('leastTime') ?? inner.number('time')) / 60;
  return {
    id: `need ${place + 1}`,
    name: inner.has('name') ? inner.text('name') : `need ${place + 1}`,
    leastFlow: inner.maybe('leastFlow') ?? inner.number('flow'),
    ...(greatestFlow === undefined ? {} : { greatestFlow }),
    minutes,
    windows: windowsOf(inner),
    shortestRun: flag(inner, 'oneRun') ? minutes : (inner.maybe('shortestRun') ?? 0) / 60,
  };
}

/** The fastest speed that may run, by its name, its speed or its flow; 0 for none. */
function ceilingOf(inner: Given, speeds: readonly NamedRow[]): number {
  if (flag(inner, 'off')) return 0;
  if (!inner.has('greatestSpeed')) {
    const greatest = inner.number('greatestFlow') * (1 + 1e-9);
    return speeds.findLast(({ flow }) => flow <= greatest)?.ratio ?? 0;
  }
  const named = speeds.find(({ name }) => name === String(inner.value('greatestSpeed')).trim());
  if (named !== undefined) return named.ratio;
  const greatest = Number(inner.value('greatestSpeed'));
  const speedIn = ({ stated, name }: NamedRow) => stated ?? Number(name);
  if (![greatest, ...speeds.map(speedIn)].every(Number.isFinite))
    throw new NotUnderstood('the speed of the quiet hours is not one of the list');
  return speeds.filter((row) => speedIn(row) <= greatest * (1 + 1e-9)).at(-1)?.ratio ?? 0;
}

function quietOf(given: Given, speeds: readonly NamedRow[]) {
  return listed(given, 'quiet').flatMap((each) => {
    const fields = ['name', 'greatestFlow', 'greatestSpeed', 'off', ...windowInputs];
    const inner = given.inside(each, fields);
    const stated = windowsOf(inner);
    const spans = stated.length > 0 ? stated : [{ start: 0, end: day }];
    return spans.map((span) => ({ ...span, ceiling: ceilingOf(inner, speeds) }));
  });
}

function limitsOf(given: Given) {
  const inLists = listed(given, 'limits').map((each) =>
    given.inside(each, ['name', 'greatestFlow']).number('greatestFlow'),
  );
  const flows = [...inLists, ...(given.has('greatestFlow') ? [given.number('greatestFlow')] : [])];
  return flows.map((greatestFlow, place) => ({ id: `greatest flow ${place + 1}`, greatestFlow }));
}

function leastVolumeOf(given: Given): number {
  const turnovers = given.maybe('leastTurnovers') ?? given.maybe('turnovers');
  if (turnovers === undefined) return given.maybe('leastVolume') ?? 0;
  return Math.max(turnovers * given.number('volume'), given.maybe('leastVolume') ?? 0);
}

export function inputsOf(given: Given): OptimumInputs {
  const speeds = speedsOf(given);
  const prices = pricesOf(given);
  const stops = given.has('mayStop') ? flag(given, 'mayStop') : true;
  return {
    speeds,
    mayStop: stops && !flag(given, 'alwaysOn'),
    leastVolume: leastVolumeOf(given),
    needs: listed(given, 'needs').map((each, place) => needOf(given, each, place)),
    limits: limitsOf(given),
    quiet: quietOf(given, speeds),
    prices,
    mostChanges: given.maybe('mostChanges'),
    minuteStep: stepOf(given, prices),
  };
}
