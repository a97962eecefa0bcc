import {
  bandAbout,
  bandDeviations,
  estimate,
  slopesOf,
  varianceAfter,
  varianceOf,
} from './band.ts';
import { requireBetween } from './errors.ts';
import { contradictionsIn } from './padChecks.ts';
import type {
  Instrument,
  Narrowing,
  PadBand,
  PadEvidence,
  PadFit,
  PadResidual,
  ReadQuantity,
} from './padEvidence.ts';
import {
  gaugesIn,
  type PadState,
  padState,
  parameterNames,
  priorDeviations,
  type SettledPad,
  settle,
} from './padModel.ts';
import {
  assumptionsOf,
  type Observation,
  observationsIn,
  readingDeviation,
  typicalPowerFactor,
} from './padReadings.ts';

const answers = ['flow', 'head', 'power'] as const;
type Answer = (typeof answers)[number];
type Parameters = readonly number[];
type Covariance = readonly Parameters[];

const quantityOf: Readonly<Record<Instrument, Exclude<ReadQuantity, 'apparentPower'>>> = {
  flowMeter: 'flow',
  filterGauge: 'dischargePressure',
  vacuumGauge: 'suctionVacuum',
  wattMeter: 'power',
};
const instruments = Object.keys(quantityOf) as Instrument[];

/** Speeds looked at when asking which extra reading helps; more add nothing but time. */
const speedsTried = 5;

/**
 * The most likely circuit, pump curve and wire power of a pad, from whatever is known of it.
 *
 * Law: least weighted squares over seven uncertain numbers (resistance before and after the pump, head and flow of the curve, gauge level, power, fixed draw), each held weakly to what was described; bands by linear propagation.
 * @param evidence What is known [see PadEvidence], fields as there; readings may be few or none.
 * @returns The fitted pad with residuals, contradictions, assumptions, a 95 % band of flow [m3/s], head [m] and power [W] at any speed ratio from 0.05 to 2, and the extra reading that would narrow it most.
 * @throws CoreError when a field is outside its range; readings that contradict are reported as values.
 * Accuracy: first order about the best fit; errors of readings taken as independent; the widths of what is assumed are judgement (see priorSpread).
 * Source: Bayesian least squares, JCGM 100:2008 for propagation; affinity laws, ANSI/HI 14.6; ASME B40.100 for gauges (from memory); prior widths common practice, no source.
 * @example fitPad({ circuit: { suction: [], discharge: [{ kind: 'equipment', id: 'a', referenceHead: 10, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, curve: { shutoffHead: 20, lastFlow: 0.008, head: (q) => 20 - 4e5 * q * q, slope: (q) => -8e5 * q, provenance: 'threePoints' }, curveKnown: 'dataSheet', readings: [], instruments: { filterGauge: { grade: 'B', span: 4e5 }, vacuumGauge: { grade: 'B', span: 1e5 }, meterShare: 0.1, powerShare: 0.05 } }).dischargeFactor // 1.000
 */
export function fitPad(evidence: PadEvidence): PadFit {
  const observations = observationsIn(evidence.readings, evidence.instruments);
  const model = modelOf(evidence);
  const { parameters, covariance } = estimate({
    priorDeviations: priorDeviations(evidence),
    measured: observations,
    predict: (trial) =>
      observations.map((one) =>
        shown(model.padAt(trial), model.stateAt(trial, one.reading.ratio), one),
      ),
  });
  const best = model.padAt(parameters);
  const residuals = observations.map((one) =>
    residualOf(one, shown(best, model.stateAt(parameters, one.reading.ratio), one)),
  );
  const narrowing = narrowings(evidence, model, parameters, covariance);
  return {
    circuit: best.circuit,
    curve: best.curve,
    power: best.power,
    suctionFactor: best.suctionFactor,
    dischargeFactor: best.dischargeFactor,
    residuals,
    contradictions: contradictionsIn(
      evidence,
      residuals,
      (ratio) => model.stateAt(parameters, ratio).flow,
    ),
    assumptions: assumptionsOf(evidence),
    powerFactors: powerFactorsIn(evidence),
    bandAt: bandsOf(model, parameters, covariance),
    narrowing: narrowing.together,
    narrowingOf: narrowing.alone,
  };
}

interface Model {
  padAt(parameters: Parameters): SettledPad;
  stateAt(parameters: Parameters, ratio: number): PadState;
}

/** The same trial pads and speeds come up again and again; each is worked out once. */
function modelOf(evidence: PadEvidence): Model {
  const pads = new Map<string, { pad: SettledPad; states: Map<number, PadState> }>();
  const entry = (parameters: Parameters) => {
    const key = parameters.join(' ');
    const known = pads.get(key) ?? { pad: settle(evidence, parameters), states: new Map() };
    pads.set(key, known);
    return known;
  };
  return {
    padAt: (parameters) => entry(parameters).pad,
    stateAt: (parameters, ratio) => {
      const { pad, states } = entry(parameters);
      const state = states.get(ratio) ?? padState(pad, ratio);
      states.set(ratio, state);
      return state;
    },
  };
}

/** What an instrument should show in a state of the pad. */
function shown(
  pad: SettledPad,
  state: PadState,
  { quantity, reading }: Pick<Observation, 'quantity' | 'reading'>,
): number {
  switch (quantity) {
    case 'flow':
    case 'power':
      return state[quantity];
    case 'apparentPower':
      return state.power / typicalPowerFactor;
    default:
      return gaugesIn(pad, state, reading.gaugeHeight ?? 0)[quantity];
  }
}

function residualOf(
  { reading, quantity, value, deviation }: Observation,
  predicted: number,
): PadResidual {
  const residual = value - predicted;
  return {
    id: reading.id,
    quantity,
    measured: value,
    predicted,
    residual,
    deviations: residual / deviation,
  };
}

function powerFactorsIn({ readings }: PadEvidence): { id: string; powerFactor: number }[] {
  return readings.flatMap(({ id, power, current, voltage }) =>
    power === undefined || current === undefined || voltage === undefined
      ? []
      : [{ id, powerFactor: power / (voltage * current) }],
  );
}

function bandsOf(model: Model, parameters: Parameters, covariance: Covariance) {
  return (ratio: number): PadBand => {
    requireBetween('ratio', ratio, 0.05, 2, '-');
    const state = model.stateAt(parameters, ratio);
    const slopes = answerSlopes(model, parameters, ratio);
    const band = (answer: Answer) =>
      bandAbout(state[answer], varianceOf(slopes[answer], covariance));
    const flow =
      state.flow > 0 ? band('flow') : flowIfStronger(model, parameters, covariance, ratio);
    return { flow, head: band('head'), power: band('power') };
  };
}

/** A pump found too weak to lift the water may yet do it if its head is at the top of its band. */
function flowIfStronger(
  model: Model,
  parameters: Parameters,
  covariance: Covariance,
  ratio: number,
): PadBand['flow'] {
  const head = parameterNames.indexOf('head');
  const reach = bandDeviations * Math.sqrt(covariance[head]?.[head] ?? 0);
  const stronger = parameters.map((value, index) => (index === head ? value + reach : value));
  return { low: 0, high: model.stateAt(stronger, ratio).flow };
}

function answerSlopes(
  model: Model,
  parameters: Parameters,
  ratio: number,
): Record<Answer, number[]> {
  const [flow, head, power] = slopesOf((trial) => {
    const state = model.stateAt(trial, ratio);
    return answers.map((answer) => state[answer]);
  }, parameters) as [number[], number[], number[]];
  return { flow, head, power };
}

interface Candidate {
  readonly instrument: Instrument;
  readonly ratio: number;
  readonly slope: number[];
  readonly deviation: number;
}

/** Tries every instrument at a few speeds on the linear system and keeps what narrows most. */
function narrowings(
  evidence: PadEvidence,
  model: Model,
  parameters: Parameters,
  covariance: Covariance,
): { together: Narrowing; alone: Record<Answer, Narrowing> } {
  const ratios = speedsOfInterest(evidence);
  const at = ratios.map((ratio) => ({
    state: model.stateAt(parameters, ratio),
    slopes: answerSlopes(model, parameters, ratio),
  }));
  const width = (answer: Answer, variance: (slope: number[]) => number) =>
    at.reduce((sum, { state, slopes }) => {
      if (state[answer] === 0) return sum;
      const band = bandAbout(state[answer], variance(slopes[answer]));
      return sum + (band.high - band.low) / state[answer] / at.length;
    }, 0);
  const candidates = candidatesFor(evidence, model, parameters, ratios);
  const best = (wanted: readonly Answer[]): Narrowing => {
    const mean = (variance: (slope: number[]) => number) =>
      wanted.reduce((sum, answer) => sum + width(answer, variance) / wanted.length, 0);
    const widthBefore = mean((slope) => varianceOf(slope, covariance));
    const tried = candidates.map(({ instrument, ratio, slope, deviation }) => ({
      instrument,
      ratio,
      widthBefore,
      widthAfter: mean((answer) => varianceAfter(answer, slope, deviation, covariance)),
    }));
    return tried.reduce((one, other) => (other.widthAfter < one.widthAfter ? other : one));
  };
  const alone = { flow: best(['flow']), head: best(['head']), power: best(['power']) };
  return { together: best(answers), alone };
}

/** Every instrument at every speed tried, save what was read there already. */
function candidatesFor(
  evidence: PadEvidence,
  model: Model,
  parameters: Parameters,
  ratios: readonly number[],
): Candidate[] {
  const all = ratios.flatMap((ratio) => {
    const reading = { id: '', ratio };
    const show = (trial: Parameters) =>
      instruments.map((instrument) =>
        shown(model.padAt(trial), model.stateAt(trial, ratio), {
          quantity: quantityOf[instrument],
          reading,
        }),
      );
    const values = show(parameters);
    const slopes = slopesOf(show, parameters);
    return instruments.map((instrument, index) => ({
      instrument,
      ratio,
      slope: slopes[index] as number[],
      deviation:
        readingDeviation(quantityOf[instrument], values[index] as number, evidence.instruments) ||
        Number.MIN_VALUE,
    }));
  });
  const fresh = all.filter((one) => !alreadyRead(evidence, one));
  return fresh.length > 0 ? fresh : all;
}

function alreadyRead({ readings }: PadEvidence, { instrument, ratio }: Candidate): boolean {
  return readings.some(
    (one) => one[quantityOf[instrument]] !== undefined && Math.abs(one.ratio / ratio - 1) < 0.02,
  );
}

function speedsOfInterest({ readings, leastRatio, greatestRatio }: PadEvidence): number[] {
  const least = requireBetween('leastRatio', leastRatio ?? 0.3, 0.05, 1, '-');
  const greatest = requireBetween('greatestRatio', greatestRatio ?? 1, least, 2, '-');
  const read = readings.map((one) => one.ratio);
  const [from, to] = [Math.min(least, ...read), Math.max(greatest, ...read)];
  return Array.from(
    { length: speedsTried },
    (_, at) => from + ((to - from) * at) / (speedsTried - 1),
  );
}
