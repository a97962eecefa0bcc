/**
 * How each class of alike minutes is shared among the speeds at least cost: the linear relaxation of
 * the day. Its proof is a multiplier (dual value) for each service, and a bound that no day undercuts.
 */
import { type Coefficients, type Constraint, solve } from 'yalps';
import type { Horizon } from './horizon.ts';

/** Lagrange multipliers: the dual value of one slot of service, volume first, then each need; all 0 or more. */
export type Multipliers = readonly number[];

/** So many slots of a class at a speed; the rest of a class is at standstill where that is allowed. */
export interface Share {
  /** Place of the class [-], 0 or more. */
  readonly kind: number;
  /** Place of the speed [-], 0 or more. */
  readonly speed: number;
  /** How many slots, whole or not [slots], 0 or more. */
  readonly slots: number;
}

/** A solution of the relaxation, slots whole or not, and what proves it. */
export interface Relaxation {
  readonly shares: readonly Share[];
  /** Worth of volume [scale/slot at the greatest flow] and needs [scale/slot]. */
  readonly multipliers: Multipliers;
  /** No day costs less than this [scale], any number. */
  readonly bound: number;
}

/** Least reduced cost of a class at given multipliers, of one slot. */
interface Answer {
  readonly speed: number;
  readonly net: number;
}

/** How far above the least net price a speed may lie and still count as equal [scale]. */
const level = 1e-9;
/** A multiplier this high means that no price buys the service [scale/slot]. */
const beyondPrice = 1e7;
const mostRounds = 60;

/**
 * Reduced cost of a slot: its price less the dual value of the service it gives [scale].
 *
 * @internal
 */
export function reducedCost(
  horizon: Horizon,
  multipliers: Multipliers,
  kind: number,
  speed: number,
): number {
  const { flow, serves } = horizon.speeds[speed] ?? { flow: 0, serves: 0 };
  let net = (horizon.cost[kind]?.[speed] ?? 0) / horizon.scale - (multipliers[0] ?? 0) * flow;
  let bits = serves & (horizon.classes[kind]?.open ?? 0);
  for (let place = 1; bits !== 0; place += 1, bits >>= 1)
    if (bits & 1) net -= multipliers[place] ?? 0;
  return net;
}

function answers(horizon: Horizon, multipliers: Multipliers): readonly Answer[] {
  return horizon.classes.map(({ speeds }, kind) => {
    let best: Answer = { speed: -1, net: Number.POSITIVE_INFINITY };
    for (const speed of speeds) {
      const net = reducedCost(horizon, multipliers, kind, speed);
      if (net < best.net) best = { speed, net };
    }
    return best;
  });
}

/**
 * Dual value of all that is asked for [scale].
 *
 * @internal
 */
export function dualOfDemand(horizon: Horizon, multipliers: Multipliers): number {
  return horizon.needs.reduce(
    (sum, { slots }, place) => sum + (multipliers[place + 1] ?? 0) * slots,
    (multipliers[0] ?? 0) * horizon.volume,
  );
}

/** Weak duality: asked at its multiplier, plus each class at its least net price, is never above any day. */
function boundAt(horizon: Horizon, multipliers: Multipliers, found: readonly Answer[]): number {
  return found.reduce(
    (sum, { net }, kind) => sum + (horizon.classes[kind]?.slots ?? 0) * net,
    dualOfDemand(horizon, multipliers),
  );
}

/** Speeds to begin with: of each set of needs served, the ends and a few between. */
function firstSpeeds(horizon: Horizon, kind: number): readonly number[] {
  const { speeds = [], open = 0 } = horizon.classes[kind] ?? {};
  const groups = new Map<number, number[]>();
  for (const speed of speeds) {
    const served = (horizon.speeds[speed]?.serves ?? 0) & open;
    const group = groups.get(served);
    if (group) group.push(speed);
    else groups.set(served, [speed]);
  }
  return [...groups.values()].flatMap((group) => {
    const every = Math.max(1, Math.ceil(group.length / 4));
    return group.filter((_, place) => place % every === 0 || place === group.length - 1);
  });
}

type Row = [string, number];

/** The multiplier of every service, with speeds brought in as they turn out cheaper. */
function findWorth(horizon: Horizon): { multipliers: Multipliers; bound: number } {
  const least = answers(horizon, []).map(({ net }) => net);
  const floor = least.reduce(
    (sum, net, kind) => sum + net * (horizon.classes[kind]?.slots ?? 0),
    0,
  );
  const asked = [horizon.volume, ...horizon.needs.map(({ slots }) => slots)];
  const services: Row[][] = asked.map((slots, place) => [
    ['multipliers', slots],
    [`top ${place}`, 1],
  ]);
  const classes: Row[][] = horizon.classes.map(({ slots }) => [['multipliers', -slots]]);
  const constraints = new Map<string, Constraint>(
    asked.map((_, place) => [`top ${place}`, { max: beyondPrice }]),
  );
  const bringIn = (kind: number, speed: number) => {
    const name = `${kind} ${speed}`;
    if (constraints.has(name)) return false;
    const { flow, serves } = horizon.speeds[speed] ?? { flow: 0, serves: 0 };
    const price = (horizon.cost[kind]?.[speed] ?? 0) / horizon.scale;
    constraints.set(name, { max: price - (least[kind] ?? 0) });
    if (flow > 0) services[0]?.push([name, flow]);
    const bits = serves & (horizon.classes[kind]?.open ?? 0);
    for (let place = 0; place < horizon.needs.length; place += 1)
      if (bits & (1 << place)) services[place + 1]?.push([name, 1]);
    classes[kind]?.push([name, -1]);
    return true;
  };
  for (const kind of horizon.classes.keys())
    for (const speed of firstSpeeds(horizon, kind)) bringIn(kind, speed);

  let best = { multipliers: asked.map(() => 0) as Multipliers, bound: floor };
  for (let round = 0; round < mostRounds; round += 1) {
    const variables = [
      ...services.map((row, place): [number, Coefficients] => [place, row]),
      ...classes.map((row, kind): [number, Coefficients] => [asked.length + kind, row]),
    ];
    const { status, variables: values } = solve({
      direction: 'maximize' as const,
      objective: 'multipliers',
      constraints,
      variables,
    });
    if (status !== 'optimal') break;
    const multipliers = asked.map(() => 0);
    const drop = horizon.classes.map(() => 0);
    for (const [place, value] of values)
      if (place < asked.length) multipliers[place] = Math.max(0, value);
      else drop[place - asked.length] = value;
    const found = answers(horizon, multipliers);
    const bound = boundAt(horizon, multipliers, found);
    if (bound > best.bound) best = { multipliers, bound };
    let cheaper = false;
    for (const [kind, { speed, net }] of found.entries())
      if (net < (least[kind] ?? 0) - (drop[kind] ?? 0) - level && speed >= 0)
        cheaper = bringIn(kind, speed) || cheaper;
    if (!cheaper) break;
  }
  return best;
}

/** A small price that settles which of several equally cheap solutions is taken [scale]. */
export type Preference = (kind: number, speed: number) => number;

/** Shares among the speeds that cost no more than a margin above the least at this multipliers. */
function sharesAt(
  horizon: Horizon,
  multipliers: Multipliers,
  margin: number,
  prefer: Preference,
): readonly Share[] | null {
  const constraints: [string, Constraint][] = horizon.classes.map(({ speeds, slots }, kind) => {
    const mayRest = horizon.speeds[speeds[0] ?? -1]?.row === null;
    return [`class ${kind}`, mayRest ? { max: slots } : { equal: slots }];
  });
  if (horizon.volume > 0) constraints.push(['service 0', { min: horizon.volume }]);
  for (const [place, { slots }] of horizon.needs.entries())
    constraints.push([`service ${place + 1}`, { min: slots }]);
  const least = answers(horizon, multipliers);
  const variables: [Share, Coefficients][] = [];
  for (const [kind, { speeds, open }] of horizon.classes.entries())
    for (const speed of speeds) {
      const { row, flow, serves } = horizon.speeds[speed] ?? { row: null, flow: 0, serves: 0 };
      const net = reducedCost(horizon, multipliers, kind, speed);
      if (row === null || net > (least[kind]?.net ?? 0) + margin) continue;
      const price = (horizon.cost[kind]?.[speed] ?? 0) / horizon.scale + prefer(kind, speed);
      const column: Row[] = [
        ['price', price],
        [`class ${kind}`, 1],
        ['service 0', flow],
      ];
      for (let place = 0; place < horizon.needs.length; place += 1)
        if (serves & open & (1 << place)) column.push([`service ${place + 1}`, 1]);
      variables.push([{ kind, speed, slots: 0 }, column]);
    }
  const found = solve({
    direction: 'minimize' as const,
    objective: 'price',
    constraints,
    variables,
  });
  if (found.status !== 'optimal') return null;
  return found.variables.map(([share, slots]) => ({ ...share, slots }));
}

/**
 * Solves the relaxation; null where no share of the classes gives all that is asked for.
 *
 * @internal
 */
export function solveRelaxation(horizon: Horizon, prefer: Preference = () => 0): Relaxation | null {
  if (horizon.classes.some(({ speeds }) => speeds.length === 0)) return null;
  const { multipliers, bound } = findWorth(horizon);
  if (multipliers.some((each) => each >= beyondPrice / 2)) return null;
  return relaxationAt(horizon, multipliers, bound, prefer);
}

/**
 * Another solution of the relaxation that known multipliers prove cheapest, by another preference.
 *
 * @internal
 */
export function relaxationAt(
  horizon: Horizon,
  multipliers: Multipliers,
  bound: number,
  prefer: Preference,
): Relaxation | null {
  // The solver works to 1e-8; where its multipliers are off by a little, more speeds are let in.
  let best: readonly Share[] | null = null;
  for (const margin of [1e-8, 1e-5, 1e-2, Number.POSITIVE_INFINITY]) {
    best = sharesAt(horizon, multipliers, margin, prefer) ?? best;
    if (best !== null && priceOf(horizon, best) <= bound + 1e-6 * Math.max(1, Math.abs(bound)))
      break;
  }
  return best === null ? null : { shares: best, multipliers, bound };
}

function priceOf(horizon: Horizon, shares: readonly Share[]): number {
  return shares.reduce(
    (sum, { kind, speed, slots }) =>
      sum + ((horizon.cost[kind]?.[speed] ?? 0) / horizon.scale) * slots,
    0,
  );
}
