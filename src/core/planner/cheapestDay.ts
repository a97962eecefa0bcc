/**
 * The cheapest day that keeps every need, limit and quiet hour, with the proof that no other is
 * cheaper by more than a stated gap.
 */

import type { Block } from '#core/day/day.ts';
import { gapBetween, wholeSlots } from './branchAndBound.ts';
import { type CollisionMember, cheapestDayCollisions } from './collisions.ts';
import { rootOf, type SearchProgress, searchDay } from './fewChanges.ts';
import { type Horizon, horizonOf, type Interval, standbyCost } from './horizon.ts';
import { type CheapestDayInputs, requireInputs } from './inputs.ts';
import { cheapestByLabels, fewSlots } from './labelSetting.ts';
import { mergeShortBlocks } from './mergeShortBlocks.ts';
import { placed } from './placement.ts';
import { type Multipliers, type Preference, relaxationAt, solveRelaxation } from './relaxation.ts';
import { cheapestWithRuns } from './shortestRuns.ts';
import { blocksOf, changesIn, costOf, missingRuns, overOf, type Segment } from './timeline.ts';

/** What one more of something asked for would cost, by the prices that prove the bound. */
export interface ServiceMultiplier {
  /** Id of the need, or null for the water to be moved. */
  readonly needId: string | null;
  /** Price of one more minute of the need [currency/min], or of one more cubic metre [currency/m3]; 0 where it does not bind. */
  readonly perUnit: number;
  /** Whether it makes the day cost more. */
  readonly binds: boolean;
  /** Given beyond what is asked [min], or [m3] for the water. */
  readonly over: number;
}

/** A day that keeps everything, and how near it is to the best there can be. */
export interface FoundDay {
  readonly kind: 'found';
  /** The blocks [see Block], for core/day.ts; minutes in none are off. */
  readonly blocks: readonly Block[];
  /** Price of its energy [currency]; daily charges are left out. */
  readonly cost: number;
  /** No day that keeps everything costs less [currency]. */
  readonly bound: number;
  /** (cost - bound)/cost [-], 0 or more. */
  readonly gap: number;
  /** Changes of speed in the cyclic day [-], off counting as a speed. */
  readonly changes: number;
  /** Water moved [m3]. */
  readonly volumeMoved: number;
  /** The water to be moved, then each need of more than 0 minutes. */
  readonly multipliers: readonly ServiceMultiplier[];
}

/** No day keeps everything. */
export interface NoDay {
  readonly kind: 'none';
  /** What collides; empty where it is the limit on changes, or a grid too coarse. */
  readonly collision: readonly CollisionMember[];
  /** Changes of a day that keeps everything else [-], or null where there is none. */
  readonly changesEnough: number | null;
}

/** What the search could not settle within its limits: no day at hand, and no proof that there is none. */
export interface UnsettledDay {
  readonly kind: 'unsettled';
}

export type CheapestDay = FoundDay | NoDay | UnsettledDay;

/** Gap at which the search for whole minutes stops, and the one with few changes [-]. */
const wantedGap = { free: 1e-4, few: 9.8e-4, coarse: 1e-7 };
/** Nodes of the search in whole slots, and regions of the one with few changes [-]. */
const most = { minute: 1500, coarse: 12_000, regions: 20_000, runs: 80 };
/** Weight of the wish to keep blocks together [scale], far below any price that matters. */
const tieBreakPenalty = 1e-6;

/**
 * The cheapest day that keeps every need, limit and quiet hour.
 *
 * Law: least sum of price x power x time with volume, needs and ceilings kept. Without a limit on
 * changes, minutes alike in price, ceiling and open windows are interchangeable, so minutes per
 * class and speed decide all: a linear programme, whose dual is a bound by weak duality, then whole
 * minutes by trading and branch and bound. Where shortest runs bind, branch and bound over when one
 * run of each need begins. With a limit on changes, branch and bound over the order of speeds and
 * the times of change, each region bounded by the dual of its days; in slots of a quarter of an hour
 * or more, dynamic programming instead, over all ways that neither another beats nor the dual ends.
 * @param inputs Speeds, needs, limits, quiet hours and prices [see CheapestDayInputs], fields as there.
 * @returns The day [see FoundDay] with cost [currency], a bound no day undercuts and the gap [-]; kind none where nothing keeps everything, unsettled where neither was found within the search.
 * @throws CoreError when an input is outside its range, or the prices do not cover the day once.
 * Accuracy: the gap returned, proven, with up to 0.1 % for joined short blocks in it; at most 0.01 % on ordinary days without a limit on changes and without joining, 0.1 % with one in all but a few where a minute more or less costs more (then 0.2 %); exact in slots of a quarter of an hour or more, but for days of very many alike. Where a need takes several runs that are hardly long enough, or a limit on changes meets shortest runs, the bound leaves runs out and the gap may be wide; reference file schedule-optimum.
 * Source: Dantzig, Linear Programming and Extensions, 1963 (weak duality); Geoffrion, Mathematical Programming Study 2, 1974 (Lagrangean bounds).
 * @example cheapestDay({ speeds: [{ ratio: 0.5, flow: 0.003, power: 200 }], mayStop: true, leastVolume: 108, needs: [], limits: [], quiet: [], prices: [{ start: 0, end: 1440, price: 0.3 }] }).cost // 0.6000
 */
export function cheapestDay(inputs: CheapestDayInputs): CheapestDay {
  const steps = searchCheapestDay(inputs);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * The same search in steps, for a worker that shows how far it has come and may be stopped.
 *
 * Law: as cheapestDay; after each region of the search with few changes it tells cost, bound and gap.
 * @param inputs Speeds, needs, limits, quiet hours and prices [see CheapestDayInputs], fields as there.
 * @returns A generator of progress [see SearchProgress] that ends with the day [see CheapestDay]; without a limit on changes it ends at once.
 * @throws CoreError as cheapestDay, at its first step.
 * Accuracy: as cheapestDay.
 * Source: as cheapestDay.
 * @example searchCheapestDay({ speeds: [{ ratio: 0.5, flow: 0.003, power: 200 }], mayStop: true, leastVolume: 108, needs: [], limits: [], quiet: [], prices: [{ start: 0, end: 1440, price: 0.3 }] }).next().value.cost // 0.6000
 */
export function* searchCheapestDay(
  inputs: CheapestDayInputs,
): Generator<SearchProgress, CheapestDay> {
  requireInputs(inputs);
  const horizon = horizonOf(inputs);
  const relaxation = solveRelaxation(horizon, preferenceOf(horizon));
  if (relaxation === null)
    return { kind: 'none', collision: cheapestDayCollisions(inputs), changesEnough: null };
  const { minuteStep = 1, mostChanges } = inputs;
  const isCoarse = minuteStep > 1;
  const wanted = isCoarse ? wantedGap.coarse : wantedGap.free;
  const plain = () => relaxationAt(horizon, relaxation.multipliers, relaxation.bound, () => 0);
  const nodes = isCoarse ? most.coarse : most.minute;
  const whole = wholeSlots(horizon, relaxation, wanted, nodes, plain);
  const segments = whole === null ? null : placed(horizon, whole.integerMinutes);
  const runs = segments === null || missingRuns(horizon, segments) === 0;
  const few = mostChanges ?? Number.POSITIVE_INFINITY;
  if (whole !== null && segments !== null && runs && changesIn(segments) <= few)
    return foundDay(inputs, horizon, segments, whole.bound, relaxation.multipliers);
  if (whole === null && mostChanges === undefined)
    return isCoarse ? noDay(null) : { kind: 'unsettled' };
  const bound = whole?.bound ?? relaxation.bound;
  if (mostChanges === undefined) {
    const from = { bound: bound * horizon.scale, multipliers: relaxation.multipliers };
    const kept = cheapestWithRuns(
      inputs,
      horizon,
      from,
      isCoarse ? wantedGap.coarse : wantedGap.few,
      most.runs,
    );
    if (kept.segments === null) return { kind: 'unsettled' };
    return foundDay(inputs, horizon, kept.segments, kept.bound / horizon.scale, kept.multipliers);
  }
  if (horizon.slots <= fewSlots && horizon.needs.every(({ run }) => run <= 1)) {
    const root = rootOf({
      horizon,
      changes: mostChanges,
      multipliers: relaxation.multipliers,
      bound,
    });
    const exact = cheapestByLabels({ horizon, changes: mostChanges, ...root });
    if (exact === 'none') return noDay(segments === null ? null : changesIn(segments));
    if (exact !== null)
      return foundDay(
        inputs,
        horizon,
        exact,
        costOf(horizon, exact) / horizon.scale,
        root.multipliers,
      );
  }
  const steps = searchDay({
    horizon,
    changes: mostChanges,
    multipliers: relaxation.multipliers,
    bound,
    day: null,
    wanted: isCoarse ? wantedGap.coarse : wantedGap.few,
    regions: most.regions,
  });
  const standby = standbyCost(inputs);
  let step = steps.next();
  for (; !step.done; step = steps.next()) yield raised(step.value, standby);
  const found = step.value;
  if (found.day === null) {
    const proven = found.bound >= horizon.slots + 1;
    return proven
      ? noDay(segments !== null && runs ? changesIn(segments) : null)
      : { kind: 'unsettled' };
  }
  return foundDay(inputs, horizon, found.day.segments, found.bound, found.multipliers);
}

/** Progress with the price of standstill, which the search leaves out. */
function raised(progress: SearchProgress, standby: number): SearchProgress {
  const bound = progress.bound + standby;
  if (progress.cost === null) return { ...progress, bound };
  const cost = progress.cost + standby;
  return { ...progress, cost, bound, gap: gapBetween(cost, bound) };
}

const noDay = (changesEnough: number | null): NoDay => ({
  kind: 'none',
  collision: [],
  changesEnough,
});

/** Classes near the middle of the day's service first, so that blocks come to lie side by side. */
function preferenceOf(horizon: Horizon): Preference {
  const bitsIn = (bits: number) => bits.toString(2).replaceAll('0', '').length;
  const focus = horizon.intervals.reduce((best, each) => {
    const [here, held] = [horizon.classes[each.kind], horizon.classes[best.kind]];
    const more = bitsIn(here?.open ?? 0) - bitsIn(held?.open ?? 0);
    return more > 0 || (more === 0 && (here?.price ?? 0) < (held?.price ?? 0)) ? each : best;
  }, horizon.intervals[0] as Interval);
  const middle = focus.start + focus.slots / 2;
  const away = horizon.classes.map((_, kind) =>
    Math.min(
      ...horizon.intervals
        .filter((each) => each.kind === kind)
        .map(({ start, slots }) => {
          const apart = Math.abs(start + slots / 2 - middle);
          return (2 * Math.min(apart, horizon.slots - apart)) / horizon.slots;
        }),
    ),
  );
  return (kind, speed) =>
    tieBreakPenalty * ((away[kind] ?? 0) + 0.1 * (horizon.speeds[speed]?.flow ?? 0) ** 2);
}

function foundDay(
  inputs: CheapestDayInputs,
  horizon: Horizon,
  found: readonly Segment[],
  bound: number,
  multipliers: Multipliers,
): FoundDay {
  const segments = mergeShortBlocks(
    horizon,
    found,
    (inputs.shortestBlock ?? 0) / horizon.minutes,
    bound,
  );
  const cost = costOf(horizon, segments);
  const [overVolume = 0, ...over] = overOf(horizon, segments);
  const standby = standbyCost(inputs);
  const proven = Math.min(cost, bound * horizon.scale);
  const volumeWorth = (multipliers[0] ?? 0) * (horizon.scale / horizon.slotVolume);
  const services: readonly ServiceMultiplier[] = horizon.needs.map(({ need }, place) => {
    const perUnit = ((multipliers[place + 1] ?? 0) * horizon.scale) / horizon.minutes;
    const binds = (multipliers[place + 1] ?? 0) > 1e-9;
    return { needId: need.id, perUnit, binds, over: (over[place] ?? 0) * horizon.minutes };
  });
  return {
    kind: 'found',
    blocks: blocksOf(horizon, segments),
    cost: standby + cost,
    bound: standby + proven,
    gap: gapBetween(standby + cost, standby + proven),
    changes: changesIn(segments),
    volumeMoved: (overVolume + horizon.volume) * horizon.slotVolume,
    multipliers: [
      {
        needId: null,
        perUnit: volumeWorth,
        binds: (multipliers[0] ?? 0) > 1e-9,
        over: overVolume * horizon.slotVolume,
      },
      ...services,
    ],
  };
}
