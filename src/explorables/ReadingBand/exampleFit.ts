/** The fit of the example, by the core alone. Fetched when the picture wakes. */
import { fitPad } from '#core/fit/fitPad.ts';
import { type PadEvidence, type Reading, typicalInstruments } from '#core/fit/padEvidence.ts';
import { demoCircuit, demoCurve, speeds } from '#explorables/example/demo.ts';
import { examplePad, slipped } from './example.ts';
import { fitterFrom } from './fitting.ts';
import type { Chosen, Fitter, NoteLine, NotePad } from './pad.ts';

const reference = speeds.rated;

function readingOf(line: NoteLine, { gauges, slip }: Chosen): Reading {
  const power = slip && line.id === slipped.id ? slipped.power : line.power;
  return {
    id: line.id,
    ratio: line.speed / reference,
    power,
    ...(gauges ? { dischargePressure: line.pressure } : {}),
  };
}

/** What is known of the pad beside its readings: its pipes and its pump's sheet. */
const described: Omit<PadEvidence, 'readings'> = {
  circuit: demoCircuit,
  curve: demoCurve,
  curveKnown: 'dataSheet',
  instruments: typicalInstruments,
  leastRatio: speeds.slowest / reference,
  greatestRatio: 1,
};

/** Fits any notes taken on the described pad. */
export function fitterOf(pad: NotePad): Fitter {
  return fitterFrom({
    pad,
    reference,
    fitOf: (chosen) => {
      const used = pad.lines.filter(({ id }) => chosen.ids.includes(id));
      return fitPad({ ...described, readings: used.map((line) => readingOf(line, chosen)) });
    },
  });
}

export const exampleFitter: Fitter = fitterOf(examplePad);
