/** Times of day: whole minutes after midnight, 0 to 1439, as a clock shows them. */
import { hardSpace } from './numerals.ts';

const minutesPerHour = 60;
const minutesPerDay = 24 * minutesPerHour;

export type ClockStyle = '24h' | '12h';

export type TimeOfDayResult =
  | { readonly ok: true; readonly minute: number }
  | {
      readonly ok: false;
      readonly code: 'empty' | 'notATime';
      readonly values: { readonly typed: string };
    };

const two = (value: number): string => String(value).padStart(2, '0');

/** "14:30", or "2:30 pm" on request. Minutes past the day's ends come round again. */
export function formatTimeOfDay(minute: number, style: ClockStyle = '24h'): string {
  const whole = Math.round(minute);
  const inDay = ((whole % minutesPerDay) + minutesPerDay) % minutesPerDay;
  const hours = Math.floor(inDay / minutesPerHour);
  const minutes = inDay % minutesPerHour;
  if (style === '24h') return `${two(hours)}:${two(minutes)}`;
  return `${hours % 12 || 12}:${two(minutes)}${hardSpace}${hours < 12 ? 'am' : 'pm'}`;
}

function hourOf(digits: string, half: string | undefined): number | undefined {
  const hour = Number(digits);
  if (half === undefined) return hour <= 24 ? hour : undefined;
  if (hour < 1 || hour > 12) return undefined;
  return (hour % 12) + (half === 'p' ? 12 : 0);
}

/**
 * Reads "14:30", "14.30", "1430", "8", "2:30 pm", "noon", "midnight". 24:00 is midnight, minute 0:
 * the day is a circle.
 */
export function parseTimeOfDay(text: string): TimeOfDayResult {
  const typed = text.replace(/\s+/g, ' ').trim();
  const refused = { ok: false, code: 'notATime', values: { typed } } as const;
  if (typed === '') return { ok: false, code: 'empty', values: { typed } };
  const plain = typed.toLowerCase();
  if (plain === 'midnight') return { ok: true, minute: 0 };
  if (plain === 'noon') return { ok: true, minute: minutesPerDay / 2 };
  const match = /^(\d{1,2})(?:[:.h]?(\d{2}))?(?: ?([ap])\.?m?\.?)?$/.exec(plain);
  if (match === null) return refused;
  const hour = hourOf(match[1] ?? '', match[3]);
  const minutes = Number(match[2] ?? 0);
  if (hour === undefined || minutes > 59 || (hour === 24 && minutes > 0)) return refused;
  return { ok: true, minute: (hour * minutesPerHour + minutes) % minutesPerDay };
}
