/** Dates and times of day as files write them. */
import { type CalendarDate, dayNumber, daysInMonth } from '#core/time/calendar.ts';

/** In which order the numbers of a date stand. */
export type DateOrder = 'ymd' | 'mdy' | 'dmy';

/** A moment on a clock. */
export interface Moment {
  /** Number of the day (see dayNumber) [d]. */
  readonly day: number;
  /** Minute of that day [min], 0 to 1440; null where there is a date alone. */
  readonly minute: number | null;
  /** How far that clock is before UTC [min]; null where nothing is said of it. */
  readonly offset: number | null;
}

const dateParts = /^(\d{4}|\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{1,2})(?:[T\s,]+(.+))?$/;
const timeParts = /^(\d{1,2})[:h](\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*(?:([ap])\.?\s?m\.?)?\s*(.*)$/i;
const zone = /^(?:(Z|UTC|GMT)|([+-])(\d{2}):?(\d{2})?)$/i;

interface Time {
  readonly minute: number;
  readonly offset: number | null;
}

/** "14:30", "2:30 pm", "14:30:00+02:00", as minutes after midnight; null when it is none. */
export function readClock(text: string): Time | null {
  const [, hours = '', minutes = '', seconds = '0', half, rest = ''] =
    timeParts.exec(text.trim()) ?? [];
  if (hours === '') return null;
  const offset = rest === '' ? null : readZone(rest);
  if (rest !== '' && offset === null) return null;
  let hour = Number(hours);
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  }
  const minute = 60 * hour + Number(minutes) + Number(seconds) / 60;
  return Number(minutes) < 60 && Number(seconds) < 61 && minute <= 1440 ? { minute, offset } : null;
}

function readZone(text: string): number | null {
  const match = zone.exec(text);
  if (match === null) return null;
  const [, utc, sign, hours = '0', minutes = '0'] = match;
  if (utc !== undefined) return 0;
  return (sign === '-' ? -1 : 1) * (60 * Number(hours) + Number(minutes));
}

/** The three numbers of a date in the order they stand. */
function inOrder(first: string, second: string, third: string, order: DateOrder): CalendarDate {
  if (first.length === 4) return { year: Number(first), month: Number(second), day: Number(third) };
  const year = third.length === 4 ? Number(third) : 2000 + Number(third);
  return order === 'dmy'
    ? { year, month: Number(second), day: Number(first) }
    : { year, month: Number(first), day: Number(second) };
}

function isDate({ year, month, day }: CalendarDate): boolean {
  if (year < 1970 || year > 2200 || month < 1 || month > 12 || day < 1) return false;
  return day <= daysInMonth(year, month);
}

/** A date, with or without a time; null when the text is neither. */
export function readMoment(text: string, order: DateOrder): Moment | null {
  const [, first = '', second = '', third = '', rest] = dateParts.exec(text.trim()) ?? [];
  if (first === '' || (first.length < 3 && third.length === 1)) return null;
  const date = inOrder(first, second, third, order);
  if (!isDate(date)) return null;
  const day = dayNumber(date);
  if (rest === undefined) return { day, minute: null, offset: null };
  const time = readClock(rest);
  return time === null ? null : { day, ...time };
}

/**
 * The order of the dates in a column: told by a year in front, a number above 12, or a point between
 * (day first, common practice, no source); null when both orders would do.
 */
export function dateOrderOf(texts: readonly string[]): DateOrder | null {
  let points = 0;
  for (const text of texts) {
    const [, first = '', second = ''] = dateParts.exec(text.trim()) ?? [];
    if (first.length === 4) return 'ymd';
    if (Number(first) > 12) return 'dmy';
    if (Number(second) > 12) return 'mdy';
    if (/^\d{1,2}\./.test(text.trim())) points += 1;
  }
  return points > 0 && points === texts.length ? 'dmy' : null;
}
