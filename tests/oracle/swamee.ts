/**
 * An independent solver with the engine's own friction: Swamee–Jain (J. Hydraul. Div. ASCE 102, 657,
 * 1976) and gravity 32.2 ft/s2, by false position alone. It tells how much of any difference from the core
 * is the engine's formula, and so how much is left for a mistake.
 */
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { flowArea } from '#core/hydraulics/pipe.ts';
import type { ThreePoints } from './engine.ts';

/** The engine's gravity [m/s2]: 32.2 ft/s2. */
const gravity = 32.2 * 0.3048;
/** The engine is handed K made with the standard gravity. */
const standard = 9.80665;

/** Darcy friction factor as the engine takes it: above Re 4000 only, which is all these circuits use. */
function factor(reynolds: number, relativeRoughness: number): number {
  if (reynolds < 2000) return 64 / reynolds;
  const y = relativeRoughness / 3.7 + 5.74 / Math.max(reynolds, 4000) ** 0.9;
  return 0.25 / Math.log10(y) ** 2;
}

function partHead(part: CircuitPart, flow: number, nu: number): number {
  switch (part.kind) {
    case 'pipe': {
      const velocity = flow / flowArea(part.bore);
      const reynolds = (velocity * part.bore) / nu;
      if (reynolds === 0) return 0;
      const f = factor(reynolds, part.roughness / part.bore);
      return (f * part.length * velocity ** 2) / (part.bore * 2 * gravity);
    }
    case 'fitting':
      return (part.k * (flow / flowArea(part.bore)) ** 2) / (2 * gravity);
    case 'equipment':
      return (
        (part.factor * part.referenceHead * (flow / part.referenceFlow) ** 2 * standard) / gravity
      );
    case 'parallel': {
      const flowUnder = (head: number) =>
        part.branches.map((branch) =>
          // Twice the flow as the end: were it the flow itself, a branch alone would pass it at any head.
          crossing(0, 2 * flow, (q) => branch.lift + partsHead(branch.parts, q, nu) - head),
        );
      const most = Math.max(
        ...part.branches.map((branch) => branch.lift + partsHead(branch.parts, flow, nu)),
      );
      return crossing(0, most, (head) => flowUnder(head).reduce((sum, q) => sum + q, 0) - flow);
    }
  }
}

function partsHead(parts: readonly CircuitPart[], flow: number, nu: number): number {
  return parts.reduce((sum, part) => sum + partHead(part, flow, nu), 0);
}

/** Where a rising function crosses zero: false position, with the Illinois rule against stalling. */
function crossing(from: number, to: number, rising: (x: number) => number): number {
  let low = from;
  let high = to;
  let atLow = rising(low);
  let atHigh = rising(high);
  if (atLow >= 0) return low;
  if (atHigh <= 0) return high;
  let side = 0;
  for (let step = 0; step < 200; step += 1) {
    const next = (low * atHigh - high * atLow) / (atHigh - atLow);
    const here = rising(next);
    if (Math.abs(here) < 1e-12 || high - low < 1e-14 * to) return next;
    if (here < 0) {
      low = next;
      atLow = here;
      if (side < 0) atHigh /= 2;
      side = -1;
    } else {
      high = next;
      atHigh = here;
      if (side > 0) atLow /= 2;
      side = 1;
    }
  }
  return (low + high) / 2;
}

/** Flow [m3/s] at a speed ratio, with the engine's friction. */
export function flowWithEngineFriction(
  points: ThreePoints,
  circuit: Circuit,
  ratio: number,
): number {
  const [shutoff, middle, last] = points;
  const a = shutoff.head;
  const c = Math.log((a - last.head) / (a - middle.head)) / Math.log(last.flow / middle.flow);
  const b = (a - middle.head) / middle.flow ** c;
  const nu = circuit.water.kinematicViscosity;
  const parts = [...circuit.suction, ...circuit.discharge];
  return crossing(0, 0.03, (flow) => {
    const pump = ratio ** 2 * (a - b * (flow / ratio) ** c);
    return circuit.staticHead + partsHead(parts, flow, nu) - pump;
  });
}
