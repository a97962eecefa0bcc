/** Whole slots of each class at each speed, what they give and cost, and how to change a few of them. */
import { type Horizon, volumeSlack } from './horizon.ts';
import type { Share } from './relaxation.ts';

/** So many slots of a class taken from one speed and given to another. */
export interface Move {
  /** Place of the class [-], 0 or more. */
  readonly kind: number;
  /** Place of the speed that gives [-], 0 or more. */
  readonly from: number;
  /** Place of the speed that takes [-], 0 or more. */
  readonly to: number;
  /** What one slot adds to the price [scale], any number. */
  readonly price: number;
  /** What one slot adds to the volume [slots at the greatest flow], any number. */
  readonly volume: number;
  /** Needs that gain a slot, one bit each [-], any whole number. */
  readonly gains: number;
  /** Needs that lose a slot, one bit each [-], any whole number. */
  readonly loses: number;
}

/** Whole slots by class and speed. */
export class IntegerMinutes {
  readonly horizon: Horizon;
  readonly counts: readonly Int32Array[];
  /** What it gives beyond what is asked; below 0 it falls short [slots]. */
  volumeOver: number;
  readonly over: number[];
  readonly #known = new Map<number, readonly Move[]>();
  /** What it costs [scale]. */
  price = 0;

  constructor(horizon: Horizon) {
    this.horizon = horizon;
    this.counts = horizon.classes.map(() => new Int32Array(horizon.speeds.length));
    this.volumeOver = -horizon.volume;
    this.over = horizon.needs.map(({ slots }) => -slots);
  }

  count(kind: number, speed: number): number {
    return this.counts[kind]?.[speed] ?? 0;
  }

  add(kind: number, speed: number, slots: number): void {
    const counts = this.counts[kind];
    const { flow, serves } = this.horizon.speeds[speed] ?? { flow: 0, serves: 0 };
    if (counts === undefined || slots === 0) return;
    counts[speed] = (counts[speed] ?? 0) + slots;
    this.volumeOver += flow * slots;
    this.price += ((this.horizon.cost[kind]?.[speed] ?? 0) / this.horizon.scale) * slots;
    let bits = serves & (this.horizon.classes[kind]?.open ?? 0);
    for (let place = 0; bits !== 0; place += 1, bits >>= 1)
      if (bits & 1) this.over[place] = (this.over[place] ?? 0) + slots;
  }

  apply(move: Move, slots: number): void {
    this.add(move.kind, move.from, -slots);
    this.add(move.kind, move.to, slots);
  }

  /** Volume that counts as nothing: sums of doubles are off by about this [slots]. */
  get slack(): number {
    return volumeSlack * this.horizon.volume + 1e-12;
  }

  get missing(): number {
    const needs = this.over.reduce((sum, over) => sum + Math.max(0, -over), 0);
    return needs + (this.volumeOver < -this.slack ? -this.volumeOver : 0);
  }

  /** What would be missing if so many slots made a move. */
  missingAfter(move: Move, slots: number): number {
    let missing = 0;
    for (const [place, over] of this.over.entries()) {
      const gained = (move.gains >> place) & 1;
      const lost = (move.loses >> place) & 1;
      missing += Math.max(0, -(over + (gained - lost) * slots));
    }
    const volumeOver = this.volumeOver + move.volume * slots;
    return missing + (volumeOver < -this.slack ? -volumeOver : 0);
  }

  /** The price summed afresh, without the rounding of many small changes [currency]. */
  cost(): number {
    return this.counts.reduce(
      (sum, counts, kind) =>
        counts.reduce(
          (part, slots, speed) => part + slots * (this.horizon.cost[kind]?.[speed] ?? 0),
          sum,
        ),
      0,
    );
  }

  /** Every change of speed that some slot of some class could make. */
  moves(keep: (kind: number, to: number) => boolean = () => true): Move[] {
    const moves: Move[] = [];
    for (const [kind, { speeds }] of this.horizon.classes.entries())
      for (const from of speeds) {
        if (this.count(kind, from) === 0) continue;
        for (const move of this.#movesFrom(kind, from)) if (keep(kind, move.to)) moves.push(move);
      }
    return moves;
  }

  #movesFrom(kind: number, from: number): readonly Move[] {
    const key = kind * this.horizon.speeds.length + from;
    const held = this.#known.get(key);
    if (held !== undefined) return held;
    const { speeds = [], open = 0 } = this.horizon.classes[kind] ?? {};
    const found = speeds
      .filter((to) => to !== from)
      .map((to) => moveOf(this.horizon, kind, open, from, to));
    this.#known.set(key, found);
    return found;
  }

  /** How many slots a move can take while everything asked for stays given. */
  room(move: Move): number {
    let room = this.count(move.kind, move.from);
    if (move.volume < 0) {
      const volume = Math.floor((this.volumeOver + this.slack) / -move.volume);
      room = Math.min(room, Math.max(0, volume));
    }
    let bits = move.loses;
    for (let place = 0; bits !== 0; place += 1, bits >>= 1)
      if (bits & 1) room = Math.min(room, Math.max(0, this.over[place] ?? 0));
    return room;
  }
}

function moveOf(horizon: Horizon, kind: number, open: number, from: number, to: number): Move {
  const cost = horizon.cost[kind] as Float64Array;
  const [before, after] = [horizon.speeds[from], horizon.speeds[to]];
  const [had, has] = [(before?.serves ?? 0) & open, (after?.serves ?? 0) & open];
  return {
    kind,
    from,
    to,
    price: ((cost[to] ?? 0) - (cost[from] ?? 0)) / horizon.scale,
    volume: (after?.flow ?? 0) - (before?.flow ?? 0),
    gains: has & ~had,
    loses: had & ~has,
  };
}

/**
 * Whole slots nearest to shares that are not whole; it may fall a little short of what is asked.
 *
 * @internal
 */
export function nearestIntegerMinutes(horizon: Horizon, shares: readonly Share[]): IntegerMinutes {
  const integerMinutes = new IntegerMinutes(horizon);
  for (const [kind, { slots, speeds }] of horizon.classes.entries()) {
    const own = shares.filter((share) => share.kind === kind);
    const used = own.reduce((sum, share) => sum + share.slots, 0);
    const still = speeds.find((speed) => horizon.speeds[speed]?.row === null);
    const parts = still === undefined ? own : [...own, { kind, speed: still, slots: slots - used }];
    let left = slots;
    const rests = parts.map(({ speed, slots: share }) => {
      const whole = Math.max(0, Math.min(left, Math.floor(share + 1e-7)));
      integerMinutes.add(kind, speed, whole);
      left -= whole;
      return { speed, rest: share - whole };
    });
    rests.sort((one, other) => other.rest - one.rest);
    const fallback = speeds[0] ?? 0;
    for (let place = 0; left > 0; place += 1, left -= 1)
      integerMinutes.add(kind, rests[place % Math.max(1, rests.length)]?.speed ?? fallback, 1);
  }
  return integerMinutes;
}

/**
 * Changes slots until all that is asked for is given, at the least price for each step.
 *
 * @internal
 */
export function repair(integerMinutes: IntegerMinutes): boolean {
  for (let step = 0; step < 400; step += 1) {
    const missing = integerMinutes.missing;
    if (missing === 0) return true;
    let best: { move: Move; slots: number; rate: number } | undefined;
    for (const move of integerMinutes.moves()) {
      const wanted =
        move.volume > 0
          ? Math.ceil((-integerMinutes.volumeOver - integerMinutes.slack) / move.volume)
          : 1;
      const most = integerMinutes.count(move.kind, move.from);
      const full = Math.min(most, Math.max(1, wanted));
      for (let slots = 1; slots <= full; slots += Math.max(1, full - 1)) {
        const gained = missing - integerMinutes.missingAfter(move, slots);
        if (gained <= 1e-15) continue;
        // A step that saves money as well comes first, the larger the better.
        const paid = move.price * slots;
        const rate = paid < 0 ? paid * gained : paid / gained;
        if (best === undefined || rate < best.rate) best = { move, slots, rate };
      }
    }
    if (best === undefined) return false;
    integerMinutes.apply(best.move, best.slots);
  }
  return integerMinutes.missing === 0;
}
