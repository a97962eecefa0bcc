import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { CoreError, requireBetween, requirePositive } from '#core/base/errors.ts';
import {
  type CalendarDate,
  dayNumber,
  daysInMonth,
  daysInYear,
  nextDay,
  requireDate,
} from '#core/time/calendar.ts';
import { intersectionOf, piecesOf, requireSpan, type Span } from '#core/time/spans.ts';
import {
  type Band,
  type DayType,
  ruleOn,
  type Season,
  seasonsInOrder,
  type Tariff,
} from './tariff.ts';
import { tariffProblems } from './tariffProblems.ts';

/** Beside the pricing functions, so that one import prices a flat tariff. */

export { joulesPerKilowattHour };

/** A stretch of the day at one wire power; stretches may cross midnight. Minutes in none draw 0 W. */
export interface PoweredSpan extends Span {
  /** Power drawn [W], 0 to 1e9. */
  readonly power: number;
}

/** What one band of a day takes and costs. */
export interface BandPrice {
  readonly band: Band;
  /** Energy taken [J], 0 or more. */
  readonly energy: number;
  /** Its price [currency]. */
  readonly cost: number;
}

/** What one day of a day type takes and costs. */
export interface DayPrice {
  readonly season: Season;
  readonly dayType: DayType;
  /** Energy taken [J], 0 or more. */
  readonly energy: number;
  /** Price of that energy [currency]. */
  readonly energyCost: number;
  /** Fixed charge of the day [currency]. */
  readonly dailyCharge: number;
  /** Energy and fixed charge together [currency]. */
  readonly cost: number;
  /** One entry per band of the day type, in its order. */
  readonly byBand: readonly BandPrice[];
}

/** What a run of days takes and costs. */
export interface PeriodPrice {
  /** How many days [d], 0 or more. */
  readonly days: number;
  /** Energy taken [J], 0 or more. */
  readonly energy: number;
  /** Price of that energy [currency]. */
  readonly energyCost: number;
  /** Fixed charges of all days [currency]. */
  readonly dailyCharge: number;
  /** Energy and fixed charges together [currency]. */
  readonly cost: number;
  /** How many days of each day type, with the price of one of them. */
  readonly byDayType: readonly { readonly days: number; readonly day: DayPrice }[];
}

/**
 * Energy that a day of powered stretches takes.
 *
 * Law: E = sum of power x minutes x 60 s.
 * @param spans The stretches [see PoweredSpan], fields as there; where two share a minute both count.
 * @returns Energy [J], 0 or more.
 * @throws CoreError when a stretch is off the clock or a power out of range.
 * Accuracy: exact up to rounding of doubles; reference file electricity.
 * Source: definition of energy (NIST SP 811, 2008).
 * @example dayEnergy([{ start: 480, end: 960, power: 1500 }]) // 4.320e7
 */
export function dayEnergy(spans: readonly PoweredSpan[]): number {
  requirePowered(spans);
  return sumOf(spans, (span) => energyIn([{ start: 0, end: 1440 }], span));
}

function requirePowered(spans: readonly PoweredSpan[]): void {
  spans.forEach((span, index) => {
    requireSpan(`spans[${index}]`, span);
    requireBetween(`spans[${index}].power`, span.power, 0, 1e9, 'W');
  });
}

function energyIn(pieces: readonly { start: number; end: number }[], span: PoweredSpan): number {
  const shared = intersectionOf(pieces, piecesOf(span));
  return sumOf(shared, ({ start, end }) => end - start) * 60 * span.power;
}

function sumOf<T>(entries: readonly T[], value: (entry: T) => number): number {
  return entries.reduce((sum, entry) => sum + value(entry), 0);
}

/**
 * Price of one day.
 *
 * Law: sum over bands of energy in the band x its price, plus the daily charge.
 * @param tariff The tariff [see Tariff], without problems.
 * @param date The day [see CalendarDate], fields as there; 1440 local minutes, no clock change.
 * @param spans The stretches [see PoweredSpan], fields as there.
 * @returns Energy [J] and costs [currency], in all and by band [see DayPrice].
 * @throws CoreError when the tariff has a problem, there is no such day, or a stretch is unsound.
 * Accuracy: exact up to rounding of doubles; reference file electricity.
 * Source: common practice, no source.
 * @example priceDay(flatTariff(0.18), { year: 2027, month: 6, day: 1 }, [{ start: 480, end: 960, power: 1500 }]).cost // 2.160
 */
export function priceDay(
  tariff: Tariff,
  date: CalendarDate,
  spans: readonly PoweredSpan[],
): DayPrice {
  requireSound(tariff);
  requirePowered(spans);
  const { season, dayType } = ruleOn(tariff, date);
  return priceOfDayType(tariff, season, dayType, spans);
}

function requireSound(tariff: Tariff): void {
  const [problem] = tariffProblems(tariff);
  if (problem)
    throw new CoreError(problem.field, problem.code, 'part of a tariff without problems');
}

function priceOfDayType(
  tariff: Tariff,
  season: Season,
  dayType: DayType,
  spans: readonly PoweredSpan[],
): DayPrice {
  const byBand = dayType.bands.map((band) => priceOfBand(band, spans));
  const energy = sumOf(byBand, (each) => each.energy);
  const energyCost = sumOf(byBand, (each) => each.cost);
  const { dailyCharge } = tariff;
  return {
    season,
    dayType,
    energy,
    energyCost,
    dailyCharge,
    cost: energyCost + dailyCharge,
    byBand,
  };
}

function priceOfBand(band: Band, spans: readonly PoweredSpan[]): BandPrice {
  const pieces = piecesOf(band);
  const energy = sumOf(spans, (span) => energyIn(pieces, span));
  return { band, energy, cost: (energy / joulesPerKilowattHour) * band.price };
}

/**
 * Price of a run of days, each with the same stretches.
 *
 * Law: number of days of each day type x the price of one such day.
 * @param tariff The tariff [see Tariff], without problems.
 * @param first First day [see CalendarDate], fields as there.
 * @param days How many days [d], whole, 0 to 36600.
 * @param spans The stretches [see PoweredSpan], fields as there.
 * @returns Energy [J] and costs [currency], in all and by day type [see PeriodPrice].
 * @throws CoreError when the tariff has a problem, there is no such day, days is out of range, or a stretch is unsound.
 * Accuracy: exact up to rounding of doubles; reference file electricity.
 * Source: common practice, no source.
 * @example priceDays(flatTariff(0.18), { year: 2027, month: 6, day: 1 }, 30, [{ start: 480, end: 960, power: 1500 }]).cost // 64.80
 */
export function priceDays(
  tariff: Tariff,
  first: CalendarDate,
  days: number,
  spans: readonly PoweredSpan[],
): PeriodPrice {
  requireSound(tariff);
  requirePowered(spans);
  requireDate(first);
  if (!Number.isInteger(days) || days < 0 || days > 36600) {
    throw new CoreError('days', days, 'a whole number from 0 to 36600');
  }
  const byDayType = [...countDayTypes(tariff, first, days)].map(([dayType, { season, count }]) => ({
    days: count,
    day: priceOfDayType(tariff, season, dayType, spans),
  }));
  const total = (value: (day: DayPrice) => number) =>
    sumOf(byDayType, (each) => each.days * value(each.day));
  return {
    days,
    energy: total((day) => day.energy),
    energyCost: total((day) => day.energyCost),
    dailyCharge: tariff.dailyCharge * days,
    cost: total((day) => day.energyCost) + tariff.dailyCharge * days,
    byDayType,
  };
}

/** Keyed by the day type object itself: two seasons may use the same id for different bands. */
function countDayTypes(tariff: Tariff, first: CalendarDate, days: number) {
  const counts = new Map<DayType, { readonly season: Season; count: number }>();
  let date = first;
  for (let index = 0; index < days; index += 1) {
    if (index > 0) date = nextDay(date);
    const { season, dayType } = ruleOn(tariff, date);
    const entry = counts.get(dayType);
    if (entry) entry.count += 1;
    else counts.set(dayType, { season, count: 1 });
  }
  return counts;
}

/**
 * Price of a calendar month.
 *
 * Law: as priceDays, over the days of the month.
 * @param tariff The tariff [see Tariff], without problems.
 * @param year Year [-], whole, 1 to 9999.
 * @param month Month [-], whole, 1 to 12.
 * @param spans The stretches [see PoweredSpan], fields as there.
 * @returns Energy [J] and costs [currency] [see PeriodPrice].
 * @throws CoreError as priceDays, or when there is no such month.
 * Accuracy: exact up to rounding of doubles.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example priceMonth(flatTariff(0.18), 2028, 2, [{ start: 480, end: 960, power: 1500 }]).cost // 62.64
 */
export function priceMonth(
  tariff: Tariff,
  year: number,
  month: number,
  spans: readonly PoweredSpan[],
): PeriodPrice {
  return priceDays(tariff, { year, month, day: 1 }, daysInMonth(year, month), spans);
}

/**
 * Price of a calendar year.
 *
 * Law: as priceDays, from 1 January to 31 December.
 * @param tariff The tariff [see Tariff], without problems.
 * @param year Year [-], whole, 1 to 9999.
 * @param spans The stretches [see PoweredSpan], fields as there.
 * @returns Energy [J] and costs [currency] [see PeriodPrice].
 * @throws CoreError as priceDays, or when there is no such year.
 * Accuracy: exact up to rounding of doubles.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example priceYear(flatTariff(0.18), 2027, [{ start: 480, end: 960, power: 1500 }]).cost // 788.4
 */
export function priceYear(
  tariff: Tariff,
  year: number,
  spans: readonly PoweredSpan[],
): PeriodPrice {
  return priceDays(tariff, { year, month: 1, day: 1 }, daysInYear(year), spans);
}

/**
 * Price of a season that starts in a given year; it may end in the next.
 *
 * Law: as priceDays, from the season's first day to the day before the next season's.
 * @param tariff The tariff [see Tariff], without problems.
 * @param year Year in which the season starts [-], whole, 1 to 9998.
 * @param seasonId Id of the season [-], one of the tariff's.
 * @param spans The stretches [see PoweredSpan], fields as there.
 * @returns Energy [J] and costs [currency] [see PeriodPrice].
 * @throws CoreError as priceDays, or when the tariff has no such season.
 * Accuracy: exact up to rounding of doubles.
 * Source: Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example priceSeason(flatTariff(0.18), 2027, 'all', [{ start: 480, end: 960, power: 1500 }]).cost // 788.4
 */
export function priceSeason(
  tariff: Tariff,
  year: number,
  seasonId: string,
  spans: readonly PoweredSpan[],
): PeriodPrice {
  const ordered = seasonsInOrder(tariff);
  const index = ordered.findIndex(({ id }) => id === seasonId);
  const season = ordered[index];
  if (!season) throw new CoreError('seasonId', seasonId, 'the id of a season of the tariff');
  const next = ordered[index + 1];
  const first = dateOf(season, year);
  const after = next ? dateOf(next, year) : dateOf(ordered[0] ?? season, year + 1);
  return priceDays(tariff, first, dayNumber(after) - dayNumber(first), spans);
}

/** First day of a season in a year; 29 February slides to 1 March where there is none. */
function dateOf({ from: { month, day } }: Season, year: number): CalendarDate {
  return day > daysInMonth(year, month) ? { year, month: month + 1, day: 1 } : { year, month, day };
}

/**
 * Energy that moving a unit of water takes.
 *
 * Law: E/V = P/Q.
 * @param power Wire power [W], 0 to 1e9.
 * @param flow Flow [m3/s], more than 0.
 * @returns Energy per volume [J/m3], 0 or more.
 * @throws CoreError when the power is out of range or the flow is not positive.
 * Accuracy: exact up to rounding of doubles; reference file electricity.
 * Source: definitions of power and flow (NIST SP 811, 2008).
 * @example energyPerVolume(120, 0.0025) // 48000
 */
export function energyPerVolume(power: number, flow: number): number {
  return requireBetween('power', power, 0, 1e9, 'W') / requirePositive('flow', flow, 'm3/s');
}
