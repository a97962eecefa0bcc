/** The day as a calendar that a phone or a computer can take in (iCalendar, RFC 5545). */
import ical, { ICalEventRepeatingFreq, ICalEventTransparency } from 'ical-generator';
import { type CalendarDate, type MonthDay, monthDayKey } from '#core/time/calendar.ts';
import { onLines, onOneLine } from '#pad/document/oneLine.ts';

/** One block as the calendar shows it. */
export interface CalendarBlock {
  readonly id: string;
  /** First minute of the day [min]. */
  readonly start: number;
  /** First minute after it [min]; not after the start when it crosses midnight or lasts all day. */
  readonly end: number;
  readonly summary: string;
  readonly description: string;
}

export interface DayCalendar {
  /** What the calendar is called, and what its entries are known by beside the id of the block. */
  readonly padName: string;
  readonly blocks: readonly CalendarBlock[];
  /** The day it begins. */
  readonly date: CalendarDate;
  /** First days of the plans of the year; the entries end where the next begins. */
  readonly planStarts: readonly MonthDay[];
  /** When the file is made [ms since 1 January 1970, UTC]. */
  readonly stamp: number;
}

/**
 * Times are floating (RFC 5545, 3.3.5, form 1): 06:00 wherever the calendar is opened, as on the clock
 * of a timer. The library writes such a time from the UTC parts of a date.
 */
function at({ year, month, day }: CalendarDate, minute: number): Date {
  return new Date(Date.UTC(year, month - 1, day, 0, minute));
}

/** A short number that stays the same for the same text (FNV-1a, 32 bits, public domain). */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) {
    hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  }
  return hash.toString(16).padStart(8, '0');
}

/** The next day after `date` on which a plan of the year begins, if any. */
function nextStart(date: CalendarDate, starts: readonly MonthDay[]): CalendarDate | null {
  const now = monthDayKey(date);
  const coming = starts.map(({ month, day }) => ({
    year: monthDayKey({ month, day }) > now ? date.year : date.year + 1,
    month,
    day,
  }));
  coming.sort((a, b) => a.year - b.year || monthDayKey(a) - monthDayKey(b));
  return coming[0] ?? null;
}

/** A text of the calendar itself (RFC 5545, 3.3.11): the library writes its name as it is. */
function escaped(text: string): string {
  return text.replace(/[\\;,]/g, '\\$&');
}

/** One entry a block, each day anew until the next plan of the year. */
export function dayCalendar(given: DayCalendar): string {
  const { padName, blocks, date, planStarts, stamp } = given;
  const calendar = ical({
    prodId: { company: 'Cubelaw', product: 'day plan', language: 'EN' },
    name: escaped(padName === '' ? 'Pool pump' : `Pool pump, ${onOneLine(padName)}`),
  });
  const stop = nextStart(date, planStarts);
  for (const { id, start, end, summary, description } of blocks) {
    calendar.createEvent({
      // No host is named: "invalid" is kept for names that lead nowhere (RFC 2606).
      id: `${fingerprint(padName)}-${id}@cubelaw.invalid`,
      stamp: new Date(stamp),
      start: at(date, start),
      end: at(date, end > start ? end : end + 1440),
      floating: true,
      summary: onOneLine(summary),
      description: onLines(description),
      // A pump does not keep its owner busy.
      transparency: ICalEventTransparency.TRANSPARENT,
      repeating: {
        freq: ICalEventRepeatingFreq.DAILY,
        ...(stop !== null && { until: at(stop, start - 1440) }),
      },
    });
  }
  return calendar.toString();
}
