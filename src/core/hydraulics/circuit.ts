/**
 * The circuit the water meets: suction, pump, discharge, and back to the pool.
 */

import { requireBetween } from '#core/base/errors.ts';
import type { Water } from '#core/water/water.ts';
import type {
  Branch,
  Circuit,
  CircuitPart,
  EquipmentPart,
  FittingPart,
  PipePart,
} from './circuitParts.ts';
import { compileCircuit } from './compiledCircuit.ts';
import { compiledHead, splitFlow } from './compiledHead.ts';
import { equipmentHead } from './equipment.ts';
import { minorLoss } from './fittings.ts';
import { darcyWeisbach } from './friction.ts';
import { meanVelocity } from './pipe.ts';

export type CircuitSide = 'suction' | 'discharge';

/** What one part takes of the head. */
export interface HeadShare {
  /** The part's name; 'static' for the lift. */
  readonly id: string;
  readonly side: CircuitSide;
  /** Names of the groups and branches around the part, outermost first. */
  readonly path: readonly string[];
  /** Head [m], 0 or more. */
  readonly head: number;
  /** Flow through this part [m3/s], 0 or more. */
  readonly flow: number;
  /** Mean velocity [m/s], where the part has a bore. */
  readonly velocity?: number;
  /** Inside diameter [m], where the part has one. */
  readonly bore?: number;
}

/** How much flow goes through one branch. */
export interface BranchFlow {
  readonly parallelId: string;
  readonly branchId: string;
  /** Flow [m3/s], 0 or more. */
  readonly flow: number;
}

const greatestFlow = 10;

function requireFlow(flow: number): number {
  return requireBetween('flow', flow, 0, greatestFlow, 'm3/s');
}

/**
 * Head that the circuit takes at a flow.
 *
 * Law: H = z + sum of friction (Darcy–Weisbach), fittings (K V^2/2g) and equipment; branches side by side share one head.
 * @param circuit The circuit [see Circuit], fields as there.
 * @param flow Flow [m3/s], 0 to 10.
 * @returns Head [m], the static head or more.
 * @throws CoreError when the flow or a part's field is out of range.
 * Accuracy: 1e-8 of the reference cases; branches to 1e-12.
 * Source: Darcy–Weisbach; Crane TP-410 (2009), chapter 2.
 * @example systemHead({ suction: [], discharge: [{ kind: 'equipment', id: 'filter', referenceHead: 4, referenceFlow: 0.004, exponent: 2, factor: 1 }], staticHead: 1, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 0.002) // 2.000
 */
export function systemHead(circuit: Circuit, flow: number): number {
  return compiledHead(compileCircuit(circuit), requireFlow(flow));
}

/** A part that is no group of branches. */
type LeafPart = PipePart | FittingPart | EquipmentPart;

function leafHead(part: LeafPart, flow: number, water: Water): number {
  switch (part.kind) {
    case 'pipe':
      return darcyWeisbach({ ...part, flow, kinematicViscosity: water.kinematicViscosity });
    case 'fitting':
      return minorLoss(part.k, meanVelocity(flow, part.bore));
    case 'equipment':
      return equipmentHead(part, flow);
  }
}

interface Walked {
  readonly side: CircuitSide;
  readonly path: readonly string[];
  readonly flow: number;
}

/** Visits every part with the flow that it really carries. */
function walk(
  parts: readonly CircuitPart[],
  here: Walked,
  water: Water,
  onLeaf: (part: LeafPart, here: Walked) => void,
  onBranch: (branch: BranchFlow) => void,
): void {
  for (const part of parts) {
    if (part.kind !== 'parallel') {
      onLeaf(part, here);
      continue;
    }
    splitFlow(part, water, here.flow).forEach((flow, index) => {
      const branch = part.branches[index] as Branch;
      onBranch({ parallelId: part.id, branchId: branch.id, flow });
      const inside = { side: here.side, path: [...here.path, part.id, branch.id], flow };
      walk(branch.parts, inside, water, onLeaf, onBranch);
    });
  }
}

function walkCircuit(
  circuit: Circuit,
  flow: number,
  onLeaf: (part: LeafPart, here: Walked) => void,
  onBranch: (branch: BranchFlow) => void,
): void {
  for (const side of ['suction', 'discharge'] as const) {
    walk(circuit[side], { side, path: [], flow }, circuit.water, onLeaf, onBranch);
  }
}

function shareOf(part: LeafPart, here: Walked, water: Water): HeadShare {
  const { side, path, flow } = here;
  const share = { id: part.id, side, path, flow, head: leafHead(part, flow, water) };
  if (part.kind === 'equipment') return share;
  return { ...share, velocity: meanVelocity(flow, part.bore), bore: part.bore };
}

/**
 * What every part takes of the head, in the order the water meets them.
 *
 * Law: as systemHead, part by part; parts of a branch count with the branch's own flow.
 * @param circuit The circuit [see Circuit], fields as there.
 * @param flow Flow [m3/s], 0 to 10.
 * @returns Shares [m]; the static head last where there is one. Along any one way through the branches they add up to the system head, less that branch's own lift.
 * @throws CoreError when the flow or a part's field is out of range.
 * Accuracy: as systemHead.
 * Source: as systemHead.
 * @example headShares({ suction: [], discharge: [{ kind: 'equipment', id: 'filter', referenceHead: 4, referenceFlow: 0.004, exponent: 2, factor: 1 }], staticHead: 1, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 0.002)[0].head // 1.000
 */
export function headShares(circuit: Circuit, flow: number): HeadShare[] {
  const shares: HeadShare[] = [];
  walkCircuit(
    circuit,
    requireFlow(flow),
    (part, here) => shares.push(shareOf(part, here, circuit.water)),
    () => {},
  );
  if (circuit.staticHead > 0) {
    shares.push({ id: 'static', side: 'discharge', path: [], head: circuit.staticHead, flow });
  }
  return shares;
}

/**
 * How every group of branches splits the flow.
 *
 * Law: branches side by side share one head; one whose lift the head does not reach carries none.
 * @param circuit The circuit [see Circuit], fields as there.
 * @param flow Flow [m3/s], 0 to 10.
 * @returns Branch flows [m3/s], in the order the water meets them; those of a group add up to what enters it.
 * @throws CoreError when the flow or a part's field is out of range.
 * Accuracy: 1e-12 of the flow.
 * Source: conservation of mass and energy.
 * @example branchFlows({ suction: [{ kind: 'parallel', id: 'lines', branches: [{ id: 'a', lift: 0, parts: [{ kind: 'fitting', id: 'x', k: 2, bore: 0.05 }] }, { id: 'b', lift: 0, parts: [{ kind: 'fitting', id: 'y', k: 2, bore: 0.05 }] }] }], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 0.002)[0].flow // 0.001000
 */
export function branchFlows(circuit: Circuit, flow: number): BranchFlow[] {
  const found: BranchFlow[] = [];
  walkCircuit(
    circuit,
    requireFlow(flow),
    () => {},
    (branch) => found.push(branch),
  );
  return found;
}

/**
 * Head lost between the pool and the pump.
 *
 * Law: as systemHead, of the suction side alone.
 * @param circuit The circuit [see Circuit], fields as there.
 * @param flow Flow [m3/s], 0 to 10.
 * @returns Head [m], 0 or more.
 * @throws CoreError when the flow or a part's field is out of range.
 * Accuracy: as systemHead.
 * Source: as systemHead.
 * @example suctionHead({ suction: [{ kind: 'equipment', id: 'strainer', referenceHead: 1, referenceFlow: 0.004, exponent: 2, factor: 1 }], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 0.002) // 0.2500
 */
export function suctionHead(circuit: Circuit, flow: number): number {
  return systemHead({ ...circuit, discharge: [], staticHead: 0 }, flow);
}

/** The fastest place on one side. */
export interface FastestPlace {
  /** Mean velocity [m/s]. */
  readonly velocity: number;
  readonly partId: string;
  /** Inside diameter there [m]. */
  readonly bore: number;
}

/**
 * The largest velocity in the pipe of one side.
 *
 * Law: V = Q / A, with each branch's own flow; pipes only, since limits are set for pipe.
 * @param circuit The circuit [see Circuit], fields as there.
 * @param flow Flow [m3/s], 0 to 10.
 * @param side Which side [-], one of suction and discharge.
 * @returns Velocity [m/s] and where; undefined when the side has no pipe.
 * @throws CoreError when the flow or a part's field is out of range.
 * Accuracy: exact.
 * Source: continuity.
 * @example largestVelocity({ suction: [{ kind: 'pipe', id: 'line', bore: 0.05, length: 1, roughness: 0 }], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 0.002, 'suction').velocity // 1.0186
 */
export function largestVelocity(
  circuit: Circuit,
  flow: number,
  side: CircuitSide,
): FastestPlace | undefined {
  let fastest: FastestPlace | undefined;
  walk(
    circuit[side],
    { side, path: [], flow: requireFlow(flow) },
    circuit.water,
    (part, here) => {
      if (part.kind !== 'pipe') return;
      const velocity = meanVelocity(here.flow, part.bore);
      if (fastest === undefined || velocity > fastest.velocity) {
        fastest = { velocity, partId: part.id, bore: part.bore };
      }
    },
    () => {},
  );
  return fastest;
}
