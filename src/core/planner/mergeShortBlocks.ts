/**
 * A day that a person will set: no block shorter than is worth setting, and of days that cost as good
 * as the same the one with fewer changes. Local search: neighbours joined, short blocks lengthened,
 * and the water that this loses made good by one faster block.
 */
import type { Horizon } from './horizon.ts';
import { changesIn, costOf, joined, overOf, type Segment } from './timeline.ts';
import { isAllowed } from './times.ts';

/** What fewer changes may cost, as a share of the price [-]. */
const mostPaid = 1e-3;
/** Steps of the search; each removes a change or lengthens a block. */
const mostSteps = 80;

/** Everything a timeline lacks or gives beyond what is asked; null where a speed is not allowed. */
function givenBy(horizon: Horizon, segments: readonly Segment[]): readonly number[] | null {
  return isAllowed(horizon, segments) ? overOf(horizon, segments) : null;
}

const enough = (horizon: Horizon) => (over: number) => over >= -1e-9 * horizon.slots;

/** A timeline counted from another minute than midnight. */
interface Turned {
  readonly segments: readonly Segment[];
  /** Slots from midnight to its first segment [slots]. */
  readonly by: number;
}

/** The timeline turned so that no block goes over its ends. */
function turned(segments: readonly Segment[]): Turned {
  const whole = joined(segments);
  const [first, last] = [whole[0], whole.at(-1)];
  if (whole.length < 2 || first === undefined || first.speed !== last?.speed)
    return { segments: whole, by: 0 };
  const closed = [...whole.slice(1, -1), { ...first, slots: first.slots + last.slots }];
  return { segments: closed, by: first.slots };
}

/** The same timeline counted from midnight again. */
function fromMidnight(segments: readonly Segment[], by: number): readonly Segment[] {
  if (by === 0) return segments;
  const tail: Segment[] = [];
  let left = by;
  const head = [...segments];
  while (left > 0) {
    const last = head.pop() as Segment;
    const taken = Math.min(left, last.slots);
    tail.unshift({ ...last, slots: taken });
    if (taken < last.slots) head.push({ ...last, slots: last.slots - taken });
    left -= taken;
  }
  return joined([...tail, ...head]);
}

/** The timeline again from midnight. */
function fromThere(horizon: Horizon, { segments, by }: Turned): readonly Segment[] {
  return fromMidnight(segments, ((by % horizon.slots) + horizon.slots) % horizon.slots);
}

/** The slowest speed with at least this flow, or undefined. */
function speedFor(horizon: Horizon, flow: number): number | undefined {
  const place = horizon.speeds.findIndex((speed) => speed.flow >= flow - 1e-12);
  return place < 0 ? undefined : place;
}

/** One speed for two segments that moves as much water as they do. */
function sharedSpeed(horizon: Horizon, one: Segment, other: Segment): readonly number[] {
  const flowOf = ({ speed }: Segment) => horizon.speeds[speed]?.flow ?? 0;
  const water = flowOf(one) * one.slots + flowOf(other) * other.slots;
  const speed = speedFor(horizon, water / (one.slots + other.slots));
  return speed === undefined ? [] : [speed];
}

/** Every timeline a step away: a segment at the speed of a neighbour, two at one between, a short one longer. */
function* stepsFrom(
  horizon: Horizon,
  { segments, by }: Turned,
  shortest: number,
): Generator<Turned> {
  const count = segments.length;
  if (count < 2) return;
  for (const [place, segment] of segments.entries()) {
    const [before, after] = [(place + count - 1) % count, (place + 1) % count];
    const [previous, next] = [segments[before] as Segment, segments[after] as Segment];
    for (const { speed } of [previous, next])
      yield { segments: segments.with(place, { ...segment, speed }), by };
    for (const speed of sharedSpeed(horizon, segment, next))
      yield {
        segments: segments.with(place, { ...segment, speed }).with(after, { ...next, speed }),
        by,
      };
    const lacking = shortest - segment.slots;
    if (lacking <= 0) continue;
    const longer = segments.with(place, { ...segment, slots: shortest });
    if (next.slots > lacking)
      yield {
        segments: longer.with(after, { ...next, slots: next.slots - lacking }),
        by: after === 0 ? by + lacking : by,
      };
    if (previous.slots > lacking)
      yield {
        segments: longer.with(before, { ...previous, slots: previous.slots - lacking }),
        by: place === 0 ? by - lacking : by,
      };
  }
}

/** The same timeline with the water it lacks made good by one faster segment, every way there is. */
function madeGood(horizon: Horizon, { segments, by }: Turned, lacking: number): readonly Turned[] {
  return segments.flatMap((segment, place) => {
    const flow = (horizon.speeds[segment.speed]?.flow ?? 0) + lacking / segment.slots;
    const speed = speedFor(horizon, flow);
    return speed === undefined
      ? []
      : [{ segments: segments.with(place, { ...segment, speed }), by }];
  });
}

/** A timeline with what counts in choosing it. */
interface Judged {
  readonly segments: readonly Segment[];
  readonly cost: number;
  /** Slots that its blocks lack to the shortest. */
  readonly short: number;
  readonly changes: number;
}

function judged(horizon: Horizon, segments: readonly Segment[], shortest: number): Judged {
  const short = turned(segments).segments.reduce(
    (sum, { slots }) => sum + Math.max(0, shortest - slots),
    0,
  );
  return { segments, cost: costOf(horizon, segments), short, changes: changesIn(segments) };
}

/** The steps from a timeline that keep everything, some of them by a faster segment. */
function keepingSteps(
  horizon: Horizon,
  from: Judged,
  shortest: number,
  wanted: (step: Judged) => boolean,
): readonly Judged[] {
  const keeps = enough(horizon);
  const found: Judged[] = [];
  for (const step of stepsFrom(horizon, turned(from.segments), shortest)) {
    const plain = judged(horizon, joined(fromThere(horizon, step)), shortest);
    if (!wanted(plain)) continue;
    const [water = 0, ...needs] = givenBy(horizon, plain.segments) ?? [Number.NaN];
    if (Number.isNaN(water)) continue;
    if (keeps(water)) {
      if (needs.every(keeps)) found.push(plain);
      continue;
    }
    for (const other of madeGood(horizon, step, -water)) {
      const good = judged(horizon, joined(fromThere(horizon, other)), shortest);
      if (wanted(good) && givenBy(horizon, good.segments)?.every(keeps)) found.push(good);
    }
  }
  return found;
}

function leastOf(steps: readonly Judged[], of: (step: Judged) => readonly number[]): Judged | null {
  const isBefore = (one: readonly number[], other: readonly number[]) => {
    const at = one.findIndex((value, place) => value !== other[place]);
    return at >= 0 && (one[at] ?? 0) < (other[at] ?? 0);
  };
  return steps.reduce<Judged | null>(
    (least, step) => (least === null || isBefore(of(step), of(least)) ? step : least),
    null,
  );
}

/**
 * A timeline without blocks or stops shorter than so many slots, and with as few changes as steps of
 * this search reach at no more than a tenth of a percent above the price; a block that nothing lets
 * grow or go stays.
 *
 * @internal
 */
export function mergeShortBlocks(
  horizon: Horizon,
  segments: readonly Segment[],
  shortest: number,
  bound: number,
): readonly Segment[] {
  if (shortest <= 0) return segments;
  let best = judged(horizon, segments, shortest);
  const price = Math.max(best.cost, bound * horizon.scale);
  const dearest = price + mostPaid * Math.abs(price);
  for (let step = 0; step < mostSteps; step += 1) {
    const { cost, short, changes } = best;
    const most = Math.max(dearest, cost);
    const fewer = keepingSteps(
      horizon,
      best,
      shortest,
      (next) =>
        next.cost <= most &&
        next.short <= short &&
        (next.short < short || next.changes < changes) &&
        next.changes <= changes,
    );
    const next =
      leastOf(fewer, (each) => [each.changes, each.short, each.cost]) ??
      leastOf(
        short === 0 ? [] : keepingSteps(horizon, best, shortest, (each) => each.short < short),
        (each) => [each.cost, each.changes],
      );
    if (next === null) break;
    best = next;
  }
  return best.segments;
}
