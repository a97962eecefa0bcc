/** Curves that a case writes out: "380 - 0.06 Q - 0.0018 Q^2 at ratio 1, Q in gpm", "z + 0.000775 Q^2". */
import type { CircuitPart } from '#core/hydraulics/circuitParts.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import { NotInGrammar } from '../grammar.ts';

/** Size in SI of one unit of flow and of head. */
export interface CurveUnits {
  readonly flow: number;
  readonly head: number;
}

const ending = /( at (ratio 1|top speed))?(, Q in gpm)?$/;
const term = /^([+-]?)(?:(\d*\.?\d+(?:e[+-]?\d+)?)?(Q?)(?:\^(\d+))?|(z))$/;

/** Coefficients in SI of each power of Q, the constant first; `z` stands for a static head [m]. */
export function coefficientsOf(text: string, units: CurveUnits, z?: number): readonly number[] {
  const terms = text
    .replace(ending, '')
    .replaceAll(' ', '')
    .split(/(?<!e)(?=[+-])/);
  const found: number[] = [];
  if (z !== undefined && !text.includes('z'))
    throw new NotInGrammar(`"${text}" has no static head`);
  for (const each of terms) {
    const [whole, sign, size, flow, power = '1', head] = term.exec(each) ?? [];
    if (!whole || (head && z === undefined) || (!head && !size && !flow))
      throw new NotInGrammar(`"${text}" is no curve that can be read`);
    const degree = flow ? Number(power) : 0;
    const value = head ? (z ?? 0) : (Number(size ?? 1) * units.head) / units.flow ** degree;
    found[degree] = (found[degree] ?? 0) + (sign === '-' ? -value : value);
  }
  return Array.from(found, (each) => each ?? 0);
}

export function evaluate(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, each) => sum * x + each, 0);
}

/** Where the curve has fallen to nothing, by halving. */
function flowAtNoHead(coefficients: readonly number[]): number {
  let [low, high] = [0, 1e-4];
  while (evaluate(coefficients, high) > 0 && high < 1e3) high *= 2;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (evaluate(coefficients, middle) > 0) low = middle;
    else high = middle;
  }
  return high;
}

/** A falling polynomial as a pump curve. It states no end of data, so none is ever passed. */
export function polynomialPump(coefficients: readonly number[]): PumpCurve {
  const slope = coefficients.slice(1).map((each, power) => each * (power + 1));
  return {
    shutoffHead: coefficients[0] ?? 0,
    lastFlow: flowAtNoHead(coefficients),
    provenance: 'points',
    head: (flow) => evaluate(coefficients, flow),
    slope: (flow) => evaluate(slope, flow),
  };
}

/** A part that loses k Q^n, in SI. */
export function lossPart(id: string, k: number, exponent: number): CircuitPart {
  const referenceFlow = 1e-3;
  const referenceHead = k * referenceFlow ** exponent;
  return { kind: 'equipment', id, referenceHead, referenceFlow, exponent, factor: 1 };
}
