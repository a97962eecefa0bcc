/** Curves written out: "380 - 0.06 Q - 0.0018 Q^2 at ratio 1, Q in gpm", "z + 0.000775 Q^2". */
import { NotUnderstood } from './given.ts';
import { type KeyUnit, keyUnits } from './keyUnits.ts';

export interface Polynomial {
  /** Coefficient of each power of Q, the constant first. */
  readonly coefficients: readonly number[];
  /** Whether a static head z stands in it, with coefficient 1. */
  readonly hasStaticHead: boolean;
  /** Unit of Q, where the text says it. */
  readonly flowUnit?: KeyUnit;
}

const term = /^(?:(\d*\.?\d+(?:e[-+]?\d+)?)\s*\*?\s*)?(?:(q)(?:\s*(?:\^|\*\*)\s*(\d+))?|(z))?$/i;
const flowUnitText = /,?\s*q in ([a-z0-9/^³]+)/i;
const conditionText =
  /\s+at (?:top|full|reference) speed|\s+at (?:speed )?ratio 1(?:\.0+)?(?![\d.])/i;

/** "m3/h" or "m³/h" as keys spell it. */
export function unitSpelled(text: string): KeyUnit | undefined {
  const spelling = text.trim().toLowerCase().replace('³', '3').replace('^', '').replace('/', '_');
  return keyUnits.get(spelling);
}

function flowUnitIn(text: string): KeyUnit | undefined {
  const [, spelled] = flowUnitText.exec(text) ?? [];
  if (spelled === undefined) return undefined;
  const unit = unitSpelled(spelled);
  if (unit?.dimension !== 'flow') throw new NotUnderstood(`${spelled} is not a unit of flow`);
  return unit;
}

/** Signs split the terms, but not one inside an exponent such as 1e-3. */
function signedTerms(formula: string): readonly (readonly [sign: 1 | -1, body: string])[] {
  return formula
    .replace(/\s*(?<!\de)([-+])\s*/gi, '\n$1')
    .split('\n')
    .filter((part) => part.trim() !== '')
    .map((part) => [part.startsWith('-') ? -1 : 1, part.replace(/^[-+]/, '').trim()] as const);
}

export function parsePolynomial(text: string): Polynomial {
  const flowUnit = flowUnitIn(text);
  const formula = text.replace(flowUnitText, '').replace(conditionText, '').trim();
  const coefficients: number[] = [];
  let hasStaticHead = false;
  for (const [sign, body] of signedTerms(formula)) {
    const [whole, size, flow, power, z] = term.exec(body) ?? [];
    if (!whole) throw new NotUnderstood(`"${text}" is not a curve that can be read`);
    if (z !== undefined) {
      if (size !== undefined || sign < 0) throw new NotUnderstood(`"${text}" multiplies z`);
      hasStaticHead = true;
      continue;
    }
    const degree = flow === undefined ? 0 : Number(power ?? 1);
    coefficients[degree] = (coefficients[degree] ?? 0) + sign * Number(size ?? 1);
  }
  const filled = Array.from(coefficients, (coefficient) => coefficient ?? 0);
  return { coefficients: filled, hasStaticHead, ...(flowUnit ? { flowUnit } : {}) };
}

/** The polynomial with flow [m3/s] and head [m] in place of the units it was written in. */
export function inSI({ coefficients }: Polynomial, flow: KeyUnit, head: KeyUnit): number[] {
  return coefficients.map((each, power) => (each * head.factor) / flow.factor ** power);
}

export function evaluate(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, each) => sum * x + each, 0);
}

export function derivative(coefficients: readonly number[]): number[] {
  return coefficients.slice(1).map((each, index) => each * (index + 1));
}
