import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import type { Water } from '#core/water/water.ts';

/** Flow at the best point over the end of the curve's data; common practice, no source. */
const bestFlowShare = 1 / 1.4;
/** Share of the loss that lies before the pump; common practice, no source. */
const suctionShare = 0.2;

/**
 * The circuit to assume where no pipes are described: one that lets the pump run at its best point,
 * with the loss rising as the square of the flow.
 */
export function typicalCircuit(curve: PumpCurve, staticHead: number, water: Water): Circuit {
  const referenceFlow = curve.lastFlow * bestFlowShare;
  const head = Math.max(curve.head(referenceFlow) - staticHead, 0.05 * curve.shutoffHead);
  const lump = (id: string, share: number): CircuitPart => ({
    kind: 'equipment',
    id,
    referenceHead: head * share,
    referenceFlow,
    exponent: 2,
    factor: 1,
  });
  return {
    suction: [lump('assumed-suction', suctionShare)],
    discharge: [lump('assumed-discharge', 1 - suctionShare)],
    staticHead,
    water,
  };
}
