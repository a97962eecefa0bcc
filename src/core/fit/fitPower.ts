import { CoreError, requireBetween, requirePositive } from '#core/base/errors.ts';
import {
  type Band,
  bandAbout,
  type HeldLine,
  lineThrough,
  varianceAfter,
  varianceOf,
} from '#core/numerics/band.ts';

/** Typical share of the wire power that does not fall with speed, at reference speed; common practice, no source. */
export const typicalFixedShare = 0.04;

/** Standard deviation of the logarithm of that share: from a third to three times it; common practice, no source. */
export const fixedShareSpread = 0.6;

/** Watts read at one speed. */
export interface PowerReading {
  /** Name of the reading, any text. */
  readonly id: string;
  /** Speed over reference speed [-], 0.01 to 2. */
  readonly ratio: number;
  /** Wire power [W], above 0. */
  readonly power: number;
}

/** How good the readings are and over which speeds the answer is wanted. */
export interface PowerFitOptions {
  /** Accuracy of the watt reading as a share of it, 95 % [-], 0.0001 to 1; 0.03 when left out. */
  readonly share?: number | undefined;
  /** Slowest speed of interest over reference speed [-], 0.01 to 1; 0.3 when left out. A slower reading widens the range to itself. */
  readonly leastRatio?: number | undefined;
  /** Fastest speed of interest over reference speed [-], 0.3 to 2; 1 when left out. A faster reading widens the range to itself. */
  readonly greatestRatio?: number | undefined;
}

/** Two readings that cannot both be right. */
export interface PowerContradiction {
  readonly kind: 'powerFallsWithSpeed';
  readonly slowerId: string;
  readonly fasterId: string;
}

/** What had to be assumed because the readings do not say it. */
export type PowerAssumption =
  | {
      readonly kind: 'fixedShareTypical';
      readonly share: number;
      readonly low: number;
      readonly high: number;
    }
  | { readonly kind: 'fixedDrawNotNegative' }
  | { readonly kind: 'powerNotFalling' };

/** One reading beside what the fit makes of it [W]. */
export interface PowerResidual {
  readonly id: string;
  /** Speed over reference speed [-]. */
  readonly ratio: number;
  /** Wire power read [W]. */
  readonly measured: number;
  /** Wire power the fit gives there [W]. */
  readonly predicted: number;
  /** Measured less predicted [W]. */
  readonly residual: number;
}

/** The speed at which one more watt reading would narrow the band most. */
export interface PowerNarrowing {
  /** Speed over reference speed [-]. */
  readonly ratio: number;
  /** Width of the band over the answer, averaged over the speeds [-]. */
  readonly widthBefore: number;
  /** The same once that reading is taken [-]. */
  readonly widthAfter: number;
}

/** Wire power as fixed + cube r^3, from readings. */
export interface PowerFit {
  /** Draw that does not fall with speed [W]. */
  readonly fixed: number;
  /** Wire power above the fixed draw at reference speed [W]. */
  readonly cube: number;
  powerAt(ratio: number): number;
  bandAt(ratio: number): Band;
  readonly residuals: readonly PowerResidual[];
  readonly contradictions: readonly PowerContradiction[];
  readonly assumptions: readonly PowerAssumption[];
  readonly narrowing: PowerNarrowing;
}

type Covariance = readonly (readonly number[])[];
interface Line {
  readonly fixed: number;
  readonly cube: number;
  readonly covariance: Covariance;
  readonly assumptions: readonly PowerAssumption[];
}

/**
 * Fixed draw and cube-law part of the wire power, from watts read at one or more speeds.
 *
 * Law: P = P_fixed + c r^3, least weighted squares with neither part negative; one speed alone: P_fixed/c = 0.04 assumed.
 * @param readings Watts and speeds [see PowerReading], one or more, in any order.
 * @param options Accuracy and range of speeds [see PowerFitOptions], fields as there.
 * @returns The fit [W], with residuals, contradictions, assumptions, a 95 % band at any speed and the reading that would narrow it most.
 * @throws CoreError when there is no reading or a field is outside its range; readings that contradict are reported as values.
 * Accuracy: exact for readings that follow the law; the band takes the errors of the readings as independent.
 * Source: affinity law with a fixed draw; least squares after JCGM 100:2008; assumed share common practice, no source.
 * @example fitPower([{ id: 'a', ratio: 1, power: 1100 }, { id: 'b', ratio: 0.5, power: 225 }]).fixed // 100.0
 */
export function fitPower(
  readings: readonly PowerReading[],
  options: PowerFitOptions = {},
): PowerFit {
  const share = requireBetween('share', options.share ?? 0.03, 1e-4, 1, '');
  requireReadings(readings);
  const line = fitLine(readings, share);
  const powerAt = (ratio: number) => line.fixed + line.cube * cubeOf(ratio);
  return {
    fixed: line.fixed,
    cube: line.cube,
    powerAt,
    bandAt: (ratio) => bandAbout(powerAt(ratio), varianceAt(line, ratio)),
    residuals: readings.map(({ id, ratio, power }) => {
      const predicted = powerAt(ratio);
      return { id, ratio, measured: power, predicted, residual: power - predicted };
    }),
    contradictions: powerContradictions(readings, share),
    assumptions: line.assumptions,
    narrowing: narrowestAfter(line, speedsOfInterest(readings, options), share),
  };
}

/**
 * Pairs of readings in which the faster speed draws less power.
 *
 * Law: power must rise with speed; a pair is named when the speed rises by more than the accuracy of the watts and the power falls.
 * @param readings Watts and speeds [see PowerReading], any number, in any order.
 * @param share Accuracy of the watt reading as a share of it [-], 0 to 1.
 * @returns The neighbouring pairs that contradict [see PowerContradiction], slower one first; empty when none.
 * @throws CoreError when the share is outside its range.
 * Accuracy: exact.
 * Source: affinity laws, ANSI/HI 14.6 for their use; the threshold is common practice, no source.
 * @example powerContradictions([{ id: 'a', ratio: 1, power: 500 }, { id: 'b', ratio: 0.5, power: 700 }], 0.03).length // 1.000
 */
export function powerContradictions(
  readings: readonly PowerReading[],
  share: number,
): PowerContradiction[] {
  requireBetween('share', share, 0, 1, '');
  const bySpeed = [...readings].sort((a, b) => a.ratio - b.ratio);
  return bySpeed.flatMap((slower) => {
    const faster = bySpeed.find((one) => one.ratio / slower.ratio - 1 > share);
    const falls = faster !== undefined && faster.power < slower.power;
    if (!falls) return [];
    return [{ kind: 'powerFallsWithSpeed', slowerId: slower.id, fasterId: faster.id } as const];
  });
}

function requireReadings(readings: readonly PowerReading[]): void {
  if (readings.length === 0) throw new CoreError('readings', 'empty', 'at least one reading');
  for (const { ratio, power } of readings) {
    requireBetween('ratio', ratio, 0.01, 2, '');
    requirePositive('power', power, 'W');
  }
}

function fitLine(readings: readonly PowerReading[], share: number): Line {
  const ratios = readings.map((reading) => reading.ratio);
  const [slowest, fastest] = [Math.min(...ratios), Math.max(...ratios)];
  return fastest / slowest - 1 < 0.005
    ? lineFromOneSpeed(readings, share)
    : lineFromManySpeeds(readings, share);
}

/** One speed cannot part the fixed draw from the rest: a typical share does, with a wide band. */
function lineFromOneSpeed(readings: readonly PowerReading[], share: number): Line {
  const mean = (pick: (one: PowerReading) => number) =>
    readings.reduce((sum, one) => sum + pick(one), 0) / readings.length;
  const power = mean((one) => one.power);
  const whole = typicalFixedShare + cubeOf(mean((one) => one.ratio));
  const cube = power / whole;
  // Slopes of (fixed, cube) by the logarithm of the share and of the watts.
  const byShare = [
    cube * typicalFixedShare * (1 - typicalFixedShare / whole),
    (-cube * typicalFixedShare) / whole,
  ] as const;
  const byPower = [cube * typicalFixedShare, cube] as const;
  const powerVariance = (share / 2) ** 2 / readings.length;
  const covary = (a: 0 | 1, b: 0 | 1) =>
    byShare[a] * byShare[b] * fixedShareSpread ** 2 + byPower[a] * byPower[b] * powerVariance;
  return {
    fixed: cube * typicalFixedShare,
    cube,
    covariance: [
      [covary(0, 0), covary(0, 1)],
      [covary(1, 0), covary(1, 1)],
    ],
    assumptions: [
      {
        kind: 'fixedShareTypical',
        share: typicalFixedShare,
        ...bandAbout(typicalFixedShare, (typicalFixedShare * fixedShareSpread) ** 2),
      },
    ],
  };
}

function lineFromManySpeeds(readings: readonly PowerReading[], share: number): Line {
  const { start, slope, held, covariance } = lineThrough(
    readings.map(({ ratio, power }) => ({
      x: cubeOf(ratio),
      y: power,
      weight: (2 / (share * power)) ** 2,
    })),
  );
  return { fixed: start, cube: slope, covariance, assumptions: heldAssumptions[held] };
}

const heldAssumptions: Readonly<Record<HeldLine['held'], readonly PowerAssumption[]>> = {
  start: [{ kind: 'fixedDrawNotNegative' }],
  slope: [{ kind: 'powerNotFalling' }],
  neither: [],
};

function varianceAt(line: Line, ratio: number): number {
  return varianceOf([1, cubeOf(ratio)], line.covariance);
}

function cubeOf(ratio: number): number {
  return requireBetween('ratio', ratio, 0, 2, '') ** 3;
}

function speedsOfInterest(
  readings: readonly PowerReading[],
  { leastRatio, greatestRatio }: PowerFitOptions,
): number[] {
  const ratios = readings.map((reading) => reading.ratio);
  const least = Math.min(requireBetween('leastRatio', leastRatio ?? 0.3, 0.01, 1, ''), ...ratios);
  const greatest = Math.max(
    requireBetween('greatestRatio', greatestRatio ?? 1, 0.3, 2, ''),
    ...ratios,
  );
  const steps = 8;
  return Array.from({ length: steps + 1 }, (_, at) => least + ((greatest - least) * at) / steps);
}

function narrowestAfter(line: Line, ratios: readonly number[], share: number): PowerNarrowing {
  const powerAt = (ratio: number) => line.fixed + line.cube * cubeOf(ratio);
  const meanWidth = (variance: (ratio: number) => number) =>
    ratios.reduce((sum, ratio) => {
      const band = bandAbout(powerAt(ratio), variance(ratio));
      return sum + (band.high - band.low) / powerAt(ratio) / ratios.length;
    }, 0);
  const widthBefore = meanWidth((ratio) => varianceAt(line, ratio));
  const candidates = ratios.map((extra) => {
    const deviation = (share / 2) * powerAt(extra);
    const after = (ratio: number) =>
      varianceAfter([1, cubeOf(ratio)], [1, cubeOf(extra)], deviation, line.covariance);
    return { ratio: extra, widthBefore, widthAfter: meanWidth(after) };
  });
  return candidates.reduce((best, one) => (one.widthAfter < best.widthAfter ? one : best));
}
