/** From the pad to a year the core can work out: its plans, its filter, its water and its frost. */

import type { RunningPoint } from '#core/day/dayReport.ts';
import type { Limit } from '#core/day/limits.ts';
import { changedParts } from '#core/fit/resistance.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { type CalendarDate, dayNumber, daysInMonth } from '#core/time/calendar.ts';
import type { Span } from '#core/time/spans.ts';
import { water } from '#core/water/water.ts';
import { loadingOn, monthlyValue } from '#core/year/conditions.ts';
import type { DatedPlan, DayConditions, YearPlan } from '#core/year/year.ts';
import type { Pad, PadBlock } from '#pad/document/schema.ts';
import type { PadModel } from './assemble.ts';
import { coreBlocks } from './assembleDay.ts';
import type { NamedNeed } from './assembleNeeds.ts';
import { heldRatio } from './heldSpeed.ts';
import { filtersIn, withLoading } from './loadedFilters.ts';
import { runningPad } from './runningPad.ts';

/** What the year stands on: twelve of something, or nothing. */
const wholeYear = (months: readonly number[]): readonly number[] | null =>
  months.length === 12 ? months : null;

/** Frost is taken to come around this minute, the coldest of the night; common practice, no source. */
const coldest = 300;

/** A month's hours of frost spread evenly over its nights. */
function frostOn(date: CalendarDate, hours: readonly number[] | null): readonly Span[] {
  const inMonth = hours?.[date.month - 1] ?? 0;
  const minutes = Math.round((60 * inMonth) / daysInMonth(date.year, date.month));
  if (minutes <= 0) return [];
  if (minutes >= 1440) return [{ start: 0, end: 1440 }];
  const start = (coldest - Math.floor(minutes / 2) + 1440) % 1440;
  return [{ start, end: (start + minutes) % 1440 || 1440 }];
}

/** The same question once: a speed comes back in many blocks and in every year set beside. */
function keptByRatio(runningAt: (ratio: number) => RunningPoint) {
  const known = new Map<number, RunningPoint>();
  return (ratio: number): RunningPoint => {
    const point = known.get(ratio) ?? runningAt(ratio);
    known.set(ratio, point);
    return point;
  };
}

export interface YearWishes {
  readonly year: number;
  /** A day to hold all year, instead of the plans of the pad. */
  readonly blocks?: readonly PadBlock[];
  /** Stretches of frost by the day, where the reader has a series of temperatures; undefined for a day it lacks. */
  readonly frostOn?: ((date: CalendarDate) => readonly Span[] | undefined) | undefined;
}

/** The year as the core takes it, or null while pump, pool or price is not known. */
export function yearPlanOf(
  pad: Pad,
  model: PadModel,
  wishes: YearWishes,
): YearPlan<NamedNeed, Limit> | null {
  const { running, speeds, volume, tariff } = model;
  if (running === null || speeds === null || volume === null || tariff === null) return null;
  const { year } = pad;
  const temperatures = wholeYear(year.waterTemperatures);
  const hours = wholeYear(year.frostHours);
  const filters = [...filtersIn(pad.plumbing.suction), ...filtersIn(pad.plumbing.discharge)];
  const loads = year.cleaningDays !== null && filters.length > 0;
  const changes = loads || temperatures !== null;

  const circuitIn = ({ waterTemperature, loading }: DayConditions): Circuit => {
    const { circuit } = running;
    const loaded = loads
      ? changedParts(circuit, (parts) => withLoading(parts, filters, loading))
      : circuit;
    return temperatures === null ? loaded : { ...loaded, water: water(waterTemperature) };
  };
  // Where nothing changes every day asks the same; else each day solves its own circuit.
  const steady = keptByRatio(running.runningAt);
  const days = new WeakMap<DayConditions, (ratio: number) => RunningPoint>();
  const pointAt = (ratio: number, conditions: DayConditions) => {
    if (!changes) return steady(ratio);
    const here = days.get(conditions);
    if (here !== undefined) return here(ratio);
    const { runningAt } = runningPad(circuitIn(conditions), running.curve, running.power);
    const onDay = keptByRatio(runningAt);
    days.set(conditions, onDay);
    return onDay(ratio);
  };
  const allYear = (blocks: readonly PadBlock[]): DatedPlan<NamedNeed> => ({
    from: { month: 1, day: 1 },
    blocks: coreBlocks(blocks, speeds),
    needs: model.needs,
  });
  const plans =
    wishes.blocks !== undefined || year.plans.length === 0
      ? [allYear(wishes.blocks ?? pad.day.blocks)]
      : year.plans.map(({ from, blocks, withoutNeeds }) => ({
          from,
          blocks: coreBlocks(blocks, speeds),
          needs: model.needs.filter(({ id }) => !withoutNeeds.includes(id)),
        }));
  const conditionsOn = (date: CalendarDate): DayConditions => ({
    waterTemperature:
      temperatures === null ? running.circuit.water.temperature : monthlyValue(temperatures, date),
    loading: year.cleaningDays === null ? 0 : loadingOn(date, year.cleaningDays),
    frost: wishes.frostOn?.(date) ?? frostOn(date, hours),
  });
  const isLike = !changes && hours === null && wishes.frostOn === undefined;
  // Several years on one pad share their days, and with them what was worked out for a day.
  const known = new Map<number, DayConditions>();
  return {
    year: wishes.year,
    plans,
    tariff,
    conditionsOn: (date) => {
      // Where frost is not minded and nothing else changes, one day is like another.
      const key = isLike ? 0 : dayNumber(date);
      const conditions = known.get(key) ?? conditionsOn(date);
      known.set(key, conditions);
      return conditions;
    },
    pointAt,
    volume,
    limits: model.limits,
    quiet: model.quiet,
    frostRatio: heldRatio(year.frostSpeed, speeds),
    standbyPower: model.standbyPower,
    priming: model.priming,
  };
}
