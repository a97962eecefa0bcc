/** Which one more reading would narrow an answer, tried on the linear system about the fit. */
import { varianceAfter, varianceOf } from '#core/numerics/band.ts';
import { type LinearisedFit, quantityOf, type Row } from './linearisedFit.ts';
import type { Instrument, Narrowing, PadEvidence, PadSpread } from './padEvidence.ts';
import { readingDeviation } from './padReadings.ts';

const instruments = Object.keys(quantityOf) as Instrument[];

/** A reading that could be taken. */
export interface Candidate {
  readonly instrument: Instrument;
  /** Speed over reference speed [-], 0.05 to 2. */
  readonly ratio: number;
  /** Slope of what would be read by each uncertain number [unit of the reading], any finite number. */
  readonly slope: readonly number[];
  /** Standard deviation of the reading's own error [unit of the reading], above 0. */
  readonly deviation: number;
}

/** All that could be read at one speed, with its slopes. */
export interface AtSpeed {
  /** Speed over reference speed [-], 0.05 to 2. */
  readonly ratio: number;
  readonly values: Row<number>;
  readonly slopes: Row<number[]>;
}

/** Variance of an answer whose slopes these are [unit of the answer squared]. */
export type VarianceOf = (slope: readonly number[]) => number;

/**
 * What could be read at some speeds.
 *
 * @internal
 */
export function atSpeeds(near: LinearisedFit, ratios: readonly number[]): AtSpeed[] {
  return ratios.map((ratio) => ({
    ratio,
    values: near.valuesAt(ratio),
    slopes: near.slopesAt(ratio),
  }));
}

/**
 * Every instrument at every speed, save what was read there already.
 *
 * @internal
 */
export function candidatesFrom(evidence: PadEvidence, at: readonly AtSpeed[]): Candidate[] {
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

/**
 * How wide an answer would be after each of the candidates.
 *
 * @internal
 */
export function narrowingsBy(
  candidates: readonly Candidate[],
  { covariance }: Pick<PadSpread, 'covariance'>,
  widthOf: (variance: VarianceOf) => number,
): Narrowing[] {
  const widthBefore = widthOf((slope) => varianceOf(slope, covariance));
  return candidates.map((candidate) => ({
    instrument: candidate.instrument,
    ratio: candidate.ratio,
    widthBefore,
    widthAfter: widthOf(varianceWith(candidate, covariance)),
  }));
}

/**
 * Variance of an answer once a reading has been taken.
 *
 * @internal
 */
export function varianceWith(
  { slope, deviation }: Candidate,
  covariance: PadSpread['covariance'],
): VarianceOf {
  return (answer) => varianceAfter(answer, slope, deviation, covariance);
}

/**
 * The one that narrows most; of equals the first.
 *
 * @internal
 */
export function narrowestOf<N extends Narrowing>(tried: readonly N[]): N {
  return tried.reduce((one, other) => (other.widthAfter < one.widthAfter ? other : one));
}

function alreadyRead(
  { readings }: PadEvidence,
  { instrument, ratio }: Pick<Candidate, 'instrument' | 'ratio'>,
): boolean {
  return readings.some(
    (one) => one[quantityOf[instrument]] !== undefined && Math.abs(one.ratio / ratio - 1) < 0.02,
  );
}
