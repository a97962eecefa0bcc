/**
 * What changes from day to day over a year: how warm the water is, how loaded the filter, and when
 * frost calls for running water.
 */

import { CoreError, requireBetween } from '#core/base/errors.ts';
import {
  type CalendarDate,
  dayNumber,
  dayOfYear,
  daysInMonth,
  requireDate,
} from '#core/time/calendar.ts';
import { ringRuns, type Span } from '#core/time/spans.ts';

/** Days from the middle of a month to the middle of the next, and where a date stands between them. */
interface Between {
  /** Number of the month before [-], 0 to 11. */
  readonly before: number;
  /** Number of the month after [-], 0 to 11. */
  readonly after: number;
  /** Share of the way from one to the other [-], 0 to 1. */
  readonly share: number;
}

function betweenMonths({ year, month, day }: CalendarDate): Between {
  const middle = daysInMonth(year, month) / 2;
  const at = day - 0.5;
  const isLate = at >= middle;
  const other = isLate ? (month % 12) + 1 : ((month + 10) % 12) + 1;
  const reach = middle + daysInMonth(year, other) / 2;
  const share = Math.abs(at - middle) / reach;
  return isLate
    ? { before: month - 1, after: other - 1, share }
    : { before: other - 1, after: month - 1, share: 1 - share };
}

/**
 * A value of a day from the means of the twelve months.
 *
 * Law: a straight line from the middle of one month to the middle of the next, December to January too.
 * @param monthly Mean of each month [any unit], 12 finite numbers, January first.
 * @param date The day [see CalendarDate], fields as there.
 * @returns The value at noon of that day [the same unit], between its two neighbours.
 * @throws CoreError when there are not 12 finite numbers, or no such day.
 * Accuracy: exact at the middles; the mean over a month differs a little from the mean given.
 * Source: common practice, no source.
 * @example monthlyValue([5, 7, 10, 14, 18, 22, 25, 25, 21, 15, 9, 6], { year: 2027, month: 6, day: 16 }) // 22.05
 */
export function monthlyValue(monthly: readonly number[], date: CalendarDate): number {
  if (monthly.length !== 12) throw new CoreError('monthly', monthly.length, '12 numbers');
  monthly.forEach((value, index) => {
    requireBetween(`monthly[${index}]`, value, -1e9, 1e9, '');
  });
  const { before, after, share } = betweenMonths(requireDate(date));
  const from = monthly[before] ?? Number.NaN;
  return from + share * ((monthly[after] ?? Number.NaN) - from);
}

/**
 * How loaded a filter is that is cleaned at even intervals, the first time on 1 January.
 *
 * Law: loading = days since the last cleaning / interval.
 * @param date The day [see CalendarDate], fields as there.
 * @param interval Days from one cleaning to the next [d], 1 to 3660.
 * @returns Share of the way from clean to due [-], 0 to 1, at noon of that day.
 * @throws CoreError when there is no such day or the interval is out of range.
 * Accuracy: exact; that dirt gathers evenly is a simplification.
 * Source: common practice, no source.
 * @example loadingOn({ year: 2027, month: 1, day: 15 }, 29) // 0.5000
 */
export function loadingOn(date: CalendarDate, interval: number): number {
  requireBetween('interval', interval, 1, 3660, 'd');
  const since = (dayOfYear(requireDate(date)) - 0.5) % interval;
  return since / interval;
}

/**
 * How often a filter is cleaned in a year, when the first cleaning is on 1 January.
 *
 * Law: the days of the year on which a new interval begins.
 * @param days Days of the year [d], 365 or 366.
 * @param interval Days from one cleaning to the next [d], 1 to 3660.
 * @returns Number of cleanings [-], 1 or more.
 * @throws CoreError when days or the interval is out of range.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example cleaningsIn(365, 30) // 13.00
 */
export function cleaningsIn(days: number, interval: number): number {
  requireBetween('days', days, 365, 366, 'd');
  requireBetween('interval', interval, 1, 3660, 'd');
  return Math.ceil(days / interval);
}

/** An air temperature at a whole hour. */
export interface HourlyTemperature {
  /** The day [see CalendarDate], fields as there. */
  readonly date: CalendarDate;
  /** Hour that begins then [h], whole, 0 to 23. */
  readonly hour: number;
  /** Mean air temperature of that hour [degC], -90 to 60. */
  readonly temperature: number;
}

/**
 * Frost hours by the day, from a series of hourly temperatures.
 *
 * Law: an hour at or below the threshold is a frost hour; neighbours join into one stretch.
 * @param series Hourly temperatures [see HourlyTemperature], fields as there, any order, gaps allowed.
 * @param threshold Temperature at and below which water must move [degC], -30 to 20.
 * @returns Stretches [see Span] by day number (see dayNumber); days without frost are left out.
 * @throws CoreError when a date, hour or temperature is out of range.
 * Accuracy: to the hour.
 * Source: common practice, no source.
 * @example frostByDay([{ date: { year: 2027, month: 1, day: 2 }, hour: 5, temperature: -1 }], 2).size // 1.000
 */
export function frostByDay(
  series: readonly HourlyTemperature[],
  threshold: number,
): ReadonlyMap<number, readonly Span[]> {
  requireBetween('threshold', threshold, -30, 20, 'degC');
  const hours = new Map<number, Set<number>>();
  series.forEach(({ date, hour, temperature }, index) => {
    requireBetween(`series[${index}].temperature`, temperature, -90, 60, 'degC');
    if (!Number.isInteger(hour) || hour < 0 || hour > 23) {
      throw new CoreError(`series[${index}].hour`, hour, 'a whole hour from 0 to 23');
    }
    const day = dayNumber(requireDate(date));
    if (temperature > threshold) return;
    hours.set(day, (hours.get(day) ?? new Set()).add(hour));
  });
  return new Map([...hours].map(([day, cold]) => [day, spansOfHours(cold)]));
}

function spansOfHours(hours: ReadonlySet<number>): readonly Span[] {
  return ringRuns([...hours].map((hour) => ({ start: 60 * hour, end: 60 * (hour + 1) })));
}
