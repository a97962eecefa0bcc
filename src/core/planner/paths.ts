/**
 * Days with so many changes, found for given multipliers of the services: the cheapest way through the
 * horizon, change by change, by dynamic programming.
 */
import type { Horizon } from './horizon.ts';
import { type Multipliers, reducedCost } from './relaxation.ts';

/** Which days a branch of the search holds. */
export interface Region {
  /** Speeds allowed before the first change and after each but the last, places in the list [-]. */
  readonly speeds: readonly (readonly number[])[];
  /** First slot at which each change may happen [slots], 0 or more. */
  readonly first: readonly number[];
  /** Last slot at which each change may happen [slots], 0 or more. */
  readonly last: readonly number[];
  /** Slots at which a change is looked at, rising, from 0 to all of them [slots], 0 or more. */
  readonly cuts: readonly number[];
}

/** A day as an order of speeds and the slots at which one gives way to the next. */
export interface Path {
  /** One more than changes; the last is the first again; places in the list [-], 0 or more. */
  readonly speeds: readonly number[];
  /** One for each change, rising [slots], 0 or more. */
  readonly times: readonly number[];
  /** Price [scale], any number. */
  readonly price: number;
  /** Volume [slots at the greatest flow], then slots in which each need's flow and window are right; 0 or more. */
  readonly gives: readonly number[];
}

/** The cheapest day that starts at a speed, services counted at their multipliers. */
export interface Start {
  /** Place of the speed [-], 0 or more. */
  readonly speed: number;
  /** Price less the multipliers of what it gives [scale], any number. */
  readonly net: number;
  readonly path: () => Path;
}

/** The class at each slot a cut begins. */
function kindsOf(horizon: Horizon, cuts: readonly number[]): readonly number[] {
  let place = 0;
  return cuts.slice(0, -1).map((cut) => {
    while ((horizon.intervals[place + 1]?.start ?? Number.POSITIVE_INFINITY) <= cut) place += 1;
    return horizon.intervals[place]?.kind ?? 0;
  });
}

/**
 * What a day of these speeds and times costs and gives.
 *
 * @internal
 */
export function pathOf(
  horizon: Horizon,
  speeds: readonly number[],
  times: readonly number[],
): Path {
  const gives = new Array<number>(horizon.needs.length + 1).fill(0);
  let price = 0;
  let place = 0;
  for (const [layer, speed] of speeds.entries()) {
    let from = layer === 0 ? 0 : (times[layer - 1] ?? 0);
    const to = times[layer] ?? horizon.slots;
    const { flow = 0, serves = 0 } = horizon.speeds[speed] ?? {};
    while (from < to) {
      let interval = horizon.intervals[place];
      while (interval !== undefined && interval.start + interval.slots <= from) {
        place += 1;
        interval = horizon.intervals[place];
      }
      if (interval === undefined) break;
      const slots = Math.min(to, interval.start + interval.slots) - from;
      price += ((horizon.cost[interval.kind]?.[speed] ?? 0) / horizon.scale) * slots;
      gives[0] = (gives[0] ?? 0) + flow * slots;
      const bits = serves & (horizon.classes[interval.kind]?.open ?? 0);
      for (let need = 0; need < horizon.needs.length; need += 1)
        if (bits & (1 << need)) gives[need + 1] = (gives[need + 1] ?? 0) + slots;
      from += slots;
    }
  }
  return { speeds, times, price, gives };
}

/** Net price of every class at every speed; one that is not allowed costs without end. */
function netPrices(horizon: Horizon, multipliers: Multipliers): readonly Float64Array[] {
  return horizon.classes.map(({ speeds }, kind) => {
    const nets = new Float64Array(horizon.speeds.length).fill(Number.POSITIVE_INFINITY);
    for (const speed of speeds) nets[speed] = reducedCost(horizon, multipliers, kind, speed);
    return nets;
  });
}

/**
 * For each first speed of a region the cheapest day in it at these multipliers. With prices linear in
 * time a change is best at a cut, so looking at the cuts alone leaves out nothing.
 *
 * @internal
 */
export function cheapestStarts(
  horizon: Horizon,
  region: Region,
  multipliers: Multipliers,
  starts: readonly number[],
): readonly Start[] {
  const nets = netPrices(horizon, multipliers);
  const slots = region.cuts.map((cut, place) => (region.cuts[place + 1] ?? cut) - cut);
  const prices = kindsOf(horizon, region.cuts).map((kind) => nets[kind] as Float64Array);
  const walk = new Walk(horizon, region, slots, prices);
  return starts.map((speed) => walk.from(speed));
}

/** Where the cheapest way through the middle of the day changed its speed. */
interface Trail {
  /** 1 where a layer was entered at a speed, by cut, layer and speed. */
  readonly entered: Uint8Array;
  /** The speed a layer was entered from, by cut and layer. */
  readonly sources: Int16Array;
}

/**
 * The day ends with the speed it begins with, so what lies between its first change and its last is
 * worked out once for all first speeds.
 */
class Walk {
  readonly #horizon: Horizon;
  readonly #region: Region;
  readonly #slots: readonly number[];
  readonly #prices: readonly Float64Array[];
  readonly #changes: number;
  readonly #size: number;
  /** Least net price from each cut with the first change to each with the last. */
  readonly #middle: readonly Float64Array[];

  constructor(
    horizon: Horizon,
    region: Region,
    slots: readonly number[],
    prices: readonly Float64Array[],
  ) {
    this.#horizon = horizon;
    this.#region = region;
    this.#slots = slots;
    this.#prices = prices;
    this.#changes = region.first.length;
    this.#size = horizon.speeds.length;
    this.#middle = region.cuts.map((_, cut) =>
      this.#changes > 0 && this.#mayChange(0, cut) ? this.#middleFrom(cut) : new Float64Array(0),
    );
  }

  from(start: number): Start {
    const { cuts } = this.#region;
    const before = new Float64Array(cuts.length);
    const after = new Float64Array(cuts.length);
    const last = cuts.length - 1;
    for (let cut = 0; cut < last; cut += 1)
      before[cut + 1] = (before[cut] as number) + this.#netOf(cut, start);
    for (let cut = last - 1; cut >= 0; cut -= 1)
      after[cut] = (after[cut + 1] as number) + this.#netOf(cut, start);
    if (this.#changes === 0)
      return {
        speed: start,
        net: before[last] as number,
        path: () => pathOf(this.#horizon, [start], []),
      };
    let net = Number.POSITIVE_INFINITY;
    let best = { first: 0, last: 0 };
    for (const [first, way] of this.#middle.entries())
      for (let end = first; end < way.length; end += 1) {
        const value = (before[first] as number) + (way[end] as number) + (after[end] as number);
        if (value < net) {
          net = value;
          best = { first, last: end };
        }
      }
    return { speed: start, net, path: () => this.#trace(start, best) };
  }

  #netOf(cut: number, speed: number): number {
    return (this.#slots[cut] as number) * (this.#prices[cut]?.[speed] as number);
  }

  #mayChange(change: number, cut: number): boolean {
    const { cuts, first, last } = this.#region;
    const at = cuts[cut] as number;
    return at >= (first[change] as number) && at <= (last[change] as number);
  }

  /** Least net price from the first change at a cut to the last change at each later one. */
  #middleFrom(begin: number, trail?: Trail): Float64Array {
    const { cuts, speeds } = this.#region;
    const [layers, size] = [this.#changes, this.#size];
    const exits = new Float64Array(cuts.length).fill(Number.POSITIVE_INFINITY);
    if (layers === 1) {
      exits[begin] = 0;
      return exits;
    }
    const cost = new Float64Array(layers * size).fill(Number.POSITIVE_INFINITY);
    for (const speed of speeds[1] ?? []) {
      cost[size + speed] = 0;
      if (trail) trail.entered[(begin * layers + 1) * size + speed] = 1;
    }
    for (let cut = begin; cut < cuts.length; cut += 1) {
      for (let layer = 2; layer <= layers; layer += 1) {
        if (!this.#mayChange(layer - 1, cut)) continue;
        const earlier = (layer - 1) * size;
        let source = -1;
        let least = Number.POSITIVE_INFINITY;
        for (const speed of speeds[layer - 1] as readonly number[]) {
          const value = cost[earlier + speed] as number;
          if (value < least) {
            least = value;
            source = speed;
          }
        }
        if (trail) trail.sources[cut * (layers + 1) + layer] = source;
        if (layer === layers) exits[cut] = least;
        else
          for (const speed of speeds[layer] as readonly number[])
            if (least < (cost[layer * size + speed] as number)) {
              cost[layer * size + speed] = least;
              if (trail) trail.entered[(cut * layers + layer) * size + speed] = 1;
            }
      }
      if (cut === cuts.length - 1) break;
      const slots = this.#slots[cut] as number;
      const net = this.#prices[cut] as Float64Array;
      for (let layer = 1; layer < layers; layer += 1)
        for (const speed of speeds[layer] as readonly number[])
          cost[layer * size + speed] =
            (cost[layer * size + speed] as number) + slots * (net[speed] as number);
    }
    return exits;
  }

  /** The day that begins at a speed and has its first and last change at these cuts. */
  #trace(start: number, ends: { readonly first: number; readonly last: number }): Path {
    const { cuts } = this.#region;
    const [layers, size] = [this.#changes, this.#size];
    const trail: Trail = {
      entered: new Uint8Array(cuts.length * layers * size),
      sources: new Int16Array(cuts.length * (layers + 1)).fill(-1),
    };
    this.#middleFrom(ends.first, trail);
    const speeds = [start];
    const times = [cuts[ends.last] as number];
    let layer = layers - 1;
    let speed = layers > 1 ? (trail.sources[ends.last * (layers + 1) + layers] as number) : start;
    speeds.unshift(speed);
    for (let cut = ends.last; cut >= ends.first && layer > 0; cut -= 1)
      while (layer > 0 && trail.entered[(cut * layers + layer) * size + speed] === 1) {
        times.unshift(cuts[cut] as number);
        speed = layer > 1 ? (trail.sources[cut * (layers + 1) + layer] as number) : start;
        speeds.unshift(speed);
        layer -= 1;
      }
    return pathOf(this.#horizon, speeds, times);
  }
}
