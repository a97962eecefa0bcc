/** Invented pads with a loss that their description lacks, and what instruments show on them. */
import { randomLcg, randomNormal, randomUniform } from 'd3-random';
import { fitPad } from '#core/fit/fitPad.ts';
import { gaugeTolerance } from '#core/fit/gauges.ts';
import type { Reading } from '#core/fit/padEvidence.ts';
import { type SettledPad, typicalInstruments } from '#core/fit/padEvidence.ts';
import { gaugesIn, padState, settle } from '#core/fit/padModel.ts';
import { scaleCircuit } from '#core/fit/resistance.ts';
import { systemHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { type PumpCurve, pumpFromPowerLaw } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';

/** Which instruments are read. */
export const settings = {
  'meter and gauges': ['flow', 'dischargePressure', 'suctionVacuum', 'power'],
  'meter only': ['flow', 'power'],
  'gauges only': ['dischargePressure', 'suctionVacuum', 'power'],
} as const;
export type Setting = keyof typeof settings;

export const answersAsked = ['flow', 'head', 'power'] as const;
export const ratiosAsked = [1, 0.85, 0.7, 0.55, 0.4] as const;

export type Answer = (typeof answersAsked)[number];
type Tally = { held: number; widths: number[] };
/** One tally for each answer at each of the speeds asked. */
type Held = Record<Answer, readonly Tally[]>;

interface Draw {
  readonly between: (least: number, greatest: number) => number;
  readonly normal: () => number;
}

function drawOf(seed: number): Draw {
  const source = randomLcg(seed);
  const uniform = randomUniform.source(source)(0, 1);
  const normal = randomNormal.source(source)(0, 1);
  return { between: (least, greatest) => least + (greatest - least) * uniform(), normal };
}

function describedBy(draw: Draw): Circuit {
  const bore = draw.between(0.045, 0.065);
  const pipe = (id: string, length: number): CircuitPart => ({
    kind: 'pipe',
    id,
    bore,
    length,
    roughness: 1.5e-6,
  });
  return {
    suction: [
      pipe('suction', draw.between(5, 18)),
      { kind: 'fitting', id: 'elbows', k: draw.between(1, 4), bore },
    ],
    discharge: [
      {
        kind: 'equipment',
        id: 'filter',
        referenceHead: draw.between(1, 5),
        referenceFlow: 0.004,
        exponent: draw.between(1.2, 2),
        factor: 1,
      },
      pipe('return', draw.between(12, 45)),
      { kind: 'fitting', id: 'inlets', k: draw.between(3, 9), bore },
    ],
    staticHead: 0,
    water: water(26),
  };
}

/** Powers of the flow that a loss which nobody described goes with: a valve's, or anything that water does. */
export const hiddenPowers = { square: [2, 2], any: [1, 2], none: undefined } as const;
export type Hidden = keyof typeof hiddenPowers;

/** A loss of 10 to 60 % of what its side loses at 4 L/s. */
function hiddenPart(
  draw: Draw,
  sideLoss: number,
  [least, most]: readonly [number, number],
): CircuitPart {
  return {
    kind: 'equipment',
    id: 'hidden',
    referenceHead: sideLoss * draw.between(0.1, 0.6),
    referenceFlow: 0.004,
    exponent: draw.between(least, most),
    factor: 1,
  };
}

/**
 * A centrifugal pump's head falls ever faster with the flow, so its H = A - B Q^C has a C above 1; up
 * to 2.5, common practice, no source. Points drawn one by one can fall fastest at first, which none does.
 */
function pumpOf(draw: Draw): PumpCurve {
  const [a, last, c] = [draw.between(18, 26), draw.between(6, 10), draw.between(1.2, 2.5)];
  return pumpFromPowerLaw({ a, b: (a - last) / 0.0075 ** c, c }, 0.0075);
}

/** Whether the bands of a pad hold the truth, for every answer and speed. */
function bandsOfPad(seed: number, setting: Setting, hidden: Hidden, into: Held): void {
  const draw = drawOf((seed * 0.618_033_988_749) % 1);
  const circuit = describedBy(draw);
  const curve = pumpOf(draw);
  const evidence = {
    circuit,
    curve,
    curveKnown: 'dataSheet' as const,
    readings: [] as Reading[],
    instruments: typicalInstruments,
  };
  // The pump, the power and the level of the gauge are off by what is believed of a data sheet.
  const off = [0, 0, 0.025, 0.04, 0.1, 0.2, 0.2].map((spread) => spread * draw.normal());
  const side = draw.between(0, 1) < 0.35 ? 'suction' : 'discharge';
  const truth = scaleCircuit(circuit, Math.exp(0.1 * draw.normal()), Math.exp(0.1 * draw.normal()));
  const powers = hiddenPowers[hidden];
  const part = hiddenPart(draw, lossOf(circuit, side), powers ?? [1, 2]);
  const whole = powers === undefined ? truth : { ...truth, [side]: [...truth[side], part] };
  const pad: SettledPad = settle({ ...evidence, circuit: whole }, off);
  const count = 1 + Math.floor(draw.between(0, 3));
  const speeds = Array.from({ length: count }, () => draw.between(0.45, 1));
  const { filterGauge, vacuumGauge, meterShare, powerShare } = typicalInstruments;
  const wanted: readonly string[] = settings[setting];
  evidence.readings = speeds.map((ratio, at): Reading => {
    const state = padState(pad, ratio);
    const shown = gaugesIn(pad, state, 0);
    // An accuracy is a 95 % limit, so half of it is a standard deviation (JCGM 100:2008).
    const read = (value: number, limit: number) => value + (limit / 2) * draw.normal();
    const all = {
      flow: read(state.flow, meterShare * state.flow),
      dischargePressure: read(
        shown.dischargePressure,
        gaugeTolerance(filterGauge, shown.dischargePressure),
      ),
      suctionVacuum: read(
        shown.suctionVacuum,
        gaugeTolerance(vacuumGauge, Math.abs(shown.suctionVacuum)),
      ),
      power: read(state.power, powerShare * state.power),
    };
    const taken = Object.entries(all).filter(([name]) => wanted.includes(name));
    return { id: `r${at}`, ratio, ...Object.fromEntries(taken) };
  });
  const fit = fitPad(evidence);
  ratiosAsked.forEach((ratio, at) => {
    const band = fit.bandAt(ratio);
    const state = padState(pad, ratio);
    for (const answer of answersAsked) {
      const { low, high } = band[answer];
      const tally = into[answer][at] as Tally;
      if (low <= state[answer] && state[answer] <= high) tally.held += 1;
      tally.widths.push((high - low) / state[answer]);
    }
  });
}

/** Loss of a side of a circuit at 4 L/s [m]. */
function lossOf(circuit: Circuit, side: 'suction' | 'discharge'): number {
  return systemHead({ ...circuit, suction: [], discharge: [], [side]: circuit[side] }, 0.004);
}

/** How often the bands of so many pads hold the truth, and how wide they are in the mean, at each speed. */
export function coverage(setting: Setting, pads: number, hidden: Hidden) {
  const fresh = () => ratiosAsked.map(() => ({ held: 0, widths: [] as number[] }));
  const held: Held = { flow: fresh(), head: fresh(), power: fresh() };
  for (let seed = 1; seed <= pads; seed += 1) bandsOfPad(seed, setting, hidden, held);
  return answersAsked.flatMap((answer) =>
    held[answer].map(({ held: kept, widths }, at) => ({
      answer,
      ratio: ratiosAsked[at] as number,
      share: kept / pads,
      width: widths.reduce((sum, width) => sum + width, 0) / pads,
    })),
  );
}
