import { requireBetween } from '#core/base/errors.ts';
import {
  bandAbout,
  bandDeviations,
  type Estimate,
  estimate,
  varianceOf,
} from '#core/numerics/band.ts';
import { type LinearisedFit, linearisedFit } from './linearisedFit.ts';
import {
  atSpeeds,
  candidatesFrom,
  narrowestOf,
  narrowingsBy,
  type VarianceOf,
} from './nextMeasurement.ts';
import { contradictionsIn } from './padChecks.ts';
import type {
  Narrowing,
  PadBand,
  PadEvidence,
  PadFit,
  PadResidual,
  PadSpread,
  ReadQuantity,
  SettledPad,
} from './padEvidence.ts';
import {
  gaugesIn,
  type PadState,
  padState,
  parameterNames,
  priorDeviations,
  settle,
} from './padModel.ts';
import {
  assumptionsOf,
  type Observation,
  observationsIn,
  typicalPowerFactor,
} from './padReadings.ts';

const answers = ['flow', 'head', 'power'] as const;
type Answer = (typeof answers)[number];
/** Speeds looked at when asking which extra reading helps; more add nothing but time. */
const speedsTried = 5;

/**
 * The most likely circuit, pump curve and wire power of a pad, from whatever is known of it.
 *
 * Law: least weighted squares over eight uncertain numbers (resistance before and after the pump, head and flow of the curve, gauge level, power, fixed draw, power of the flow with which losses beyond the description go), each held weakly to what was described; bands by linear propagation.
 * @param evidence What is known [see PadEvidence], fields as there; readings may be few or none.
 * @param found Where an earlier fit of the very same evidence came to rest [-], any finite numbers; sought when left out.
 * @returns The fitted pad with residuals, contradictions, assumptions, a 95 % band of flow [m3/s], head [m] and power [W] at any speed ratio from 0.05 to 2, and the extra reading that would narrow it most.
 * @throws CoreError when a field is outside its range; readings that contradict are reported as values.
 * Accuracy: first order about the best fit; errors of readings taken as independent; the widths of what is assumed are judgement (see priorSpread); that a circuit which resists no more than described is of the wrong shape is not seen.
 * Source: Bayesian least squares, JCGM 100:2008 for propagation; affinity laws, ANSI/HI 14.6; ASME B40.100 for gauges (from memory); prior widths common practice, no source; a model's own fault as one more uncertain number, Kennedy and O'Hagan 2001 (from memory).
 * @example fitPad({ circuit: { suction: [], discharge: [{ kind: 'equipment', id: 'a', referenceHead: 10, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, curve: { shutoffHead: 20, lastFlow: 0.008, head: (q) => 20 - 4e5 * q * q, slope: (q) => -8e5 * q, provenance: 'threePoints' }, curveKnown: 'dataSheet', readings: [], instruments: { filterGauge: { grade: 'B', span: 4e5 }, vacuumGauge: { grade: 'B', span: 1e5 }, meterShare: 0.1, powerShare: 0.05 } }).dischargeFactor // 1.000
 */
export function fitPad(evidence: PadEvidence, found?: Estimate): PadFit {
  const observations = observationsIn(evidence.readings, evidence.instruments);
  const { parameters, covariance } =
    found ??
    estimate({
      priorDeviations: priorDeviations(evidence),
      measured: observations,
      predict: (trial) => predictionsFor(observations, settle(evidence, trial)),
    });
  const best = settle(evidence, parameters);
  const predicted = predictionsFor(observations, best);
  const residuals = observations.map((one, at) => residualOf(one, predicted[at] as number));
  const spread = { evidence, parameters, covariance };
  const ratios = speedsOfInterest(evidence);
  // Bands and what would narrow them cost as much as the fit, and many a page asks for neither.
  const near = once(() => linearisedFit(spread));
  const narrowing = once(() => narrowings(spread, near(), ratios));
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
    bandAt: (ratio) => bandsAt(spread, near(), ratio),
    bandOf: (answer) => {
      const { best: settled, slopesOf } = near();
      const [slope = []] = slopesOf((pad) => [answer(pad)]);
      return bandAbout(answer(settled), varianceOf(slope, covariance));
    },
    spread,
    get narrowing() {
      return narrowing().together;
    },
    get narrowingOf() {
      return narrowing().alone;
    },
  };
}

/** Worked out when it is first asked for. */
function once<Value>(make: () => Value): () => Value {
  let held: { readonly value: Value } | undefined;
  return () => {
    held ??= { value: make() };
    return held.value;
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

function bandsAt(spread: PadSpread, near: LinearisedFit, ratio: number): PadBand {
  requireBetween('ratio', ratio, 0.05, 2, '');
  const state = near.stateAt(ratio);
  const slopes = near.slopesAt(ratio);
  const band = (answer: Answer) =>
    bandAbout(state[answer], varianceOf(slopes[answer], spread.covariance));
  // A pump found too weak to lift the water may yet do it with its head at the top of its band.
  const flow = state.flow > 0 ? band('flow') : { low: 0, high: flowIfStronger(spread, ratio) };
  return { flow, head: band('head'), power: band('power') };
}

/** Flow if the pump's head were at the top of its band. */
function flowIfStronger({ evidence, parameters, covariance }: PadSpread, ratio: number): number {
  const head = parameterNames.indexOf('head');
  const reach = bandDeviations * Math.sqrt(covariance[head]?.[head] ?? 0);
  const stronger = parameters.map((value, index) => (index === head ? value + reach : value));
  return padState(settle(evidence, stronger), ratio).flow;
}

/** Tries every instrument at a few speeds on the linear system and keeps what narrows most. */
function narrowings(
  spread: PadSpread,
  near: LinearisedFit,
  ratios: readonly number[],
): { together: Narrowing; alone: Record<Answer, Narrowing> } {
  const at = atSpeeds(near, ratios);
  const width = (answer: Answer, variance: VarianceOf) =>
    at.reduce((sum, { values, slopes }) => {
      if (values[answer] === 0) return sum;
      const band = bandAbout(values[answer], variance(slopes[answer]));
      return sum + (band.high - band.low) / values[answer] / at.length;
    }, 0);
  const candidates = candidatesFrom(spread.evidence, at);
  const best = (wanted: readonly Answer[]): Narrowing =>
    narrowestOf(
      narrowingsBy(candidates, spread, (variance) =>
        wanted.reduce((sum, answer) => sum + width(answer, variance) / wanted.length, 0),
      ),
    );
  const alone = { flow: best(['flow']), head: best(['head']), power: best(['power']) };
  return { together: best(answers), alone };
}

function speedsOfInterest({ readings, leastRatio, greatestRatio }: PadEvidence): number[] {
  const least = requireBetween('leastRatio', leastRatio ?? 0.3, 0.05, 1, '');
  const greatest = requireBetween('greatestRatio', greatestRatio ?? 1, least, 2, '');
  const read = readings.map((one) => one.ratio);
  const [from, to] = [Math.min(least, ...read), Math.max(greatest, ...read)];
  return Array.from(
    { length: speedsTried },
    (_, at) => from + ((to - from) * at) / (speedsTried - 1),
  );
}
