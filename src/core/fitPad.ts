import {
  bandAbout,
  bandDeviations,
  estimate,
  slopesAround,
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
/** One value for each thing that can be shown or asked. */
type Row<Value> = Readonly<Record<Answer | Exclude<ReadQuantity, 'apparentPower'>, Value>>;

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
  const { parameters, covariance } = estimate({
    priorDeviations: priorDeviations(evidence),
    measured: observations,
    predict: (trial) => predictionsFor(observations, settle(evidence, trial)),
  });
  const best = settle(evidence, parameters);
  const predicted = predictionsFor(observations, best);
  const residuals = observations.map((one, at) => residualOf(one, predicted[at] as number));
  const fitted = neighbourhoodOf(evidence, parameters, covariance);
  const narrowing = narrowings(evidence, fitted);
  return {
    circuit: best.circuit,
    curve: best.curve,
    power: best.power,
    suctionFactor: best.suctionFactor,
    dischargeFactor: best.dischargeFactor,
    residuals,
    contradictions: contradictionsIn(evidence, residuals, (ratio) => padState(best, ratio).flow),
    assumptions: assumptionsOf(evidence),
    powerFactors: powerFactorsIn(evidence),
    bandAt: (ratio) => bandsAt(fitted, ratio),
    narrowing: narrowing.together,
    narrowingOf: narrowing.alone,
  };
}

function predictionsFor(observations: readonly Observation[], pad: SettledPad): number[] {
  const states = new Map<number, PadState>();
  return observations.map(({ quantity, reading: { ratio, gaugeHeight = 0 } }) => {
    const state = states.get(ratio) ?? padState(pad, ratio);
    states.set(ratio, state);
    return shown(pad, state, quantity, gaugeHeight);
  });
}

/** What an instrument should show in a state of the pad. */
function shown(
  pad: SettledPad,
  state: PadState,
  quantity: ReadQuantity,
  gaugeHeight: number,
): number {
  switch (quantity) {
    case 'flow':
    case 'power':
      return state[quantity];
    case 'apparentPower':
      return state.power / typicalPowerFactor;
    default:
      return gaugesIn(pad, state, gaugeHeight)[quantity];
  }
}

/** The best fit with all that a small change of it would do. */
interface Neighbourhood {
  readonly covariance: Covariance;
  stateAt(ratio: number): PadState;
  valuesAt(ratio: number): Row<number>;
  slopesAt(ratio: number): Row<number[]>;
  /** Flow if the pump's head were at the top of its band. */
  flowIfStronger(ratio: number): number;
}

function neighbourhoodOf(
  evidence: PadEvidence,
  parameters: Parameters,
  covariance: Covariance,
): Neighbourhood {
  const best = settle(evidence, parameters);
  const slopes = slopesAround((trial) => settle(evidence, trial), parameters);
  return {
    covariance,
    stateAt: (ratio) => padState(best, ratio),
    valuesAt: (ratio) => rowOf(allShown(best, ratio)),
    slopesAt: (ratio) => rowOf(slopes((pad) => allShown(pad, ratio))),
    flowIfStronger: (ratio) => {
      const head = parameterNames.indexOf('head');
      const reach = bandDeviations * Math.sqrt(covariance[head]?.[head] ?? 0);
      const stronger = parameters.map((value, index) => (index === head ? value + reach : value));
      return padState(settle(evidence, stronger), ratio).flow;
    },
  };
}

function allShown(pad: SettledPad, ratio: number): number[] {
  const state = padState(pad, ratio);
  const { dischargePressure, suctionVacuum } = gaugesIn(pad, state, 0);
  return [state.flow, state.head, state.power, dischargePressure, suctionVacuum];
}

function rowOf<Value>(values: readonly Value[]): Row<Value> {
  const [flow, head, power, dischargePressure, suctionVacuum] = values as [
    Value,
    Value,
    Value,
    Value,
    Value,
  ];
  return { flow, head, power, dischargePressure, suctionVacuum };
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

function bandsAt(fitted: Neighbourhood, ratio: number): PadBand {
  requireBetween('ratio', ratio, 0.05, 2, '-');
  const state = fitted.stateAt(ratio);
  const slopes = fitted.slopesAt(ratio);
  const band = (answer: Answer) =>
    bandAbout(state[answer], varianceOf(slopes[answer], fitted.covariance));
  // A pump found too weak to lift the water may yet do it with its head at the top of its band.
  const flow = state.flow > 0 ? band('flow') : { low: 0, high: fitted.flowIfStronger(ratio) };
  return { flow, head: band('head'), power: band('power') };
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
  fitted: Neighbourhood,
): { together: Narrowing; alone: Record<Answer, Narrowing> } {
  const { covariance } = fitted;
  const at = speedsOfInterest(evidence).map((ratio) => ({
    ratio,
    values: fitted.valuesAt(ratio),
    slopes: fitted.slopesAt(ratio),
  }));
  const width = (answer: Answer, variance: (slope: number[]) => number) =>
    at.reduce((sum, { values, slopes }) => {
      if (values[answer] === 0) return sum;
      const band = bandAbout(values[answer], variance(slopes[answer]));
      return sum + (band.high - band.low) / values[answer] / at.length;
    }, 0);
  const candidates = candidatesFrom(evidence, at);
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
function candidatesFrom(
  evidence: PadEvidence,
  at: readonly { ratio: number; values: Row<number>; slopes: Row<number[]> }[],
): Candidate[] {
  const all = at.flatMap(({ ratio, values, slopes }) =>
    instruments.map((instrument) => {
      const quantity = quantityOf[instrument];
      const deviation = readingDeviation(quantity, values[quantity], evidence.instruments);
      return { instrument, ratio, slope: slopes[quantity], deviation };
    }),
  );
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
