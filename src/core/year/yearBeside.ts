/** A year looked at closer: which need stays short, and one speed that moves the same water. */

import { requirePositive } from '#core/base/errors.ts';
import { oneSpeedDay, segmentsOf } from '#core/day/day.ts';
import type { FlowLimit, ServiceNeed } from '#core/day/dayReport.ts';
import { intersectionOf, unionOf } from '#core/time/spans.ts';
import type { YearDay, YearPlan, YearReport } from './year.ts';

/** A need, and on how many days it stays short. */
export interface ShortNeed<N extends ServiceNeed> {
  readonly need: N;
  /** Days on which it stays short [d], 1 or more. */
  readonly days: number;
}

/**
 * On how many days which need stays short.
 *
 * Law: a need is short on a day where its report does not call it met; days are counted by the id of the need.
 * @param days Days of a year [see YearDay], any of them.
 * @returns The needs that stay short [see ShortNeed], the one short on most days first.
 * @throws nothing.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example shortNeeds([]).length // 0.000
 */
export function shortNeeds<N extends ServiceNeed, L extends FlowLimit>(
  days: readonly YearDay<N, L>[],
): readonly ShortNeed<N>[] {
  const counted = new Map<string, ShortNeed<N>>();
  for (const { report } of days) {
    for (const { need, met } of report.needs) {
      if (!met) counted.set(need.id, { need, days: (counted.get(need.id)?.days ?? 0) + 1 });
    }
  }
  return [...counted.values()].sort((one, other) => other.days - one.days);
}

/** How the one speed runs. */
export interface OneSpeedWish {
  /** Speed over reference speed [-], more than 0. */
  readonly ratio: number;
  /** Minute it starts each day [min], whole, 0 to 1439. */
  readonly start: number;
}

/** A day on which one speed runs, as far as its water goes. */
interface RunDay {
  /** Water moved in a minute [m3/min], 0 or more. */
  readonly perMinute: number;
  readonly frost: ReturnType<typeof unionOf>;
}

/**
 * The same year at one speed, for as many minutes a day as move in each season the water it moved there.
 *
 * Law: for each plan the fewest whole minutes m with sum over its days of flow x (minutes of the run
 * or of frost) at or above the water its days moved; found by halving, since that sum grows with m.
 * In frost the one speed runs too, where the year minds frost at all.
 * @param plan The year [see YearPlan], fields as there.
 * @param report That year worked out [see YearReport], fields as there.
 * @param wish Speed and start [see OneSpeedWish], fields as there.
 * @returns The year [see YearPlan], one plan for each given, its ids as oneSpeedDay names them; round the clock where even that is too little.
 * @throws CoreError when the ratio is not positive or the start is not a minute of the day.
 * Accuracy: to the minute a day.
 * Source: definition of flow (NIST SP 811, 2008).
 * @example ((plan) => sameWaterYear(plan, { byDay: [{ plan: plan.plans[0], conditions: { frost: [] }, report: { volumeMoved: 57.6 } }] }, { ratio: 1, start: 480 }).plans[0].blocks[0].end)({ plans: [{}], pointAt: () => ({ kind: 'flowing', flow: 0.002 }), frostRatio: 0 }) // 960.0
 */
export function sameWaterYear<N extends ServiceNeed, L extends FlowLimit>(
  plan: YearPlan<N, L>,
  report: YearReport<N, L>,
  wish: OneSpeedWish,
): YearPlan<N, L> {
  const ratio = requirePositive('ratio', wish.ratio, '');
  const { start } = wish;
  const guards = plan.frostRatio > 0;
  const plans = plan.plans.map((each) => {
    const days = report.byDay.filter((day) => day.plan === each);
    const water = days.reduce((sum, day) => sum + day.report.volumeMoved, 0);
    const runs = days.map(({ conditions }): RunDay => {
      const point = plan.pointAt(ratio, conditions);
      return {
        perMinute: point.kind === 'flowing' ? 60 * point.flow : 0,
        frost: guards ? unionOf(conditions.frost) : [],
      };
    });
    const minutes = fewestMinutes(runs, start, water);
    return { ...each, blocks: oneSpeedDay({ ratio, minutes, start }) };
  });
  return { ...plan, plans, frostRatio: guards ? ratio : 0 };
}

/** Room for the last bits of a sum [-], so that water moved at the very same speed takes the same minutes. */
const rounding = 1e-9;

function fewestMinutes(days: readonly RunDay[], start: number, water: number): number {
  const wanted = water * (1 - rounding);
  let [low, high] = [0, 1440];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (waterOf(days, start, middle) >= wanted) high = middle;
    else low = middle + 1;
  }
  return low;
}

function waterOf(days: readonly RunDay[], start: number, minutes: number): number {
  const run = segmentsOf(oneSpeedDay({ ratio: 1, minutes, start })).filter(
    ({ ratio }) => ratio > 0,
  );
  const length = (pieces: readonly { readonly start: number; readonly end: number }[]) =>
    pieces.reduce((sum, piece) => sum + piece.end - piece.start, 0);
  return days.reduce((sum, { perMinute, frost }) => {
    const both = frost.length === 0 ? 0 : length(frost) - length(intersectionOf(run, frost));
    return sum + perMinute * (minutes + both);
  }, 0);
}
