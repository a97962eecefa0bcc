/**
 * The head that a compiled circuit takes, with its slope, and how groups of branches split the flow.
 *
 * Two ways to the split: `headAndSlope` settles it before it answers, `aimAt` and `takeStep` carry it
 * along while a solver moves the whole flow. Both move all branches of all groups at once, however they
 * nest, so that a level of nesting costs no more than the pieces in it.
 */

import { requireBetween } from '#core/base/errors.ts';
import type { Water } from '#core/water/water.ts';
import type { ParallelPart } from './circuitParts.ts';
import {
  type CompiledBranch,
  type CompiledCircuit,
  compileGroup,
  type HeadPoint,
} from './compiledCircuit.ts';
import { plainHead } from './plainHead.ts';

/** Change of a branch's flow, as a share of its own, at which a split counts as found. */
const splitSettled = 1e-10;

/** The same as a share of the whole group's, for a branch that hardly flows. */
const hardly = 1e-13;

/** And as a share of the flow of the whole circuit, for one inside a branch that hardly flows. */
const roundedAway = 1e-15;

/**
 * Heads so near one another are the same but for rounding [-]. Where a way up costs little beyond its
 * height, rounding alone would move flows about for ever.
 */
const sameHead = 2e-15;

/** The same as a share of the whole circuit's head: beside a way that takes none, others go dry by halves. */
const noHead = 1e-16;

/** No pump makes more head than this [m]. */
const mostHead = 100;

/** A flow too small to be split [m3/s]: some thousand molecules in a second. */
const leastSplit = 1e-25;

/** Branches open and shut once or twice as a rule; no more rounds than this. */
const mostRounds = 30;

/** Whole steps settle a split well within so many, or go round in a circle. */
const wholeSteps = 30;

/** Steps of any length, after which a split that has not settled is left as it is. */
const mostSteps = 100;

/** A drive that holds the flow whatever head that takes. */
const steady: HeadPoint = { head: 0, slope: Number.NEGATIVE_INFINITY };

/**
 * The tangent of a line of parts: its own, and that of each group, made of its open branches. Side by
 * side conductances add. The way with the lowest tangent at rest is open whatever the group carries.
 * Heads are asked anew where branches have moved.
 */
function join(
  { groups }: CompiledCircuit,
  flow: number,
  own: HeadPoint,
  out: HeadPoint,
  moved: boolean,
): void {
  let { head, slope } = own;
  for (const group of groups) {
    const { branches, point } = group;
    let lowest = branches[0] as CompiledBranch;
    let atRest = Number.POSITIVE_INFINITY;
    for (const branch of branches) {
      if (moved) plainHead(branch.compiled, branch.flow, branch.own);
      join(branch.compiled, branch.flow, branch.own, branch.point, moved);
      branch.point.slope = Math.max(branch.point.slope, 1e-12);
      const rest = branch.point.head - branch.point.slope * branch.flow;
      if (rest >= atRest) continue;
      lowest = branch;
      atRest = rest;
    }
    // Heads are told from that of the widest way, where a rounded head would be the most flow.
    let widest = lowest.point;
    for (const branch of branches) {
      if (branch.open && branch.point.slope < widest.slope) widest = branch.point;
    }
    group.base = widest.head;
    let conductance = 0;
    let over = flow;
    for (const branch of branches) {
      if (!branch.open && branch !== lowest) continue;
      conductance += 1 / branch.point.slope;
      over += (branch.point.head - group.base) / branch.point.slope - branch.flow;
    }
    point.slope = 1 / conductance;
    group.rise = over * point.slope;
    point.head = group.base + group.rise;
    head += point.head;
    slope += point.slope;
  }
  out.head = head;
  out.slope = slope;
}

/** Sets where each branch is to go along the tangents; tells whether any opens or shuts by that. */
function aim({ groups }: CompiledCircuit, flow: number, change: number, none: number): boolean {
  let turned = false;
  for (const { branches, point, base, rise } of groups) {
    for (const branch of branches) {
      const { head, slope } = branch.point;
      // Heads first less one another: what is small is not lost beside what is large.
      const gap = base - head + (rise + point.slope * change);
      const wish = branch.flow + gap / slope;
      const open = wish > leastSplit;
      if (open !== branch.open) turned = true;
      branch.open = open;
      branch.goal = open ? Math.min(wish, flow + change) : 0;
      branch.same = Math.abs(gap) <= Math.max(sameHead * head, none);
      if (branch.compiled.groups.length === 0) continue;
      if (aim(branch.compiled, branch.flow, branch.goal - branch.flow, none)) turned = true;
    }
  }
  return turned;
}

/** What the whole circuit holds beside its groups, and with them. */
const whole: HeadPoint = { head: 0, slope: 0 };
const aimed: HeadPoint = { head: 0, slope: 0 };

/**
 * Head and slope from the branches' present flows, each group replaced by the tangents of its open
 * branches; written in place. Exact once no branch has anywhere to go.
 * @internal
 */
export function tangent(compiled: CompiledCircuit, flow: number, out: HeadPoint): void {
  plainHead(compiled, flow, whole);
  join(compiled, flow, whole, out, true);
}

/**
 * Sets where all branches are to go so that the circuit takes the head of its drive, by the tangents
 * of both; again while a branch opens or shuts by that, which takes no heads. Gives the change of the
 * whole flow.
 * @internal
 */
export function aimAt(compiled: CompiledCircuit, flow: number, drive: HeadPoint): number {
  tangent(compiled, flow, aimed);
  for (let round = 0; ; round += 1) {
    const change = (drive.head - aimed.head) / (aimed.slope - drive.slope);
    if (compiled.groups.length === 0) return change;
    const none = noHead * Math.min(Math.abs(aimed.head), mostHead);
    if (!aim(compiled, flow, change, none) || round === mostRounds) return change;
    join(compiled, flow, whole, aimed, false);
  }
}

/**
 * Whether every branch is within a share of its own flow of where it is to go, or within `least`,
 * which counts for nothing beside the whole flow.
 */
function isNear({ groups }: CompiledCircuit, flow: number, share: number, least: number): boolean {
  for (const { branches } of groups) {
    for (const branch of branches) {
      const { goal, same } = branch;
      const near = Math.max(share * goal, hardly * flow, least);
      if (!same && Math.abs(goal - branch.flow) > near) return false;
      if (!isNear(branch.compiled, goal, share, least)) return false;
    }
  }
  return true;
}

/** Moves all branches a part of their way. */
function move({ groups }: CompiledCircuit, part: number): void {
  for (const { branches } of groups) {
    for (const branch of branches) {
      branch.flow = part === 1 ? branch.goal : branch.from + part * (branch.goal - branch.from);
      move(branch.compiled, part);
    }
  }
}

/** Begins a way here. */
function setOut({ groups }: CompiledCircuit): void {
  for (const { branches } of groups) {
    for (const branch of branches) {
      branch.from = branch.flow;
      setOut(branch.compiled);
    }
  }
}

/**
 * How the power spent on all losses changes along the way; the split is where that power, summed up
 * from rest, is least.
 */
function along({ groups }: CompiledCircuit): number {
  let sum = 0;
  for (const { branches } of groups) {
    for (const branch of branches) {
      sum += branch.own.head * (branch.goal - branch.from) + along(branch.compiled);
    }
  }
  return sum;
}

/** Keeps the shares of a settled split, to begin the next one with. */
function keepShares({ groups }: CompiledCircuit, flow: number): void {
  if (flow < leastSplit) return;
  for (const { branches } of groups) {
    for (const branch of branches) {
      branch.share = branch.flow / flow;
      keepShares(branch.compiled, branch.flow);
    }
  }
}

/**
 * Splits the flow in every group, nests and all, so that every open branch of a group takes the same
 * head. Newton on all branches at once: each is replaced by its tangent. Where whole steps go round
 * in a circle, a step is halved until it lessens the power lost, which is least at one split alone.
 */
function settleSplit(compiled: CompiledCircuit, flow: number, out: HeadPoint): void {
  spread(compiled, flow < leastSplit ? 0 : flow);
  for (let step = 0; step < mostSteps; step += 1) {
    aimAt(compiled, flow, steady);
    setOut(compiled);
    const before = along(compiled);
    if (takeStep(compiled, flow, splitSettled) || (step >= wholeSteps && before >= 0)) break;
    for (let part = 1; step >= wholeSteps && part > 1e-3; part /= 2) {
      move(compiled, part);
      tangent(compiled, flow, aimed);
      if (along(compiled) <= -before / 2) break;
    }
  }
  out.head = aimed.head;
  out.slope = aimed.slope;
}

/**
 * Flow through each branch of a group [m3/s] when `flow` enters it; they add up to it.
 *
 * @internal
 */
export function splitFlow(part: ParallelPart, water: Water, flow: number): number[] {
  const group = compileGroup(part, water);
  const alone = { lift: 0, quadratic: 0, runs: [], powers: [], groups: [group] };
  headAndSlope(alone, flow, { head: 0, slope: 0 });
  return group.branches.map((branch) => branch.flow);
}

/**
 * Head and slope at a flow of 0 or more, written in place; the flow is not checked.
 *
 * @internal
 */
export function headAndSlope(compiled: CompiledCircuit, flow: number, out: HeadPoint): void {
  if (compiled.groups.length > 0) settleSplit(compiled, flow, out);
  else plainHead(compiled, flow, out);
}

/**
 * Takes all branches where they were aimed; tells whether that was no further than a share of their
 * flow, and then keeps the split to begin the next one with.
 * @internal
 */
export function takeStep(compiled: CompiledCircuit, flow: number, share: number): boolean {
  const near = isNear(compiled, flow, share, roundedAway * flow);
  move(compiled, 1);
  if (near) keepShares(compiled, flow);
  return near;
}

/**
 * Spreads a flow over all branches by the shares last found, to begin with.
 *
 * @internal
 */
export function spread(compiled: CompiledCircuit, flow: number): void {
  for (const { branches } of compiled.groups) {
    for (const branch of branches) {
      branch.flow = branch.share * flow;
      branch.open = branch.flow > 0;
      spread(branch.compiled, branch.flow);
    }
  }
}

/**
 * Head that a compiled circuit takes at a flow.
 *
 * Law: as systemHead.
 * @param compiled The compiled circuit [see CompiledCircuit], any that compileCircuit gives.
 * @param flow Flow [m3/s], 0 to 10.
 * @returns Head [m].
 * @throws CoreError when the flow is out of range.
 * Accuracy: as systemHead.
 * Source: as systemHead.
 * @example compiledHead({ lift: 2, quadratic: 1e5, runs: [], powers: [], groups: [] }, 0.003) // 2.900
 */
export function compiledHead(compiled: CompiledCircuit, flow: number): number {
  const out = { head: 0, slope: 0 };
  headAndSlope(compiled, requireBetween('flow', flow, 0, 10, 'm3/s'), out);
  return out.head;
}
