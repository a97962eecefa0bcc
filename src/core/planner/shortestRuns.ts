/**
 * The cheapest day where shortest runs bind: branch and bound over when one run of each need begins.
 * A run of R minutes that begins between a and b covers everything from b to a + R, so the need must
 * be served there; with that fixed the relaxation of the minutes is a linear programme again.
 */

import { gapBetween, wholeSlots } from './branchAndBound.ts';
import { type Forced, type Horizon, horizonOf } from './horizon.ts';
import type { CheapestDayInputs } from './inputs.ts';
import { placed } from './placement.ts';
import { type Multipliers, solveRelaxation } from './relaxation.ts';
import { costOf, joined, overOf, runsIn, type Segment } from './timeline.ts';
import { bestTimes } from './times.ts';

/** What is found. */
export interface RunsFound {
  readonly segments: readonly Segment[] | null;
  /** No day costs less than this [currency], any number. */
  readonly bound: number;
  readonly multipliers: Multipliers;
}

/** First and last slot at which one run of a need may begin. */
interface Beginning {
  readonly first: number;
  readonly last: number;
}

interface Node {
  readonly beginnings: readonly Beginning[];
  readonly bound: number;
}

const whole = { wanted: 2e-4, nodes: 12 };

/** What must be served whenever within its bounds each run begins. */
function forcedBy(horizon: Horizon, beginnings: readonly Beginning[]): readonly Forced[] {
  return beginnings.flatMap(({ first, last }, place) => {
    const run = horizon.needs[place]?.run ?? 0;
    if (run <= 1 || last >= first + run) return [];
    return [forced(horizon, place, last, first + run - last)];
  });
}

function forced(horizon: Horizon, place: number, first: number, slots: number): Forced {
  const start = (first % horizon.slots) * horizon.minutes;
  return { place, start, end: (((first + slots) % horizon.slots) * horizon.minutes) % 1440 };
}

interface Tried {
  readonly bound: number;
  readonly segments: readonly Segment[] | null;
  readonly multipliers: Multipliers;
}

/** The best day with some service fixed; runs that are too short may still be in it. */
function tried(inputs: CheapestDayInputs, fixed: readonly Forced[]): Tried | null {
  const horizon = horizonOf(inputs, fixed);
  const relaxation = solveRelaxation(horizon);
  if (relaxation === null) return null;
  const found = wholeSlots(horizon, relaxation, whole.wanted, whole.nodes);
  const bound = relaxation.bound * horizon.scale;
  return {
    bound,
    segments: found === null ? null : placed(horizon, found.integerMinutes),
    multipliers: relaxation.multipliers,
  };
}

/** The same order of speeds with its changes moved until the runs are long enough, where that can be. */
function retimed(horizon: Horizon, { segments, ...found }: Tried): Tried | null {
  const whole = joined(segments ?? []);
  if (whole.length === 0) return null;
  // A day of times ends with the speed it began with.
  const [first, last] = [whole[0] as Segment, whole.at(-1) as Segment];
  const closed = first.speed === last.speed ? whole : [...whole, { ...first, slots: 0 }];
  let at = 0;
  const times = closed.slice(0, -1).map(({ slots }) => {
    at += slots;
    return at;
  });
  const timed = bestTimes(horizon, { speeds: closed.map(({ speed }) => speed), times });
  return timed && { ...found, segments: timed.segments };
}

/** The need whose runs are furthest from enough, and where its longest run begins; none when all is kept. */
function worstNeed(
  horizon: Horizon,
  segments: readonly Segment[],
): { place: number; start: number } | null {
  const [, ...over] = overOf(horizon, segments);
  const place = over.indexOf(Math.min(...over, 0));
  if (place < 0 || (over[place] ?? 0) >= 0) return null;
  const longest = runsIn(horizon, segments, place).toSorted((a, b) => b.slots - a.slots)[0];
  return { place, start: longest?.start ?? 0 };
}

/**
 * The cheapest day with any number of changes whose runs are long enough to count.
 *
 * @internal
 */
export function cheapestWithRuns(
  inputs: CheapestDayInputs,
  horizon: Horizon,
  from: { readonly bound: number; readonly multipliers: Multipliers },
  wanted: number,
  nodes: number,
): RunsFound {
  let best: { segments: readonly Segment[]; cost: number; multipliers: Multipliers } | null = null;
  const consider = (each: Tried | null) => {
    if (each?.segments == null || overOf(horizon, each.segments).some((over) => over < -1e-9))
      return;
    const cost = costOf(horizon, each.segments);
    if (best === null || cost < best.cost)
      best = { segments: each.segments, cost, multipliers: each.multipliers };
  };
  const held = () =>
    best as { segments: readonly Segment[]; cost: number; multipliers: Multipliers } | null;
  const anywhere = horizon.needs.map(() => ({ first: 0, last: horizon.slots - 1 }));
  const open: Node[] = [{ beginnings: anywhere, bound: from.bound }];
  let settled = Number.POSITIVE_INFINITY;
  for (let step = 0; step < nodes && open.length > 0; step += 1) {
    open.sort((one, other) => other.bound - one.bound);
    const node = open.pop() as Node;
    const day = held();
    if (day !== null && gapBetween(day.cost, node.bound) <= wanted) {
      settled = Math.min(settled, node.bound);
      break;
    }
    const fixed = forcedBy(horizon, node.beginnings);
    const found = tried(inputs, fixed);
    if (found === null) continue;
    const bound = Math.max(node.bound, found.bound);
    consider(found);
    consider(retimed(horizon, found));
    const worst = found.segments === null ? null : worstNeed(horizon, found.segments);
    if (worst === null) {
      settled = Math.min(settled, bound);
      continue;
    }
    // All of the need in one run, where most of it lies now: often the best day, always a day to compare with.
    const { place } = worst;
    const slots = horizon.needs[place]?.slots ?? 0;
    const { first, last } = node.beginnings[place] as Beginning;
    consider(tried(inputs, [...fixed, forced(horizon, place, worst.start, slots)]));
    if (last === first) {
      consider(tried(inputs, [...fixed, forced(horizon, place, first, slots)]));
      settled = Math.min(settled, bound);
      continue;
    }
    const middle = Math.floor((first + last) / 2);
    for (const half of [
      { first, last: middle },
      { first: middle + 1, last },
    ])
      open.push({ beginnings: node.beginnings.with(place, half), bound });
  }
  const left = Math.min(settled, ...open.map((node) => node.bound));
  const day = held();
  return {
    segments: day?.segments ?? null,
    bound: Math.max(from.bound, Math.min(left, day?.cost ?? left)),
    multipliers: day?.multipliers ?? from.multipliers,
  };
}
