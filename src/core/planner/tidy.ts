/**
 * A day that a person will set: no block shorter than is worth setting, and of days that cost as good
 * as the same the one with fewer changes. Local search: neighbours joined, short blocks lengthened,
 * and the water that this loses made good by one faster block.
 */
import type { Ring } from './ring.ts';
import { changesIn, costOf, joined, type Leg, overOf } from './timeline.ts';
import { isAllowed } from './times.ts';

/** What fewer changes may cost, as a share of the price [-]. */
const mostPaid = 1e-3;
/** Steps of the search; each removes a change or lengthens a block. */
const mostSteps = 80;

/** Everything a timeline lacks or gives beyond what is asked; null where a speed is not allowed. */
function givenBy(ring: Ring, legs: readonly Leg[]): readonly number[] | null {
  return isAllowed(ring, legs) ? overOf(ring, legs) : null;
}

const enough = (ring: Ring) => (over: number) => over >= -1e-9 * ring.slots;

/** A timeline counted from another minute than midnight. */
interface Turned {
  readonly legs: readonly Leg[];
  /** Slots from midnight to its first leg [slots]. */
  readonly by: number;
}

/** The timeline turned so that no block goes over its ends. */
function turned(legs: readonly Leg[]): Turned {
  const whole = joined(legs);
  const [first, last] = [whole[0], whole.at(-1)];
  if (whole.length < 2 || first === undefined || first.speed !== last?.speed)
    return { legs: whole, by: 0 };
  const closed = [...whole.slice(1, -1), { ...first, slots: first.slots + last.slots }];
  return { legs: closed, by: first.slots };
}

/** The same timeline counted from midnight again. */
function fromMidnight(legs: readonly Leg[], by: number): readonly Leg[] {
  if (by === 0) return legs;
  const tail: Leg[] = [];
  let left = by;
  const head = [...legs];
  while (left > 0) {
    const last = head.pop() as Leg;
    const taken = Math.min(left, last.slots);
    tail.unshift({ ...last, slots: taken });
    if (taken < last.slots) head.push({ ...last, slots: last.slots - taken });
    left -= taken;
  }
  return joined([...tail, ...head]);
}

/** The timeline again from midnight. */
function fromThere(ring: Ring, { legs, by }: Turned): readonly Leg[] {
  return fromMidnight(legs, ((by % ring.slots) + ring.slots) % ring.slots);
}

/** The slowest speed with at least this flow, or undefined. */
function speedFor(ring: Ring, flow: number): number | undefined {
  const place = ring.speeds.findIndex((speed) => speed.flow >= flow - 1e-12);
  return place < 0 ? undefined : place;
}

/** One speed for two legs that moves as much water as they do. */
function sharedSpeed(ring: Ring, one: Leg, other: Leg): readonly number[] {
  const flowOf = ({ speed }: Leg) => ring.speeds[speed]?.flow ?? 0;
  const water = flowOf(one) * one.slots + flowOf(other) * other.slots;
  const speed = speedFor(ring, water / (one.slots + other.slots));
  return speed === undefined ? [] : [speed];
}

/** Every timeline a step away: a leg at the speed of a neighbour, two at one between, a short one longer. */
function* stepsFrom(ring: Ring, { legs, by }: Turned, shortest: number): Generator<Turned> {
  const count = legs.length;
  if (count < 2) return;
  for (const [place, leg] of legs.entries()) {
    const [before, after] = [(place + count - 1) % count, (place + 1) % count];
    const [previous, next] = [legs[before] as Leg, legs[after] as Leg];
    for (const { speed } of [previous, next])
      yield { legs: legs.with(place, { ...leg, speed }), by };
    for (const speed of sharedSpeed(ring, leg, next))
      yield { legs: legs.with(place, { ...leg, speed }).with(after, { ...next, speed }), by };
    const lacking = shortest - leg.slots;
    if (lacking <= 0) continue;
    const longer = legs.with(place, { ...leg, slots: shortest });
    if (next.slots > lacking)
      yield {
        legs: longer.with(after, { ...next, slots: next.slots - lacking }),
        by: after === 0 ? by + lacking : by,
      };
    if (previous.slots > lacking)
      yield {
        legs: longer.with(before, { ...previous, slots: previous.slots - lacking }),
        by: place === 0 ? by - lacking : by,
      };
  }
}

/** The same timeline with the water it lacks made good by one faster leg, every way there is. */
function madeGood(ring: Ring, { legs, by }: Turned, lacking: number): readonly Turned[] {
  return legs.flatMap((leg, place) => {
    const flow = (ring.speeds[leg.speed]?.flow ?? 0) + lacking / leg.slots;
    const speed = speedFor(ring, flow);
    return speed === undefined ? [] : [{ legs: legs.with(place, { ...leg, speed }), by }];
  });
}

/** A timeline with what counts in choosing it. */
interface Judged {
  readonly legs: readonly Leg[];
  readonly cost: number;
  /** Slots that its blocks lack to the shortest. */
  readonly short: number;
  readonly changes: number;
}

function judged(ring: Ring, legs: readonly Leg[], shortest: number): Judged {
  const short = turned(legs).legs.reduce(
    (sum, { slots }) => sum + Math.max(0, shortest - slots),
    0,
  );
  return { legs, cost: costOf(ring, legs), short, changes: changesIn(legs) };
}

/** The steps from a timeline that keep everything, some of them by a faster leg. */
function keepingSteps(
  ring: Ring,
  from: Judged,
  shortest: number,
  wanted: (step: Judged) => boolean,
): readonly Judged[] {
  const keeps = enough(ring);
  const found: Judged[] = [];
  for (const step of stepsFrom(ring, turned(from.legs), shortest)) {
    const plain = judged(ring, joined(fromThere(ring, step)), shortest);
    if (!wanted(plain)) continue;
    const [water = 0, ...needs] = givenBy(ring, plain.legs) ?? [Number.NaN];
    if (Number.isNaN(water)) continue;
    if (keeps(water)) {
      if (needs.every(keeps)) found.push(plain);
      continue;
    }
    for (const other of madeGood(ring, step, -water)) {
      const good = judged(ring, joined(fromThere(ring, other)), shortest);
      if (wanted(good) && givenBy(ring, good.legs)?.every(keeps)) found.push(good);
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
export function tidied(
  ring: Ring,
  legs: readonly Leg[],
  shortest: number,
  bound: number,
): readonly Leg[] {
  if (shortest <= 0) return legs;
  let best = judged(ring, legs, shortest);
  const price = Math.max(best.cost, bound * ring.scale);
  const dearest = price + mostPaid * Math.abs(price);
  for (let step = 0; step < mostSteps; step += 1) {
    const { cost, short, changes } = best;
    const most = Math.max(dearest, cost);
    const fewer = keepingSteps(
      ring,
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
        short === 0 ? [] : keepingSteps(ring, best, shortest, (each) => each.short < short),
        (each) => [each.cost, each.changes],
      );
    if (next === null) break;
    best = next;
  }
  return best.legs;
}
