/**
 * How sure an answer is: the doubt left by a fit, carried on to anything that can be asked of a pad,
 * by slopes and by trial pads.
 */
import { randomLcg, randomNormal } from 'd3-random';
import { CoreError } from '#core/base/errors.ts';
import { linearisedFit, type PadAnswers } from '#core/fit/linearisedFit.ts';
import {
  atSpeeds,
  candidatesFrom,
  narrowestOf,
  narrowingsBy,
  type VarianceOf,
  varianceWith,
} from '#core/fit/nextMeasurement.ts';
import type { Narrowing, PadSpread, SettledPad } from '#core/fit/padEvidence.ts';
import { settle } from '#core/fit/padModel.ts';
import { type Band, bandAbout, bandDeviations, varianceOf } from '#core/numerics/band.ts';

/** How a value and its variance [unit of the value squared] become a band. */
export type BandLaw = (value: number, variance: number) => Band;

/** A reading that would narrow some answers, with the bands it would leave. */
export interface AnswerNarrowing extends Narrowing {
  /** 95 % band of each answer once the reading is taken, in the order of the answers. */
  readonly bands: readonly Band[];
}

/** A fit that can be asked how sure an answer is. */
export interface Uncertainty {
  /** The most likely pad. */
  readonly best: SettledPad;
  /** Every pad that slopes are taken from, the best first: answers that cost much can be worked out beforehand. */
  readonly pads: readonly SettledPad[];
  /** 95 % band of each answer by linear propagation. */
  bandsOf(answers: PadAnswers, law?: BandLaw): readonly Band[];
  /** For each instrument the speed at which one more reading would narrow the answers most, the best first. */
  narrowingsFor(
    answers: PadAnswers,
    ratios: readonly number[],
    law?: BandLaw,
  ): readonly AnswerNarrowing[];
}

/**
 * What a fit says of how sure an answer is, and of what would make it surer.
 *
 * Law: variance = g' S g, g the slope of the answer by each uncertain number, S the covariance of the fit; after one more reading as varianceAfter; width = mean of (high - low)/|value|.
 * @param spread Where the fit came to rest [see PadSpread], fields as there.
 * @returns The most likely pad, 95 % bands [unit of each answer], and readings that would narrow them; an answer of 0 counts as no width.
 * @throws whatever the answers throw; CoreError when the spread breaks its own contract.
 * Accuracy: first order about the best fit; monteCarloSamples shows how far that carries.
 * Source: JCGM 100:2008 (GUM), equation 13, for propagation; Gauss-Markov update for the reading.
 * @example uncertaintyOf({ evidence: { circuit: { suction: [], discharge: [{ kind: 'equipment', id: 'a', referenceHead: 10, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, curve: { shutoffHead: 20, lastFlow: 0.008, head: (q) => 20 - 4e5 * q * q, slope: (q) => -8e5 * q, provenance: 'threePoints' }, curveKnown: 'dataSheet', readings: [], instruments: { filterGauge: { grade: 'B', span: 4e5 }, vacuumGauge: { grade: 'B', span: 1e5 }, meterShare: 0.1, powerShare: 0.05 } }, parameters: [0, 0, 0, 0, 0, 0, 0], covariance: [0, 1, 2, 3, 4, 5, 6].map((row) => [0, 1, 2, 3, 4, 5, 6].map((col) => (row === col ? 0.01 : 0))) }).bandsOf((pad) => [100 * pad.suctionFactor])[0].high // 121.65
 */
export function uncertaintyOf(spread: PadSpread): Uncertainty {
  const near = linearisedFit(spread);
  const variance: VarianceOf = (slope) => varianceOf(slope, spread.covariance);
  const bands = (values: readonly number[], slopes: number[][], of: VarianceOf, law: BandLaw) =>
    values.map((value, at) => law(value, of(slopes[at] as number[])));
  return {
    best: near.best,
    pads: [near.best, ...padsAround(near.slopesOf)],
    bandsOf: (answers, law = bandAbout) =>
      bands(answers(near.best), near.slopesOf(answers), variance, law),
    narrowingsFor: (answers, ratios, law = bandAbout) => {
      const values = answers(near.best);
      const slopes = near.slopesOf(answers);
      const candidates = candidatesFrom(spread.evidence, atSpeeds(near, ratios));
      const widthOf = (of: VarianceOf) => meanWidth(values, bands(values, slopes, of, law));
      const tried = narrowingsBy(candidates, spread, widthOf).map((narrowing, at) => ({
        ...narrowing,
        candidate: candidates[at] as (typeof candidates)[number],
      }));
      const instruments = new Set(tried.map(({ instrument }) => instrument));
      return [...instruments]
        .map((name) => narrowestOf(tried.filter(({ instrument }) => instrument === name)))
        .sort((one, other) => one.widthAfter - other.widthAfter)
        .map(({ candidate, ...narrowing }) => ({
          ...narrowing,
          bands: bands(values, slopes, varianceWith(candidate, spread.covariance), law),
        }));
    },
  };
}

function padsAround(slopesOf: (answers: PadAnswers) => unknown): readonly SettledPad[] {
  const seen: SettledPad[] = [];
  slopesOf((pad) => {
    seen.push(pad);
    return [];
  });
  return seen;
}

function meanWidth(values: readonly number[], bands: readonly Band[]): number {
  return values.reduce((sum, value, at) => {
    const { low, high } = bands[at] as Band;
    return value === 0 ? sum : sum + (high - low) / Math.abs(value) / values.length;
  }, 0);
}

/**
 * Band that holds 95 % about an answer of either sign.
 *
 * Law: value +- 1.96 sd.
 * @param value The answer [-], in any unit, any finite number.
 * @param variance Its variance [-], in that unit squared, 0 or more.
 * @returns Band in the unit of the answer; its lower end may be negative.
 * @throws nothing.
 * Accuracy: normal law; first order in the deviation.
 * Source: JCGM 100:2008 (GUM), 6.2, with the factor of the normal law.
 * @example evenBandAbout(-100, 25).low // -109.80
 */
export function evenBandAbout(value: number, variance: number): Band {
  const reach = bandDeviations * Math.sqrt(variance);
  return { low: value - reach, high: value + reach };
}

/**
 * Lower triangle whose product with its own transpose is a covariance.
 *
 * Law: S = L L', by rows; a number that is known for certain has a row of noughts.
 * @param covariance The covariance S [-], symmetric, with no negative variance in any direction.
 * @returns The triangle L [-], one row per number.
 * @throws CoreError when the covariance is none.
 * Accuracy: exact up to rounding of doubles.
 * Source: Cholesky's decomposition (textbook; from memory).
 * @example choleskyOf([[4, 2], [2, 5]])[1][1] // 2.000
 */
export function choleskyOf(covariance: readonly (readonly number[])[]): number[][] {
  const triangle: number[][] = [];
  covariance.forEach((line, row) => {
    const mine: number[] = [];
    for (let col = 0; col <= row; col += 1) {
      const other = triangle[col] ?? mine;
      const taken = mine.reduce((sum, value, at) => sum + value * (other[at] as number), 0);
      const left = (line[col] as number) - taken;
      const pivot = triangle[col]?.[col];
      if (pivot === undefined) mine.push(Math.sqrt(varianceLeft(left, line[col] as number)));
      else mine.push(pivot === 0 ? 0 : left / pivot);
    }
    triangle.push(mine);
  });
  return triangle;
}

/** Rounding may leave a variance a trifle off nothing; dividing by its root would blow that up. */
function varianceLeft(left: number, whole: number): number {
  if (!(left >= -1e-9 * whole)) {
    throw new CoreError('covariance', left, 'one with no negative variance');
  }
  return left > 1e-12 * whole ? left : 0;
}

/**
 * Pads that would have given the same readings, one after the other, as likely as the fit says.
 *
 * Law: parameters + L z, L the Cholesky triangle of the covariance, z independent standard normal numbers.
 * @param spread Where the fit came to rest [see PadSpread], fields as there.
 * @param seed Where the random numbers start [-], any finite number; the same seed gives the same pads.
 * @returns A function that gives the next pad each time it is called.
 * @throws CoreError when the covariance is none, or a pad breaks the contract of its parts.
 * Accuracy: of draws the 2.5 and 97.5 % points scatter by 2.7 standard deviations over the root of their number.
 * Source: JCGM 101:2008, 6.4.8 (vectors of the multivariate normal law), from memory.
 * @example monteCarloSamples({ evidence: { circuit: { suction: [], discharge: [{ kind: 'equipment', id: 'a', referenceHead: 10, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, curve: { shutoffHead: 20, lastFlow: 0.008, head: (q) => 20 - 4e5 * q * q, slope: (q) => -8e5 * q, provenance: 'threePoints' }, curveKnown: 'dataSheet', readings: [], instruments: { filterGauge: { grade: 'B', span: 4e5 }, vacuumGauge: { grade: 'B', span: 1e5 }, meterShare: 0.1, powerShare: 0.05 } }, parameters: [0, 0.5, 0, 0, 0, 0, 0], covariance: [0, 1, 2, 3, 4, 5, 6].map(() => [0, 0, 0, 0, 0, 0, 0]) }, 1)().dischargeFactor // 1.649
 */
export function monteCarloSamples(spread: PadSpread, seed: number): () => SettledPad {
  const triangle = choleskyOf(spread.covariance);
  const normal = randomNormal.source(randomLcg(seed))(0, 1);
  return () => {
    const drawn = triangle.map(() => normal());
    const parameters = spread.parameters.map((best, row) =>
      (triangle[row] as number[]).reduce(
        (sum, value, at) => sum + value * (drawn[at] as number),
        best,
      ),
    );
    return settle(spread.evidence, parameters);
  };
}

/**
 * Band that leaves as many of the trials below it as above it.
 *
 * Law: the points with 2.5 % and 97.5 % of the trials below, straight lines between neighbours.
 * @param values What the trials gave [-], in any unit, at least one, any order.
 * @returns Band in the unit of the values.
 * @throws CoreError when there is no trial.
 * Accuracy: scatter as told in monteCarloSamples.
 * Source: JCGM 101:2008, 7.7 (probabilistically symmetric coverage interval), from memory.
 * @example sampleBand([0, 1, 2, 3, 4]).high // 3.900
 */
export function sampleBand(values: readonly number[]): Band {
  if (values.length === 0) throw new CoreError('values', 'empty', 'at least one trial');
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => {
    const place = share * (sorted.length - 1);
    const below = sorted[Math.floor(place)] as number;
    const above = sorted[Math.ceil(place)] as number;
    return below + (above - below) * (place - Math.floor(place));
  };
  return { low: at(0.025), high: at(0.975) };
}

/**
 * How far the band of the trials parts from the linear one.
 *
 * Law: the greater difference of the two ends over the width of the wider band.
 * @param linear Band by slopes [see Band].
 * @param sampled Band by trials [see Band].
 * @returns The share [-], 0 where they are one and the same.
 * @throws nothing.
 * Accuracy: exact.
 * Source: JCGM 101:2008, 8.1 (checking the linear law by trials), from memory; the measure is our own.
 * @example partingOf({ low: 90, high: 110 }, { low: 95, high: 110 }) // 0.2500
 */
export function partingOf(linear: Band, sampled: Band): number {
  const width = Math.max(linear.high - linear.low, sampled.high - sampled.low);
  const apart = Math.max(Math.abs(linear.low - sampled.low), Math.abs(linear.high - sampled.high));
  return width > 0 ? apart / width : apart === 0 ? 0 : 1;
}
