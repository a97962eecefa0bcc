/** The head that a compiled line of parts takes with its slope, groups of branches left out. */
import type { CompiledCircuit, CompiledRun, HeadPoint } from './compiledCircuit.ts';
import {
  colebrookStep,
  frictionFactor,
  frictionSlope,
  laminarLimit,
  turbulentLimit,
} from './friction.ts';

/** A step of 1/sqrt f larger than this (relative) was too far for one correction to be exact. */
const nearEnough = 1e-3;

const turbulent = { inverseRoot: 0, slope: 0 };

function addRunHead(run: CompiledRun, flow: number, out: HeadPoint): void {
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
function addTurbulentHead(run: CompiledRun, flow: number, reynolds: number, out: HeadPoint): void {
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

/**
 * Head and slope of everything but the groups, written in place; the flow is not checked.
 *
 * @internal
 */
export function plainHead(compiled: CompiledCircuit, flow: number, out: HeadPoint): HeadPoint {
  out.head = compiled.lift + compiled.quadratic * flow * flow;
  out.slope = 2 * compiled.quadratic * flow;
  for (const run of compiled.runs) addRunHead(run, flow, out);
  for (const { coefficient, exponent } of compiled.powers) {
    const rise = coefficient * flow ** (exponent - 1);
    out.head += rise * flow;
    out.slope += exponent * rise;
  }
  return out;
}
