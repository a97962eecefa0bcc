/**
 * How much the pump may draw through its suction outlets: with the other lines shut and one cover
 * blocked, the covers that are left carry all of it.
 */

import { CoreError, requirePositive } from '#core/base/errors.ts';
import { branchFlows } from './circuit.ts';
import type { Circuit, CircuitPart } from './circuitParts.ts';

/** A cover over a suction outlet. */
export interface SuctionCover {
  /** Name of the cover, any text. */
  readonly id: string;
  /** Flow marked on the cover [m3/s], above 0. */
  readonly markedFlow: number;
  /** Branch of the suction side it stands at the end of; left out where its pipe is not known. */
  readonly branchId?: string | undefined;
}

/** The suction outlets of a pad. */
export interface SuctionOutlets {
  /** The circuit [see Circuit], its suction side. */
  readonly circuit: Circuit;
  /** The covers [see SuctionCover], any number. */
  readonly covers: readonly SuctionCover[];
  /** Whether covers on one line share it evenly: equal pipes, the tee midway, no valve between. */
  readonly balanced: boolean;
  /** Branches with a valve that can shut them, by id; none when left out. */
  readonly valved?: readonly string[] | undefined;
}

/** The flow that the suction outlets allow. */
export interface SuctionStop {
  /** The cover that binds. */
  readonly coverId: string;
  /** Greatest flow through the pump [m3/s], above 0. */
  readonly greatestFlow: number;
}

/** A relative step of flow below which the share of a cover has settled [-]. */
const settled = 1e-13;
/** A flow at which shares are looked at first [m3/s]. */
const firstFlow = 1e-3;
/** Beyond this no pool pump delivers [m3/s]. */
const beyondAnyPump = 10;

/**
 * The greatest flow through the pump that no suction cover need fear.
 *
 * Law: every line that a valve can shut is shut, lines without a cover among them, and each cover is blocked in turn; the flow divides among the covers left by their pipes, and the stop is the least over covers of mark / share. One cover alone carries all. On a balanced tee the covers left share evenly; where pipes are not known any one cover may carry all.
 * @param outlets Covers and their pipes [see SuctionOutlets], fields as there.
 * @returns The cover that binds and the greatest flow through the pump [m3/s]; undefined where there is no cover.
 * @throws CoreError when a mark is not above 0 or the circuit lacks a branch.
 * Accuracy: 1e-12 of the flow.
 * Source: ANSI/APSP/ICC-7 for the system with one cover blocked, 16 CFR 1450 and ANSI/APSP/ICC-16 for the mark (all from memory); the split by conservation of mass and energy.
 * @example suctionStop({ circuit: { suction: [], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, covers: [{ id: 'a', markedFlow: 0.004 }, { id: 'b', markedFlow: 0.005 }, { id: 'c', markedFlow: 0.005 }], balanced: true }).greatestFlow // 0.008000
 */
export function suctionStop(outlets: SuctionOutlets): SuctionStop | undefined {
  const { covers, balanced } = outlets;
  for (const { markedFlow } of covers) requirePositive('markedFlow', markedFlow, 'm3/s');
  const ways = waysOf(outlets.circuit.suction, []);
  for (const { branchId } of covers)
    if (branchId !== undefined && !ways.has(branchId))
      throw new CoreError('branchId', branchId, 'a branch of the suction side');
  const weakest = leastOf(
    covers.map(({ id, markedFlow }) => ({ coverId: id, greatestFlow: markedFlow })),
  );
  if (weakest === undefined || covers.length === 1) return weakest;
  if (covers.every(({ branchId }) => branchId === undefined) && balanced)
    return { ...weakest, greatestFlow: (covers.length - 1) * weakest.greatestFlow };
  if (covers.some(({ branchId }) => branchId === undefined)) return weakest;
  const blocking = covers.flatMap((cover) =>
    covers
      .filter((blocked) => blocked !== cover)
      .map((blocked) => stopWith(outlets, ways, cover, blocked)),
  );
  return leastOf(blocking);
}

function leastOf(stops: readonly SuctionStop[]): SuctionStop | undefined {
  return stops.reduce<SuctionStop | undefined>(
    (least, stop) => (least === undefined || stop.greatestFlow < least.greatestFlow ? stop : least),
    undefined,
  );
}

/** Every branch with the branches around it, outermost first, itself last. */
type Ways = ReadonlyMap<string, readonly string[]>;

function waysOf(parts: readonly CircuitPart[], around: readonly string[]): Ways {
  const ways = new Map<string, readonly string[]>();
  for (const part of parts) {
    if (part.kind !== 'parallel') continue;
    for (const branch of part.branches) {
      const way = [...around, branch.id];
      ways.set(branch.id, way);
      for (const [id, inner] of waysOf(branch.parts, way)) ways.set(id, inner);
    }
  }
  return ways;
}

/** The flow at which one cover comes to its mark while another is blocked. */
function stopWith(
  { circuit, covers, balanced, valved = [] }: SuctionOutlets,
  ways: Ways,
  cover: SuctionCover,
  blocked: SuctionCover,
): SuctionStop {
  const own = wayOf(ways, cover);
  const isShut = (other: SuctionCover) =>
    wayOf(ways, other).some((id) => valved.includes(id) && !own.includes(id));
  const open = covers.filter((other) => other !== blocked && (other === cover || !isShut(other)));
  const beside = open.filter(({ branchId }) => branchId === cover.branchId).length;
  const inLine = balanced ? 1 / beside : 1;
  const kept = new Set(open.flatMap((other) => wayOf(ways, other)));
  const left = { ...circuit, suction: keeping(circuit.suction, kept), discharge: [] };
  const throughCover = (flow: number) =>
    inLine * (branchFlows(left, flow).find((one) => one.branchId === cover.branchId)?.flow ?? 0);
  return { coverId: cover.id, greatestFlow: flowFor(throughCover, cover.markedFlow) };
}

function wayOf(ways: Ways, { branchId }: SuctionCover): readonly string[] {
  return ways.get(branchId ?? '') ?? [];
}

/** The parts with only the kept branches open, wherever a group holds any of them. */
function keeping(parts: readonly CircuitPart[], kept: ReadonlySet<string>): readonly CircuitPart[] {
  return parts.map((part) => {
    if (part.kind !== 'parallel') return part;
    const open = part.branches.filter(({ id }) => kept.has(id));
    const branches = (open.length === 0 ? part.branches : open).map((branch) => ({
      ...branch,
      parts: keeping(branch.parts, kept),
    }));
    return { ...part, branches };
  });
}

/** Flow through the pump at which a part of it comes to a mark; shares hardly move with flow, so mark over share settles fast. */
function flowFor(part: (flow: number) => number, mark: number): number {
  let flow = firstFlow;
  for (let step = 0; step < 60; step += 1) {
    const through = part(flow);
    const next = through > 0 ? Math.min(beyondAnyPump, (flow * mark) / through) : beyondAnyPump;
    if (Math.abs(next - flow) <= settled * flow) return next;
    flow = next;
  }
  return flow;
}
