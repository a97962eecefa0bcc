import { minutesAt } from '#core/day/day.ts';
import { dayReport } from '#core/day/dayReport.ts';
import { type CheapestDay, cheapestDay, type FoundDay } from '#core/planner/cheapestDay.ts';
import type { CollisionMember } from '#core/planner/collisions.ts';
import { isObject } from '../caseFile.ts';
import { restOfDay } from '../compare.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Key, Value } from '../keys.ts';
import type { Family } from '../rule.ts';
import {
  inputsOf,
  type OptimumInputs,
  optimumInputs,
  speedFields,
  speedsOf,
} from './optimumInputs.ts';

const day = 1440;
const daySeconds = 86_400;

function settled(inputs: OptimumInputs): Exclude<CheapestDay, { kind: 'unsettled' }> {
  const result = cheapestDay(inputs);
  if (result.kind === 'unsettled') throw new Error('the search was not settled');
  return result;
}

const results = new WeakMap<Given, ReturnType<typeof settled>>();

/** Several values of a case are read from one search. */
function resultOf(given: Given): ReturnType<typeof settled> {
  const held = results.get(given) ?? settled(inputsOf(given));
  results.set(given, held);
  return held;
}

function found(given: Given): FoundDay | null {
  const result = resultOf(given);
  return result.kind === 'found' ? result : null;
}

/** A value of the day found, or null where there is none. */
function ofDay(value: (result: FoundDay, given: Given) => Value) {
  return (given: Given): Value => {
    const result = found(given);
    return result === null ? null : value(result, given);
  };
}

const costOfDays = (given: Given, result: FoundDay, days: number): number =>
  days * (result.cost + (given.maybe('dailyCharge') ?? 0));

const daysStated = (given: Given): number =>
  (given.maybe('days') ?? given.maybe('time') ?? daySeconds) / daySeconds;

function timeBySpeed(minutes: number) {
  return ofDay(({ blocks }, given) => {
    const rows = speedsOf(given).map(({ name, ratio }): readonly [string, number] => [
      name,
      minutesAt(blocks, ratio),
    ]);
    const off = day - rows.reduce((sum, [, each]) => sum + each, 0);
    const all: readonly (readonly [string, number])[] = [...rows, [restOfDay, off]];
    return Object.fromEntries(all.map(([name, each]) => [name, each / minutes]));
  });
}

/** Time at each speed, in the order the case lists them. */
function timesInOrder(given: Given): Value {
  const each = timeBySpeed(1 / 60)(given);
  const names = given.list('speeds').map((row) => given.inside(row, speedFields).value('name'));
  return isObject(each) ? names.map((name) => each[String(name).trim()] ?? null) : null;
}

/** The speed a key names: `hours_at_2400`, `minutes_at_low`, `energy_kwh_at_2400_rpm`. */
function speedNamed(given: Given, { condition }: Key) {
  const text = condition?.text.replace(/_rpm$/, '') ?? '';
  const row = speedsOf(given).find(
    ({ name, stated }) =>
      name.toLowerCase().replaceAll(' ', '_') === text ||
      stated === Number(text) ||
      Number.parseFloat(name) === Number(text),
  );
  if (row === undefined) throw new NotUnderstood(`no speed is called ${text}`);
  return row;
}

type Row = ReturnType<typeof speedNamed>;

/** What the minutes at the one speed of the key come to. */
function atSpeed(value: (row: Row) => number) {
  return (given: Given, key: Key): Value => {
    const row = speedNamed(given, key);
    return ofDay(({ blocks }) => minutesAt(blocks, row.ratio) * 60 * value(row))(given);
  };
}

const timeAtSpeed = atSpeed(() => 1);

function report(given: Given, { blocks }: FoundDay) {
  const rows = speedsOf(given);
  return dayReport({
    blocks,
    pointAt: (ratio) => {
      const row = rows.find((each) => Math.abs(each.ratio - ratio) < 1e-9);
      if (row === undefined) throw new RangeError(`no speed has the ratio ${ratio}`);
      const { flow, power } = row;
      return { kind: 'flowing', flow, power, suctionVelocity: 0, dischargeVelocity: 0 };
    },
    volume: 1,
    needs: [],
    limits: [],
    quiet: [],
  });
}

/** The speed of each slot by name; a plan is asked for only where it is the one there is. */
function planOf(result: FoundDay, given: Given): Value {
  const { minuteStep = 1 } = inputsOf(given);
  const rows = speedsOf(given);
  const { segments } = report(given, result);
  return Array.from({ length: day / minuteStep }, (_, slot) => {
    const at = segments.find(
      ({ start, end }) => slot * minuteStep >= start && slot * minuteStep < end,
    );
    const row = rows.find(({ ratio }) => Math.abs(ratio - (at?.ratio ?? 0)) < 1e-9);
    return row?.name ?? restOfDay;
  });
}

/** The one thing of its kind among those that collide. */
function collidingOf<K extends CollisionMember['kind']>(given: Given, kind: K) {
  const result = resultOf(given);
  const among = result.kind === 'none' ? result.collision : [];
  const matches = among.filter(
    (each): each is Extract<CollisionMember, { kind: K }> => each.kind === kind,
  );
  const [only] = matches;
  if (only === undefined || matches.length > 1)
    throw new NotUnderstood(`which ${kind} is short is not stated`);
  return only;
}

const shortTime = (given: Given): Value =>
  found(given) === null ? collidingOf(given, 'need').shortMinutes * 60 : 0;

/** All that the rest lets through: the cheapest day where every cubic metre is paid for. */
function greatestVolume(given: Given): Value {
  const inputs = inputsOf(given);
  const speeds = inputs.speeds.map((row) => ({ ...row, power: row.flow * 1e6 }));
  const prices = inputs.prices.map((span) => ({ ...span, price: -1 }));
  const result = settled({ ...inputs, speeds, prices, leastVolume: 0 });
  return result.kind === 'found' ? result.volumeMoved : null;
}

function shortVolume(given: Given): Value {
  const greatest = greatestVolume(given);
  if (typeof greatest !== 'number') throw new NotUnderstood('it is not the volume that is short');
  return Math.max(0, inputsOf(given).leastVolume - greatest);
}

/** What the day costs with some things changed; without a day it has no price. */
function costWith(given: Given, changed: (inputs: OptimumInputs) => Partial<OptimumInputs>): Value {
  const inputs = inputsOf(given);
  const result = settled({ ...inputs, ...changed(inputs) });
  return result.kind === 'found' ? result.cost : null;
}

function onlyNeed(given: Given): void {
  if (inputsOf(given).needs.length !== 1)
    throw new NotUnderstood('which need is meant is not stated');
}

function costWithoutNeed(given: Given, { raw }: Key): Value {
  if (!raw.toLowerCase().includes('needs')) onlyNeed(given);
  return costWith(given, () => ({ needs: [] }));
}

function less(one: Value, other: Value): Value {
  return typeof one === 'number' && typeof other === 'number' ? one - other : null;
}

const costOf = (given: Given): Value => found(given)?.cost ?? null;

function costOfHourMore(given: Given): Value {
  onlyNeed(given);
  const more = costWith(given, ({ needs }) => ({
    needs: needs.map((need) => ({ ...need, minutes: need.minutes + 60 })),
  }));
  return less(more, costOf(given));
}

function cheaperWith(given: Given, changed: (inputs: OptimumInputs) => Partial<OptimumInputs>) {
  const saved = less(costOf(given), costWith(given, changed));
  return typeof saved === 'number' && saved > 1e-9;
}

const volumeBinds = (given: Given): boolean => cheaperWith(given, () => ({ leastVolume: 0 }));

/** What makes the day dearer: it costs less without it. */
function binding(given: Given): Value {
  return [...(volumeBinds(given) ? ['volume'] : []), ...bindingNeeds(given)];
}

function bindingNeeds(given: Given): readonly string[] {
  const { needs } = inputsOf(given);
  return needs.flatMap(({ id, name }) =>
    cheaperWith(given, (inputs) => ({ needs: inputs.needs.filter((need) => need.id !== id) }))
      ? [name]
      : [],
  );
}

export const optimumFamily: Family = {
  name: 'cheapest day',
  quantity: /cheapest|optimum|schedule/i,
  rules: [
    {
      what: 'the cheapest day on an even grid',
      needs: ['speeds', 'price|tariff'],
      takes: optimumInputs,
      gives: {
        feasible: (given) => found(given) !== null,
        cost: ofDay((result, given) => costOfDays(given, result, daysStated(given))),
        costOfDay: ofDay((result, given) => costOfDays(given, result, 1)),
        costOfMonth: ofDay((result, given) => costOfDays(given, result, 30)),
        costOfYear: ofDay((result, given) => costOfDays(given, result, 365)),
        hoursPerSpeed: timeBySpeed(60),
        minutesPerSpeed: timeBySpeed(1),
        energy: ofDay((result, given) => report(given, result).energy * daysStated(given)),
        volume: ofDay(({ volumeMoved }) => volumeMoved),
        turnovers: ofDay(({ volumeMoved }, given) => volumeMoved / given.number('volume')),
        runTime: ofDay((result, given) => report(given, result).runMinutes * 60),
        offTime: ofDay((result, given) => (day - report(given, result).runMinutes) * 60),
        changes: ofDay(({ changes }) => changes),
        plan: ofDay(planOf),
        // A key "schedule" looks like that of a pipe.
        schedule: ofDay(planOf),
        time: timesInOrder,
        'time@': timeAtSpeed,
        'runTime@': timeAtSpeed,
        'energy@': atSpeed(({ power }) => power),
        'volume@': atSpeed(({ flow }) => flow),
        costOfWeek: ofDay((result, given) => costOfDays(given, result, 7)),
        costOfSeason: ofDay((result, given) => costOfDays(given, result, daysStated(given))),
        shortVolume,
        shortTime,
        greatestVolume,
        costOfHourMore,
        costWithoutNeed,
        costOfNeed: (given, key) => less(costOf(given), costWithoutNeed(given, key)),
        volumeBinds,
        bindingNeed: (given) => bindingNeeds(given)[0] ?? null,
        binding,
      },
    },
  ],
};
