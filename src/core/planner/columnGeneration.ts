/**
 * The multiplier of each service within a region of days, by the cheapest days at one set of multipliers after the
 * other, and the mixture of days that could not be undercut: what a branch is cut on.
 */
import { type Coefficients, type Constraint, solve } from 'yalps';
import type { Horizon } from './horizon.ts';
import { cheapestStarts, type Path, type Region } from './paths.ts';
import { dualOfDemand, type Multipliers } from './relaxation.ts';

/** What is found out about a region. */
export interface MasterSolution {
  /** No day of the region costs less [scale]; no end when it holds none. */
  readonly bound: number;
  readonly multipliers: Multipliers;
  /** First speeds that a better day could still have, places in the list [-]. */
  readonly starts: readonly number[];
  /** Days with their weights, which sum to 1; empty when the region is settled. */
  readonly parts: readonly { readonly path: Path; readonly weight: number }[];
}

const beyondPrice = 1e7;
const mostRounds = 40;
/** Days that a region hands on to its halves. */
const mostPooled = 150;

/** The best multipliers for the days seen so far, and what they then prove at most. */
function bestWorth(
  horizon: Horizon,
  paths: readonly Path[],
): { multipliers: Multipliers; limit: number } | null {
  const asked = [horizon.volume, ...horizon.needs.map(({ slots }) => slots)];
  const least = Math.min(...paths.map(({ price }) => price));
  const constraints: [string, Constraint][] = [
    ...asked.map((_, place): [string, Constraint] => [`top ${place}`, { max: beyondPrice }]),
    ...paths.map(({ price }, place): [string, Constraint] => [
      `path ${place}`,
      { max: price - least },
    ]),
  ];
  const variables: [number, Coefficients][] = asked.map((slots, service) => [
    service,
    [
      ['multipliers', slots] as const,
      [`top ${service}`, 1] as const,
      ...paths.map(({ gives }, place) => [`path ${place}`, gives[service] ?? 0] as const),
    ],
  ]);
  variables.push([
    asked.length,
    [['multipliers', -1] as const, ...paths.map((_, place) => [`path ${place}`, -1] as const)],
  ]);
  const found = solve({
    direction: 'maximize' as const,
    objective: 'multipliers',
    constraints,
    variables,
  });
  if (found.status !== 'optimal') return null;
  const multipliers = asked.map(() => 0);
  for (const [place, value] of found.variables)
    if (place < asked.length) multipliers[place] = Math.max(0, value);
  return { multipliers, limit: least + found.result };
}

/** The mixture of the days seen that gives all that is asked for at the least price. */
function mixtureOf(horizon: Horizon, paths: readonly Path[]): MasterSolution['parts'] {
  const constraints: [string, Constraint][] = [
    ['weights', { equal: 1 }],
    ['0', { min: horizon.volume * (1 - 1e-9) }],
    ...horizon.needs.map(({ slots }, place): [string, Constraint] => [
      `${place + 1}`,
      { min: slots - 1e-7 },
    ]),
  ];
  const variables = paths.map((path): [Path, Coefficients] => [
    path,
    [
      ['price', path.price] as const,
      ['weights', 1] as const,
      ...path.gives.map((gives, place) => [`${place}`, gives] as const),
    ],
  ]);
  const found = solve({
    direction: 'minimize' as const,
    objective: 'price',
    constraints,
    variables,
  });
  if (found.status !== 'optimal') return [];
  return found.variables.map(([path, weight]) => ({ path, weight }));
}

function isIn({ speeds, first, last }: Region, path: Path): boolean {
  return (
    path.times.every((time, place) => time >= (first[place] ?? 0) && time <= (last[place] ?? 0)) &&
    speeds.every((allowed, place) => allowed.includes(path.speeds[place] ?? -1))
  );
}

/**
 * Bound and mixture of a region.
 *
 * @internal
 */
export function generateColumns(
  horizon: Horizon,
  region: Region,
  from: {
    readonly multipliers: Multipliers;
    readonly bound: number;
    readonly pool: readonly Path[];
  },
  ceiling: number,
): MasterSolution & { readonly pool: readonly Path[] } {
  const paths = from.pool.filter((path) => isIn(region, path));
  const bounds = new Map((region.speeds[0] ?? []).map((speed) => [speed, from.bound]));
  let multipliers = from.multipliers;
  let starts = [...bounds.keys()];
  const boundNow = () => Math.min(...starts.map((speed) => bounds.get(speed) ?? 0));
  let best = { multipliers, value: Number.NEGATIVE_INFINITY };
  for (let round = 0; round < mostRounds && starts.length > 0; round += 1) {
    const asked = dualOfDemand(horizon, multipliers);
    const found = cheapestStarts(horizon, region, multipliers, starts);
    for (const { speed, net } of found)
      bounds.set(speed, Math.max(bounds.get(speed) ?? 0, asked + net));
    starts = starts.filter((speed) => (bounds.get(speed) ?? 0) < ceiling);
    const left = found.filter(({ speed }) => starts.includes(speed));
    const value = asked + Math.min(...left.map(({ net }) => net));
    if (value > best.value) best = { multipliers, value };
    const cheapest = left.toSorted((one, other) => one.net - other.net).slice(0, 3);
    paths.push(...cheapest.filter(({ net }) => Number.isFinite(net)).map(({ path }) => path()));
    if (paths.length === 0)
      return { bound: Number.POSITIVE_INFINITY, multipliers, starts: [], parts: [], pool: [] };
    const next = bestWorth(horizon, paths);
    if (next === null) break;
    if (next.multipliers.some((each) => each >= beyondPrice / 2) && value > ceiling) break;
    if (next.limit - value <= 2e-5 * Math.max(1e-6, Math.abs(next.limit))) break;
    // Half way back to the best multipliers so far: the steps of the plain method overshoot.
    const pull = round % 3 === 2 ? 0 : 0.5;
    multipliers = next.multipliers.map(
      (each, place) => each + pull * ((best.multipliers[place] ?? 0) - each),
    );
  }
  if (starts.length === 0)
    return { bound: ceiling, multipliers: best.multipliers, starts, parts: [], pool: [] };
  const pool = nearest(paths, best.multipliers);
  const parts = mixtureOf(horizon, paths);
  return { bound: boundNow(), multipliers: best.multipliers, starts, parts, pool };
}

/** The days that cost least once what they give is counted at its multiplier. */
function nearest(paths: readonly Path[], multipliers: Multipliers): readonly Path[] {
  if (paths.length <= mostPooled) return paths;
  const netOf = ({ price, gives }: Path) =>
    gives.reduce((sum, each, place) => sum - each * (multipliers[place] ?? 0), price);
  return paths
    .map((path) => ({ path, net: netOf(path) }))
    .toSorted((one, other) => one.net - other.net)
    .slice(0, mostPooled)
    .map(({ path }) => path);
}
