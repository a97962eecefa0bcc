/** The plans of the year: how each fares, and the cheapest day for its season. */

import type { Limit } from '#core/day/limits.ts';
import type { CollisionMember } from '#core/planner/collisions.ts';
import { type DayRule, ruleOn, type Tariff } from '#core/tariff/tariff.ts';
import type { CalendarDate, MonthDay } from '#core/time/calendar.ts';
import { type DayConditions, yearReport } from '#core/year/year.ts';
import { type ShortNeed, shortNeeds } from '#core/year/yearBeside.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { type Bench, workOut } from '#dayPage/day/figures.ts';
import {
  cheapestOn,
  padBlocks,
  plannerInputsOf,
  reasoned,
  rowsOf,
} from '#dayPage/planning/plannerInputs.ts';
import type { Pad, PadBlock, SeasonPlan } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { coreBlocks } from '#pad/model/assembleDay.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import type { Plan, Report } from './beside.ts';

type Day = Report['byDay'][number];

/** A plan of the year and what becomes of it. */
export interface SeasonFacts {
  readonly plan: SeasonPlan;
  /** Last day it holds; the day before its first where it holds all year. */
  readonly until: MonthDay;
  /** Days of this year on which it holds [d]. */
  readonly days: number;
  /** Price of all of them [currency]. */
  readonly cost: number;
  readonly short: readonly ShortNeed<NamedNeed>[];
  readonly crossedDays: number;
}

/** The days of a plan in the order of its season, which may run over the new year. */
export function daysOfSeason(plan: Plan, { byDay }: Report, place: number): readonly Day[] {
  const held = plan.plans[place];
  const isHeld = (at: number) => byDay.at(at)?.plan === held;
  const first = byDay.findIndex((_, at) => isHeld(at) && !isHeld(at - 1));
  const ring = first < 0 ? byDay : [...byDay.slice(first), ...byDay.slice(0, first)];
  return ring.filter((day) => day.plan === held);
}

/** The plans of the pad in order, each with how it fares. */
export function seasonFacts(pad: Pad, plan: Plan, report: Report): readonly SeasonFacts[] {
  return pad.year.plans.map((each, place) => {
    const days = daysOfSeason(plan, report, place);
    const { month, day } = days.at(-1)?.date ?? each.from;
    return {
      plan: each,
      until: { month, day },
      days: days.length,
      cost: days.reduce((sum, { cost }) => sum + cost, 0),
      short: shortNeeds(days),
      crossedDays: days.filter((day) => day.report.crossings.length > 0).length,
    };
  });
}

/** A kind of limit that is crossed, and on how many days. */
export interface CrossedLimit {
  readonly limit: Limit;
  readonly days: number;
}

/** The limits crossed in a year, one a kind, those that nothing may cross first. */
export function crossedLimits({ byDay }: Report): readonly CrossedLimit[] {
  const found = new Map<Limit['kind'], { limit: Limit; days: number }>();
  for (const { report } of byDay) {
    const kinds = new Map(report.crossings.map(({ limit }) => [limit.kind, limit]));
    for (const [kind, limit] of kinds) {
      found.set(kind, { limit, days: (found.get(kind)?.days ?? 0) + 1 });
    }
  }
  return [...found.values()].sort(
    (one, other) => Number(other.limit.hard) - Number(one.limit.hard) || other.days - one.days,
  );
}

/** The cheapest day for a season, or why there is none. */
export type SeasonDay =
  | {
      readonly kind: 'found';
      readonly blocks: readonly PadBlock[];
      /** Price of its energy on such a day [currency], and that of the plan before. */
      readonly cost: number;
      readonly before: number;
      /** Whether the plan before left a need short on such a day. */
      readonly wasShort: boolean;
      /** How the day is priced that most days of the season are priced as. */
      readonly rule: DayRule;
      /** Set for the coldest water, because with that of the middle a need would stay short. */
      readonly isForColdest: boolean;
    }
  | { readonly kind: 'none'; readonly collision: readonly CollisionMember[]; readonly bench: Bench }
  | { readonly kind: 'unsettled' };

/** The most usual kind of priced day among these, by the one of its dates nearest the middle. */
function usualDate(tariff: Tariff, days: readonly Day[]): CalendarDate | null {
  const kinds = new Map<string, { date: CalendarDate; count: number; off: number }>();
  days.forEach(({ date }, at) => {
    const { season, dayType } = ruleOn(tariff, date);
    const key = JSON.stringify([season.id, dayType.id]);
    const off = Math.abs(at - days.length / 2);
    const known = kinds.get(key);
    const nearest = known !== undefined && known.off <= off ? known : { date, off };
    kinds.set(key, { date: nearest.date, off: nearest.off, count: (known?.count ?? 0) + 1 });
  });
  const [most] = [...kinds.values()].sort((one, other) => other.count - one.count);
  return most?.date ?? null;
}

/**
 * The cheapest day for a season: its own needs, the prices most of its days have, the water of its
 * middle and a filter that is due, so that what is enough then is enough all season. Where the water
 * of the middle leaves a need short on a colder day, the coldest takes its place.
 */
export function cheapestForSeason(
  pad: Pad,
  plan: Plan,
  report: Report,
  place: number,
  turnovers: number,
): SeasonDay | null {
  const { bench } = benchOf(pad);
  const held = plan.plans[place];
  const days = daysOfSeason(plan, report, place);
  const date = usualDate(plan.tariff, days);
  const middle = days[Math.floor(days.length / 2)]?.conditions;
  if (bench === null || held === undefined || date === null || middle === undefined) return null;
  const coldest = Math.min(...days.map(({ conditions }) => conditions.waterTemperature));
  const at = (waterTemperature: number): SeasonDay | null =>
    dayIn({ pad, plan, place, bench, date, turnovers, isForColdest: false }, waterTemperature);
  const found = at(middle.waterTemperature);
  if (found?.kind !== 'found' || coldest >= middle.waterTemperature) return found;
  if (!leavesShort(plan, place, found.blocks, bench)) return found;
  const safe = at(coldest);
  return safe?.kind === 'found' ? { ...safe, isForColdest: true } : found;
}

interface SeasonWish {
  readonly pad: Pad;
  readonly plan: Plan;
  readonly place: number;
  readonly bench: Bench;
  readonly date: CalendarDate;
  readonly turnovers: number;
  readonly isForColdest: boolean;
}

function dayIn(wish: SeasonWish, waterTemperature: number): SeasonDay | null {
  const { pad, plan, place, date, turnovers } = wish;
  const needs = plan.plans[place]?.needs ?? [];
  const loading = pad.year.cleaningDays === null ? 0 : 1;
  const conditions: DayConditions = { waterTemperature, loading, frost: [] };
  const bench: Bench = {
    ...wish.bench,
    needs,
    pointAt: (ratio) => plan.pointAt(ratio, conditions),
  };
  const wishes = { minutes: {}, turnovers, mayStop: true, mostChanges: null };
  const laid = pad.year.plans[place]?.blocks ?? pad.day.blocks;
  const speeds = laid.map(({ speed }) => speed);
  const asked = plannerInputsOf(bench, rowsOf(bench, speeds), date, wishes);
  const found = asked === null ? null : unlessRefused(() => cheapestOn(bench, date, asked).found);
  if (found === null) return null;
  if (found.kind === 'unsettled') return found;
  if (found.kind === 'none') return { kind: 'none', collision: found.collision, bench };
  const { reference } = bench.speeds;
  const blocks = padBlocks(found, reference);
  const before = workOut(bench, pad.year.plans[place]?.blocks ?? [], date);
  return {
    kind: 'found',
    blocks: reasoned(blocks, workOut(bench, blocks, date)),
    cost: found.cost,
    before: before.prices?.day.energyCost ?? 0,
    wasShort: before.report.needs.some(({ met }) => !met),
    rule: ruleOn(plan.tariff, date),
    isForColdest: wish.isForColdest,
  };
}

/** Whether these blocks, laid into a season, leave a need short on any of its days. */
function leavesShort(
  plan: Plan,
  place: number,
  blocks: readonly PadBlock[],
  { speeds }: Bench,
): boolean {
  const plans = plan.plans.map((each, at) =>
    at === place ? { ...each, blocks: coreBlocks(blocks, speeds) } : each,
  );
  return yearReport({ ...plan, plans }).byDay.some(
    (day) => day.plan === plans[place] && day.report.needs.some(({ met }) => !met),
  );
}

/** The needs of the pad in its order, each with whether it holds in a season. */
export function needsOfSeason(pad: Pad, { withoutNeeds }: SeasonPlan) {
  return padModel(pad).needs.map((need) => ({ need, holds: !withoutNeeds.includes(need.id) }));
}
