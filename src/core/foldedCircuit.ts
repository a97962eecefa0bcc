/**
 * A circuit folded into as few numbers as its head needs, for solvers that ask for it a million times.
 *
 * All pipe of one bore and roughness becomes one run; every K and every quadratic piece of equipment
 * becomes one coefficient of Q^2; each other exponent costs one power; branches stay groups.
 */
import type { Circuit, CircuitPart, ParallelPart } from './circuitParts.ts';
import { standardGravity } from './constants.ts';
import { CoreError, requireBetween } from './errors.ts';
import { frictionFactor, frictionSlope, refineColebrook, turbulentLimit } from './friction.ts';
import { flowArea } from './pipe.ts';
import type { Water } from './water.ts';

/** All pipe of one bore and roughness. */
interface FoldedRun {
  readonly relativeRoughness: number;
  /** Reynolds number per flow [s/m3]. */
  readonly reynoldsPerFlow: number;
  /** Head per friction factor and flow squared [s2/m5]. */
  readonly headPerFactor: number;
  /** Laminar head per flow [s/m2], which needs no friction factor. */
  readonly laminar: number;
  /** Last 1/sqrt f found here; a solver moves in small steps, so it is nearly right the next time. */
  inverseRoot: number;
}

/** Equipment whose exponent is not 2. */
interface FoldedPower {
  readonly coefficient: number;
  readonly exponent: number;
}

interface FoldedBranch {
  readonly folded: FoldedCircuit;
  /** Flow of this branch at the flow its group was last solved for [m3/s]. */
  flow: number;
  /** Last share of the group's flow, where the next solve begins [-]. */
  share: number;
  readonly point: HeadPoint;
}

interface FoldedGroup {
  readonly branches: readonly FoldedBranch[];
  /** What the group takes at the flow it was last solved for. */
  readonly point: HeadPoint;
}

/** A circuit as a solver sees it. Holds the solver's last guesses, never anything that changes an answer. */
export interface FoldedCircuit {
  /** Head at no flow [m]. */
  readonly lift: number;
  /** Coefficient of the flow squared [s2/m5]. */
  quadratic: number;
  readonly runs: FoldedRun[];
  readonly powers: FoldedPower[];
  readonly groups: FoldedGroup[];
}

/** A head and its slope against flow, written in place. */
export interface HeadPoint {
  /** Head [m]. */
  head: number;
  /** Slope [m per m3/s]. */
  slope: number;
}

function addPart(folded: FoldedCircuit, part: CircuitPart, water: Water): void {
  switch (part.kind) {
    case 'pipe':
      addRun(folded, part.bore, part.length, part.roughness, water);
      return;
    case 'fitting':
      requireBetween(`K of ${part.id}`, part.k, 0, 1e6, '');
      folded.quadratic += part.k / (2 * standardGravity * flowArea(part.bore) ** 2);
      return;
    case 'equipment': {
      const { referenceHead, referenceFlow, exponent, factor } = part;
      requireBetween(`reference head of ${part.id}`, referenceHead, 0, 1e6, 'm');
      requireBetween(`reference flow of ${part.id}`, referenceFlow, 1e-9, 1e6, 'm3/s');
      requireBetween(`exponent of ${part.id}`, exponent, 1, 2.5, '');
      requireBetween(`factor of ${part.id}`, factor, 0, 1000, '');
      const coefficient = (factor * referenceHead) / referenceFlow ** exponent;
      if (exponent === 2) folded.quadratic += coefficient;
      else if (coefficient > 0) folded.powers.push({ coefficient, exponent });
      return;
    }
    case 'parallel':
      folded.groups.push(foldGroup(part, water));
  }
}

/** Lengths add up where bore and roughness are the same; the list is short, so it is just searched. */
function addRun(
  folded: FoldedCircuit,
  bore: number,
  length: number,
  roughness: number,
  water: Water,
): void {
  requireBetween('length', length, 0, 1e5, 'm');
  requireBetween('roughness', roughness, 0, bore / 10, 'm');
  if (length === 0) return;
  const area = flowArea(bore);
  const nu = water.kinematicViscosity;
  const run = {
    relativeRoughness: roughness / bore,
    reynoldsPerFlow: bore / (area * nu),
    headPerFactor: length / (bore * 2 * standardGravity * area * area),
    laminar: (32 * nu * length) / (standardGravity * bore * bore * area),
    inverseRoot: 7,
  };
  const same = folded.runs.findIndex(
    (other) =>
      other.reynoldsPerFlow === run.reynoldsPerFlow &&
      other.relativeRoughness === run.relativeRoughness,
  );
  const other = folded.runs[same];
  if (other === undefined) folded.runs.push(run);
  else
    folded.runs[same] = {
      ...run,
      headPerFactor: other.headPerFactor + run.headPerFactor,
      laminar: other.laminar + run.laminar,
    };
}

function foldParts(parts: readonly CircuitPart[], lift: number, water: Water): FoldedCircuit {
  const folded: FoldedCircuit = {
    lift: requireBetween('static head', lift, 0, 1000, 'm'),
    quadratic: 0,
    runs: [],
    powers: [],
    groups: [],
  };
  for (const part of parts) addPart(folded, part, water);
  return folded;
}

function foldGroup(part: ParallelPart, water: Water): FoldedGroup {
  if (part.branches.length === 0) {
    throw new CoreError(`branches of ${part.id}`, 0, 'at least one branch');
  }
  const share = 1 / part.branches.length;
  return {
    branches: part.branches.map((branch) => ({
      folded: foldParts(branch.parts, branch.lift, water),
      flow: 0,
      share,
      point: { head: 0, slope: 0 },
    })),
    point: { head: 0, slope: 0 },
  };
}

/**
 * Folds a circuit for a solver.
 *
 * Law: as systemHead; lengths of one bore add, coefficients of the flow squared add.
 * @param circuit The circuit [see Circuit], fields as there.
 * @returns The folded circuit [see FoldedCircuit]; it takes the same head at every flow.
 * @throws CoreError when a part's field is out of range.
 * Accuracy: rounding.
 * Source: as systemHead.
 * @example foldCircuit({ suction: [], discharge: [], staticHead: 2, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }).lift // 2.000
 */
export function foldCircuit(circuit: Circuit): FoldedCircuit {
  const parts = [...circuit.suction, ...circuit.discharge];
  return foldParts(parts, circuit.staticHead, circuit.water);
}

/** Below this Reynolds number the friction factor is not asked for: laminar head is plain. */
const laminarShortcut = 2000;

/** A step of 1/sqrt f larger than this (relative) was too far for one correction to be exact. */
const nearEnough = 1e-3;

function addRunHead(run: FoldedRun, flow: number, out: HeadPoint): void {
  const reynolds = run.reynoldsPerFlow * flow;
  if (reynolds <= laminarShortcut) {
    out.head += run.laminar * flow;
    out.slope += run.laminar;
    return;
  }
  const factor = runFactor(run, reynolds);
  const slope = frictionSlope(reynolds, run.relativeRoughness, factor);
  out.head += run.headPerFactor * factor * flow * flow;
  out.slope += run.headPerFactor * flow * (2 * factor + slope * reynolds);
}

/** The friction factor, from the last one found when that was near. */
function runFactor(run: FoldedRun, reynolds: number): number {
  if (reynolds < turbulentLimit) return frictionFactor(reynolds, run.relativeRoughness);
  const better = refineColebrook(reynolds, run.relativeRoughness, run.inverseRoot);
  const step = Math.abs(better - run.inverseRoot);
  run.inverseRoot =
    step <= nearEnough * better
      ? better
      : 1 / Math.sqrt(frictionFactor(reynolds, run.relativeRoughness));
  return 1 / (run.inverseRoot * run.inverseRoot);
}

/** Change of a branch's flow, as a share of the group's, at which a split counts as found. */
const splitSettled = 1e-13;

/**
 * Splits a group's flow so that every open branch takes the same head. Newton on all branches at
 * once: each is replaced by its tangent, which turns the group into one linear equation for the
 * shared head. Branch heads are convex in flow, so after one step it closes in from one side.
 */
function solveGroup(group: FoldedGroup, flow: number): void {
  const { branches, point } = group;
  if (flow <= 0) {
    closeGroup(group);
    return;
  }
  for (const branch of branches) branch.flow = Math.max(branch.share, 1e-6) * flow;
  for (let step = 0; step < 60; step += 1) {
    const worst = improveSplit(group, flow);
    if (worst <= splitSettled * flow) break;
    if (step === 59) bracketSplit(group, flow);
  }
  let conductance = 0;
  point.head = 0;
  for (const branch of branches) {
    branch.share = branch.flow / flow;
    if (branch.flow <= 0) continue;
    headAndSlope(branch.folded, branch.flow, branch.point);
    conductance += 1 / Math.max(branch.point.slope, 1e-12);
    point.head = branch.point.head;
  }
  point.slope = 1 / conductance;
}

/** At no flow the group takes what its lowest branch needs to open. */
function closeGroup({ branches, point }: FoldedGroup): void {
  point.head = Math.min(...branches.map((branch) => branch.folded.lift));
  point.slope = 0;
  for (const branch of branches) branch.flow = 0;
}

/** One step towards the split; gives the largest change of a branch's flow. */
function improveSplit({ branches, point }: FoldedGroup, flow: number): number {
  let conductance = 0;
  let sum = flow;
  for (const branch of branches) {
    const { folded, point: at } = branch;
    headAndSlope(folded, branch.flow, at);
    at.slope = Math.max(at.slope, 1e-12);
    if (branch.flow <= 0 && folded.lift >= point.head) continue;
    conductance += 1 / at.slope;
    sum += at.head / at.slope - branch.flow;
  }
  point.head = sum / conductance;
  let worst = 0;
  for (const branch of branches) {
    const { head, slope } = branch.point;
    const wish = branch.flow + (point.head - head) / slope;
    // A branch at rest opens gently: its tangent there is nearly level and would throw it far out.
    const next = Math.min(Math.max(wish, 0), branch.flow <= 0 ? 0.1 * flow : 4 * branch.flow);
    worst = Math.max(worst, Math.abs(next - branch.flow));
    branch.flow = next;
  }
  return worst;
}

/** Flow that a branch passes under a head, by halving: slow and certain. */
function flowUnder(branch: FoldedBranch, head: number, most: number): number {
  if (branch.folded.lift >= head) return 0;
  let low = 0;
  let high = most;
  for (let step = 0; step < 100 && high - low > 1e-16 * most; step += 1) {
    const middle = (low + high) / 2;
    headAndSlope(branch.folded, middle, branch.point);
    if (branch.point.head > head) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** The split by halving the shared head; only for groups that Newton's steps do not settle. */
function bracketSplit({ branches }: FoldedGroup, flow: number): void {
  let low = Math.min(...branches.map((branch) => branch.folded.lift));
  let high = low;
  for (const branch of branches) {
    headAndSlope(branch.folded, flow, branch.point);
    high = Math.max(high, branch.point.head);
  }
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    const passed = branches.reduce((sum, branch) => sum + flowUnder(branch, middle, flow), 0);
    if (passed > flow) high = middle;
    else low = middle;
  }
  const flows = branches.map((branch) => flowUnder(branch, high, flow));
  const sum = flows.reduce((a, b) => a + b, 0);
  branches.forEach((branch, index) => {
    branch.flow = ((flows[index] as number) * flow) / sum;
  });
}

/** Flow through each branch of a group [m3/s] when `flow` enters it; they add up to it. */
export function splitFlow(part: ParallelPart, water: Water, flow: number): number[] {
  const group = foldGroup(part, water);
  solveGroup(group, flow);
  return group.branches.map((branch) => branch.flow);
}

/** Head and slope at a flow of 0 or more, written in place; the flow is not checked. */
export function headAndSlope(folded: FoldedCircuit, flow: number, out: HeadPoint): void {
  out.head = folded.lift + folded.quadratic * flow * flow;
  out.slope = 2 * folded.quadratic * flow;
  for (const run of folded.runs) addRunHead(run, flow, out);
  for (const { coefficient, exponent } of folded.powers) {
    const rise = flow > 0 ? coefficient * flow ** (exponent - 1) : exponent === 1 ? coefficient : 0;
    out.head += rise * flow;
    out.slope += exponent * rise;
  }
  for (const group of folded.groups) {
    solveGroup(group, flow);
    out.head += group.point.head;
    out.slope += group.point.slope;
  }
}

/**
 * Head that a folded circuit takes at a flow.
 *
 * Law: as systemHead.
 * @param folded The folded circuit [see FoldedCircuit], from foldCircuit.
 * @param flow Flow [m3/s], 0 to 10.
 * @returns Head [m].
 * @throws CoreError when the flow is out of range.
 * Accuracy: as systemHead.
 * Source: as systemHead.
 * @example foldedHead(foldCircuit({ suction: [], discharge: [], staticHead: 2, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }), 0.003) // 2.000
 */
export function foldedHead(folded: FoldedCircuit, flow: number): number {
  const out = { head: 0, slope: 0 };
  headAndSlope(folded, requireBetween('flow', flow, 0, 10, 'm3/s'), out);
  return out.head;
}
