/** What marks a day plan when an input is swept, and in what two of them differ. */

import { minutesPerDay } from '#core/base/constants.ts';
import { requireBetween } from '#core/base/errors.ts';
import type { Block } from '#core/day/day.ts';
import { intersectionOf, piecesOf, spanMinutes } from '#core/time/spans.ts';
import type { ServiceMultiplier } from './cheapestDay.ts';
import type { PricedSpan } from './inputs.ts';

/** What of a found day makes its plan. */
export interface FoundPlan {
  /** Blocks of the day [see Block]; minutes in none are off. */
  readonly blocks: readonly Block[];
  /** Price of its energy [currency], any finite number. */
  readonly cost: number;
  /** Water moved [m3], 0 or more. */
  readonly volumeMoved: number;
  /** What one more of each thing asked for would cost [see ServiceWorth]. */
  readonly multipliers: readonly ServiceMultiplier[];
}

/** What marks a day plan, so that a drift of a speed or a few minutes is still the same plan. */
export interface PlanCharacter {
  /** Speeds it runs at over reference speed [-], above 0, rising; those close to one another are one. */
  readonly speeds: readonly number[];
  /** Whether the pump stands still for a while. */
  readonly stops: boolean;
  /** Places in the list of prices at whose price it runs [-], 0 or more, rising; the first of those priced alike. */
  readonly runsIn: readonly number[];
  /** Ids of the needs that make the day noticeably dearer, null for the water to be moved. */
  readonly binding: readonly (string | null)[];
}

/** One thing in which two plans differ. */
export type PlanDifference =
  /** A day is there, or none any more. */
  | { readonly kind: 'day'; readonly exists: boolean }
  /** It runs at the price in this place of the list, or does not any more. */
  | { readonly kind: 'price'; readonly place: number; readonly runs: boolean }
  | { readonly kind: 'stops'; readonly stops: boolean }
  /** Another number of speeds, or speeds that jump. */
  | { readonly kind: 'speeds'; readonly from: readonly number[]; readonly to: readonly number[] }
  /** A need, or the water where the id is null, makes the day dearer, or does not any more. */
  | { readonly kind: 'binds'; readonly needId: string | null; readonly binds: boolean };

/**
 * How far two speeds may lie apart and still be one [-], how short a time does not count [min], and
 * how small a share of the price [-] is nothing.
 */
export const samePlan = { ratio: 0.03, minutes: 10, share: 5e-4 } as const;

/** A need binds by what so much more of it would cost: minutes of it, or a share of the water. */
const moreAsked = { minutes: 60, share: 0.1 };

/**
 * The place that stands for each price of a list: that of the first one priced alike in every list.
 *
 * Law: two places are alike when their prices are equal in all the lists.
 * @param lists Lists of prices of one day each [see PricedSpan], all of one length, any number of them.
 * @returns One place per price [-], 0 or more.
 * @throws nothing; without lists there are no places.
 * Accuracy: exact.
 * Source: arithmetic.
 * @example 1 + placesAlike([[{ start: 0, end: 420, price: 0.2 }, { start: 420, end: 960, price: 0.3 }, { start: 960, end: 1440, price: 0.2 }]])[2] // 1.000
 */
export function placesAlike(lists: readonly (readonly PricedSpan[])[]): readonly number[] {
  const [first = []] = lists;
  return first.map((_, place) =>
    first.findIndex((_other, earlier) =>
      lists.every((prices) => prices[earlier]?.price === prices[place]?.price),
    ),
  );
}

/** Minutes at each speed, the slowest first. */
function minutesAtSpeeds(blocks: readonly Block[]): readonly (readonly [number, number])[] {
  const minutes = new Map<number, number>();
  for (const block of blocks)
    minutes.set(block.ratio, (minutes.get(block.ratio) ?? 0) + spanMinutes(block));
  return [...minutes].sort(([one], [other]) => one - other);
}

/** Speeds close to one another count as one, which lies where most of their time is spent. */
function speedsOf(blocks: readonly Block[]): readonly number[] {
  const groups: { ratio: number; last: number; minutes: number }[] = [];
  for (const [ratio, minutes] of minutesAtSpeeds(blocks)) {
    const group = groups.at(-1);
    if (group === undefined || ratio - group.last > samePlan.ratio) {
      groups.push({ ratio, last: ratio, minutes });
      continue;
    }
    const together = group.minutes + minutes;
    group.ratio = (group.ratio * group.minutes + ratio * minutes) / together;
    group.minutes = together;
    group.last = ratio;
  }
  return groups.filter(({ minutes }) => minutes >= samePlan.minutes).map(({ ratio }) => ratio);
}

/**
 * What marks a day plan.
 *
 * Law: speeds within 0.03 of the reference speed of one another are one, at their mean by time; what lasts less than 10 minutes in the whole day does not count; a need binds when at its price an hour more of it, or a tenth more of the water, makes the day dearer by 0.05 % or more.
 * @param day The day [see FoundPlan], as cheapestDay gives it, fields as there.
 * @param prices The prices it was found for [see PricedSpan], which cover the day once.
 * @param alike The place that stands for each price [-], as placesAlike gives it, fields as there.
 * @returns Its marks [see PlanCharacter].
 * @throws nothing.
 * Accuracy: exact, by the widths named above.
 * Source: common practice, no source.
 * @example planCharacter({ blocks: [{ id: 'a', start: 0, end: 600, ratio: 0.4 }, { id: 'b', start: 600, end: 900, ratio: 0.8 }], multipliers: [], cost: 1, volumeMoved: 9 }, [{ start: 0, end: 1440, price: 0.2 }], [0]).speeds[1] // 0.8000
 */
export function planCharacter(
  day: FoundPlan,
  prices: readonly PricedSpan[],
  alike: readonly number[],
): PlanCharacter {
  const running = day.blocks.filter(({ ratio }) => ratio > 0);
  const pieces = running.flatMap((block) => piecesOf(block));
  const atPlace = new Map<number, number>();
  for (const [place, price] of prices.entries()) {
    const shared = intersectionOf(pieces, piecesOf(price));
    const minutes = shared.reduce((sum, { start, end }) => sum + end - start, 0);
    const stands = alike[place] as number;
    atPlace.set(stands, (atPlace.get(stands) ?? 0) + minutes);
  }
  const runs = running.reduce((sum, block) => sum + spanMinutes(block), 0);
  return {
    speeds: speedsOf(running),
    stops: minutesPerDay - runs >= samePlan.minutes,
    // The first of those priced alike stands for them, so they come in rising order.
    runsIn: [...atPlace]
      .filter(([, minutes]) => minutes >= samePlan.minutes)
      .map(([place]) => place),
    binding: bindingIn(day),
  };
}

function bindingIn({ multipliers, cost, volumeMoved }: FoundPlan): readonly (string | null)[] {
  const least = samePlan.share * Math.abs(cost);
  return multipliers
    .filter(({ needId, perUnit, binds }) => {
      const more = needId === null ? moreAsked.share * volumeMoved : moreAsked.minutes;
      return binds && perUnit * more >= least;
    })
    .map(({ needId }) => needId);
}

function entered<Item>(before: readonly Item[], after: readonly Item[]): readonly Item[] {
  return after.filter((item) => !before.includes(item));
}

function sameSpeeds(one: readonly number[], other: readonly number[], tolerance: number): boolean {
  return (
    one.length === other.length &&
    one.every((ratio, place) => Math.abs(ratio - (other[place] as number)) <= tolerance)
  );
}

/**
 * In what a plan differs from the one before it.
 *
 * Law: as the marks differ; speeds differ when there are more or fewer of them, or one of them moves by more than the tolerance.
 * @param before Marks of the plan before [see PlanCharacter], or null where there is no day.
 * @param after Marks of the plan after [see PlanCharacter], or null where there is no day.
 * @param tolerance How far a speed may move and still be the same [-], 0 to 2.
 * @returns The differences [see PlanDifference], those a reader would notice first at the front; empty when the plans are alike.
 * @throws CoreError when the tolerance is outside its range.
 * Accuracy: exact.
 * Source: arithmetic.
 * @example planDifferences(null, { speeds: [0.4], stops: true, runsIn: [0], binding: [] }, 0.03).length // 1.000
 */
export function planDifferences(
  before: PlanCharacter | null,
  after: PlanCharacter | null,
  tolerance: number,
): readonly PlanDifference[] {
  requireBetween('tolerance', tolerance, 0, 2, '');
  if (before === null || after === null)
    return before === after ? [] : [{ kind: 'day', exists: after !== null }];
  const price = (place: number, runs: boolean) => ({ kind: 'price' as const, place, runs });
  const binds = (needId: string | null, now: boolean) => ({
    kind: 'binds' as const,
    needId,
    binds: now,
  });
  return [
    ...entered(before.runsIn, after.runsIn).map((place) => price(place, true)),
    ...entered(after.runsIn, before.runsIn).map((place) => price(place, false)),
    ...(before.stops === after.stops ? [] : [{ kind: 'stops' as const, stops: after.stops }]),
    ...(sameSpeeds(before.speeds, after.speeds, tolerance)
      ? []
      : [{ kind: 'speeds' as const, from: before.speeds, to: after.speeds }]),
    ...entered(before.binding, after.binding).map((id) => binds(id, true)),
    ...entered(after.binding, before.binding).map((id) => binds(id, false)),
  ];
}
