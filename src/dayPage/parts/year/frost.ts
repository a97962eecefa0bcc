/** Frost from a series of air temperatures: by the hour while the page is open, by the month in the pad. */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { type CalendarDate, dayNumber, daysInMonth, monthDayKey } from '#core/time/calendar.ts';
import type { Span } from '#core/time/spans.ts';
import { frostByDay, type HourlyTemperature } from '#core/year/conditions.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { createFileIn } from '#dayPage/fileInput/fileIn.ts';
import type { StartReading } from '#dayPage/fileInput/startReading.ts';
import type { TemperatureFile } from '#pad/formats/temperatureCsv.ts';

/** At and below this temperature of the air water must move [degC]; common practice, no source. */
const usualThreshold = 2;

/** What a series says of frost. */
export interface FrostFound {
  /** Hours of frost in each month, January first [h]; null for a month without a value. */
  readonly byMonth: readonly (number | null)[];
  /** Days of the series that have a value. */
  readonly days: number;
  /** Stretches by the day of the year (see monthDayKey); the latest year counts. */
  readonly byDay: ReadonlyMap<number, readonly Span[]>;
}

export type FrostModel = ReturnType<typeof createFrost>;

/** Frost hours of the days there are, stretched to whole months of the year that is worked out. */
export function frostFound(
  hours: readonly HourlyTemperature[],
  threshold: number,
  year: number,
): FrostFound {
  const frost = frostByDay(hours, threshold);
  const dates = new Map<number, CalendarDate>();
  const counts = Array.from({ length: 12 }, () => ({ seen: 0, cold: 0 }));
  for (const { date, temperature } of hours) {
    dates.set(dayNumber(date), date);
    const month = counts[date.month - 1];
    if (month === undefined) continue;
    month.seen += 1;
    if (temperature <= threshold) month.cold += 1;
  }
  const byDay = new Map<number, readonly Span[]>();
  for (const [day, date] of [...dates].sort(([one], [other]) => one - other)) {
    byDay.set(monthDayKey(date), frost.get(day) ?? []);
  }
  return {
    byMonth: counts.map(({ seen, cold }, index) =>
      seen === 0 ? null : (cold / seen) * 24 * daysInMonth(year, index + 1),
    ),
    days: dates.size,
    byDay,
  };
}

const rounded = (hours: number) => Math.round(10 * hours) / 10;

export function createFrost(day: DayModel, year: ReadonlySignal<number>, start: StartReading) {
  const file = createFileIn<TemperatureFile>('temperature', start);
  const threshold = signal(usualThreshold);
  const given = computed(() => day.pad.value.year.frostHours);
  const found = computed<FrostFound | null>(() => {
    const there = file.loaded.value;
    return there === null ? null : frostFound(there.result.hours, threshold.value, year.value);
  });
  /** The twelve months as the pad would keep them; those the series lacks stay as they are. */
  const months = computed<readonly number[] | null>(() => {
    const now = found.value;
    if (now === null) return null;
    return now.byMonth.map((hours, index) =>
      hours === null ? (given.value[index] ?? 0) : rounded(hours),
    );
  });
  /** Whether the pad holds what the series says: only then does the series stand for it by the hour. */
  const isUsed = computed(() => {
    const [own, wanted] = [given.value, months.value];
    return wanted !== null && own.length === 12 && wanted.every((hours, at) => hours === own[at]);
  });
  const frostOn = computed(() => {
    const now = found.value;
    if (now === null || !isUsed.value) return undefined;
    return (date: CalendarDate) => now.byDay.get(monthDayKey(date));
  });
  return {
    file,
    threshold,
    found,
    months,
    isUsed,
    frostOn,
    use: () => {
      const wanted = months.peek();
      if (wanted === null) return;
      day.store.edit(
        (now) => ({ ...now, year: { ...now.year, frostHours: [...wanted] } }),
        'the frost of a series',
      );
    },
  };
}
