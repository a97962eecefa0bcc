import type { PadEvidence, Reading } from '#core/fit/padEvidence.ts';
import { typicalInstruments } from '#core/fit/padEvidence.ts';
import { gaugesIn, padState, settle } from '#core/fit/padModel.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { pumpFromThreePoints } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';

/** An invented pad: 63 mm suction, 50 mm return, a filter; no source, for tests only. */
export const circuit: Circuit = {
  suction: [
    { kind: 'pipe', id: 'suction', bore: 0.057, length: 9, roughness: 1.5e-6 },
    { kind: 'fitting', id: 'elbows', k: 2.4, bore: 0.057 },
  ],
  discharge: [
    {
      kind: 'equipment',
      id: 'filter',
      referenceHead: 3,
      referenceFlow: 0.004,
      exponent: 2,
      factor: 1,
    },
    { kind: 'pipe', id: 'return', bore: 0.0454, length: 25, roughness: 1.5e-6 },
    { kind: 'fitting', id: 'inlets', k: 5, bore: 0.0454 },
  ],
  staticHead: 0,
  water: water(26),
};

/** The invented pump of that pad. */
export const curve = pumpFromThreePoints([
  { flow: 0, head: 22 },
  { flow: 0.004, head: 18 },
  { flow: 0.0065, head: 11 },
]);

/** What is known before anything is read. */
export function evidenceOf(
  readings: readonly Reading[],
  more: Partial<PadEvidence> = {},
): PadEvidence {
  return {
    circuit,
    curve,
    curveKnown: 'dataSheet',
    readings,
    instruments: typicalInstruments,
    ...more,
  };
}

/** What flawless instruments would show on a pad whose uncertain numbers are these. */
export function trueReading(
  parameters: readonly number[],
  ratio: number,
  evidence = evidenceOf([]),
) {
  const pad = settle(evidence, parameters);
  const state = padState(pad, ratio);
  return { ...state, ...gaugesIn(pad, state, 0) };
}
