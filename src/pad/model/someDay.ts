import { type CalendarDate, daysInMonth } from '#core/time/calendar.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import { monthNames } from '#units/monthNames.ts';

/** Day to be priced while no clock has been read yet; any would do. */
export const someDay: CalendarDate = { year: 2027, month: 7, day: 14 };

/** The date a day is priced on: the pad's own, held to the days of its month, else the one given. */
export function pricedDate(own: CalendarDate | null, otherwise = someDay): CalendarDate {
  if (own === null) return otherwise;
  const last = daysInMonth(own.year, own.month);
  // The same object where nothing is wrong, so that what follows from the date alone stays.
  return own.day <= last ? own : { ...own, day: last };
}

/** A pad file written by hand may name a day that its month does not have. */
export function dateProblems(own: CalendarDate | null): readonly Problem[] {
  if (own === null || pricedDate(own).day === own.day) return [];
  const month = `${monthNames[own.month - 1]} ${own.year}`;
  return [problem('dateDay', ['day', 'date'], { month, last: pricedDate(own).day })];
}
