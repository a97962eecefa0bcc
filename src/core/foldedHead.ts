/**
 * The head that a folded circuit takes, with its slope, and how groups of branches split the flow.
 *
 * Two ways to the split: `headAndSlope` settles it before it answers, `tangent` and `advance` carry it
 * along while a solver moves the whole flow, one step for everything at once.
 */
import type { ParallelPart } from './circuitParts.ts';
import { requireBetween } from './errors.ts';
import {
  type FoldedBranch,
  type FoldedCircuit,
  type FoldedGroup,
  type FoldedRun,
  foldGroup,
  type HeadPoint,
} from './foldedCircuit.ts';
import {
  colebrookStep,
  frictionFactor,
  frictionSlope,
  laminarLimit,
  turbulentLimit,
} from './friction.ts';
import type { Water } from './water.ts';

/** A step of 1/sqrt f larger than this (relative) was too far for one correction to be exact. */
const nearEnough = 1e-3;

const turbulent = { inverseRoot: 0, slope: 0 };

function addRunHead(run: FoldedRun, flow: number, out: HeadPoint): void {
  const reynolds = run.reynoldsPerFlow * flow;
  if (reynolds >= turbulentLimit) {
    addTurbulentHead(run, flow, reynolds, out);
    return;
  }
  // Laminar head is plain; no friction factor is asked for.
  if (reynolds <= laminarLimit) {
    out.head += run.laminar * flow;
    out.slope += run.laminar;
    return;
  }
  const factor = frictionFactor(reynolds, run.relativeRoughness);
  const slope = frictionSlope(reynolds, run.relativeRoughness, factor);
  out.head += run.headPerFactor * factor * flow * flow;
  out.slope += run.headPerFactor * flow * (2 * factor + slope * reynolds);
}

/** One correction of the last 1/sqrt f, or more when the flow has moved far since. */
function addTurbulentHead(run: FoldedRun, flow: number, reynolds: number, out: HeadPoint): void {
  for (let step = 0; step < 12; step += 1) {
    const before = run.inverseRoot;
    colebrookStep(reynolds, run.relativeRoughness, before, turbulent);
    run.inverseRoot = turbulent.inverseRoot;
    if (Math.abs(turbulent.inverseRoot - before) <= nearEnough * before) break;
  }
  const factor = 1 / (run.inverseRoot * run.inverseRoot);
  const head = run.headPerFactor * factor * flow;
  out.head += head * flow;
  // The slope of the factor comes as a share of the factor, per share of the Reynolds number.
  out.slope += head * (2 + turbulent.slope);
}

/** Change of a branch's flow, as a share of the group's, at which a split counts as found. */
const splitSettled = 1e-13;

/** Newton settles a split well within so many steps, or goes round in a circle. */
const mostSteps = 30;

/**
 * Heads so near one another are the same but for rounding [-]. Where a way up costs little beyond its
 * height, rounding alone would move flows about for ever.
 */
const sameHead = 2e-15;

/** A flow too small to be split [m3/s]: some thousand molecules in a second. */
const leastSplit = 1e-25;

/**
 * Splits a group's flow so that every open branch takes the same head. Newton on all branches at
 * once: each is replaced by its tangent, which turns the group into one linear equation for the
 * shared head. Branch heads are convex in flow, so after one step it closes in from one side.
 */
function solveGroup(group: FoldedGroup, flow: number): void {
  const { branches, point } = group;
  if (flow < leastSplit) {
    closeGroup(group);
    return;
  }
  for (const branch of branches) branch.flow = Math.max(branch.share, 1e-6) * flow;
  for (let step = 1; improveSplit(group, flow) > splitSettled * flow; step += 1) {
    if (step < mostSteps) continue;
    bracketSplit(group, flow);
    break;
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
  point.head = Math.min(...branches.map(openingHead));
  point.slope = 0;
  for (const branch of branches) branch.flow = 0;
}

/** Head at which a branch begins to pass water: its own lift, and that of the groups inside it. */
function openingHead(branch: FoldedBranch): number {
  headAndSlope(branch.folded, 0, branch.point);
  return branch.point.head;
}

/** One step towards the split; gives the largest change of a branch's flow. */
function improveSplit({ branches, point }: FoldedGroup, flow: number): number {
  let conductance = 0;
  let sum = flow;
  for (const branch of branches) {
    const { folded, point: at } = branch;
    headAndSlope(folded, branch.flow, at);
    at.slope = Math.max(at.slope, 1e-12);
    if (branch.flow <= 0 && at.head >= point.head) continue;
    conductance += 1 / at.slope;
    sum += at.head / at.slope - branch.flow;
  }
  point.head = sum / conductance;
  let worst = 0;
  for (const branch of branches) {
    const { head, slope } = branch.point;
    const gap = point.head - head;
    const wish = branch.flow + gap / slope;
    // The tangent of a branch at rest is nearly level and would throw it far out; none takes more than all.
    const next = Math.min(Math.max(wish, 0), flow);
    if (Math.abs(gap) > sameHead * head) worst = Math.max(worst, Math.abs(next - branch.flow));
    branch.flow = next;
  }
  return worst;
}

/** Flow that a branch passes under a head, by halving: slow and certain. */
function flowUnder(branch: FoldedBranch, head: number, most: number): number {
  if (openingHead(branch) >= head) return 0;
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
  let low = Math.min(...branches.map(openingHead));
  let high = low;
  for (const branch of branches) {
    headAndSlope(branch.folded, flow, branch.point);
    high = Math.max(high, branch.point.head);
  }
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    // Up to twice the flow, so that one branch alone can pass too much.
    const passed = branches.reduce((sum, branch) => sum + flowUnder(branch, middle, 2 * flow), 0);
    if (passed > flow) high = middle;
    else low = middle;
  }
  const flows = branches.map((branch) => flowUnder(branch, high, 2 * flow));
  const sum = flows.reduce((a, b) => a + b, 0);
  branches.forEach((branch, index) => {
    branch.flow = ((flows[index] as number) * flow) / sum;
  });
}

/**
 * Flow through each branch of a group [m3/s] when `flow` enters it; they add up to it.
 *
 * @internal
 */
export function splitFlow(part: ParallelPart, water: Water, flow: number): number[] {
  const group = foldGroup(part, water);
  solveGroup(group, flow);
  return group.branches.map((branch) => branch.flow);
}

/** Head and slope of everything but the groups, written in place. */
function plainHead(folded: FoldedCircuit, flow: number, out: HeadPoint): HeadPoint {
  out.head = folded.lift + folded.quadratic * flow * flow;
  out.slope = 2 * folded.quadratic * flow;
  for (const run of folded.runs) addRunHead(run, flow, out);
  for (const { coefficient, exponent } of folded.powers) {
    const rise = coefficient * flow ** (exponent - 1);
    out.head += rise * flow;
    out.slope += exponent * rise;
  }
  return out;
}

/**
 * Head and slope at a flow of 0 or more, written in place; the flow is not checked.
 *
 * @internal
 */
export function headAndSlope(folded: FoldedCircuit, flow: number, out: HeadPoint): void {
  plainHead(folded, flow, out);
  for (const group of folded.groups) {
    solveGroup(group, flow);
    out.head += group.point.head;
    out.slope += group.point.slope;
  }
}

/**
 * Head and slope from the branches' present flows, each group replaced by the tangents of its
 * branches; written in place. Exact once `advance` has no more to change.
 * @internal
 */
export function tangent(folded: FoldedCircuit, flow: number, out: HeadPoint): void {
  let { head, slope } = plainHead(folded, flow, out);
  for (const { branches, point } of folded.groups) {
    let conductance = 0;
    let offset = flow;
    for (const branch of branches) {
      tangent(branch.folded, branch.flow, branch.point);
      conductance += 1 / branch.point.slope;
      offset += branch.point.head / branch.point.slope - branch.flow;
    }
    point.slope = 1 / conductance;
    point.head = offset * point.slope;
    head += point.head;
    slope += point.slope;
  }
  out.head = head;
  out.slope = slope;
}

/**
 * Spreads a flow over all branches by the shares last found, to begin with.
 *
 * @internal
 */
export function spread(folded: FoldedCircuit, flow: number): void {
  for (const { branches } of folded.groups) {
    for (const branch of branches) {
      branch.flow = branch.share * flow;
      spread(branch.folded, branch.flow);
    }
  }
}

/**
 * Moves all branches with a change of the whole flow, along the tangents last found. Gives the
 * largest change as a share of its branch, or no number when a branch would run dry or backwards.
 * @internal
 */
export function advance(folded: FoldedCircuit, flow: number, change: number): number {
  let worst = 0;
  for (const { branches, point } of folded.groups) {
    const head = point.head + point.slope * change;
    for (const branch of branches) {
      const step = (head - branch.point.head) / branch.point.slope;
      const next = branch.flow + step;
      if (!(next > 0)) return Number.NaN;
      const inner = advance(branch.folded, next, step);
      worst = Math.max(worst, Math.abs(step) / next, inner);
      branch.flow = next;
      branch.share = next / (flow + change);
    }
  }
  return worst;
}

/**
 * Head that a folded circuit takes at a flow.
 *
 * Law: as systemHead.
 * @param folded The folded circuit [see FoldedCircuit], any that foldCircuit gives.
 * @param flow Flow [m3/s], 0 to 10.
 * @returns Head [m].
 * @throws CoreError when the flow is out of range.
 * Accuracy: as systemHead.
 * Source: as systemHead.
 * @example foldedHead({ lift: 2, quadratic: 1e5, runs: [], powers: [], groups: [] }, 0.003) // 2.900
 */
export function foldedHead(folded: FoldedCircuit, flow: number): number {
  const out = { head: 0, slope: 0 };
  headAndSlope(folded, requireBetween('flow', flow, 0, 10, 'm3/s'), out);
  return out.head;
}
