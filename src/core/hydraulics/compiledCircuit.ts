/**
 * A circuit compiled into as few numbers as its head needs, for solvers that ask for it a million times.
 *
 * All pipe of one bore and roughness becomes one run; every K and every quadratic piece of equipment
 * becomes one coefficient of Q^2; each other exponent costs one power; branches stay groups.
 */

import { standardGravity } from '#core/base/constants.ts';
import { CoreError, requireBetween } from '#core/base/errors.ts';
import type { Water } from '#core/water/water.ts';
import type { Circuit, CircuitPart, ParallelPart } from './circuitParts.ts';
import { flowArea } from './pipe.ts';

/** All pipe of one bore and roughness. */
export interface CompiledRun {
  /** Roughness over bore [-]. */
  readonly relativeRoughness: number;
  /** Reynolds number per flow [s/m3]. */
  readonly reynoldsPerFlow: number;
  /** Head per friction factor and flow squared [s2/m5]. */
  readonly headPerFactor: number;
  /** Laminar head per flow [s/m2], which needs no friction factor. */
  readonly laminar: number;
  /** Last 1/sqrt f found here [-]; a solver moves in small steps, so it is nearly right the next time. */
  inverseRoot: number;
}

/** Equipment whose exponent is not 2. */
export interface CompiledPower {
  /** Head per flow to the exponent [m/(m3/s)^n]. */
  readonly coefficient: number;
  /** Power of the flow [-]. */
  readonly exponent: number;
}

export interface CompiledBranch {
  readonly compiled: CompiledCircuit;
  /** Flow of this branch at the flow its group was last solved for [m3/s]. */
  flow: number;
  /** Last share of the group's flow, where the next solve begins [-]. */
  share: number;
  /** Whether any water goes this way. */
  open: boolean;
  /** Flow at which a step sets out [m3/s]. */
  from: number;
  /** Flow at which it is to arrive [m3/s]. */
  goal: number;
  /** Whether its head is that of its group already, but for rounding. */
  same: boolean;
  /** What it takes beside its groups. */
  readonly own: HeadPoint;
  /** What it takes, groups and all. */
  readonly point: HeadPoint;
}

export interface CompiledGroup {
  readonly branches: readonly CompiledBranch[];
  /** What the group takes at the flow it was last solved for. */
  readonly point: HeadPoint;
  /** The head of its widest open branch [m]. */
  base: number;
  /** What the group takes on top of that [m]; apart, so that what is small is not rounded away. */
  rise: number;
}

/** A circuit as a solver sees it. Holds the solver's last guesses, never anything that changes an answer. */
export interface CompiledCircuit {
  /** Head at no flow [m], 0 or more. */
  readonly lift: number;
  /** Coefficient of the flow squared [s2/m5], 0 or more. */
  quadratic: number;
  readonly runs: CompiledRun[];
  readonly powers: CompiledPower[];
  readonly groups: CompiledGroup[];
}

/** A head and its slope against flow, written in place. */
export interface HeadPoint {
  /** Head [m], any finite number. */
  head: number;
  /** Slope [m per m3/s], any finite number. */
  slope: number;
}

function addPart(compiled: CompiledCircuit, part: CircuitPart, water: Water): void {
  switch (part.kind) {
    case 'pipe':
      addRun(compiled, part.bore, part.length, part.roughness, water);
      return;
    case 'fitting':
      requireBetween(`K of ${part.id}`, part.k, 0, 1e6, '');
      compiled.quadratic += part.k / (2 * standardGravity * flowArea(part.bore) ** 2);
      return;
    case 'equipment': {
      const { referenceHead, referenceFlow, exponent, factor } = part;
      requireBetween(`reference head of ${part.id}`, referenceHead, 0, 1e6, 'm');
      requireBetween(`reference flow of ${part.id}`, referenceFlow, 1e-9, 1e6, 'm3/s');
      requireBetween(`exponent of ${part.id}`, exponent, 1, 2.5, '');
      requireBetween(`factor of ${part.id}`, factor, 0, 1000, '');
      const coefficient = (factor * referenceHead) / referenceFlow ** exponent;
      if (exponent === 2) compiled.quadratic += coefficient;
      else if (coefficient > 0) compiled.powers.push({ coefficient, exponent });
      return;
    }
    case 'parallel':
      compiled.groups.push(compileGroup(part, water));
  }
}

/** Lengths add up where bore and roughness are the same; the list is short, so it is just searched. */
function addRun(
  compiled: CompiledCircuit,
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
  const same = compiled.runs.findIndex(
    (other) =>
      other.reynoldsPerFlow === run.reynoldsPerFlow &&
      other.relativeRoughness === run.relativeRoughness,
  );
  const other = compiled.runs[same];
  if (other === undefined) compiled.runs.push(run);
  else
    compiled.runs[same] = {
      ...run,
      headPerFactor: other.headPerFactor + run.headPerFactor,
      laminar: other.laminar + run.laminar,
    };
}

function foldParts(parts: readonly CircuitPart[], lift: number, water: Water): CompiledCircuit {
  const compiled: CompiledCircuit = {
    lift: requireBetween('static head', lift, 0, 1000, 'm'),
    quadratic: 0,
    runs: [],
    powers: [],
    groups: [],
  };
  for (const part of parts) addPart(compiled, part, water);
  return compiled;
}

/** A friction factor and a flow such as pool plumbing has, to guess by. */
const usualFactor = 0.02;
const usualFlow = 1e-3;

/** About how easily water goes a way, flow over the root of head: the first guess of a split. */
function easeOf({ quadratic, runs, powers, groups }: CompiledCircuit): number {
  let resistance = quadratic;
  for (const run of runs) resistance += usualFactor * run.headPerFactor;
  for (const { coefficient, exponent } of powers)
    resistance += coefficient * usualFlow ** (exponent - 2);
  for (const { branches } of groups)
    resistance += branches.reduce((sum, { compiled }) => sum + easeOf(compiled), 0) ** -2;
  return 1 / Math.sqrt(Math.max(resistance, 1e-6));
}

/**
 * Compiles branches side by side.
 *
 * @internal
 */
export function compileGroup(part: ParallelPart, water: Water): CompiledGroup {
  if (part.branches.length === 0) {
    throw new CoreError(`branches of ${part.id}`, 0, 'at least one branch');
  }
  const ways = part.branches.map((branch) => foldParts(branch.parts, branch.lift, water));
  const eases = ways.map(easeOf);
  const whole = eases.reduce((sum, ease) => sum + ease, 0);
  return {
    branches: ways.map((compiled, at) => ({
      compiled,
      flow: 0,
      share: (eases[at] as number) / whole,
      open: true,
      from: 0,
      goal: 0,
      same: false,
      own: { head: 0, slope: 0 },
      point: { head: 0, slope: 0 },
    })),
    point: { head: 0, slope: 0 },
    base: 0,
    rise: 0,
  };
}

/**
 * Compiles a circuit for a solver.
 *
 * Law: as systemHead; lengths of one bore add, coefficients of the flow squared add.
 * @param circuit The circuit [see Circuit], fields as there.
 * @returns The compiled circuit [see CompiledCircuit]; it takes the same head at every flow.
 * @throws CoreError when a part's field is out of range.
 * Accuracy: rounding.
 * Source: as systemHead.
 * @example compileCircuit({ suction: [], discharge: [], staticHead: 2, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }).lift // 2.000
 */
export function compileCircuit(circuit: Circuit): CompiledCircuit {
  const parts = [...circuit.suction, ...circuit.discharge];
  return foldParts(parts, circuit.staticHead, circuit.water);
}
