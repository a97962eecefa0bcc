/**
 * The cheapest day where shortest runs bind: branch and bound over when one run of each need begins.
 * A run of R minutes that begins between a and b covers everything from b to a + R, so the need must
 * be served there; with that fixed the sharing of the minutes is a linear programme again.
 */
import type { CheapestDayInputs } from './inputs.ts';
import { placed } from './placement.ts';
import { type Forced, type Ring, ringOf } from './ring.ts';
import { cheapestSharing, type Worth } from './shares.ts';
import { gapBetween, wholeSlots } from './slots.ts';
import { costOf, joined, type Leg, overOf, runsIn } from './timeline.ts';
import { bestTimes } from './times.ts';

/** What is found. */
export interface RunsFound {
  readonly legs: readonly Leg[] | null;
  /** No day costs less than this [currency], any number. */
  readonly bound: number;
  readonly worth: Worth;
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
function forcedBy(ring: Ring, beginnings: readonly Beginning[]): readonly Forced[] {
  return beginnings.flatMap(({ first, last }, place) => {
    const run = ring.needs[place]?.run ?? 0;
    if (run <= 1 || last >= first + run) return [];
    return [forced(ring, place, last, first + run - last)];
  });
}

function forced(ring: Ring, place: number, first: number, slots: number): Forced {
  const start = (first % ring.slots) * ring.minutes;
  return { place, start, end: (((first + slots) % ring.slots) * ring.minutes) % 1440 };
}

interface Tried {
  readonly bound: number;
  readonly legs: readonly Leg[] | null;
  readonly worth: Worth;
}

/** The best day with some service fixed; runs that are too short may still be in it. */
function tried(inputs: CheapestDayInputs, fixed: readonly Forced[]): Tried | null {
  const ring = ringOf(inputs, fixed);
  const sharing = cheapestSharing(ring);
  if (sharing === null) return null;
  const found = wholeSlots(ring, sharing, whole.wanted, whole.nodes);
  const bound = sharing.bound * ring.scale;
  return { bound, legs: found === null ? null : placed(ring, found.tally), worth: sharing.worth };
}

/** The same order of speeds with its changes moved until the runs are long enough, where that can be. */
function retimed(ring: Ring, { legs, ...found }: Tried): Tried | null {
  const whole = joined(legs ?? []);
  if (whole.length === 0) return null;
  // A day of times ends with the speed it began with.
  const [first, last] = [whole[0] as Leg, whole.at(-1) as Leg];
  const closed = first.speed === last.speed ? whole : [...whole, { ...first, slots: 0 }];
  let at = 0;
  const times = closed.slice(0, -1).map(({ slots }) => {
    at += slots;
    return at;
  });
  const timed = bestTimes(ring, { speeds: closed.map(({ speed }) => speed), times });
  return timed && { ...found, legs: timed.legs };
}

/** The need whose runs are furthest from enough, and where its longest run begins; none when all is kept. */
function worstNeed(ring: Ring, legs: readonly Leg[]): { place: number; start: number } | null {
  const [, ...over] = overOf(ring, legs);
  const place = over.indexOf(Math.min(...over, 0));
  if (place < 0 || (over[place] ?? 0) >= 0) return null;
  const longest = runsIn(ring, legs, place).toSorted((a, b) => b.slots - a.slots)[0];
  return { place, start: longest?.start ?? 0 };
}

/**
 * The cheapest day with any number of changes whose runs are long enough to count.
 *
 * @internal
 */
export function cheapestWithRuns(
  inputs: CheapestDayInputs,
  ring: Ring,
  from: { readonly bound: number; readonly worth: Worth },
  wanted: number,
  nodes: number,
): RunsFound {
  let best: { legs: readonly Leg[]; cost: number; worth: Worth } | null = null;
  const consider = (each: Tried | null) => {
    if (each?.legs == null || overOf(ring, each.legs).some((over) => over < -1e-9)) return;
    const cost = costOf(ring, each.legs);
    if (best === null || cost < best.cost) best = { legs: each.legs, cost, worth: each.worth };
  };
  const held = () => best as { legs: readonly Leg[]; cost: number; worth: Worth } | null;
  const anywhere = ring.needs.map(() => ({ first: 0, last: ring.slots - 1 }));
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
    const fixed = forcedBy(ring, node.beginnings);
    const found = tried(inputs, fixed);
    if (found === null) continue;
    const bound = Math.max(node.bound, found.bound);
    consider(found);
    consider(retimed(ring, found));
    const worst = found.legs === null ? null : worstNeed(ring, found.legs);
    if (worst === null) {
      settled = Math.min(settled, bound);
      continue;
    }
    // All of the need in one run, where most of it lies now: often the best day, always a day to compare with.
    const { place } = worst;
    const slots = ring.needs[place]?.slots ?? 0;
    const { first, last } = node.beginnings[place] as Beginning;
    consider(tried(inputs, [...fixed, forced(ring, place, worst.start, slots)]));
    if (last === first) {
      consider(tried(inputs, [...fixed, forced(ring, place, first, slots)]));
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
    legs: day?.legs ?? null,
    bound: Math.max(from.bound, Math.min(left, day?.cost ?? left)),
    worth: day?.worth ?? from.worth,
  };
}
