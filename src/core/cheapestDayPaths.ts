/**
 * Days with so many changes, found for given worths of the services: the cheapest way through the
 * ring, change by change, by dynamic programming.
 */
import type { Ring } from './cheapestDayRing.ts';
import { netPrice, type Worth } from './cheapestDayShares.ts';

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

/** The cheapest day that starts at a speed, services counted at their worth. */
export interface Start {
  /** Place of the speed [-], 0 or more. */
  readonly speed: number;
  /** Price less the worth of what it gives [scale], any number. */
  readonly net: number;
  readonly path: () => Path;
}

/** The class at each slot a cut begins. */
function kindsOf(ring: Ring, cuts: readonly number[]): readonly number[] {
  let place = 0;
  return cuts.slice(0, -1).map((cut) => {
    while ((ring.stretches[place + 1]?.start ?? Number.POSITIVE_INFINITY) <= cut) place += 1;
    return ring.stretches[place]?.kind ?? 0;
  });
}

/**
 * What a day of these speeds and times costs and gives.
 *
 * @internal
 */
export function pathOf(ring: Ring, speeds: readonly number[], times: readonly number[]): Path {
  const gives = new Array<number>(ring.needs.length + 1).fill(0);
  let price = 0;
  let place = 0;
  for (const [layer, speed] of speeds.entries()) {
    let from = layer === 0 ? 0 : (times[layer - 1] ?? 0);
    const to = times[layer] ?? ring.slots;
    const { flow = 0, serves = 0 } = ring.speeds[speed] ?? {};
    while (from < to) {
      let stretch = ring.stretches[place];
      while (stretch !== undefined && stretch.start + stretch.slots <= from) {
        place += 1;
        stretch = ring.stretches[place];
      }
      if (stretch === undefined) break;
      const slots = Math.min(to, stretch.start + stretch.slots) - from;
      price += ((ring.cost[stretch.kind]?.[speed] ?? 0) / ring.scale) * slots;
      gives[0] = (gives[0] ?? 0) + flow * slots;
      const bits = serves & (ring.classes[stretch.kind]?.open ?? 0);
      for (let need = 0; need < ring.needs.length; need += 1)
        if (bits & (1 << need)) gives[need + 1] = (gives[need + 1] ?? 0) + slots;
      from += slots;
    }
  }
  return { speeds, times, price, gives };
}

/** Net price of every class at every speed; one that is not allowed costs without end. */
function netPrices(ring: Ring, worth: Worth): readonly Float64Array[] {
  return ring.classes.map(({ speeds }, kind) => {
    const nets = new Float64Array(ring.speeds.length).fill(Number.POSITIVE_INFINITY);
    for (const speed of speeds) nets[speed] = netPrice(ring, worth, kind, speed);
    return nets;
  });
}

/**
 * For each first speed of a region the cheapest day in it at these worths. With prices linear in
 * time a change is best at a cut, so looking at the cuts alone leaves out nothing.
 *
 * @internal
 */
export function cheapestStarts(
  ring: Ring,
  region: Region,
  worth: Worth,
  starts: readonly number[],
): readonly Start[] {
  const nets = netPrices(ring, worth);
  const kinds = kindsOf(ring, region.cuts);
  const walk = new Walk(ring, region, nets, kinds);
  return starts.map((speed) => walk.from(speed));
}

class Walk {
  readonly #ring: Ring;
  readonly #region: Region;
  readonly #nets: readonly Float64Array[];
  readonly #kinds: readonly number[];
  readonly #layers: number;
  readonly #size: number;

  constructor(ring: Ring, region: Region, nets: readonly Float64Array[], kinds: readonly number[]) {
    this.#ring = ring;
    this.#region = region;
    this.#nets = nets;
    this.#kinds = kinds;
    this.#layers = region.first.length;
    this.#size = ring.speeds.length;
  }

  from(start: number): Start {
    const [layers, size] = [this.#layers, this.#size];
    const { cuts, speeds, first, last } = this.#region;
    const cost = new Float64Array((layers + 1) * size).fill(Number.POSITIVE_INFINITY);
    cost[start] = 0;
    const changed = new Uint8Array(cuts.length * (layers + 1) * size);
    const sources = new Int16Array(cuts.length * (layers + 1)).fill(-1);
    const ends = [start];
    const allowed = (layer: number) => (layer === layers ? ends : (speeds[layer] ?? ends));
    for (let cut = 0; cut < cuts.length; cut += 1) {
      const at = cuts[cut] as number;
      for (let layer = 1; layer <= layers; layer += 1) {
        if (at < (first[layer - 1] as number) || at > (last[layer - 1] as number)) continue;
        const before = (layer - 1) * size;
        let source = -1;
        let least = Number.POSITIVE_INFINITY;
        const earlier = layer === 1 ? ends : (speeds[layer - 1] as readonly number[]);
        for (const speed of earlier) {
          const value = cost[before + speed] as number;
          if (value < least) {
            least = value;
            source = speed;
          }
        }
        if (source < 0) continue;
        sources[cut * (layers + 1) + layer] = source;
        const here = layer * size;
        const marks = (cut * (layers + 1) + layer) * size;
        for (const speed of allowed(layer))
          if (least < (cost[here + speed] as number)) {
            cost[here + speed] = least;
            changed[marks + speed] = 1;
          }
      }
      if (cut === cuts.length - 1) break;
      const slots = (cuts[cut + 1] as number) - at;
      const net = this.#nets[this.#kinds[cut] as number] as Float64Array;
      cost[start] = (cost[start] as number) + slots * (net[start] as number);
      for (let layer = 1; layer <= layers; layer += 1) {
        const here = layer * size;
        for (const speed of allowed(layer))
          cost[here + speed] = (cost[here + speed] as number) + slots * (net[speed] as number);
      }
    }
    const net = cost[layers * size + start] as number;
    return { speed: start, net, path: () => this.#trace(start, changed, sources) };
  }

  #trace(start: number, changed: Uint8Array, sources: Int16Array): Path {
    const [layers, size] = [this.#layers, this.#size];
    const { cuts } = this.#region;
    const speeds = [start];
    const times: number[] = [];
    let layer = layers;
    let speed = start;
    for (let cut = cuts.length - 1; cut >= 0 && layer > 0; cut -= 1)
      while (layer > 0 && changed[(cut * (layers + 1) + layer) * size + speed] === 1) {
        speed = sources[cut * (layers + 1) + layer] as number;
        times.unshift(cuts[cut] as number);
        speeds.unshift(speed);
        layer -= 1;
      }
    return pathOf(this.#ring, speeds, times);
  }
}
