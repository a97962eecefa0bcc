/** Where in the day the slots of each class go: every place in a class costs the same, so as few blocks as possible. */
import type { Ring } from './cheapestDayRing.ts';
import type { Tally } from './cheapestDayTally.ts';
import { changesIn, type Leg, missingRuns } from './cheapestDayTimeline.ts';

/** The order in which one class is filled: its stretches one after the other, with its speeds one after the other. */
interface Filling {
  readonly stretches: readonly number[];
  readonly parts: readonly Leg[];
  /** Of the stretches with more than one speed, which are laid the other way round, one bit each. */
  readonly turned: number;
}

/** Fillings of one class that are tried at most. */
const mostFillings = 600;
const mostPasses = 3;

function permutations<T>(list: readonly T[], most: number): readonly (readonly T[])[] {
  if (list.length > most) {
    // Too many to try: every start of the ring, both ways round.
    const turns = list.map((_, place) => [...list.slice(place), ...list.slice(0, place)]);
    return [...turns, ...turns.map((turn) => turn.toReversed())];
  }
  if (list.length <= 1) return [list];
  return list.flatMap((first, place) =>
    permutations(list.toSpliced(place, 1), most).map((rest) => [first, ...rest]),
  );
}

function fillingsOf(ring: Ring, tally: Tally, kind: number): readonly Filling[] {
  const parts = (ring.classes[kind]?.speeds ?? [])
    .map((speed) => ({ speed, slots: tally.count(kind, speed) }))
    .filter(({ slots }) => slots > 0);
  const own = [...ring.stretches.keys()].filter((place) => ring.stretches[place]?.kind === kind);
  if (parts.length <= 1) return [{ stretches: own, parts, turned: 0 }];
  const turns = 2 ** Math.min(parts.length - 1, own.length, 3);
  const orders = permutations(parts, 4);
  const all = permutations(own, 4).flatMap((stretches) =>
    orders.flatMap((order) =>
      Array.from({ length: turns }, (_, turned) => ({ stretches, parts: order, turned })),
    ),
  );
  const every = Math.ceil(all.length / mostFillings);
  return all.filter((_, place) => place % every === 0);
}

/** What each stretch of the class holds. */
function fill(
  ring: Ring,
  { stretches, parts, turned }: Filling,
): ReadonlyMap<number, readonly Leg[]> {
  const filled = new Map<number, readonly Leg[]>();
  let part = 0;
  let left = parts[0]?.slots ?? 0;
  let mixed = 0;
  for (const place of stretches) {
    const legs: Leg[] = [];
    for (let rest = ring.stretches[place]?.slots ?? 0; rest > 0 && part < parts.length; ) {
      const slots = Math.min(rest, left);
      legs.push({ speed: parts[part]?.speed ?? 0, slots });
      rest -= slots;
      left -= slots;
      if (left === 0) left = parts[++part]?.slots ?? 0;
    }
    if (legs.length > 1) {
      if ((turned >> mixed) & 1) legs.reverse();
      mixed += 1;
    }
    filled.set(place, legs);
  }
  return filled;
}

/** Runs too short first, then changes, then how far the speed steps. */
function faultsOf(ring: Ring, legs: readonly Leg[]): number {
  const steps = legs.reduce((sum, { speed }, place) => {
    const next = legs[(place + 1) % legs.length]?.speed ?? speed;
    return sum + Math.abs((ring.speeds[speed]?.flow ?? 0) - (ring.speeds[next]?.flow ?? 0));
  }, 0);
  return missingRuns(ring, legs) * 1e4 + changesIn(legs) + steps / (legs.length + 1);
}

/**
 * A timeline with these slots in each class and few changes; runs that count come first.
 *
 * @internal
 */
export function placed(ring: Ring, tally: Tally): readonly Leg[] {
  const fillings = ring.classes.map((_, kind) => fillingsOf(ring, tally, kind));
  const held = fillings.map(([first]) => fill(ring, first as Filling));
  const timeline = () => ring.stretches.flatMap(({ kind }, place) => held[kind]?.get(place) ?? []);
  let least = faultsOf(ring, timeline());
  for (let pass = 0; pass < mostPasses; pass += 1) {
    let better = false;
    for (const [kind, choices] of fillings.entries()) {
      if (choices.length <= 1) continue;
      let best = held[kind] as ReadonlyMap<number, readonly Leg[]>;
      for (const choice of choices) {
        held[kind] = fill(ring, choice);
        const faults = faultsOf(ring, timeline());
        if (faults < least - 1e-9) {
          least = faults;
          best = held[kind] as ReadonlyMap<number, readonly Leg[]>;
          better = true;
        }
      }
      held[kind] = best;
    }
    if (!better) break;
  }
  return timeline();
}
