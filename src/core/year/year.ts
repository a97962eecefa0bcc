/** A year of days: seasons, day types, water temperature, a loading filter and frost, to one bill. */

import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { CoreError, requireNotNegative } from '#core/base/errors.ts';
import type { Block } from '#core/day/day.ts';
import {
  type DayReport,
  dayReport,
  type FlowLimit,
  type QuietHours,
  type RunningPoint,
  type ServiceNeed,
} from '#core/day/dayReport.ts';
import { withFrost } from '#core/day/frost.ts';
import type { Priming } from '#core/day/priming.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import { type DayType, ruleOn, type Tariff } from '#core/tariff/tariff.ts';
import {
  type CalendarDate,
  daysInYear,
  type MonthDay,
  monthDayKey,
  nextDay,
} from '#core/time/calendar.ts';
import { type Span, unionOf } from '#core/time/spans.ts';

/** A day plan that holds from one day of the year until the next plan begins. */
export interface DatedPlan<N extends ServiceNeed> {
  /** First day it holds [see MonthDay], fields as there. */
  readonly from: MonthDay;
  /** The blocks [see Block], none overlapping; empty where the pump rests. */
  readonly blocks: readonly Block[];
  /** What the water is moved for meanwhile. */
  readonly needs: readonly N[];
}

/** What a day of the year is like. */
export interface DayConditions {
  /** Temperature of the water [degC], 0 to 45. */
  readonly waterTemperature: number;
  /** Share of the way of the filter from clean to due [-], 0 to 1. */
  readonly loading: number;
  /** Hours in which frost calls for running water [see Span]. */
  readonly frost: readonly Span[];
}

/** A year and all that is needed to work it out. */
export interface YearPlan<N extends ServiceNeed, L extends FlowLimit> {
  /** The year [-], whole, 1 to 9999. */
  readonly year: number;
  /** At least one plan; before the first of the year the last of the year before holds. */
  readonly plans: readonly DatedPlan<N>[];
  readonly tariff: Tariff;
  /** What a day is like; asked once for each day. Days given the very same object are alike. */
  readonly conditionsOn: (date: CalendarDate) => DayConditions;
  /** What the pump does at a speed ratio [-] above 0 on such a day; asked once for each speed. */
  readonly pointAt: (ratio: number, conditions: DayConditions) => RunningPoint;
  /** Water in the pool [m3], more than 0. */
  readonly volume: number;
  readonly limits: readonly L[];
  readonly quiet: readonly QuietHours[];
  /** Speed over reference speed that frost calls for [-], 0 or more; 0 leaves frost alone. */
  readonly frostRatio: number;
  /** How the pump primes at every start [see Priming]; not at all when left out. */
  readonly priming?: Priming | undefined;
  /** Draw while the pump is stopped [W], 0 or more; 0 when left out. */
  readonly standbyPower?: number | undefined;
  /** What the blocks of a plan become on such a day, where the pump is set anew; as planned when left out. */
  readonly blocksOn?: (blocks: readonly Block[], conditions: DayConditions) => readonly Block[];
}

/** One day of the year worked out. */
export interface YearDay<N extends ServiceNeed, L extends FlowLimit> {
  /** The day [see CalendarDate], fields as there. */
  readonly date: CalendarDate;
  readonly conditions: DayConditions;
  /** The plan that held, one of those given. */
  readonly plan: DatedPlan<N>;
  /** The day to the minute, frost hours laid over the plan. */
  readonly report: DayReport<N, L>;
  /** Price of energy and fixed charge [currency], any finite amount. */
  readonly cost: number;
}

/** A stretch of the year summed up. */
export interface YearTotals {
  /** How many days [d], 0 or more. */
  readonly days: number;
  /** Energy taken [J], 0 or more. */
  readonly energy: number;
  /** Price of energy and fixed charges [currency]. */
  readonly cost: number;
  /** Water moved [m3], 0 or more. */
  readonly volumeMoved: number;
  /** Minutes in which the pump turns [min], 0 or more. */
  readonly runMinutes: number;
  /** Minutes of frost [min], 0 or more. */
  readonly frostMinutes: number;
  /** Days on which a need stays short [d], 0 or more. */
  readonly shortDays: number;
  /** Days on which a limit is crossed [d], 0 or more. */
  readonly crossedDays: number;
}

/** The year worked out. */
export interface YearReport<N extends ServiceNeed, L extends FlowLimit> extends YearTotals {
  /** 365 or 366 days in order. */
  readonly byDay: readonly YearDay<N, L>[];
  /** January to December. */
  readonly byMonth: readonly YearTotals[];
}

/**
 * The plan that holds on a day of the year.
 *
 * Law: the latest first day not after it; before every first day, the last plan of the year.
 * @param plans The plans [see DatedPlan], at least one, any order.
 * @param monthDay Day of the year [see MonthDay], fields as there.
 * @returns The plan [see DatedPlan].
 * @throws CoreError when there is no plan.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example planOn([{ from: { month: 5, day: 1 }, blocks: [], needs: [] }], { month: 1, day: 1 }).from.month // 5.000
 */
export function planOn<N extends ServiceNeed>(
  plans: readonly DatedPlan<N>[],
  monthDay: MonthDay,
): DatedPlan<N> {
  const ordered = [...plans].sort((a, b) => monthDayKey(a.from) - monthDayKey(b.from));
  const key = monthDayKey(monthDay);
  const plan = ordered.findLast(({ from }) => monthDayKey(from) <= key) ?? ordered.at(-1);
  if (!plan) throw new CoreError('plans', 'empty', 'at least one plan');
  return plan;
}

/**
 * A year worked out day by day.
 *
 * Law: each day as dayReport under that day's conditions and priceDay on its date, with its blocks as
 * blocksOn sets them; months and the year are the sums of their days.
 * @param plan The year [see YearPlan], fields as there.
 * @returns The report [see YearReport]: energy [J], cost [currency], volume [m3], minutes [min].
 * @throws CoreError when there is no plan, the tariff has a problem, or a day cannot be worked out (see dayReport).
 * Accuracy: exact up to rounding of doubles; reference file electricity for energy and price.
 * Source: definitions of energy and flow (NIST SP 811, 2008); Gregorian calendar (ISO 8601, 2004, 3.2.1).
 * @example yearReport({ year: 2027, plans: [{ from: { month: 1, day: 1 }, blocks: [{ id: 'a', start: 0, end: 480, ratio: 1 }], needs: [] }], tariff: { currency: '', dailyCharge: 0, seasons: [{ id: 's', name: '', from: { month: 1, day: 1 }, dayTypes: [{ id: 'd', name: '', weekdays: [0, 1, 2, 3, 4, 5, 6], bands: [{ start: 0, end: 1440, price: 0.2 }] }] }] }, conditionsOn: () => ({ waterTemperature: 25, loading: 0, frost: [] }), pointAt: () => ({ kind: 'flowing', flow: 0.002, power: 1000, suctionVelocity: 1, dischargeVelocity: 1 }), volume: 60, limits: [], quiet: [], frostRatio: 0 }).cost // 584.0
 */
export function yearReport<N extends ServiceNeed, L extends FlowLimit>(
  plan: YearPlan<N, L>,
): YearReport<N, L> {
  const dayOn = daysOfPlan(plan);
  const byDay = datesOf(plan.year).map(dayOn);
  const byMonth = Array.from({ length: 12 }, (_, index) =>
    totalsOf(byDay.filter(({ date }) => date.month === index + 1)),
  );
  return { ...totalsOf(byDay), byDay, byMonth };
}

function datesOf(year: number): readonly CalendarDate[] {
  const dates: CalendarDate[] = [{ year, month: 1, day: 1 }];
  for (let index = daysInYear(year); index > 1; index -= 1) {
    dates.push(nextDay(dates[dates.length - 1] as CalendarDate));
  }
  return dates;
}

/** Works days out, those that are alike once, and prices each kind of day of the tariff once for them. */
function daysOfPlan<N extends ServiceNeed, L extends FlowLimit>(plan: YearPlan<N, L>) {
  interface Alike {
    readonly report: DayReport<N, L>;
    readonly costs: Map<DayType, number>;
  }
  const known = new Map<DayConditions, Map<DatedPlan<N>, Alike>>();
  function alikeOn(conditions: DayConditions, held: DatedPlan<N>): Alike {
    const here = known.get(conditions) ?? new Map<DatedPlan<N>, Alike>();
    known.set(conditions, here);
    const alike = here.get(held) ?? {
      report: reportOf(plan, held, conditions),
      costs: new Map<DayType, number>(),
    };
    here.set(held, alike);
    return alike;
  }
  return (date: CalendarDate): YearDay<N, L> => {
    const conditions = plan.conditionsOn(date);
    const held = planOn(plan.plans, date);
    const { report, costs } = alikeOn(conditions, held);
    const { dayType } = ruleOn(plan.tariff, date);
    const cost = costs.get(dayType) ?? costOf(plan.tariff, date, report);
    costs.set(dayType, cost);
    return { date, conditions, plan: held, report, cost };
  };
}

function costOf(
  tariff: Tariff,
  date: CalendarDate,
  { segments }: DayReport<ServiceNeed, FlowLimit>,
): number {
  return priceDay(
    tariff,
    date,
    segments.filter(({ power }) => power > 0),
  ).cost;
}

function reportOf<N extends ServiceNeed, L extends FlowLimit>(
  plan: YearPlan<N, L>,
  held: DatedPlan<N>,
  conditions: DayConditions,
): DayReport<N, L> {
  const blocks = plan.blocksOn?.(held.blocks, conditions) ?? held.blocks;
  return dayReport({
    blocks: withFrost(blocks, conditions.frost, plan.frostRatio),
    pointAt: (ratio) => plan.pointAt(ratio, conditions),
    volume: plan.volume,
    needs: held.needs,
    limits: plan.limits,
    quiet: plan.quiet,
    priming: plan.priming,
    standbyPower: plan.standbyPower,
  });
}

function totalsOf(days: readonly YearDay<ServiceNeed, FlowLimit>[]): YearTotals {
  const sum = (value: (day: YearDay<ServiceNeed, FlowLimit>) => number) =>
    days.reduce((total, day) => total + value(day), 0);
  return {
    days: days.length,
    energy: sum(({ report }) => report.energy),
    cost: sum(({ cost }) => cost),
    volumeMoved: sum(({ report }) => report.volumeMoved),
    runMinutes: sum(({ report }) => report.runMinutes),
    frostMinutes: sum(({ conditions }) =>
      unionOf(conditions.frost).reduce((minutes, { start, end }) => minutes + end - start, 0),
    ),
    shortDays: sum(({ report }) => (report.needs.every(({ met }) => met) ? 0 : 1)),
    crossedDays: sum(({ report }) => (report.crossings.length > 0 ? 1 : 0)),
  };
}

/**
 * Greenhouse gas that comes with energy, by the reader's own factor.
 *
 * Law: mass = energy x factor.
 * @param energy Energy taken [J], 0 or more.
 * @param gramsPerKilowattHour Grams for each kilowatt-hour [g/kWh], 0 to 5000.
 * @returns Mass [kg], 0 or more.
 * @throws CoreError when the energy or the factor is out of range.
 * Accuracy: exact; as good as the factor.
 * Source: definition of an emission factor (ISO 14064-1, 2018; from memory).
 * @example emission(3.6e9, 400) // 400.0
 */
export function emission(energy: number, gramsPerKilowattHour: number): number {
  requireNotNegative('energy', energy, 'J');
  requireNotNegative('gramsPerKilowattHour', gramsPerKilowattHour, 'g/kWh');
  return ((energy / joulesPerKilowattHour) * gramsPerKilowattHour) / 1000;
}
