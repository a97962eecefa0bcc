/** Times of day as cases write them: "23:17", hours listed, spans from one to another. */
import type { Span } from '#core/time/spans.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Value } from '../keys.ts';

const day = 1440;

/** "23:17" or an hour as minutes; "24:00" stays the end of the day. */
export function minutesIn(value: Value): number {
  if (typeof value === 'number' && value >= 0 && value <= 24) return Math.round(value * 60);
  const [, hours, minutes = '0'] =
    /^(\d{1,2})(?::(\d{2}))?$/.exec(typeof value === 'string' ? value.trim() : '') ?? [];
  const found = Number(hours) * 60 + Number(minutes);
  if (hours === undefined || found > day) {
    throw new NotUnderstood(`${String(value)} is not a time of day`);
  }
  return found;
}

/** The time of day under an id; a bare number counts hours. */
export function minuteOf(given: Given, id: string): number {
  const value = given.value(id);
  const isTime = given.key(id)?.unit.dimension === 'time';
  return minutesIn(typeof value === 'number' && isTime ? value / 3600 : value);
}

export function spanOf(inner: Given): Span {
  return { start: minuteOf(inner, 'start'), end: minuteOf(inner, 'end') };
}

/** The span as the core wants it: within the day, the end of the day as 1440 or past midnight. */
function inDay({ start, end }: Span): Span {
  return { start: start % day, end: end === 0 ? day : end };
}

function hourListed(seconds: number): Span {
  const hour = Math.round(seconds / 3600);
  if (Math.abs(seconds / 3600 - hour) > 1e-9 || hour < 0 || hour > 23)
    throw new NotUnderstood('an hour listed is not one of the day');
  return { start: hour * 60, end: hour * 60 + 60 };
}

function windowIn(given: Given, value: Value): Span {
  const [start, end] = Array.isArray(value) ? (value as readonly Value[]) : [];
  if (start !== undefined && end !== undefined)
    return inDay({ start: minutesIn(start), end: minutesIn(end) });
  return inDay(spanOf(given.inside(value, ['start', 'end'])));
}

export const windowInputs = ['time', 'start', 'end', 'windows'];

/** All windows an object states: hours listed (hour h from h:00 to h+1:00), spans, a start and an end. */
export function windowsOf(inner: Given): readonly Span[] {
  const hours = Array.isArray(inner.has('time') && inner.value('time'))
    ? inner.numbers('time')
    : [];
  const spans = inner.has('windows') ? inner.list('windows') : [];
  // One span may stand where a list of them is meant: ["22:00", "04:00"].
  const isOne =
    spans.length === 2 && spans.every((each) => !Array.isArray(each) && typeof each !== 'object');
  return [
    ...hours.map(hourListed),
    ...(isOne ? [spans] : spans).map((each) => windowIn(inner, each)),
    ...(inner.has('start') && inner.has('end') ? [inDay(spanOf(inner))] : []),
  ];
}
