/**
 * Whole minutes out of the relaxation: round, make good what is missing, trade single minutes between
 * speeds, and where that leaves too wide a gap, branch and bound on the few speeds still in question.
 */
import { type Coefficients, type Constraint, solve } from 'yalps';
import type { Horizon } from './horizon.ts';
import { type IntegerMinutes, type Move, nearestIntegerMinutes, repair } from './integerMinutes.ts';
import { type Relaxation, reducedCost, type Share } from './relaxation.ts';

/** Whole slots, and how near they are to the best there can be. */
export interface WholeSlots {
  readonly integerMinutes: IntegerMinutes;
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
function tradeSingly(
  integerMinutes: IntegerMinutes,
  keep: (kind: number, to: number) => boolean,
): void {
  for (let step = 0; step < 200; step += 1) {
    let best: { move: Move; slots: number } | undefined;
    let saved = 1e-12;
    for (const move of integerMinutes.moves(keep)) {
      if (move.price >= 0) continue;
      const slots = integerMinutes.room(move);
      if (-move.price * slots > saved) {
        best = { move, slots };
        saved = -move.price * slots;
      }
    }
    if (best === undefined) return;
    integerMinutes.apply(best.move, best.slots);
  }
}

/** Trades that pay only together: one that gives room for another. */
function tradeInPairs(
  integerMinutes: IntegerMinutes,
  keep: (kind: number, to: number) => boolean,
): boolean {
  const moves = integerMinutes.moves(keep).toSorted((one, other) => one.price - other.price);
  if (moves.length > 400) moves.length = 400;
  let best: { first: Move; slots: number; second: Move; more: number } | undefined;
  let saved = 1e-12;
  for (const first of moves) {
    if (first.volume <= 0 && first.gains === 0) continue;
    const most = Math.min(4, integerMinutes.count(first.kind, first.from));
    for (let slots = 1; slots <= most; slots += 1) {
      if (breaks(integerMinutes, first, slots)) break;
      integerMinutes.apply(first, slots);
      for (const second of moves) {
        if (second.price >= 0) break;
        const more = integerMinutes.room(second);
        const gain = -(first.price * slots + second.price * more);
        if (gain > saved) {
          best = { first, slots, second, more };
          saved = gain;
        }
      }
      integerMinutes.apply(first, -slots);
    }
  }
  if (best === undefined) return false;
  integerMinutes.apply(best.first, best.slots);
  integerMinutes.apply(best.second, best.more);
  return true;
}

function breaks(integerMinutes: IntegerMinutes, move: Move, slots: number): boolean {
  if (integerMinutes.volumeOver + move.volume * slots < -integerMinutes.slack) return true;
  let bits = move.loses;
  for (let place = 0; bits !== 0; place += 1, bits >>= 1)
    if (bits & 1 && (integerMinutes.over[place] ?? 0) < slots) return true;
  return false;
}

/** Rounds, repairs and trades; null where the repair finds no way. */
function wholeFrom(
  horizon: Horizon,
  relaxation: Pick<Relaxation, 'shares' | 'multipliers' | 'bound'>,
  near: number,
): IntegerMinutes | null {
  const integerMinutes = nearestIntegerMinutes(horizon, relaxation.shares);
  if (!repair(integerMinutes)) return null;
  const excess = excessOf(horizon, relaxation);
  // A slot at a speed that costs more than the whole gap can be part of no better day.
  const keep = (kind: number, to: number) =>
    (excess[kind]?.[to] ?? 0) <= integerMinutes.price - relaxation.bound + 1e-9;
  tradeSingly(integerMinutes, keep);
  for (
    let step = 0;
    step < 12 && gapBetween(integerMinutes.price, relaxation.bound) > near;
    step += 1
  ) {
    if (!tradeInPairs(integerMinutes, keep)) break;
    tradeSingly(integerMinutes, keep);
  }
  return integerMinutes;
}

/** How much more each speed of a class costs than the cheapest, service counted at its multiplier [scale]. */
function excessOf(
  horizon: Horizon,
  { multipliers }: Pick<Relaxation, 'multipliers'>,
): readonly Float64Array[] {
  return horizon.classes.map(({ speeds }, kind) => {
    const nets = new Float64Array(horizon.speeds.length).fill(Number.POSITIVE_INFINITY);
    let least = Number.POSITIVE_INFINITY;
    for (const speed of speeds) {
      const net = reducedCost(horizon, multipliers, kind, speed);
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
function columnsOf(horizon: Horizon, relaxation: Relaxation, room: number): readonly Column[] {
  const excess = excessOf(horizon, relaxation);
  return horizon.classes.flatMap(({ speeds, open }, kind) =>
    speeds.flatMap((speed): readonly Column[] => {
      const { flow = 0, serves = 0 } = horizon.speeds[speed] ?? {};
      if ((excess[kind]?.[speed] ?? 0) > room) return [];
      const name = `${kind} ${speed}`;
      const row: [string, number][] = [
        ['price', (horizon.cost[kind]?.[speed] ?? 0) / horizon.scale],
        [`class ${kind}`, 1],
        ['volume', flow],
        [name, 1],
      ];
      for (let place = 0; place < horizon.needs.length; place += 1)
        if (serves & open & (1 << place)) row.push([`need ${place}`, 1]);
      return [{ name, kind, speed, row }];
    }),
  );
}

function solveNode(
  horizon: Horizon,
  columns: readonly Column[],
  ends: ReadonlyMap<string, Constraint>,
): Omit<Node, 'ends'> | null {
  const constraints: [string, Constraint][] = [
    ...horizon.classes.map(({ slots }, kind): [string, Constraint] => [
      `class ${kind}`,
      { equal: slots },
    ]),
    ...horizon.needs.map(({ slots }, place): [string, Constraint] => [
      `need ${place}`,
      { min: slots },
    ]),
    ...ends,
  ];
  if (horizon.volume > 0) constraints.push(['volume', { min: horizon.volume }]);
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
  horizon: Horizon,
  relaxation: Relaxation,
  start: IntegerMinutes | null,
  wanted: number,
  nodes: number,
): WholeSlots | null {
  let best = start;
  const room = best === null ? Number.POSITIVE_INFINITY : best.price - relaxation.bound + 1e-9;
  const columns = columnsOf(horizon, relaxation, room);
  const root = solveNode(horizon, columns, new Map());
  const open: Node[] = root === null ? [] : [{ ...root, ends: new Map() }];
  // The least of what is settled unseen: nodes within half the wanted gap, and whole ones.
  let leftOut = Number.POSITIVE_INFINITY;
  for (let step = 0; step < nodes && open.length > 0; step += 1) {
    open.sort((one, other) => other.bound - one.bound);
    const node = open.pop() as Node;
    const isLate = horizon.minutes === 1 && step >= patience;
    const enough = isLate ? Math.max(wanted, patientGap) : wanted;
    const isSpent = horizon.minutes === 1 && step >= mostPatient;
    if (best !== null && (isSpent || gapBetween(best.price, node.bound) <= enough))
      return { integerMinutes: best, bound: Math.min(node.bound, leftOut, best.price) };
    const found = wholeFrom(horizon, { ...relaxation, shares: node.shares }, wanted);
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
      const child = solveNode(horizon, columns, ends);
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
  return { integerMinutes: best, bound: Math.max(relaxation.bound, Math.min(left, best.price)) };
}

/**
 * The cheapest day in whole slots, to a gap wanted; null where none keeps every need. Before it
 * branches it tries another solution of the relaxation that is as cheap, where there is one.
 *
 * @internal
 */
export function wholeSlots(
  horizon: Horizon,
  relaxation: Relaxation,
  wanted: number,
  nodes: number,
  other: () => Relaxation | null = () => null,
): WholeSlots | null {
  const first = wholeFrom(horizon, relaxation, wanted / 2);
  if (first !== null && gapBetween(first.price, relaxation.bound) <= wanted)
    return { integerMinutes: first, bound: relaxation.bound };
  const second = other();
  const again = second === null ? null : wholeFrom(horizon, second, wanted / 2);
  if (again !== null && gapBetween(again.price, relaxation.bound) <= wanted)
    return { integerMinutes: again, bound: relaxation.bound };
  const better = again !== null && (first === null || again.price < first.price) ? again : first;
  return branch(horizon, second ?? relaxation, better, wanted, nodes);
}
