/**
 * The cheapest day of few slots with at most so many changes, exactly: every way through the day is
 * followed slot by slot, but for those that another one beats in everything and those that, by the
 * multipliers of what is still missing, must cost more than a ceiling.
 */
import type { Horizon } from './horizon.ts';
import { volumeSlack } from './horizon.ts';
import { type Multipliers, reducedCost } from './relaxation.ts';
import { joined, type Segment } from './timeline.ts';

/** Slots up to which following every way is quick [slots]: quarters of an hour. */
export const fewSlots = 96;
/** Ways followed at one time before the search is left to another [-]. */
const mostWays = 60_000;

/** A way from midnight to the end of some slot. */
interface Label {
  /** Its last speed, a place in the list [-]. */
  readonly speed: number;
  /** Changes so far, that over midnight not counted [-]. */
  readonly changes: number;
  /** Price so far [scale]. */
  readonly price: number;
  /** Volume, then service of each need, up to what is asked [slots]. */
  readonly gives: readonly number[];
  readonly before: Label | null;
}

/** What a search among few slots starts from. */
export interface LabelStart {
  /** The day, of few slots, no need of which takes a shortest run [see Ring]. */
  readonly horizon: Horizon;
  /** Changes allowed [-], 0 to 24. */
  readonly changes: number;
  /** Worths whose bound is near the price of the day [see Worth]. */
  readonly multipliers: Multipliers;
  /** No day costs less [scale], any number. */
  readonly bound: number;
}

/**
 * Timeline of the cheapest day, 'none' where no day keeps everything, null where too many ways are left.
 *
 * @internal
 */
export function cheapestByLabels(start: LabelStart): readonly Segment[] | 'none' | null {
  const search = new Labels(start);
  const never = start.horizon.slots + 1;
  let above = Math.max(2e-3 * Math.abs(start.bound), 1e-4);
  for (;;) {
    const ceiling = Math.min(never, start.bound + above);
    const found = search.below(ceiling);
    if (found !== 'none') return found;
    if (ceiling >= never) return 'none';
    above *= 4;
  }
}

class Labels {
  readonly #horizon: Horizon;
  readonly #changes: number;
  readonly #multipliers: Multipliers;
  readonly #asked: readonly number[];
  /** The class of each slot. */
  readonly #kinds: readonly number[];
  /** Most of each service that the slots from each one on can give, by service. */
  readonly #most: readonly Float64Array[];
  /** Net price of the rest of the day by first speed; see #restAt for the order. */
  readonly #rests: readonly Float64Array[];

  constructor({ horizon, changes, multipliers }: LabelStart) {
    this.#horizon = horizon;
    this.#changes = changes;
    this.#multipliers = multipliers;
    this.#asked = [horizon.volume * (1 - volumeSlack), ...horizon.needs.map(({ slots }) => slots)];
    this.#kinds = horizon.intervals.flatMap(({ kind, slots }) =>
      new Array<number>(slots).fill(kind),
    );
    this.#most = this.#asked.map((_, service) => this.#mostFrom(service));
    this.#rests = horizon.speeds.map((_, first) => this.#restFrom(first));
  }

  /** The cheapest way that ends below a ceiling [scale]. */
  below(ceiling: number): readonly Segment[] | 'none' | null {
    let best: Label | null = null;
    for (const first of this.#allowed(0)) {
      const least = Math.min(ceiling, best?.price ?? Number.POSITIVE_INFINITY);
      const found = this.#from(first, least);
      if (found === 'many') return null;
      if (found !== null) best = found;
    }
    return best === null ? 'none' : segmentsOf(best);
  }

  #allowed(slot: number): readonly number[] {
    return this.#horizon.classes[this.#kinds[slot] ?? 0]?.speeds ?? [];
  }

  #gives(service: number, slot: number, speed: number): number {
    const { flow = 0, serves = 0 } = this.#horizon.speeds[speed] ?? {};
    if (service === 0) return flow;
    const open = this.#horizon.classes[this.#kinds[slot] ?? 0]?.open ?? 0;
    return ((serves & open) >> (service - 1)) & 1;
  }

  #mostFrom(service: number): Float64Array {
    const most = new Float64Array(this.#kinds.length + 1);
    for (let slot = this.#kinds.length - 1; slot >= 0; slot -= 1) {
      const each = this.#allowed(slot).map((speed) => this.#gives(service, slot, speed));
      most[slot] = (most[slot + 1] ?? 0) + Math.max(0, ...each);
    }
    return most;
  }

  #restAt(slot: number, speed: number, left: number): number {
    return (slot * this.#horizon.speeds.length + speed) * (this.#changes + 1) + left;
  }

  /** Least net price of the slots from each one on, after a speed, with changes left, to a day that began with `first`. */
  #restFrom(first: number): Float64Array {
    const [slots, size] = [this.#kinds.length, this.#horizon.speeds.length];
    const rest = new Float64Array((slots + 1) * size * (this.#changes + 1));
    rest.fill(Number.POSITIVE_INFINITY);
    for (let speed = 0; speed < size; speed += 1)
      for (let left = speed === first ? 0 : 1; left <= this.#changes; left += 1)
        rest[this.#restAt(slots, speed, left)] = 0;
    for (let slot = slots - 1; slot >= 0; slot -= 1)
      for (const next of this.#allowed(slot)) {
        const net = reducedCost(this.#horizon, this.#multipliers, this.#kinds[slot] ?? 0, next);
        for (let speed = 0; speed < size; speed += 1) {
          const changed = speed === next ? 0 : 1;
          for (let left = changed; left <= this.#changes; left += 1) {
            const value = net + (rest[this.#restAt(slot + 1, next, left - changed)] as number);
            const at = this.#restAt(slot, speed, left);
            if (value < (rest[at] as number)) rest[at] = value;
          }
        }
      }
    return rest;
  }

  /** The cheapest way that begins with a speed and ends below a ceiling. */
  #from(first: number, ceiling: number): Label | 'many' | null {
    const nothing = this.#asked.map(() => 0);
    const empty: Label = { speed: first, changes: 0, price: 0, gives: nothing, before: null };
    let labels: readonly Label[] = [this.#step(empty, 0, first)];
    for (let slot = 1; slot < this.#kinds.length; slot += 1) {
      const next = new Map<number, Label[]>();
      for (const way of labels)
        for (const speed of this.#allowed(slot)) {
          const longer = this.#step(way, slot, speed);
          if (!this.#mayEnd(longer, slot + 1, first, ceiling)) continue;
          const held = next.get(speed);
          if (held) held.push(longer);
          else next.set(speed, [longer]);
        }
      labels = [...next.values()].flatMap(unbeaten);
      if (labels.length > mostWays) return 'many';
    }
    return labels
      .filter((way) => this.#mayEnd(way, this.#kinds.length, first, ceiling))
      .reduce<Label | null>(
        (best, way) => (best === null || way.price < best.price ? way : best),
        null,
      );
  }

  #step(way: Label, slot: number, speed: number): Label {
    const price = (this.#horizon.cost[this.#kinds[slot] ?? 0]?.[speed] ?? 0) / this.#horizon.scale;
    return {
      speed,
      changes: way.changes + (speed === way.speed ? 0 : 1),
      price: way.price + price,
      gives: way.gives.map((given, service) =>
        Math.min(this.#asked[service] ?? 0, given + this.#gives(service, slot, speed)),
      ),
      before: way,
    };
  }

  /** Whether a way can still give all that is asked with the changes left, and below the ceiling. */
  #mayEnd(way: Label, slot: number, first: number, ceiling: number): boolean {
    const left = this.#changes - way.changes;
    if (left < 0) return false;
    let price = way.price + (this.#rests[first]?.[this.#restAt(slot, way.speed, left)] as number);
    for (const [service, asked] of this.#asked.entries()) {
      const missing = asked - (way.gives[service] as number);
      if (missing > (this.#most[service]?.[slot] as number) + 1e-12 * Math.max(1, asked))
        return false;
      price += missing * (this.#multipliers[service] ?? 0);
    }
    return price < ceiling - 1e-12 * Math.max(1, Math.abs(ceiling));
  }
}

/** Ways at one slot and speed, without those that another of the same cost or less beats in everything else. */
function unbeaten(labels: readonly Label[]): readonly Label[] {
  const kept: Label[] = [];
  for (const way of labels.toSorted((one, other) => one.price - other.price))
    if (!kept.some((other) => beats(other, way))) kept.push(way);
  return kept;
}

function beats(one: Label, other: Label): boolean {
  if (one.changes > other.changes) return false;
  return one.gives.every((given, service) => given >= (other.gives[service] as number));
}

function segmentsOf(last: Label): readonly Segment[] {
  const speeds: number[] = [];
  for (let way = last; way.before !== null; way = way.before) speeds.push(way.speed);
  return joined(speeds.reverse().map((speed) => ({ speed, slots: 1 })));
}
