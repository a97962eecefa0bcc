/** Where in the day the slots of each class go: every place in a class costs the same, so as few blocks as possible. */
import type { Ring } from './ring.ts';
import type { Tally } from './tally.ts';
import { type Leg, missingRuns } from './timeline.ts';

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

/** What each stretch of the day holds of one class; nothing where it belongs to another. */
type Filled = readonly (readonly Leg[])[];

/** What each stretch of the class holds. */
function fill(ring: Ring, { stretches, parts, turned }: Filling): Filled {
  const filled: (readonly Leg[])[] = ring.stretches.map(() => []);
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
    filled[place] = legs;
  }
  return filled;
}

/** The stretches in the order of the clock, each from the filling of its own class. */
function timelineOf(ring: Ring, held: readonly Filled[]): readonly Leg[] {
  const legs: Leg[] = [];
  for (const [place, { kind }] of ring.stretches.entries())
    for (const leg of held[kind]?.[place] ?? []) legs.push(leg);
  return legs;
}

/** Runs too short first, then changes, then how far the speed steps. */
function faultsOf(ring: Ring, legs: readonly Leg[]): number {
  let changes = 0;
  let steps = 0;
  let before = legs.at(-1)?.speed ?? 0;
  for (const { speed } of legs) {
    if (speed !== before) {
      changes += 1;
      steps += Math.abs((ring.speeds[speed]?.flow ?? 0) - (ring.speeds[before]?.flow ?? 0));
    }
    before = speed;
  }
  return missingRuns(ring, legs) * 1e4 + changes + steps / (legs.length + 1);
}

/**
 * A timeline with these slots in each class and few changes; runs that count come first.
 *
 * @internal
 */
export function placed(ring: Ring, tally: Tally): readonly Leg[] {
  const choices = ring.classes.map((_, kind) =>
    fillingsOf(ring, tally, kind).map((filling) => fill(ring, filling)),
  );
  const held = choices.map(([first]) => first as Filled);
  let least = faultsOf(ring, timelineOf(ring, held));
  for (let pass = 0; pass < mostPasses; pass += 1) {
    let better = false;
    for (const [kind, own] of choices.entries()) {
      let best = held[kind] as Filled;
      for (const choice of own.length > 1 ? own : []) {
        held[kind] = choice;
        const faults = faultsOf(ring, timelineOf(ring, held));
        if (faults < least - 1e-9) {
          least = faults;
          best = choice;
          better = true;
        }
      }
      held[kind] = best;
    }
    if (!better) break;
  }
  return timelineOf(ring, held);
}
