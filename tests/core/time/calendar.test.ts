import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  dayNumber,
  dayOfWeek,
  dayOfYear,
  daysInMonth,
  daysInYear,
  isLeapYear,
  isMonthDay,
  nextDay,
} from '#core/time/calendar.ts';

const anyDate = fc
  .record({
    year: fc.integer({ min: 1, max: 9998 }),
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.integer({ min: 1, max: 31 }),
  })
  .filter(({ year, month, day }) => day <= daysInMonth(year, month));

/** The platform's own calendar (ECMA-262, 2024, 21.4.1: proleptic Gregorian) as the outside judge. */
function platformDays({ year, month, day }: { year: number; month: number; day: number }): number {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return date.getTime() / 86_400_000;
}

describe('the Gregorian calendar', () => {
  // Inter gravissimas, 1582: hundreds are common years unless divisible by 400.
  it('1900 and 2100 are common years, 2000 and 2028 are leap years', () => {
    expect([1900, 2000, 2028, 2100].map(isLeapYear)).toEqual([false, true, true, false]);
    expect([1, 9999].map(isLeapYear)).toEqual([false, false]);
  });

  // ISO 8601, 2004, 3.2.1: 1 January 2000 was a Saturday.
  it('1 January 2000 was a Saturday', () => {
    expect(dayOfWeek({ year: 2000, month: 1, day: 1 })).toBe(6);
  });

  it('400 years hold 146 097 days', () => {
    // 400 x 365 + 97 leap days, the cycle of the Gregorian calendar.
    const days = Array.from({ length: 400 }, (_, index) => daysInYear(2001 + index));
    expect(days.reduce((sum, each) => sum + each, 0)).toBe(146_097);
  });

  it('day numbers and days of the week agree with the platform', () => {
    fc.assert(
      fc.property(anyDate, (date) => {
        expect(dayNumber(date) - dayNumber({ year: 1970, month: 1, day: 1 })).toBe(
          platformDays(date),
        );
        const platform = new Date(platformDays(date) * 86_400_000).getUTCDay();
        expect(dayOfWeek(date)).toBe(platform);
      }),
    );
  });

  it('the next day has the next number', () => {
    fc.assert(
      fc.property(anyDate, (date) => {
        expect(dayNumber(nextDay(date))).toBe(dayNumber(date) + 1);
      }),
    );
  });

  it('the day after the last of a month or a year is the first of the next', () => {
    expect(nextDay({ year: 2027, month: 12, day: 31 })).toEqual({ year: 2028, month: 1, day: 1 });
    expect(nextDay({ year: 2027, month: 2, day: 28 })).toEqual({ year: 2027, month: 3, day: 1 });
    expect(nextDay({ year: 2028, month: 2, day: 28 })).toEqual({ year: 2028, month: 2, day: 29 });
  });

  it('31 December is the last day of the year', () => {
    expect(dayOfYear({ year: 2027, month: 12, day: 31 })).toBe(365);
    expect(dayOfYear({ year: 2028, month: 12, day: 31 })).toBe(366);
  });

  it('a day that does not exist is refused with the length of its month', () => {
    expect(() => dayNumber({ year: 2027, month: 2, day: 29 })).toThrow(
      'day is 29; it must be a whole number from 1 to 28.',
    );
    expect(() => daysInMonth(2027, 13)).toThrow(CoreError);
    expect(() => isLeapYear(0)).toThrow(CoreError);
  });

  it('29 February is a day of some year, 30 February of none', () => {
    expect(isMonthDay({ month: 2, day: 29 })).toBe(true);
    expect(isMonthDay({ month: 2, day: 30 })).toBe(false);
    expect(isMonthDay({ month: 13, day: 1 })).toBe(false);
    expect(isMonthDay({ month: 1, day: 0 })).toBe(false);
    expect(isMonthDay({ month: 1, day: 1.5 })).toBe(false);
    expect([1, 31].map((day) => isMonthDay({ month: 12, day }))).toEqual([true, true]);
  });
});
