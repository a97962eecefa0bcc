/**
 * Whole minutes out of the sharing: round, make good what is missing, trade single minutes between
 * speeds, and where that leaves too wide a gap, branch and bound on the few speeds still in question.
 */
import { type Coefficients, type Constraint, solve } from 'yalps';
import type { Ring } from './ring.ts';
import { netPrice, type Share, type Sharing } from './shares.ts';
import { type Move, nearestTally, repair, type Tally } from './tally.ts';

/** Whole slots, and how near they are to the best there can be. */
export interface WholeSlots {
  readonly tally: Tally;
  /** No day in whole slots costs less than this [scale]. */
  readonly bound: number;
}

/**
 * How far a price lies above a bound.
 *
 * Law: (price - bound)/price.
 * @param price The price [currency], any finite number.
 * @param bound What no price undercuts [currency], any finite number.
 * @returns The gap as a share of the price [-], 0 or more; of the greater of the two where either is near 0.
 * @throws nothing.
 * Accuracy: exact.
 * Source: definition of the relative gap.
 * @example gapBetween(1, 0.9) // 0.1000
 */
export function gapBetween(price: number, bound: number): number {
  if (price <= bound) return 0;
  return (price - bound) / Math.max(Math.abs(price), Math.abs(bound), 1e-12);
}

/** Trades slots one pair of speeds at a time, while that saves. */
function tradeSingly(tally: Tally, keep: (kind: number, to: number) => boolean): void {
  for (let step = 0; step < 200; step += 1) {
    let best: { move: Move; slots: number } | undefined;
    let saved = 1e-12;
    for (const move of tally.moves(keep)) {
      if (move.price >= 0) continue;
      const slots = tally.room(move);
      if (-move.price * slots > saved) {
        best = { move, slots };
        saved = -move.price * slots;
      }
    }
    if (best === undefined) return;
    tally.apply(best.move, best.slots);
  }
}

/** Trades that pay only together: one that gives room for another. */
function tradeInPairs(tally: Tally, keep: (kind: number, to: number) => boolean): boolean {
  const moves = tally.moves(keep).toSorted((one, other) => one.price - other.price);
  if (moves.length > 400) moves.length = 400;
  let best: { first: Move; slots: number; second: Move; more: number } | undefined;
  let saved = 1e-12;
  for (const first of moves) {
    if (first.volume <= 0 && first.gains === 0) continue;
    const most = Math.min(4, tally.count(first.kind, first.from));
    for (let slots = 1; slots <= most; slots += 1) {
      if (breaks(tally, first, slots)) break;
      tally.apply(first, slots);
      for (const second of moves) {
        if (second.price >= 0) break;
        const more = tally.room(second);
        const gain = -(first.price * slots + second.price * more);
        if (gain > saved) {
          best = { first, slots, second, more };
          saved = gain;
        }
      }
      tally.apply(first, -slots);
    }
  }
  if (best === undefined) return false;
  tally.apply(best.first, best.slots);
  tally.apply(best.second, best.more);
  return true;
}

function breaks(tally: Tally, move: Move, slots: number): boolean {
  if (tally.volumeOver + move.volume * slots < -tally.slack) return true;
  let bits = move.loses;
  for (let place = 0; bits !== 0; place += 1, bits >>= 1)
    if (bits & 1 && (tally.over[place] ?? 0) < slots) return true;
  return false;
}

/** Rounds, repairs and trades; null where the repair finds no way. */
function wholeFrom(
  ring: Ring,
  sharing: Pick<Sharing, 'shares' | 'worth' | 'bound'>,
  near: number,
): Tally | null {
  const tally = nearestTally(ring, sharing.shares);
  if (!repair(tally)) return null;
  const excess = excessOf(ring, sharing);
  // A slot at a speed that costs more than the whole gap can be part of no better day.
  const keep = (kind: number, to: number) =>
    (excess[kind]?.[to] ?? 0) <= tally.price - sharing.bound + 1e-9;
  tradeSingly(tally, keep);
  for (let step = 0; step < 12 && gapBetween(tally.price, sharing.bound) > near; step += 1) {
    if (!tradeInPairs(tally, keep)) break;
    tradeSingly(tally, keep);
  }
  return tally;
}

/** How much more each speed of a class costs than the cheapest, service counted at its worth [scale]. */
function excessOf(ring: Ring, { worth }: Pick<Sharing, 'worth'>): readonly Float64Array[] {
  return ring.classes.map(({ speeds }, kind) => {
    const nets = new Float64Array(ring.speeds.length).fill(Number.POSITIVE_INFINITY);
    let least = Number.POSITIVE_INFINITY;
    for (const speed of speeds) {
      const net = netPrice(ring, worth, kind, speed);
      nets[speed] = net;
      least = Math.min(least, net);
    }
    return nets.map((net) => net - least);
  });
}

/**
 * To the minute, so many nodes are searched for the gap wanted, then the rest for a wider one; then
 * the day at hand stands with whatever gap is proven. What is left by then is a minute more or less
 * at one speed, which the bound shares out and whole minutes cannot: more nodes hardly close it.
 */
const patience = 40;
const patientGap = 9.8e-4;
const mostPatient = 320;

interface Column {
  readonly name: string;
  readonly kind: number;
  readonly speed: number;
  readonly row: readonly [string, number][];
}

interface Node {
  readonly bound: number;
  readonly shares: readonly Share[];
  readonly ends: ReadonlyMap<string, Constraint>;
}

/** The columns that a better day could still use. */
function columnsOf(ring: Ring, sharing: Sharing, room: number): readonly Column[] {
  const excess = excessOf(ring, sharing);
  return ring.classes.flatMap(({ speeds, open }, kind) =>
    speeds.flatMap((speed): readonly Column[] => {
      const { flow = 0, serves = 0 } = ring.speeds[speed] ?? {};
      if ((excess[kind]?.[speed] ?? 0) > room) return [];
      const name = `${kind} ${speed}`;
      const row: [string, number][] = [
        ['price', (ring.cost[kind]?.[speed] ?? 0) / ring.scale],
        [`class ${kind}`, 1],
        ['volume', flow],
        [name, 1],
      ];
      for (let place = 0; place < ring.needs.length; place += 1)
        if (serves & open & (1 << place)) row.push([`need ${place}`, 1]);
      return [{ name, kind, speed, row }];
    }),
  );
}

function solveNode(
  ring: Ring,
  columns: readonly Column[],
  ends: ReadonlyMap<string, Constraint>,
): Omit<Node, 'ends'> | null {
  const constraints: [string, Constraint][] = [
    ...ring.classes.map(({ slots }, kind): [string, Constraint] => [
      `class ${kind}`,
      { equal: slots },
    ]),
    ...ring.needs.map(({ slots }, place): [string, Constraint] => [
      `need ${place}`,
      { min: slots },
    ]),
    ...ends,
  ];
  if (ring.volume > 0) constraints.push(['volume', { min: ring.volume }]);
  const variables = columns.map((column): [Column, Coefficients] => [column, column.row]);
  const found = solve({
    direction: 'minimize' as const,
    objective: 'price',
    constraints,
    variables,
  });
  if (found.status === 'infeasible') return null;
  // Whatever else the solver could not settle keeps the bound of its parent.
  if (found.status !== 'optimal') return { bound: Number.NEGATIVE_INFINITY, shares: [] };
  const shares = found.variables.map(([{ kind, speed }, slots]) => ({ kind, speed, slots }));
  return { bound: found.result, shares };
}

function mostBroken(shares: readonly Share[]): Share | undefined {
  const broken = ({ slots }: Share) => Math.abs(slots - Math.round(slots));
  const worst = shares.reduce<Share | undefined>(
    (held, share) => (held === undefined || broken(share) > broken(held) ? share : held),
    undefined,
  );
  return worst !== undefined && broken(worst) > 1e-6 ? worst : undefined;
}

/** Branch and bound in whole slots, best bound first, until the gap is closed or the nodes are spent. */
function branch(
  ring: Ring,
  sharing: Sharing,
  start: Tally | null,
  wanted: number,
  nodes: number,
): WholeSlots | null {
  let best = start;
  const room = best === null ? Number.POSITIVE_INFINITY : best.price - sharing.bound + 1e-9;
  const columns = columnsOf(ring, sharing, room);
  const root = solveNode(ring, columns, new Map());
  const open: Node[] = root === null ? [] : [{ ...root, ends: new Map() }];
  // The least of what is settled unseen: nodes within half the wanted gap, and whole ones.
  let leftOut = Number.POSITIVE_INFINITY;
  for (let step = 0; step < nodes && open.length > 0; step += 1) {
    open.sort((one, other) => other.bound - one.bound);
    const node = open.pop() as Node;
    const isLate = ring.minutes === 1 && step >= patience;
    const enough = isLate ? Math.max(wanted, patientGap) : wanted;
    const isSpent = ring.minutes === 1 && step >= mostPatient;
    if (best !== null && (isSpent || gapBetween(best.price, node.bound) <= enough))
      return { tally: best, bound: Math.min(node.bound, leftOut, best.price) };
    const found = wholeFrom(ring, { ...sharing, shares: node.shares }, wanted);
    if (found !== null && (best === null || found.price < best.price)) best = found;
    const broken = mostBroken(node.shares);
    if (broken === undefined) {
      leftOut = Math.min(leftOut, node.bound);
      continue;
    }
    const name = `${broken.kind} ${broken.speed}`;
    const held = node.ends.get(name) ?? {};
    const low = Math.floor(broken.slots + 1e-9);
    for (const end of [
      { ...held, max: low },
      { ...held, min: low + 1 },
    ]) {
      const ends = new Map(node.ends).set(name, end);
      const child = solveNode(ring, columns, ends);
      if (child === null) continue;
      if (best !== null && gapBetween(best.price, child.bound) <= wanted / 2) {
        leftOut = Math.min(leftOut, child.bound);
        continue;
      }
      open.push({ ...child, bound: Math.max(child.bound, node.bound), ends });
    }
  }
  if (best === null) return null;
  const left = Math.min(leftOut, ...open.map((node) => node.bound));
  return { tally: best, bound: Math.max(sharing.bound, Math.min(left, best.price)) };
}

/**
 * The cheapest day in whole slots, to a gap wanted; null where none keeps every need. Before it
 * branches it tries another sharing that is as cheap, where there is one.
 *
 * @internal
 */
export function wholeSlots(
  ring: Ring,
  sharing: Sharing,
  wanted: number,
  nodes: number,
  other: () => Sharing | null = () => null,
): WholeSlots | null {
  const first = wholeFrom(ring, sharing, wanted / 2);
  if (first !== null && gapBetween(first.price, sharing.bound) <= wanted)
    return { tally: first, bound: sharing.bound };
  const second = other();
  const again = second === null ? null : wholeFrom(ring, second, wanted / 2);
  if (again !== null && gapBetween(again.price, sharing.bound) <= wanted)
    return { tally: again, bound: sharing.bound };
  const better = again !== null && (first === null || again.price < first.price) ? again : first;
  return branch(ring, second ?? sharing, better, wanted, nodes);
}
