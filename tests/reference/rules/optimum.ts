import { cheapestDay, type FoundDay } from '#core/cheapestDay.ts';
import type { CheapestDayInputs, PricedSpan, SpeedRow } from '#core/cheapestDayInputs.ts';
import { minutesAt } from '#core/day.ts';
import type { ServiceNeed } from '#core/dayReport.ts';
import type { Span } from '#core/spans.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Value } from '../keys.ts';
import type { Family } from '../rule.ts';

const day = 1440;

interface NamedRow extends SpeedRow {
  readonly name: string;
}

/** The speeds in the order of their flows; only that order matters, so each has its place as ratio. */
function speedsOf(given: Given): readonly NamedRow[] {
  const rows = given.list('speeds').map((each, place) => {
    const inner = given.inside(each, ['name', 'flow', 'power', 'speed']);
    const name = inner.has('name')
      ? String(inner.value('name')).trim()
      : String(inner.has('speed') ? inner.number('speed') : place + 1);
    return { name, flow: inner.number('flow'), power: inner.number('power') };
  });
  const sorted = rows.toSorted((one, other) => one.flow - other.flow);
  return sorted.map((row, place) => ({ ...row, ratio: (place + 1) / sorted.length }));
}

/** One price for each part of an evenly divided day, the part from midnight first. */
function pricesOf(given: Given): readonly PricedSpan[] {
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

/** The hours listed, hour h from h:00 to h+1:00; no list means the whole day. */
function windowsOf(inner: Given): readonly Span[] {
  if (!inner.has('time')) return [];
  return inner.numbers('time').map((seconds) => {
    const hour = Math.round(seconds / 3600);
    if (Math.abs(seconds / 3600 - hour) > 1e-9 || hour < 0 || hour > 23)
      throw new NotUnderstood('an hour listed is not one of the day');
    return { start: hour * 60, end: hour * 60 + 60 };
  });
}

const listed = (given: Given, id: string): readonly Value[] =>
  given.has(id) ? given.list(id) : [];

function needsOf(given: Given): readonly ServiceNeed[] {
  return listed(given, 'needs').map((each, place) => {
    const inner = given.inside(each, ['name', 'leastFlow', 'greatestFlow', 'leastTime', 'time']);
    const greatestFlow = inner.maybe('greatestFlow');
    return {
      id: `need ${place + 1}`,
      leastFlow: inner.number('leastFlow'),
      ...(greatestFlow === undefined ? {} : { greatestFlow }),
      minutes: inner.number('leastTime') / 60,
      windows: windowsOf(inner),
      shortestRun: 0,
    };
  });
}

/** A greatest flow in quiet hours is a ceiling at the fastest speed that keeps it. */
function quietOf(given: Given, speeds: readonly SpeedRow[]) {
  return listed(given, 'quiet').flatMap((each) => {
    const inner = given.inside(each, ['time', 'greatestFlow']);
    const greatest = inner.number('greatestFlow') * (1 + 1e-9);
    const kept = speeds.filter(({ flow }) => flow <= greatest);
    const spans = inner.has('time') ? windowsOf(inner) : [{ start: 0, end: day }];
    return spans.map((span) => ({ ...span, ceiling: kept.at(-1)?.ratio ?? 0 }));
  });
}

function flag(given: Given, id: string): boolean {
  if (!given.has(id)) return false;
  const value = given.value(id);
  if (typeof value !== 'boolean') throw new NotUnderstood(`the input ${id} is not true or false`);
  return value;
}

function inputsOf(given: Given): CheapestDayInputs & { readonly speeds: readonly NamedRow[] } {
  const speeds = speedsOf(given);
  const prices = pricesOf(given);
  const greatestFlow = given.maybe('greatestFlow');
  return {
    speeds,
    mayStop: !flag(given, 'alwaysOn'),
    leastVolume: given.maybe('leastVolume') ?? 0,
    needs: needsOf(given),
    limits: greatestFlow === undefined ? [] : [{ id: 'greatest flow', greatestFlow }],
    quiet: quietOf(given, speeds),
    prices,
    mostChanges: given.maybe('mostChanges'),
    // One price for the whole day says nothing of the grid; these cases are hourly.
    minuteStep: prices.length === 1 ? 60 : day / prices.length,
  };
}

function found(given: Given): FoundDay | null {
  const result = cheapestDay(inputsOf(given));
  if (result.kind === 'unsettled') throw new Error('the search was not settled');
  return result.kind === 'found' ? result : null;
}

function timeBySpeed(given: Given, minutes: number): Value {
  const result = found(given);
  if (result === null) return null;
  return Object.fromEntries(
    speedsOf(given).map(({ name, ratio }) => [name, minutesAt(result.blocks, ratio) / minutes]),
  );
}

export const optimumFamily: Family = {
  name: 'cheapest day',
  quantity: /cheapest|optimum|schedule/i,
  rules: [
    {
      what: 'the cheapest day on an even grid',
      needs: ['speeds', 'price'],
      takes: ['leastVolume', 'needs', 'quiet', 'greatestFlow', 'mostChanges', 'alwaysOn'],
      gives: {
        feasible: (given) => found(given) !== null,
        cost: (given) => found(given)?.cost ?? null,
        hoursPerSpeed: (given) => timeBySpeed(given, 60),
        minutesPerSpeed: (given) => timeBySpeed(given, 1),
      },
    },
  ],
};
