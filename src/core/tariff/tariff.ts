import { CoreError, requireBetween } from '#core/base/errors.ts';
import {
  type CalendarDate,
  dayOfWeek,
  type MonthDay,
  monthDayKey,
  requireDate,
} from '#core/time/calendar.ts';
import { isSpan, type Span, spanHolds } from '#core/time/spans.ts';

/** A stretch of the day at one price. */
export interface Band extends Span {
  /** Price of energy [currency/kWh], -1e9 to 1e9. */
  readonly price: number;
  /** What the tariff calls it, such as peak. */
  readonly name?: string;
}

/** The bands of one kind of day; between them they cover the 24 hours once. */
export interface DayType {
  readonly id: string;
  readonly name: string;
  /** Days of the week it holds for [-], 0 Sunday to 6 Saturday; empty for one used by holidays only. */
  readonly weekdays: readonly number[];
  readonly bands: readonly Band[];
}

/** A part of the year. It lasts from its first day to the day before the next season's first. */
export interface Season {
  readonly id: string;
  readonly name: string;
  /** First day [see MonthDay]. 29 February means 1 March in a year without one. */
  readonly from: MonthDay;
  /** Last day [see MonthDay]. May be left out; when given it must agree with the next first day. */
  readonly to?: MonthDay;
  readonly dayTypes: readonly DayType[];
}

/** A day priced as another day type than its weekday's. */
export interface Holiday extends MonthDay {
  /** The only year it falls on this day [-], 1 to 9999; every year when left out. */
  readonly year?: number;
  /** Day type it is priced as; a season without that day type prices it by its weekday. */
  readonly dayTypeId: string;
}

/**
 * A supply tariff: seasons x day types x bands, and a daily fixed charge. Times are local wall-clock
 * times and every day has 1440 minutes: the two days a year on which a clock change makes 23 or 25
 * hours are priced as ordinary days.
 */
export interface Tariff {
  /** Name or sign of the currency. */
  readonly currency: string;
  /** Fixed charge [currency/day], -1e9 to 1e9. */
  readonly dailyCharge: number;
  readonly seasons: readonly Season[];
  readonly holidays?: readonly Holiday[];
}

/** The season and day type that price a date. */
export interface DayRule {
  readonly season: Season;
  readonly dayType: DayType;
}

/**
 * The season and day type that hold on a date.
 *
 * Law: the season whose first day is the latest not after the date, the last one of the year before
 * the first; then the holiday's day type, else the weekday's.
 * @param tariff The tariff [see Tariff], without problems.
 * @param date The day [see CalendarDate], fields as there.
 * @returns Season and day type [see DayRule].
 * @throws CoreError when there is no such day, no season, or no day type for the weekday.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example ruleOn(flatTariff(0.18), { year: 2027, month: 6, day: 1 }).dayType.bands.length // 1.000
 */
export function ruleOn(tariff: Tariff, date: CalendarDate): DayRule {
  requireDate(date);
  const season = seasonOn(tariff, date);
  const dayType = holidayType(tariff, season, date) ?? weekdayType(season, dayOfWeek(date));
  if (!dayType) throw new CoreError(`season ${season.id}`, date.day, 'a day type for each weekday');
  return { season, dayType };
}

/**
 * The season a day of the year falls in.
 *
 * Law: the latest first day not after it; before every first day, the last season of the year.
 * @param tariff The tariff [see Tariff], with at least one season.
 * @param monthDay Day of the year [see MonthDay], fields as there.
 * @returns The season [see Season].
 * @throws CoreError when the tariff has no season.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example seasonOn(flatTariff(0.18), { month: 1, day: 1 }).dayTypes.length // 1.000
 */
export function seasonOn(tariff: Tariff, monthDay: MonthDay): Season {
  const ordered = seasonsInOrder(tariff);
  const key = monthDayKey(monthDay);
  const season = ordered.findLast(({ from }) => monthDayKey(from) <= key) ?? ordered.at(-1);
  if (!season) throw new CoreError('seasons', 'empty', 'at least one season');
  return season;
}

/**
 * The seasons in the order of the year.
 *
 * Law: sorted by first day, from January on.
 * @param tariff The tariff [see Tariff], any number of seasons.
 * @returns The seasons [see Season], a new list.
 * @throws nothing; an empty list stays empty.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example seasonsInOrder(flatTariff(0.18)).length // 1.000
 */
export function seasonsInOrder(tariff: Tariff): readonly Season[] {
  return [...tariff.seasons].sort((a, b) => monthDayKey(a.from) - monthDayKey(b.from));
}

function holidayType(tariff: Tariff, season: Season, date: CalendarDate): DayType | undefined {
  const holiday = tariff.holidays?.find(
    ({ month, day, year }) =>
      month === date.month && day === date.day && (year === undefined || year === date.year),
  );
  return holiday && season.dayTypes.find(({ id }) => id === holiday.dayTypeId);
}

function weekdayType(season: Season, weekday: number): DayType | undefined {
  return season.dayTypes.find(({ weekdays }) => weekdays.includes(weekday));
}

/**
 * The price of energy at a minute of a date.
 *
 * Law: the price of the band that holds the minute.
 * @param tariff The tariff [see Tariff], without problems.
 * @param date The day [see CalendarDate], fields as there.
 * @param minute Minute of the day [min], whole, 0 to 1439.
 * @returns Price [currency/kWh].
 * @throws CoreError when there is no such day or minute, or no band holds the minute.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example priceAt(flatTariff(0.18), { year: 2027, month: 6, day: 1 }, 700) // 0.1800
 */
export function priceAt(tariff: Tariff, date: CalendarDate, minute: number): number {
  const { dayType } = ruleOn(tariff, date);
  const band = dayType.bands.find((each) => isSpan(each) && spanHolds(each, minute));
  if (!band) throw new CoreError(`day type ${dayType.id}`, minute, 'bands that cover the day');
  return band.price;
}

/**
 * A tariff with one price at all times.
 *
 * Law: one season, one day type, one band.
 * @param price Price of energy [currency/kWh], -1e9 to 1e9.
 * @param dailyCharge Fixed charge [currency/day], -1e9 to 1e9, 0 unless set.
 * @param currency Name or sign of the currency [-], any text, empty unless set.
 * @returns The tariff [see Tariff].
 * @throws CoreError when a price is out of range.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example flatTariff(0.18).seasons[0].dayTypes[0].bands[0].price // 0.1800
 */
export function flatTariff(price: number, dailyCharge = 0, currency = ''): Tariff {
  requireBetween('price', price, -1e9, 1e9, 'per kWh');
  requireBetween('dailyCharge', dailyCharge, -1e9, 1e9, 'a day');
  const allDay: DayType = {
    id: 'all',
    name: 'Every day',
    weekdays: [0, 1, 2, 3, 4, 5, 6],
    bands: [{ start: 0, end: 1440, price }],
  };
  const allYear: Season = {
    id: 'all',
    name: 'All year',
    from: { month: 1, day: 1 },
    dayTypes: [allDay],
  };
  return { currency, dailyCharge, seasons: [allYear] };
}
