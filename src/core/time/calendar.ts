import { CoreError } from '#core/base/errors.ts';

/** A day of the proleptic Gregorian calendar. */
export interface CalendarDate {
  /** Year [-], whole, 1 to 9999. */
  readonly year: number;
  /** Month [-], whole, 1 to 12. */
  readonly month: number;
  /** Day of the month [-], whole, 1 to the length of the month. */
  readonly day: number;
}

/** A day of the year without the year, such as the first of June. */
export interface MonthDay {
  /** Month [-], whole, 1 to 12. */
  readonly month: number;
  /** Day of the month [-], whole, 1 to the greatest length of the month (29 for February). */
  readonly day: number;
}

const monthLengths: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Whether a year has a 29 February.
 * @throws CoreError when the year is not whole or out of range.
 */
export function isLeapYear(year: number): boolean {
  requireYear(year);
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/**
 * How many days a year has.
 * @throws CoreError when the year is not whole or out of range.
 */
export function daysInYear(year: number): number {
  return isLeapYear(year) ? 366 : 365;
}

/**
 * How many days a month has.
 * @throws CoreError when the year or the month is not whole or out of range.
 */
export function daysInMonth(year: number, month: number): number {
  requireYear(year);
  const length = monthLengths[month - 1];
  if (length === undefined) throw new CoreError('month', month, 'a whole number from 1 to 12');
  return month === 2 && isLeapYear(year) ? 29 : length;
}

/**
 * A running number of the day [d], 1 for 1 January of year 1.
 * @throws CoreError when there is no such day.
 */
export function dayNumber(date: CalendarDate): number {
  requireDate(date);
  const before = date.year - 1;
  const leapDays = Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
  return 365 * before + leapDays + dayOfYear(date);
}

/**
 * The place of a day in its year [d], 1 to 366.
 * @throws CoreError when there is no such day.
 */
export function dayOfYear(date: CalendarDate): number {
  requireDate(date);
  let days = date.day;
  for (let month = 1; month < date.month; month += 1) days += daysInMonth(date.year, month);
  return days;
}

/**
 * The day of the week [-], 0 for Sunday to 6 for Saturday.
 * @throws CoreError when there is no such day.
 */
export function dayOfWeek(date: CalendarDate): number {
  return dayNumber(date) % 7;
}

/**
 * The day after.
 * @throws CoreError when there is no such day, or none after it in range.
 */
export function nextDay(date: CalendarDate): CalendarDate {
  const { year, month, day } = requireDate(date);
  if (day < daysInMonth(year, month)) return { year, month, day: day + 1 };
  if (month < 12) return { year, month: month + 1, day: 1 };
  return { year: requireYear(year + 1), month: 1, day: 1 };
}

/** A number that orders the days of the year whatever the year [-], 101 to 1231. */
export function monthDayKey(monthDay: MonthDay): number {
  return monthDay.month * 100 + monthDay.day;
}

/** Whether a day of the year exists in at least one year. */
export function isMonthDay({ month, day }: MonthDay): boolean {
  const length = month === 2 ? 29 : (monthLengths[month - 1] ?? 0);
  return Number.isInteger(day) && day >= 1 && day <= length;
}

/**
 * Gives back the date when there is such a day.
 * @throws CoreError that names year, month or day when there is no such day.
 */
export function requireDate(date: CalendarDate): CalendarDate {
  const length = daysInMonth(date.year, date.month);
  if (!Number.isInteger(date.day) || date.day < 1 || date.day > length) {
    throw new CoreError('day', date.day, `a whole number from 1 to ${length}`);
  }
  return date;
}

function requireYear(year: number): number {
  if (!Number.isInteger(year) || year < 1 || year > 9999) {
    throw new CoreError('year', year, 'a whole number from 1 to 9999');
  }
  return year;
}
