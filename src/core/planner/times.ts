/**
 * The best times for a given order of speeds: a small linear programme while each change stays in
 * its interval of the day, then whole slots, then a look whether a change is better in the next interval.
 */
import { type Coefficients, type Constraint, solve } from 'yalps';
import { type Horizon, volumeSlack } from './horizon.ts';
import type { Path } from './paths.ts';
import { costOf, overOf, type Segment } from './timeline.ts';

/** An order of speeds with the interval that each change lies in. */
interface Order {
  readonly speeds: readonly number[];
  readonly places: readonly number[];
}

/** A length as a fixed part and so many times of each change, all counted from the start of its interval. */
interface Length {
  readonly fixed: number;
  readonly of: readonly (readonly [number, number])[];
}

interface Piece {
  readonly speed: number;
  readonly kind: number;
  readonly length: Length;
}

/** The intervals cut at the changes. */
function piecesOf(horizon: Horizon, { speeds, places }: Order): readonly Piece[] {
  const pieces: Piece[] = [];
  let change = 0;
  for (const [place, { kind, slots }] of horizon.intervals.entries()) {
    let before = -1;
    for (; change < places.length && places[change] === place; change += 1) {
      const of: [number, number][] =
        before < 0
          ? [[change, 1]]
          : [
              [change, 1],
              [before, -1],
            ];
      pieces.push({ speed: speeds[change] ?? 0, kind, length: { fixed: 0, of } });
      before = change;
    }
    const of: [number, number][] = before < 0 ? [] : [[before, -1]];
    pieces.push({ speed: speeds[change] ?? 0, kind, length: { fixed: slots, of } });
  }
  return pieces;
}

/** The runs of pieces in which a need's flow and window are right, around the horizon. */
function runsOf(
  horizon: Horizon,
  pieces: readonly Piece[],
  need: number,
): readonly (readonly Piece[])[] {
  const serves = ({ speed, kind }: Piece) =>
    (((horizon.speeds[speed]?.serves ?? 0) & (horizon.classes[kind]?.open ?? 0)) >> need) & 1;
  const gap = pieces.findIndex((piece) => !serves(piece));
  if (gap < 0) return [pieces];
  const runs: Piece[][] = [[]];
  for (const piece of [...pieces.slice(gap + 1), ...pieces.slice(0, gap + 1)])
    if (serves(piece)) runs.at(-1)?.push(piece);
    else if ((runs.at(-1)?.length ?? 0) > 0) runs.push([]);
  return runs.filter(({ length }) => length > 0);
}

function total(pieces: readonly Piece[], weight: (piece: Piece) => number = () => 1): Length {
  const of = new Map<number, number>();
  let fixed = 0;
  for (const piece of pieces) {
    const by = weight(piece);
    fixed += by * piece.length.fixed;
    for (const [change, times] of piece.length.of)
      of.set(change, (of.get(change) ?? 0) + by * times);
  }
  return { fixed, of: [...of] };
}

class Programme {
  readonly #rows: [string, Constraint][] = [];
  readonly #columns: [string, number][][];

  constructor(changes: number) {
    this.#columns = Array.from({ length: changes }, () => []);
  }

  #add(name: string, { of }: Length): void {
    for (const [change, times] of of) if (times !== 0) this.#columns[change]?.push([name, times]);
  }

  least(length: Length, least: number): void {
    const name = `row ${this.#rows.length}`;
    this.#rows.push([name, { min: least - length.fixed }]);
    this.#add(name, length);
  }

  most(length: Length, most: number): void {
    const name = `row ${this.#rows.length}`;
    this.#rows.push([name, { max: most - length.fixed }]);
    this.#add(name, length);
  }

  cheapest(price: Length): { readonly at: readonly number[]; readonly price: number } | null {
    this.#add('price', price);
    const variables = this.#columns.map((row, change): [number, Coefficients] => [change, row]);
    const found = solve({
      direction: 'minimize' as const,
      objective: 'price',
      constraints: this.#rows,
      variables,
    });
    if (found.status !== 'optimal') return null;
    const at = variables.map(() => 0);
    for (const [change, value] of found.variables) at[change] = value;
    return { at, price: price.fixed + found.result };
  }
}

/** Runs that are to count, from the longest down: all of them, then one fewer, down to one. */
const mostDropped = 3;

interface Timed {
  /** When each change happens [slots], not yet whole. */
  readonly at: readonly number[];
  readonly price: number;
}

function timesFor(horizon: Horizon, order: Order): Timed | null {
  const pieces = piecesOf(horizon, order);
  const price = total(
    pieces,
    ({ speed, kind }) => (horizon.cost[kind]?.[speed] ?? 0) / horizon.scale,
  );
  let best: Timed | null = null;
  for (let dropped = 0; dropped < mostDropped; dropped += 1) {
    const programme = new Programme(order.places.length);
    for (const [change, place] of order.places.entries())
      programme.most({ fixed: 0, of: [[change, 1]] }, horizon.intervals[place]?.slots ?? 0);
    for (const piece of pieces) {
      const allowed = horizon.classes[piece.kind]?.speeds.includes(piece.speed);
      if (!allowed) programme.most(piece.length, 0);
      else if (piece.length.of.length > 1) programme.least(piece.length, 0);
    }
    if (horizon.volume > 0)
      programme.least(
        total(pieces, ({ speed }) => horizon.speeds[speed]?.flow ?? 0),
        horizon.volume,
      );
    let canDrop = false;
    for (const [place, { slots, run }] of horizon.needs.entries()) {
      const runs = runsOf(horizon, pieces, place);
      if (run <= 1) programme.least(total(runs.flat()), slots);
      else {
        const longest = runs.toSorted((one, other) => total(other).fixed - total(one).fixed);
        const kept = longest.slice(0, Math.max(1, runs.length - dropped));
        canDrop ||= kept.length > 1;
        for (const each of kept) programme.least(total(each), run);
        programme.least(total(kept.flat()), slots);
      }
    }
    const found = programme.cheapest(price);
    if (found !== null && (best === null || found.price < best.price)) {
      const at = found.at.map(
        (value, change) => (horizon.intervals[order.places[change] ?? 0]?.start ?? 0) + value,
      );
      best = { at, price: found.price };
    }
    if (!canDrop) break;
  }
  return best;
}

/** A day in whole slots that keeps everything. */
export interface TimedDay {
  readonly segments: readonly Segment[];
  /** Price [scale]. */
  readonly price: number;
}

function legsOf(
  horizon: Horizon,
  speeds: readonly number[],
  times: readonly number[],
): readonly Segment[] {
  return speeds.map((speed, layer) => ({
    speed,
    slots: (times[layer] ?? horizon.slots) - (layer === 0 ? 0 : (times[layer - 1] ?? 0)),
  }));
}

/** Price of a day in whole slots, or no end where it breaks something [scale]. */
function judged(horizon: Horizon, speeds: readonly number[], times: readonly number[]): number {
  const segments = legsOf(horizon, speeds, times);
  if (
    segments.some(({ slots }) => slots < 0 || !Number.isInteger(slots)) ||
    !isAllowed(horizon, segments)
  )
    return Number.POSITIVE_INFINITY;
  const [volume = 0, ...needs] = overOf(horizon, segments);
  if (volume < -volumeSlack * horizon.volume - 1e-12 || needs.some((over) => over < 0))
    return Number.POSITIVE_INFINITY;
  return costOf(horizon, segments) / horizon.scale;
}

/**
 * Whether every speed of a timeline is allowed wherever it runs.
 *
 * @internal
 */
export function isAllowed(horizon: Horizon, segments: readonly Segment[]): boolean {
  let from = 0;
  return segments.every(({ speed, slots }) => {
    const to = from + slots;
    const crossed = horizon.intervals.filter(
      (each) => each.start < to && each.start + each.slots > from,
    );
    from = to;
    return crossed.every(({ kind }) => horizon.classes[kind]?.speeds.includes(speed));
  });
}

/** Whole slots around times that are not whole: both ways for each, then single steps. */
function wholeTimes(
  horizon: Horizon,
  speeds: readonly number[],
  at: readonly number[],
): TimedDay | null {
  const loose = at.flatMap((time, change) =>
    Math.abs(time - Math.round(time)) > 1e-6 ? [change] : [],
  );
  const near = at.map((time) => Math.round(time));
  const tried = Math.min(loose.length, 6);
  let best = near;
  let least = Number.POSITIVE_INFINITY;
  const consider = (times: readonly number[]) => {
    const price = judged(horizon, speeds, times);
    if (price >= least - 1e-12) return false;
    least = price;
    best = [...times];
    return true;
  };
  for (let choice = 0; choice < 2 ** tried; choice += 1) {
    const times = [...near];
    for (let place = 0; place < tried; place += 1) {
      const change = loose[place] as number;
      times[change] = Math.floor(at[change] as number) + ((choice >> place) & 1);
    }
    consider(times);
  }
  for (let round = 0; round < 8; round += 1) {
    let better = false;
    const base = [...best];
    for (const change of base.keys())
      for (const step of [-1, 1])
        better =
          consider(base.map((time, place) => (place === change ? time + step : time))) || better;
    if (!better) break;
  }
  if (!Number.isFinite(least)) return null;
  return { segments: legsOf(horizon, speeds, best), price: least };
}

function placeOf(horizon: Horizon, time: number): number {
  const found = horizon.intervals.findIndex(({ start, slots }) => time < start + slots);
  return found < 0 ? horizon.intervals.length - 1 : found;
}

/**
 * The best day near a path: the same order of speeds, its changes moved while that saves.
 *
 * @internal
 */
export function bestTimes(
  horizon: Horizon,
  { speeds, times }: Pick<Path, 'speeds' | 'times'>,
): TimedDay | null {
  let order: Order = { speeds, places: times.map((time) => placeOf(horizon, time)) };
  let found = timesFor(horizon, order);
  for (let step = 0; step < 12; step += 1) {
    const moved: { order: Order; found: Timed } | undefined = neighboursOf(horizon, order, found)
      .map((next) => ({ order: next, found: timesFor(horizon, next) }))
      .filter((each): each is { order: Order; found: Timed } => each.found !== null)
      .toSorted((one, other) => one.found.price - other.found.price)[0];
    if (moved === undefined) break;
    if (found !== null && moved.found.price >= found.price - 1e-9) break;
    ({ order, found } = moved);
  }
  // Times that are whole as they come may be the only ones that will do.
  const asGiven = judged(horizon, speeds, times);
  const moved = found === null ? null : wholeTimes(horizon, speeds, found.at);
  if (moved !== null && moved.price <= asGiven) return moved;
  return Number.isFinite(asGiven)
    ? { segments: legsOf(horizon, speeds, times), price: asGiven }
    : null;
}

/** Orders with one change in the next interval, where it already lies at the end of its own. */
function neighboursOf(horizon: Horizon, order: Order, found: Timed | null): readonly Order[] {
  return order.places.flatMap((place, change) => {
    const { start = 0, slots = 0 } = horizon.intervals[place] ?? {};
    const at = found?.at[change];
    const steps = [-1, 1].filter((step) => {
      const next = place + step;
      if (next < 0 || next >= horizon.intervals.length) return false;
      const [before, after] = [order.places[change - 1] ?? 0, order.places[change + 1] ?? next];
      if (next < before || next > after) return false;
      return at === undefined || Math.abs(at - (step < 0 ? start : start + slots)) < 1e-6;
    });
    return steps.map((step) => ({
      ...order,
      places: order.places.map((each, index) => (index === change ? place + step : each)),
    }));
  });
}
