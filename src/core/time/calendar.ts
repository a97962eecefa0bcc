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
 *
 * Law: divisible by 4, and not by 100 unless by 400.
 * @param year Year [-], whole, 1 to 9999.
 * @returns true for a leap year [-].
 * @throws CoreError when the year is not whole or out of range.
 * Accuracy: exact.
 * Source: Gregorian calendar (papal bull Inter gravissimas, 1582; ISO 8601, 2004, 3.2.1).
 * @example Number(isLeapYear(2000)) // 1.000
 */
export function isLeapYear(year: number): boolean {
  requireYear(year);
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/**
 * How many days a year has.
 *
 * Law: 365, or 366 in a leap year.
 * @param year Year [-], whole, 1 to 9999.
 * @returns Days [d], 365 or 366.
 * @throws CoreError when the year is not whole or out of range.
 * Accuracy: exact.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example daysInYear(2028) // 366.0
 */
export function daysInYear(year: number): number {
  return isLeapYear(year) ? 366 : 365;
}

/**
 * How many days a month has.
 *
 * Law: 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31; February 29 in a leap year.
 * @param year Year [-], whole, 1 to 9999.
 * @param month Month [-], whole, 1 to 12.
 * @returns Days [d], 28 to 31.
 * @throws CoreError when the year or the month is not whole or out of range.
 * Accuracy: exact.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example daysInMonth(2028, 2) // 29.00
 */
export function daysInMonth(year: number, month: number): number {
  requireYear(year);
  const length = monthLengths[month - 1];
  if (length === undefined) throw new CoreError('month', month, 'a whole number from 1 to 12');
  return month === 2 && isLeapYear(year) ? 29 : length;
}

/**
 * A running number of the day, the same clock for any two dates.
 *
 * Law: days since 1 January of year 1, which is day 1.
 * @param date The day [see CalendarDate], fields as there.
 * @returns Day number [d], 1 for 1 January of year 1.
 * @throws CoreError when there is no such day.
 * Accuracy: exact.
 * Source: Gregorian calendar carried back before 1582 (ISO 8601, 2004, 3.2.1).
 * @example dayNumber({ year: 1970, month: 1, day: 1 }) // 719163
 */
export function dayNumber(date: CalendarDate): number {
  requireDate(date);
  const before = date.year - 1;
  const leapDays = Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
  return 365 * before + leapDays + dayOfYear(date);
}

/**
 * The place of a day in its year.
 *
 * Law: days of the months before it, plus the day of the month.
 * @param date The day [see CalendarDate], fields as there.
 * @returns Day of the year [d], 1 to 366.
 * @throws CoreError when there is no such day.
 * Accuracy: exact.
 * Source: Gregorian calendar (ISO 8601, 2004, 4.1.3).
 * @example dayOfYear({ year: 2028, month: 12, day: 31 }) // 366.0
 */
export function dayOfYear(date: CalendarDate): number {
  requireDate(date);
  let days = date.day;
  for (let month = 1; month < date.month; month += 1) days += daysInMonth(date.year, month);
  return days;
}

/**
 * The day of the week.
 *
 * Law: day number modulo 7; 1 January of year 1 was a Monday.
 * @param date The day [see CalendarDate], fields as there.
 * @returns Day of the week [-], 0 Sunday to 6 Saturday.
 * @throws CoreError when there is no such day.
 * Accuracy: exact.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1: 1 January 2000 was a Saturday).
 * @example dayOfWeek({ year: 2000, month: 1, day: 1 }) // 6.000
 */
export function dayOfWeek(date: CalendarDate): number {
  return dayNumber(date) % 7;
}

/**
 * The day after.
 *
 * Law: one more day of the month, else the first of the next month, else of the next year.
 * @param date The day [see CalendarDate], fields as there; before 31 December 9999.
 * @returns The next day [see CalendarDate].
 * @throws CoreError when there is no such day, or none after it in range.
 * Accuracy: exact.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example nextDay({ year: 2027, month: 2, day: 28 }).month // 3.000
 */
export function nextDay(date: CalendarDate): CalendarDate {
  const { year, month, day } = requireDate(date);
  if (day < daysInMonth(year, month)) return { year, month, day: day + 1 };
  if (month < 12) return { year, month: month + 1, day: 1 };
  return { year: requireYear(year + 1), month: 1, day: 1 };
}

/**
 * A number that orders the days of the year and does not depend on the year.
 *
 * Law: 100 x month + day.
 * @param monthDay Day of the year [see MonthDay], fields as there.
 * @returns Key [-], 101 to 1231.
 * @throws nothing; an impossible day gives a key that no real day has.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example monthDayKey({ month: 6, day: 1 }) // 601.0
 */
export function monthDayKey(monthDay: MonthDay): number {
  return monthDay.month * 100 + monthDay.day;
}

/**
 * Whether a day of the year exists in at least one year.
 *
 * Law: 1 to the length of the month, 29 for February.
 * @param monthDay Day of the year [see MonthDay], any numbers.
 * @returns true when some year has it [-].
 * @throws nothing; numbers that are not whole give false.
 * Accuracy: exact.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example Number(isMonthDay({ month: 2, day: 29 })) // 1.000
 */
export function isMonthDay({ month, day }: MonthDay): boolean {
  const length = month === 2 ? 29 : (monthLengths[month - 1] ?? 0);
  return Number.isInteger(day) && day >= 1 && day <= length;
}

/**
 * Gives back the date when there is such a day.
 *
 * Law: day 1 to the length of that month in that year.
 * @param date The day [see CalendarDate], fields as there.
 * @returns The same date [see CalendarDate].
 * @throws CoreError that names year, month or day when there is no such day.
 * Accuracy: exact.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example requireDate({ year: 2028, month: 2, day: 29 }).day // 29.00
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
