import { isMonthDay, type MonthDay, monthDayKey } from '#core/time/calendar.ts';
import {
  complementOf,
  intersectionOf,
  isSpan,
  piecesOf,
  ringRuns,
  unionOf,
} from '#core/time/spans.ts';
import { type Band, type DayType, type Season, seasonsInOrder, type Tariff } from './tariff.ts';

/**
 * What is wrong with a tariff. `field` is the path of the entry at fault, such as
 * `seasons[0].dayTypes[1].bands[2]`; spans are minutes of the day.
 */
export type TariffProblem =
  | { readonly code: 'noSeason'; readonly field: string }
  | { readonly code: 'noDayType'; readonly field: string }
  | { readonly code: 'noSuchDate'; readonly field: string }
  | { readonly code: 'sameId'; readonly field: string; readonly id: string }
  | { readonly code: 'seasonStartsTwice'; readonly field: string; readonly otherId: string }
  | {
      readonly code: 'seasonGap' | 'seasonOverlap';
      readonly field: string;
      readonly nextId: string;
    }
  | { readonly code: 'noSuchWeekday'; readonly field: string; readonly weekday: number }
  | {
      readonly code: 'weekdayMissing' | 'weekdayTwice';
      readonly field: string;
      readonly weekday: number;
    }
  | { readonly code: 'bandMinute'; readonly field: string }
  | {
      readonly code: 'bandGap' | 'bandOverlap';
      readonly field: string;
      readonly start: number;
      readonly end: number;
    }
  | { readonly code: 'money'; readonly field: string }
  | { readonly code: 'holidayDayType'; readonly field: string; readonly dayTypeId: string }
  | { readonly code: 'holidayTwice'; readonly field: string };

const weekdays: readonly number[] = [0, 1, 2, 3, 4, 5, 6];

/**
 * Everything that keeps a tariff from pricing every minute of every year exactly once.
 *
 * Law: seasons start on real, distinct days; each weekday has one day type in each season; the bands
 * of a day type cover the 1440 minutes once; holidays name a day type that exists.
 * @param tariff The tariff [see Tariff], any numbers, as typed.
 * @returns Problems [see TariffProblem] with the path of the entry at fault; empty when sound.
 * @throws nothing; whatever is wrong is returned.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example tariffProblems({ currency: '', dailyCharge: 0, seasons: [] }).length // 1.000
 */
export function tariffProblems(tariff: Tariff): readonly TariffProblem[] {
  const none: readonly TariffProblem[] =
    tariff.seasons.length === 0 ? [{ code: 'noSeason', field: 'seasons' }] : [];
  return [
    ...numberProblem(tariff.dailyCharge, 'dailyCharge'),
    ...none,
    ...sameIdProblems(tariff.seasons, 'seasons'),
    ...seasonDateProblems(tariff),
    ...tariff.seasons.flatMap((season, index) => seasonProblems(season, `seasons[${index}]`)),
    ...holidayProblems(tariff),
  ];
}

/** The bound keeps sums of sums finite; no currency needs more. */
function numberProblem(value: number, field: string): readonly TariffProblem[] {
  return Math.abs(value) <= 1e9 ? [] : [{ code: 'money', field }];
}

function sameIdProblems(
  entries: readonly { readonly id: string }[],
  field: string,
): readonly TariffProblem[] {
  return entries.flatMap(({ id }, index) =>
    entries.findIndex((entry) => entry.id === id) < index
      ? [{ code: 'sameId' as const, field: `${field}[${index}].id`, id }]
      : [],
  );
}

function seasonDateProblems(tariff: Tariff): readonly TariffProblem[] {
  const fieldOf = (season: Season) => `seasons[${tariff.seasons.indexOf(season)}]`;
  const ordered = seasonsInOrder(tariff);
  return ordered.flatMap((season, index) => {
    const field = fieldOf(season);
    const next = ordered[(index + 1) % ordered.length] ?? season;
    return [
      ...(isMonthDay(season.from) ? [] : [{ code: 'noSuchDate' as const, field: `${field}.from` }]),
      ...(next !== season && monthDayKey(next.from) === monthDayKey(season.from)
        ? [
            {
              code: 'seasonStartsTwice' as const,
              field: `${fieldOf(next)}.from`,
              otherId: season.id,
            },
          ]
        : []),
      ...lastDayProblems(season, next, `${field}.to`),
    ];
  });
}

/** A stated last day must be the eve of the next season; 28 and 29 February are the same eve. */
function lastDayProblems(season: Season, next: Season, field: string): readonly TariffProblem[] {
  const { from, to } = season;
  if (!to) return [];
  if (!isMonthDay(to)) return [{ code: 'noSuchDate', field }];
  if (!isMonthDay(from) || !isMonthDay(next.from)) return [];
  const eve = leapYearDay(next.from) - 1;
  const stated = leapYearDay(to);
  const daysShort = daysFrom(from, eve) - daysFrom(from, stated);
  if (daysShort === 0 || (daysShort === 1 && monthDayKey(to) === 228)) return [];
  return [{ code: daysShort > 0 ? 'seasonGap' : 'seasonOverlap', field, nextId: next.id }];
}

/** Days a season would last if it ended on `last`, in a leap year, on the ring of the year. */
function daysFrom(from: MonthDay, last: number): number {
  return (last - leapYearDay(from) + 2 * 366) % 366;
}

function leapYearDay({ month, day }: MonthDay): number {
  const before = [0, 31, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335];
  return (before[month - 1] ?? 0) + day;
}

function seasonProblems(season: Season, field: string): readonly TariffProblem[] {
  if (season.dayTypes.length === 0) return [{ code: 'noDayType', field: `${field}.dayTypes` }];
  return [
    ...sameIdProblems(season.dayTypes, `${field}.dayTypes`),
    ...weekdayProblems(season, field),
    ...season.dayTypes.flatMap((dayType, index) =>
      bandProblems(dayType, `${field}.dayTypes[${index}]`),
    ),
  ];
}

function weekdayProblems(season: Season, field: string): readonly TariffProblem[] {
  const listed = season.dayTypes.flatMap((dayType) => dayType.weekdays);
  const counted = weekdays.flatMap((weekday): TariffProblem[] => {
    const times = listed.filter((each) => each === weekday).length;
    if (times === 1) return [];
    return [{ code: times === 0 ? 'weekdayMissing' : 'weekdayTwice', field, weekday }];
  });
  const unknown = listed
    .filter((weekday) => !weekdays.includes(weekday))
    .map((weekday) => ({ code: 'noSuchWeekday' as const, field, weekday }));
  return [...counted, ...unknown];
}

function bandProblems(dayType: DayType, field: string): readonly TariffProblem[] {
  const sound = dayType.bands.filter(isSpan);
  const gaps = ringRuns(complementOf(unionOf(sound)));
  return [
    ...dayType.bands.flatMap((band, index) => oneBandProblems(band, `${field}.bands[${index}]`)),
    ...gaps.map((run) => ({ code: 'bandGap' as const, field: `${field}.bands`, ...run })),
    ...bandOverlaps(dayType, field),
  ];
}

function oneBandProblems(band: Band, field: string): readonly TariffProblem[] {
  const minutes: readonly TariffProblem[] = isSpan(band) ? [] : [{ code: 'bandMinute', field }];
  return [...minutes, ...numberProblem(band.price, `${field}.price`)];
}

function bandOverlaps({ bands }: DayType, field: string): readonly TariffProblem[] {
  return bands.flatMap((band, index) =>
    bands.slice(0, index).flatMap((earlier) => {
      if (!isSpan(band) || !isSpan(earlier)) return [];
      return ringRuns(intersectionOf(piecesOf(earlier), piecesOf(band))).map((run) => ({
        code: 'bandOverlap' as const,
        field: `${field}.bands[${index}]`,
        start: run.start,
        end: run.end,
      }));
    }),
  );
}

function holidayProblems({ holidays = [], seasons }: Tariff): readonly TariffProblem[] {
  return holidays.flatMap((holiday, index) => {
    const field = `holidays[${index}]`;
    const problems: TariffProblem[] = [];
    if (!isMonthDay(holiday)) problems.push({ code: 'noSuchDate', field });
    const known = seasons.some(({ dayTypes }) =>
      dayTypes.some(({ id }) => id === holiday.dayTypeId),
    );
    if (!known) {
      problems.push({ code: 'holidayDayType', field, dayTypeId: holiday.dayTypeId });
    }
    const twice = holidays
      .slice(0, index)
      .some(
        (other) =>
          monthDayKey(other) === monthDayKey(holiday) && sameYear(other.year, holiday.year),
      );
    if (twice) problems.push({ code: 'holidayTwice', field });
    return problems;
  });
}

function sameYear(first: number | undefined, second: number | undefined): boolean {
  return first === undefined || second === undefined || first === second;
}
