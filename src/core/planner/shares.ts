/**
 * The cheapest sharing of each class of alike minutes among the speeds, as a linear programme, and
 * the proof of it: what the needs are worth, and from that a bound no day can undercut.
 */
import { type Coefficients, type Constraint, solve } from 'yalps';
import type { Ring } from './ring.ts';

/** What one slot of service is worth, volume first, then each need; all 0 or more. */
export type Worth = readonly number[];

/** So many slots of a class at a speed; the rest of a class is at standstill where that is allowed. */
export interface Share {
  /** Place of the class [-], 0 or more. */
  readonly kind: number;
  /** Place of the speed [-], 0 or more. */
  readonly speed: number;
  /** How many slots, whole or not [slots], 0 or more. */
  readonly slots: number;
}

/** The best sharing without whole slots, and what proves it. */
export interface Sharing {
  readonly shares: readonly Share[];
  /** Worth of volume [scale/slot at the greatest flow] and needs [scale/slot]. */
  readonly worth: Worth;
  /** No day costs less than this [scale], any number. */
  readonly bound: number;
}

/** Least price of a class at a worth: of one slot, less what its service is worth. */
interface Answer {
  readonly speed: number;
  readonly net: number;
}

/** How far above the least net price a speed may lie and still count as equal [scale]. */
const level = 1e-9;
/** A worth this high means that no price buys the service [scale/slot]. */
const beyondPrice = 1e7;
const mostRounds = 60;

/**
 * Price of a slot less what its service is worth [scale].
 *
 * @internal
 */
export function netPrice(ring: Ring, worth: Worth, kind: number, speed: number): number {
  const { flow, serves } = ring.speeds[speed] ?? { flow: 0, serves: 0 };
  let net = (ring.cost[kind]?.[speed] ?? 0) / ring.scale - (worth[0] ?? 0) * flow;
  let bits = serves & (ring.classes[kind]?.open ?? 0);
  for (let place = 1; bits !== 0; place += 1, bits >>= 1) if (bits & 1) net -= worth[place] ?? 0;
  return net;
}

function answers(ring: Ring, worth: Worth): readonly Answer[] {
  return ring.classes.map(({ speeds }, kind) => {
    let best: Answer = { speed: -1, net: Number.POSITIVE_INFINITY };
    for (const speed of speeds) {
      const net = netPrice(ring, worth, kind, speed);
      if (net < best.net) best = { speed, net };
    }
    return best;
  });
}

/**
 * What all that is asked for is worth [scale].
 *
 * @internal
 */
export function worthAsked(ring: Ring, worth: Worth): number {
  return ring.needs.reduce(
    (sum, { slots }, place) => sum + (worth[place + 1] ?? 0) * slots,
    (worth[0] ?? 0) * ring.volume,
  );
}

/** Weak duality: asked at its worth, plus each class at its least net price, is never above any day. */
function boundAt(ring: Ring, worth: Worth, found: readonly Answer[]): number {
  return found.reduce(
    (sum, { net }, kind) => sum + (ring.classes[kind]?.slots ?? 0) * net,
    worthAsked(ring, worth),
  );
}

/** Speeds to begin with: of each set of needs served, the ends and a few between. */
function firstSpeeds(ring: Ring, kind: number): readonly number[] {
  const { speeds = [], open = 0 } = ring.classes[kind] ?? {};
  const groups = new Map<number, number[]>();
  for (const speed of speeds) {
    const served = (ring.speeds[speed]?.serves ?? 0) & open;
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

/** The worth of every service, with speeds brought in as they turn out cheaper. */
function findWorth(ring: Ring): { worth: Worth; bound: number } {
  const least = answers(ring, []).map(({ net }) => net);
  const floor = least.reduce((sum, net, kind) => sum + net * (ring.classes[kind]?.slots ?? 0), 0);
  const asked = [ring.volume, ...ring.needs.map(({ slots }) => slots)];
  const services: Row[][] = asked.map((slots, place) => [
    ['worth', slots],
    [`top ${place}`, 1],
  ]);
  const classes: Row[][] = ring.classes.map(({ slots }) => [['worth', -slots]]);
  const constraints = new Map<string, Constraint>(
    asked.map((_, place) => [`top ${place}`, { max: beyondPrice }]),
  );
  const bringIn = (kind: number, speed: number) => {
    const name = `${kind} ${speed}`;
    if (constraints.has(name)) return false;
    const { flow, serves } = ring.speeds[speed] ?? { flow: 0, serves: 0 };
    const price = (ring.cost[kind]?.[speed] ?? 0) / ring.scale;
    constraints.set(name, { max: price - (least[kind] ?? 0) });
    if (flow > 0) services[0]?.push([name, flow]);
    const bits = serves & (ring.classes[kind]?.open ?? 0);
    for (let place = 0; place < ring.needs.length; place += 1)
      if (bits & (1 << place)) services[place + 1]?.push([name, 1]);
    classes[kind]?.push([name, -1]);
    return true;
  };
  for (const kind of ring.classes.keys())
    for (const speed of firstSpeeds(ring, kind)) bringIn(kind, speed);

  let best = { worth: asked.map(() => 0) as Worth, bound: floor };
  for (let round = 0; round < mostRounds; round += 1) {
    const variables = [
      ...services.map((row, place): [number, Coefficients] => [place, row]),
      ...classes.map((row, kind): [number, Coefficients] => [asked.length + kind, row]),
    ];
    const { status, variables: values } = solve({
      direction: 'maximize' as const,
      objective: 'worth',
      constraints,
      variables,
    });
    if (status !== 'optimal') break;
    const worth = asked.map(() => 0);
    const drop = ring.classes.map(() => 0);
    for (const [place, value] of values)
      if (place < asked.length) worth[place] = Math.max(0, value);
      else drop[place - asked.length] = value;
    const found = answers(ring, worth);
    const bound = boundAt(ring, worth, found);
    if (bound > best.bound) best = { worth, bound };
    let cheaper = false;
    for (const [kind, { speed, net }] of found.entries())
      if (net < (least[kind] ?? 0) - (drop[kind] ?? 0) - level && speed >= 0)
        cheaper = bringIn(kind, speed) || cheaper;
    if (!cheaper) break;
  }
  return best;
}

/** A small price that settles which of several equally cheap sharings is taken [scale]. */
export type Preference = (kind: number, speed: number) => number;

/** Shares among the speeds that cost no more than a margin above the least at this worth. */
function sharesAt(
  ring: Ring,
  worth: Worth,
  margin: number,
  prefer: Preference,
): readonly Share[] | null {
  const constraints: [string, Constraint][] = ring.classes.map(({ speeds, slots }, kind) => {
    const mayRest = ring.speeds[speeds[0] ?? -1]?.row === null;
    return [`class ${kind}`, mayRest ? { max: slots } : { equal: slots }];
  });
  if (ring.volume > 0) constraints.push(['service 0', { min: ring.volume }]);
  for (const [place, { slots }] of ring.needs.entries())
    constraints.push([`service ${place + 1}`, { min: slots }]);
  const least = answers(ring, worth);
  const variables: [Share, Coefficients][] = [];
  for (const [kind, { speeds, open }] of ring.classes.entries())
    for (const speed of speeds) {
      const { row, flow, serves } = ring.speeds[speed] ?? { row: null, flow: 0, serves: 0 };
      const net = netPrice(ring, worth, kind, speed);
      if (row === null || net > (least[kind]?.net ?? 0) + margin) continue;
      const price = (ring.cost[kind]?.[speed] ?? 0) / ring.scale + prefer(kind, speed);
      const column: Row[] = [
        ['price', price],
        [`class ${kind}`, 1],
        ['service 0', flow],
      ];
      for (let place = 0; place < ring.needs.length; place += 1)
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
 * The cheapest sharing of the classes, or null where no sharing gives all that is asked for.
 *
 * @internal
 */
export function cheapestSharing(ring: Ring, prefer: Preference = () => 0): Sharing | null {
  if (ring.classes.some(({ speeds }) => speeds.length === 0)) return null;
  const { worth, bound } = findWorth(ring);
  if (worth.some((each) => each >= beyondPrice / 2)) return null;
  return sharingAt(ring, worth, bound, prefer);
}

/**
 * A sharing of the classes that a known worth proves cheapest, by another preference.
 *
 * @internal
 */
export function sharingAt(
  ring: Ring,
  worth: Worth,
  bound: number,
  prefer: Preference,
): Sharing | null {
  // The solver works to 1e-8; where its worth is off by a little, more speeds are let in.
  let best: readonly Share[] | null = null;
  for (const margin of [1e-8, 1e-5, 1e-2, Number.POSITIVE_INFINITY]) {
    best = sharesAt(ring, worth, margin, prefer) ?? best;
    if (best !== null && priceOf(ring, best) <= bound + 1e-6 * Math.max(1, Math.abs(bound))) break;
  }
  return best === null ? null : { shares: best, worth, bound };
}

function priceOf(ring: Ring, shares: readonly Share[]): number {
  return shares.reduce(
    (sum, { kind, speed, slots }) => sum + ((ring.cost[kind]?.[speed] ?? 0) / ring.scale) * slots,
    0,
  );
}
