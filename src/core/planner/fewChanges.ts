/**
 * The cheapest day with at most so many changes: branch and bound over the speeds between the
 * changes and the times of the changes. Each region's bound is the dual of its days (no mixture of
 * its days is cheaper); a region is cut in two until its days differ in nothing that matters.
 */

import { gapBetween } from './branchAndBound.ts';
import { generateColumns, type MasterSolution } from './columnGeneration.ts';
import type { Horizon } from './horizon.ts';
import type { Path, Region } from './paths.ts';
import type { Multipliers } from './relaxation.ts';
import { bestTimes, type TimedDay } from './times.ts';

/** How far a search has come. */
export interface SearchProgress {
  /** Price of the cheapest day so far [currency], or null while there is none. */
  readonly cost: number | null;
  /** No day costs less [currency]. */
  readonly bound: number;
  /** How far the one lies above the other, as a share of it [-]; 1 while there is no day. */
  readonly gap: number;
  /** Regions looked at [-]. */
  readonly regions: number;
}

/** What a search ends with. */
export interface Searched {
  readonly day: TimedDay | null;
  /** No day with so many changes costs less [scale]. */
  readonly bound: number;
  readonly multipliers: Multipliers;
}

/** After so many regions times changes a wider gap will do. */
const patience = 16_000;
const patientGap = 2e-3;

/** What a search starts from. */
export interface SearchStart {
  readonly horizon: Horizon;
  /** Changes allowed [-], 0 to 24. */
  readonly changes: number;
  readonly multipliers: Multipliers;
  /** A bound that holds for any number of changes [scale], any number. */
  readonly bound: number;
  /** A day known to keep everything, or null. */
  readonly day: TimedDay | null;
  /** Gap at which to stop [-], above 0. */
  readonly wanted: number;
  /** Regions to look at most [-], 1 or more. */
  readonly regions: number;
}

interface Open {
  readonly region: Region;
  readonly bound: number;
  /** How often it was cut. */
  readonly depth: number;
  readonly multipliers: Multipliers;
  readonly pool: readonly Path[];
}

function wholeRegion(horizon: Horizon, changes: number): Region {
  const starts = horizon.intervals.map(({ start }) => start);
  const all = [...horizon.speeds.keys()];
  return {
    speeds: Array.from({ length: Math.max(1, changes) }, () => all),
    first: Array.from({ length: changes }, () => 0),
    last: Array.from({ length: changes }, () => horizon.slots),
    cuts: [...starts, horizon.slots],
  };
}

/**
 * The bound of all days with at most so many changes, and the multipliers that prove it.
 *
 * @internal
 */
export function rootOf({
  horizon,
  changes,
  multipliers,
  bound,
}: Pick<SearchStart, 'horizon' | 'changes' | 'multipliers' | 'bound'>): {
  readonly multipliers: Multipliers;
  readonly bound: number;
} {
  const found = generateColumns(
    horizon,
    wholeRegion(horizon, changes),
    { multipliers, bound, pool: [] },
    horizon.slots + 1,
  );
  return { multipliers: found.multipliers, bound: Math.min(found.bound, horizon.slots + 1) };
}

/** The lower bound first; of equal ones the region cut most often, or they would all be looked at in turn. */
function isBefore(one: Open, other: Open): boolean {
  return one.bound === other.bound ? one.depth > other.depth : one.bound < other.bound;
}

/** The best regions first: a heap. */
class Heap {
  readonly #items: Open[] = [];

  get least(): number {
    return this.#items[0]?.bound ?? Number.POSITIVE_INFINITY;
  }

  push(item: Open): void {
    const items = this.#items;
    let place = items.push(item) - 1;
    while (place > 0) {
      const above = (place - 1) >> 1;
      if (!isBefore(item, items[above] as Open)) break;
      items[place] = items[above] as Open;
      place = above;
    }
    items[place] = item;
  }

  pop(): Open | undefined {
    const items = this.#items;
    const [top, item] = [items[0], items.pop()];
    if (items.length === 0 || item === undefined) return top;
    let place = 0;
    for (;;) {
      let below = 2 * place + 1;
      if (below >= items.length) break;
      const right = items[below + 1];
      if (right !== undefined && isBefore(right, items[below] as Open)) below += 1;
      if (!isBefore(items[below] as Open, item)) break;
      items[place] = items[below] as Open;
      place = below;
    }
    items[place] = item;
    return top;
  }
}

type Parts = MasterSolution['parts'];

function meanOf(parts: Parts, value: (path: Path) => number): number {
  return parts.reduce((sum, { path, weight }) => sum + weight * value(path), 0);
}

function spreadOf(parts: Parts, value: (path: Path) => number): number {
  const mean = meanOf(parts, value);
  return parts.reduce((sum, { path, weight }) => sum + weight * Math.abs(value(path) - mean), 0);
}

/** Two regions that between them hold all days of one: cut where the days of its mixture differ most. */
function halves(horizon: Horizon, region: Region, parts: Parts): readonly Region[] {
  let best: { score: number; cut: () => readonly Region[] } = { score: 1e-9, cut: () => [] };
  for (const layer of region.speeds.keys()) {
    const speedOf = (path: Path) => path.speeds[layer] ?? 0;
    const score = spreadOf(parts, speedOf) / horizon.speeds.length;
    if (score > best.score)
      best = { score, cut: () => cutSpeeds(region, layer, meanOf(parts, speedOf)) };
  }
  for (const change of region.first.keys()) {
    const timeOf = (path: Path) => path.times[change] ?? 0;
    const places = parts.map(({ path }) => region.cuts.indexOf(timeOf(path)));
    if (Math.max(...places) - Math.min(...places) < 2) continue;
    const score = spreadOf(parts, timeOf) / horizon.slots;
    if (score > best.score)
      best = { score, cut: () => cutTimes(region, change, meanOf(parts, timeOf)) };
  }
  const cut = best.cut();
  if (cut.length > 0) return cut;
  const slots = cutSlots(region, parts);
  return slots.length > 0 ? slots : cutInMiddle(region);
}

function cutSpeeds(region: Region, layer: number, mean: number): readonly Region[] {
  const sides = [(speed: number) => speed <= mean, (speed: number) => speed > mean];
  return sides.map((side) => ({
    ...region,
    speeds: region.speeds.map((speeds, place) => (place === layer ? speeds.filter(side) : speeds)),
  }));
}

function withTimes(region: Region, change: number, first: number, last: number): Region {
  const [from, to] = [region.first[change] ?? 0, region.last[change] ?? 0];
  return {
    ...region,
    first: region.first.map((each, place) =>
      place === change ? Math.max(from, first) : place > change ? Math.max(each, first) : each,
    ),
    last: region.last.map((each, place) =>
      place === change ? Math.min(to, last) : place < change ? Math.min(each, last) : each,
    ),
  };
}

/** At the cut nearest to the mean, which both halves keep. */
function cutTimes(region: Region, change: number, mean: number): readonly Region[] {
  const [from, to] = [region.first[change] ?? 0, region.last[change] ?? 0];
  const inside = region.cuts.filter((cut) => cut > from && cut < to);
  const nearest = inside.toSorted((a, b) => Math.abs(a - mean) - Math.abs(b - mean))[0];
  if (nearest === undefined) return [];
  return [withTimes(region, change, from, nearest), withTimes(region, change, nearest, to)];
}

/** All days of the mixture have one order; what is left is a change that wants part of a slot. */
function cutSlots(region: Region, parts: Parts): readonly Region[] {
  for (const change of region.first.keys()) {
    const mean = meanOf(parts, (path) => path.times[change] ?? 0);
    const low = Math.floor(mean + 1e-6);
    if (Math.abs(mean - Math.round(mean)) < 1e-6) continue;
    return cutBetween(region, change, low, region.last[change] ?? 0);
  }
  return [];
}

/** Nothing says where to cut: the longest list of speeds, or else the widest time of a change, in its middle. */
function cutInMiddle(region: Region): readonly Region[] {
  const sizes = region.speeds.map(({ length }) => length);
  const layer = sizes.indexOf(Math.max(...sizes));
  const speeds = region.speeds[layer] ?? [];
  if (speeds.length > 1)
    return cutSpeeds(region, layer, speeds[Math.ceil(speeds.length / 2) - 1] ?? 0);
  const widths = region.first.map((first, place) => (region.last[place] ?? 0) - first);
  const change = widths.indexOf(Math.max(...widths));
  if ((widths[change] ?? 0) < 1) return [];
  const [from, to] = [region.first[change] ?? 0, region.last[change] ?? 0];
  const middle = Math.floor((from + to) / 2);
  return cutBetween(region, change, middle, to);
}

function cutBetween(region: Region, change: number, low: number, last: number): readonly Region[] {
  const cuts = [...new Set([...region.cuts, low, low + 1])].sort((a, b) => a - b);
  const finer = { ...region, cuts };
  return [withTimes(finer, change, 0, low), withTimes(finer, change, low + 1, last)];
}

/** Days worth a try in whole slots: the mixture's mean, and its heaviest parts. */
function candidates(parts: Parts): readonly Pick<Path, 'speeds' | 'times'>[] {
  const heavy = parts.toSorted((one, other) => other.weight - one.weight);
  const [top] = heavy;
  if (top === undefined) return [];
  const alike = heavy.filter(({ path }) => path.speeds.join() === top.path.speeds.join());
  const weight = alike.reduce((sum, each) => sum + each.weight, 0);
  const times = top.path.times.map(
    (_, change) => meanOf(alike, (path) => path.times[change] ?? 0) / weight,
  );
  return [{ speeds: top.path.speeds, times }, ...heavy.slice(0, 2).map(({ path }) => path)];
}

/**
 * Looks for the cheapest day with at most so many changes, telling its progress after each region.
 *
 * @internal
 */
export function* searchDay(start: SearchStart): Generator<SearchProgress, Searched> {
  const { horizon, wanted } = start;
  const open = new Heap();
  let day = start.day;
  // No day costs more than this, so a region that proves more holds none.
  const never = horizon.slots + 1;
  const ceiling = () =>
    day === null ? never : day.price - Math.max(wanted * Math.abs(day.price), 1e-9);
  let settled = Number.POSITIVE_INFINITY;
  let multipliers = start.multipliers;
  const tried = new Set<string>();
  open.push({
    region: wholeRegion(horizon, start.changes),
    bound: start.bound,
    depth: 0,
    multipliers: start.multipliers,
    pool: [],
  });
  for (let regions = 1; regions <= start.regions; regions += 1) {
    // What is left late is mostly one minute that blocks could share: sliding them shows no end of it.
    if (day !== null && horizon.minutes === 1 && regions * start.changes > patience) {
      const left = Math.min(settled, open.least, ceiling());
      if (gapBetween(day.price, left) <= patientGap) break;
    }
    const next = open.pop();
    if (next === undefined || next.bound >= ceiling()) {
      if (next !== undefined) settled = Math.min(settled, next.bound);
      break;
    }
    const found = generateColumns(horizon, next.region, next, ceiling());
    if (regions === 1) multipliers = found.multipliers;
    for (const each of candidates(found.parts)) {
      const key = `${each.speeds.join()} ${each.times.map((time) => Math.round(time)).join()}`;
      if (tried.has(key)) continue;
      tried.add(key);
      const timed = bestTimes(horizon, each);
      if (timed !== null && (day === null || timed.price < day.price)) day = timed;
    }
    if (found.bound >= ceiling()) {
      if (found.bound < never) settled = Math.min(settled, found.bound);
    } else {
      const region = { ...next.region, speeds: [found.starts, ...next.region.speeds.slice(1)] };
      const parts = halves(horizon, region, found.parts);
      for (const half of parts)
        if (half.speeds.every(({ length }) => length > 0))
          open.push({
            region: half,
            bound: found.bound,
            depth: next.depth + 1,
            multipliers: found.multipliers,
            pool: found.pool,
          });
      if (parts.length === 0) settled = Math.min(settled, found.bound);
    }
    // What was left out unseen was left out for lying above the ceiling.
    const bound = Math.min(settled, open.least, ceiling());
    yield {
      cost: day === null ? null : day.price * horizon.scale,
      bound: bound * horizon.scale,
      gap: day === null ? 1 : gapBetween(day.price, bound),
      regions,
    };
  }
  const bound = Math.min(settled, open.least, day === null ? Number.POSITIVE_INFINITY : ceiling());
  return { day, bound: Math.max(start.bound, bound), multipliers };
}
