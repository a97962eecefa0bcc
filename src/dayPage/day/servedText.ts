/** The words of what stands below the strip and on paper: needs served, limits and quiet hours, dates. */

import type { QuietHours } from '#core/day/dayReport.ts';
import { type CalendarDate, dayOfWeek } from '#core/time/calendar.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { monthNames } from '#units/monthNames.ts';
import { limitName } from '#words/needsAndLimits.ts';
import type { Stretch } from './edit.ts';
import type { Report } from './figures.ts';
import { type LimitRuns, lengthText, rpmText, spanText, timesText, weekdays } from './text.ts';

export type NeedService = Report['needs'][number];

/** "met: 4 h of 3 h", "short by 1 h: 2 h of 3 h". */
export function needText({ need, servedMinutes, shortMinutes }: NeedService): string {
  const of = `${lengthText(servedMinutes)} of ${lengthText(need.minutes)}`;
  return shortMinutes === 0 ? `met: ${of}` : `short by ${lengthText(shortMinutes)}: ${of}`;
}

/** Why a need is short, where the runs themselves tell. */
export function needWhy({ need, runs, shortMinutes }: NeedService): string | null {
  if (shortMinutes === 0) return null;
  const lost = runs.filter(({ counted }) => !counted);
  if (lost.length > 0) {
    return `A run counts from ${lengthText(need.shortestRun)} on; ${lost.map(spanText).join(' and ')} ${lost.length === 1 ? 'is' : 'are'} too short.`;
  }
  return null;
}

export function crossingText(
  { limit, runs, flow, ratio }: LimitRuns,
  reference: number,
  units: UnitChoice,
): string {
  const most = format('flow', limit.greatestFlow, units);
  if (limit.greatestRatio === undefined || flow > limit.greatestFlow)
    return `${limitName(limit)}: ${format('flow', flow, units)} ${timesText(runs)}; at most ${most}.`;
  const [fast, stop] = [ratio, limit.greatestRatio].map((each) => rpmText(each * reference, units));
  return `${limitName(limit)}: ${fast} ${timesText(runs)}; never above ${stop}, where a clean filter and open valves may let ${most} through.`;
}

/** Quiet hours with every time of day at which the pump is too fast for them. */
export interface QuietRuns {
  readonly quiet: QuietHours;
  readonly runs: readonly Stretch[];
  /** Greatest speed ratio in them [-]. */
  readonly ratio: number;
}

export function crossingsByQuiet({ quietCrossings }: Report): readonly QuietRuns[] {
  return [...new Set(quietCrossings.map(({ quiet }) => quiet))].map((quiet) => {
    const own = quietCrossings.filter((crossing) => crossing.quiet === quiet);
    const runs = own.map(({ from, to }) => ({ start: from, end: to }));
    return { quiet, runs, ratio: Math.max(...own.map(({ ratio }) => ratio)) };
  });
}

export function quietText(
  { quiet, runs, ratio }: QuietRuns,
  reference: number,
  units: UnitChoice,
): string {
  const fast = rpmText(ratio * reference, units);
  const most = rpmText(quiet.ceiling * reference, units);
  return `Quiet hours ${spanText(quiet)}: ${fast} ${timesText(runs)}; at most ${most}.`;
}

/** "Wednesday, 14 July 2027". */
export function dateText(date: CalendarDate): string {
  return `${weekdays[dayOfWeek(date)]}, ${shortDate(date)}`;
}

/** "14 July 2027". */
export function shortDate(date: CalendarDate): string {
  return `${date.day} ${monthNames[date.month - 1]} ${date.year}`;
}
