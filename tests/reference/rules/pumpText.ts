/** Pump and system curves that a case writes out as polynomials. */
import type { CircuitPart } from '#core/hydraulics/circuitParts.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import { type Given, NotUnderstood } from '../given.ts';
import { bare, type KeyUnit, keyUnits } from '../keyUnits.ts';
import { derivative, evaluate, inSI, type Polynomial, parsePolynomial } from '../polynomial.ts';

/** The trade's pairs: feet go with gallons a minute, metres with cubic metres an hour. */
function usualFlowUnit(head: KeyUnit): KeyUnit | undefined {
  return keyUnits.get(head === keyUnits.get('ft') ? 'gpm' : 'm3_h');
}

/** As the text says, as the answer is wanted, or as usual with the unit of head. */
export function flowUnitOf(given: Given, text: Polynomial, head: KeyUnit): KeyUnit {
  const wanted = given.expectedUnit('flow', 'flowLow', 'flowHigh');
  const unit = text.flowUnit ?? wanted ?? usualFlowUnit(head);
  if (unit === undefined) throw new NotUnderstood('the unit of flow in the curve is not stated');
  return unit;
}

function headUnitOf(given: Given, id: string): KeyUnit {
  const unit = given.key(id)?.unit;
  if (unit === undefined || unit === bare) throw new NotUnderstood('the unit of head is missing');
  return unit;
}

/** Coefficients in SI of the curve under an id. */
export function curveText(given: Given, id: string): readonly number[] {
  const polynomial = parsePolynomial(given.text(id));
  const head = headUnitOf(given, id);
  return inSI(polynomial, flowUnitOf(given, polynomial, head), head);
}

/** A falling polynomial as a pump curve. It states no end of data, so none is ever passed. */
export function polynomialPump(coefficients: readonly number[]): PumpCurve {
  const shutoffHead = coefficients[0] ?? 0;
  const slope = derivative(coefficients);
  const end = flowAtNoHead(coefficients);
  return {
    shutoffHead,
    lastFlow: end,
    provenance: 'points',
    head: (flow) => evaluate(coefficients, flow),
    slope: (flow) => evaluate(slope, flow),
  };
}

/** Where the curve has fallen to nothing, by halving. */
function flowAtNoHead(coefficients: readonly number[]): number {
  let high = 1e-4;
  while (evaluate(coefficients, high) > 0 && high < 1e3) high *= 2;
  let low = 0;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (evaluate(coefficients, middle) > 0) low = middle;
    else high = middle;
  }
  return high;
}

/** A system curve, z + sum of k Q^n with n from 1 to 2, as parts of a circuit. */
export function systemParts(given: Given): {
  readonly parts: readonly CircuitPart[];
  readonly staticHead: number;
} {
  const { hasStaticHead } = parsePolynomial(given.text('systemHead'));
  const [constant = 0, ...others] = curveText(given, 'systemHead');
  const parts = others.flatMap((k, index): readonly CircuitPart[] =>
    k === 0 ? [] : [lossPart(`term ${index + 1}`, k, index + 1)],
  );
  const z = hasStaticHead ? given.number('staticHead') : 0;
  if (!hasStaticHead && given.has('staticHead') && given.number('staticHead') !== constant) {
    throw new NotUnderstood('the static head is stated in two ways that differ');
  }
  return { parts, staticHead: z + constant };
}

/** A part that loses k Q^n, in SI. */
export function lossPart(id: string, k: number, exponent: number): CircuitPart {
  const referenceFlow = 1e-3;
  return {
    kind: 'equipment',
    id,
    referenceHead: k * referenceFlow ** exponent,
    referenceFlow,
    exponent,
    factor: 1,
  };
}
