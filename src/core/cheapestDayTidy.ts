/** Blocks of a few minutes, which nobody would set a pump to, joined with their neighbours. */
import type { Ring } from './cheapestDayRing.ts';
import { costOf, joined, type Leg, overOf } from './cheapestDayTimeline.ts';
import { isAllowed } from './cheapestDayTimes.ts';

/** What joining may cost, as a share of the price [-]. */
const mostPaid = 1e-3;

/** Whether a timeline gives all that is asked for at speeds allowed where they run. */
function keepsAll(ring: Ring, legs: readonly Leg[]): boolean {
  return isAllowed(ring, legs) && overOf(ring, legs).every((over) => over >= -1e-9 * ring.slots);
}

/** The timeline turned so that no block goes over its ends, and how far [slots]. */
function turned(legs: readonly Leg[]): { legs: readonly Leg[]; by: number } {
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

/**
 * A timeline without blocks shorter than so many slots, as far as that keeps everything and costs
 * next to nothing: each takes the speed of one of its neighbours, the shortest first.
 *
 * @internal
 */
export function tidied(
  ring: Ring,
  legs: readonly Leg[],
  shortest: number,
  bound: number,
): readonly Leg[] {
  let best = legs;
  const price = Math.max(costOf(ring, legs), bound * ring.scale);
  const dearest = price + mostPaid * Math.abs(price);
  for (let round = 0; round < legs.length; round += 1) {
    const { legs: whole, by } = turned(best);
    const short = whole
      .map(({ slots }, place) => ({ slots, place }))
      .filter(({ slots }) => slots < shortest)
      .sort((one, other) => one.slots - other.slots);
    const next = short
      .flatMap(({ place }) =>
        [whole.length - 1, 1].map((step) => {
          const speed = whole[(place + step) % whole.length]?.speed ?? 0;
          const changed = whole.with(place, { speed, slots: whole[place]?.slots ?? 0 });
          return fromMidnight(changed, by);
        }),
      )
      .filter((each) => keepsAll(ring, each) && costOf(ring, each) <= dearest)
      .sort((one, other) => costOf(ring, one) - costOf(ring, other))[0];
    if (next === undefined) break;
    best = next;
  }
  return best;
}
