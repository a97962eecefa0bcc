/** Where in the day the slots of each class go: every place in a class costs the same, so as few blocks as possible. */
import type { Horizon } from './horizon.ts';
import type { IntegerMinutes } from './integerMinutes.ts';
import { missingRuns, type Segment } from './timeline.ts';

/** The order in which one class is filled: its intervals one after the other, with its speeds one after the other. */
interface Filling {
  readonly intervals: readonly number[];
  readonly parts: readonly Segment[];
  /** Of the intervals with more than one speed, which are laid the other way round, one bit each. */
  readonly turned: number;
}

/** Fillings of one class that are tried at most. */
const mostFillings = 600;
const mostPasses = 3;

function permutations<T>(list: readonly T[], most: number): readonly (readonly T[])[] {
  if (list.length > most) {
    // Too many to try: every start of the horizon, both ways round.
    const turns = list.map((_, place) => [...list.slice(place), ...list.slice(0, place)]);
    return [...turns, ...turns.map((turn) => turn.toReversed())];
  }
  if (list.length <= 1) return [list];
  return list.flatMap((first, place) =>
    permutations(list.toSpliced(place, 1), most).map((rest) => [first, ...rest]),
  );
}

function fillingsOf(
  horizon: Horizon,
  integerMinutes: IntegerMinutes,
  kind: number,
): readonly Filling[] {
  const parts = (horizon.classes[kind]?.speeds ?? [])
    .map((speed) => ({ speed, slots: integerMinutes.count(kind, speed) }))
    .filter(({ slots }) => slots > 0);
  const own = [...horizon.intervals.keys()].filter(
    (place) => horizon.intervals[place]?.kind === kind,
  );
  if (parts.length <= 1) return [{ intervals: own, parts, turned: 0 }];
  const turns = 2 ** Math.min(parts.length - 1, own.length, 3);
  const orders = permutations(parts, 4);
  const all = permutations(own, 4).flatMap((intervals) =>
    orders.flatMap((order) =>
      Array.from({ length: turns }, (_, turned) => ({ intervals, parts: order, turned })),
    ),
  );
  const every = Math.ceil(all.length / mostFillings);
  return all.filter((_, place) => place % every === 0);
}

/** What each interval of the day holds of one class; nothing where it belongs to another. */
type Filled = readonly (readonly Segment[])[];

/** What each interval of the class holds. */
function fill(horizon: Horizon, { intervals, parts, turned }: Filling): Filled {
  const filled: (readonly Segment[])[] = horizon.intervals.map(() => []);
  let part = 0;
  let left = parts[0]?.slots ?? 0;
  let mixed = 0;
  for (const place of intervals) {
    const segments: Segment[] = [];
    for (let rest = horizon.intervals[place]?.slots ?? 0; rest > 0 && part < parts.length; ) {
      const slots = Math.min(rest, left);
      segments.push({ speed: parts[part]?.speed ?? 0, slots });
      rest -= slots;
      left -= slots;
      if (left === 0) left = parts[++part]?.slots ?? 0;
    }
    if (segments.length > 1) {
      if ((turned >> mixed) & 1) segments.reverse();
      mixed += 1;
    }
    filled[place] = segments;
  }
  return filled;
}

/** The intervals in the order of the clock, each from the filling of its own class. */
function timelineOf(horizon: Horizon, held: readonly Filled[]): readonly Segment[] {
  const segments: Segment[] = [];
  for (const [place, { kind }] of horizon.intervals.entries())
    for (const segment of held[kind]?.[place] ?? []) segments.push(segment);
  return segments;
}

/** Runs too short first, then changes, then how far the speed steps. */
function faultsOf(horizon: Horizon, segments: readonly Segment[]): number {
  let changes = 0;
  let steps = 0;
  let before = segments.at(-1)?.speed ?? 0;
  for (const { speed } of segments) {
    if (speed !== before) {
      changes += 1;
      steps += Math.abs((horizon.speeds[speed]?.flow ?? 0) - (horizon.speeds[before]?.flow ?? 0));
    }
    before = speed;
  }
  return missingRuns(horizon, segments) * 1e4 + changes + steps / (segments.length + 1);
}

/**
 * A timeline with these slots in each class and few changes; runs that count come first.
 *
 * @internal
 */
export function placed(horizon: Horizon, integerMinutes: IntegerMinutes): readonly Segment[] {
  const choices = horizon.classes.map((_, kind) =>
    fillingsOf(horizon, integerMinutes, kind).map((filling) => fill(horizon, filling)),
  );
  const held = choices.map(([first]) => first as Filled);
  let least = faultsOf(horizon, timelineOf(horizon, held));
  for (let pass = 0; pass < mostPasses; pass += 1) {
    let better = false;
    for (const [kind, own] of choices.entries()) {
      let best = held[kind] as Filled;
      for (const choice of own.length > 1 ? own : []) {
        held[kind] = choice;
        const faults = faultsOf(horizon, timelineOf(horizon, held));
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
  return timelineOf(horizon, held);
}
