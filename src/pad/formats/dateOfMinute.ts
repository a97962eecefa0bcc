import type { CalendarDate } from '#core/time/calendar.ts';
import { monthNames } from '#units/monthNames.ts';
import { minutesTo1970 } from './series.ts';

/** The day that a minute since the beginning of year 1 falls on. */
export function dayAt(minute: number): CalendarDate {
  const date = new Date((minute - minutesTo1970) * 60_000);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** "14 March 2027". */
export function dateOfMinute(minute: number): string {
  const { year, month, day } = dayAt(minute);
  return `${day} ${monthNames[month - 1]} ${year}`;
}
