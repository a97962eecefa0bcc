import { CoreError } from '#core/base/errors.ts';

/** Half width of a 95 % band in standard deviations (normal law). */
export const bandDeviations = 1.96;

/** A 95 % band of one answer. */
export interface Band {
  /** Lower end [unit of the answer], 0 or more where the answer cannot be negative. */
  readonly low: number;
  /** Upper end [unit of the answer], at least the lower end. */
  readonly high: number;
}

/** One thing measured, with how far it may be off. */
export interface Measured {
  /** What was read [its own unit], any finite number. */
  readonly value: number;
  /** Standard deviation of its error [same unit], above 0. */
  readonly deviation: number;
}

/** What a weighted fit with weak beliefs about its parameters is made from. */
export interface Estimation {
  /** Prior standard deviation of each parameter [-], above 0; each is believed to be 0 beforehand. */
  readonly priorDeviations: readonly number[];
  /** What was measured [see Measured], any number of them. */
  readonly measured: readonly Measured[];
  /** What the parameters say each measurement should have been, in the same order and units [-]. */
  readonly predict: (parameters: readonly number[]) => readonly number[];
}

/** The most likely parameters and how well they are known. */
export interface Estimate {
  /** Most likely parameters [-], any finite numbers. */
  readonly parameters: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** Step for slopes by central difference: parameters are of order one, solves good to 1e-9. */
const slopeStep = 1e-4;
const mostRounds = 40;

/**
 * Band that holds 95 % about an answer that cannot be negative.
 *
 * Law: value exp(+-1.96 sd/value): the linear band for a small deviation, never below 0 for a large one.
 * @param value The answer [-], in any unit, 0 or more.
 * @param variance Its variance [-], in that unit squared, 0 or more.
 * @returns Band in the unit of the answer; at most a factor of ten to either side; both ends 0 when the answer is 0.
 * @throws CoreError when either is negative or not a finite number.
 * Accuracy: normal law for the logarithm; first order in the deviation.
 * Source: JCGM 100:2008 (GUM) for propagation; the logarithm is common practice, no source.
 * @example bandAbout(100, 25).high // 110.30
 */
export function bandAbout(value: number, variance: number): Band {
  if (!(value >= 0) || !(variance >= 0) || !Number.isFinite(value + variance)) {
    throw new CoreError('variance', variance, 'finite and 0 or more, as must the value');
  }
  if (value === 0) return { low: 0, high: 0 };
  // A wider band would only say "unknown" in larger numbers.
  const widest = Math.log(10);
  const reach = Math.min(widest, (bandDeviations * Math.sqrt(variance)) / value);
  return { low: value * Math.exp(-reach), high: value * Math.exp(reach) };
}

/**
 * Variance of an answer that depends on uncertain parameters.
 *
 * Law: var = g' S g, g the slope of the answer by each parameter, S the covariance.
 * @param gradient Slope of the answer by each parameter [-], as many as the covariance has rows.
 * @param covariance Covariance of the parameters [-], symmetric.
 * @returns Variance [-], in the unit of the answer squared, 0 or more.
 * @throws nothing; rounding below 0 is reported as 0.
 * Accuracy: first order.
 * Source: JCGM 100:2008 (GUM), equation 13.
 * @example varianceOf([1, 2], [[1, 0], [0, 4]]) // 17.00
 */
export function varianceOf(
  gradient: readonly number[],
  covariance: readonly (readonly number[])[],
): number {
  return Math.max(0, crossVariance(gradient, gradient, covariance));
}

/**
 * Variance an answer would have left after one more reading.
 *
 * Law: var' = g' S g - (g' S m)^2/(m' S m + sd^2), m the slope of the reading by each parameter.
 * @param answer Slope of the answer by each parameter [-], as many as the covariance has rows.
 * @param reading Slope of the reading by each parameter [-], as many as the covariance has rows.
 * @param deviation Standard deviation of the reading's own error [-], in its unit, above 0.
 * @param covariance Covariance of the parameters before the reading [-], symmetric.
 * @returns Variance [-], in the unit of the answer squared; never more than before.
 * @throws nothing; a reading that tells nothing leaves the variance as it was.
 * Accuracy: exact for a linear answer and reading.
 * Source: Gauss-Markov update of a least-squares fit by one observation; JCGM 100:2008 for the terms.
 * @example varianceAfter([1, 0], [1, 0], 1, [[1, 0], [0, 4]]) // 0.5000
 */
export function varianceAfter(
  answer: readonly number[],
  reading: readonly number[],
  deviation: number,
  covariance: readonly (readonly number[])[],
): number {
  const before = varianceOf(answer, covariance);
  const noise = varianceOf(reading, covariance) + deviation ** 2;
  if (!(noise > 0)) return before;
  return Math.max(0, before - crossVariance(answer, reading, covariance) ** 2 / noise);
}

/**
 * Slope of several answers by each parameter.
 *
 * Law: central difference with a step of 1e-4.
 * @param answers The answers as a function of the parameters [-], as many each time.
 * @param parameters Where to take the slope [-], of order one.
 * @returns One row per answer, one column per parameter [-].
 * @throws whatever the answers throw.
 * Accuracy: about 1e-8 of the answer for smooth answers.
 * Source: common practice, no source.
 * @example slopesOf(([a, b]) => [a * b], [2, 3])[0][1] // 2.000
 */
export function slopesOf(
  answers: (parameters: readonly number[]) => readonly number[],
  parameters: readonly number[],
): number[][] {
  return slopesAround((shift) => shift, parameters)(answers);
}

/**
 * The same for answers that share a costly first step, which is then taken only once per parameter.
 *
 * Law: central difference with a step of 1e-4.
 * @param settle The shared step, from parameters [-] to whatever the answers start from.
 * @param parameters Where to take the slope [-], of order one.
 * @returns A function from answers to one row per answer, one column per parameter [-].
 * @throws whatever the shared step or the answers throw.
 * Accuracy: about 1e-8 of the answer for smooth answers.
 * Source: common practice, no source.
 * @example slopesAround(([a, b]) => a * b, [2, 3])((product) => [product, 2 * product])[1][0] // 6.000
 */
export function slopesAround<Settled>(
  settle: (parameters: readonly number[]) => Settled,
  parameters: readonly number[],
): (answers: (settled: Settled) => readonly number[]) => number[][] {
  const pairs = parameters.map((_, index) => ({
    above: settle(shifted(parameters, index, slopeStep)),
    below: settle(shifted(parameters, index, -slopeStep)),
  }));
  return (answers) => {
    const columns = pairs.map(({ above, below }) => {
      const lower = answers(below);
      return answers(above).map((value, row) => (value - (lower[row] as number)) / (2 * slopeStep));
    });
    const rows = columns[0]?.length ?? 0;
    return Array.from({ length: rows }, (_, row) => columns.map((one) => one[row] as number));
  };
}

/**
 * Most likely parameters, given readings and weak beliefs, with their covariance.
 *
 * Law: least sum of ((measured - predicted)/sd)^2 + (parameter/prior sd)^2, by damped Gauss-Newton.
 * @param estimation What is known [see Estimation], fields as there.
 * @returns Parameters and covariance [-]; with no readings the beliefs come back unchanged.
 * @throws CoreError when a deviation is not above 0.
 * Accuracy: exact for linear predictions; otherwise the least sum to about 1e-7.
 * Source: Bayesian linear-Gaussian estimation, linearised; JCGM 100:2008 for the covariance.
 * @example estimate({ priorDeviations: [1], measured: [{ value: 2, deviation: 1 }], predict: ([a]) => [a] }).parameters[0] // 1.000
 */
export function estimate(estimation: Estimation): Estimate {
  requireDeviations(estimation);
  let parameters: readonly number[] = estimation.priorDeviations.map(() => 0);
  let misfit = misfitOf(estimation, parameters);
  for (let round = 0; round < mostRounds; round += 1) {
    const { curvature, pull } = normalEquations(estimation, parameters);
    const step = multiply(invertPositive(curvature), pull);
    const next = downhill(estimation, parameters, step, misfit);
    if (next === undefined) break;
    const gained = misfit - next.misfit;
    ({ parameters, misfit } = next);
    if (gained <= 1e-7 * (1 + misfit)) break;
  }
  const { curvature } = normalEquations(estimation, parameters);
  return { parameters, covariance: invertPositive(curvature) };
}

function requireDeviations({ priorDeviations, measured }: Estimation): void {
  for (const deviation of [...priorDeviations, ...measured.map((one) => one.deviation)]) {
    if (!(deviation > 0)) throw new CoreError('deviation', deviation, 'above 0');
  }
}

/** The first of ever shorter steps that lessens the misfit; undefined when none does. */
function downhill(
  estimation: Estimation,
  parameters: readonly number[],
  step: readonly number[],
  misfit: number,
): { parameters: number[]; misfit: number } | undefined {
  // Far steps are cut: a parameter is a logarithm, and e^2 is already a factor of seven.
  const longest = Math.max(...step.map(Math.abs), 1e-300);
  let scale = Math.min(1, 2 / longest);
  for (let halving = 0; halving < 12; halving += 1) {
    const trial = parameters.map((value, index) => value + scale * (step[index] as number));
    const trialMisfit = misfitOf(estimation, trial);
    if (trialMisfit < misfit) return { parameters: trial, misfit: trialMisfit };
    scale /= 2;
  }
  return undefined;
}

function misfitOf(estimation: Estimation, parameters: readonly number[]): number {
  const predicted = estimation.predict(parameters);
  const fromReadings = estimation.measured.map(
    ({ value, deviation }, index) => ((value - (predicted[index] as number)) / deviation) ** 2,
  );
  const fromBeliefs = parameters.map(
    (value, index) => (value / (estimation.priorDeviations[index] as number)) ** 2,
  );
  return [...fromReadings, ...fromBeliefs].reduce((sum, term) => sum + term, 0);
}

function normalEquations(estimation: Estimation, parameters: readonly number[]) {
  const predicted = estimation.predict(parameters);
  const slopes = slopesOf(estimation.predict, parameters);
  const tightness = estimation.priorDeviations.map((deviation) => 1 / deviation ** 2);
  const pull = parameters.map((value, index) => -value * (tightness[index] as number));
  const curvature = tightness.map((value, row) =>
    tightness.map((_, col) => (row === col ? value : 0)),
  );
  estimation.measured.forEach(({ value, deviation }, at) => {
    const slope = slopes[at] as number[];
    const residual = value - (predicted[at] as number);
    slope.forEach((bySelf, row) => {
      pull[row] = (pull[row] as number) + (bySelf * residual) / deviation ** 2;
      const line = curvature[row] as number[];
      slope.forEach((byOther, col) => {
        line[col] = (line[col] as number) + (bySelf * byOther) / deviation ** 2;
      });
    });
  });
  return { curvature, pull };
}

/** Inverse of a symmetric positive matrix: Gauss-Jordan needs no pivoting for these. */
function invertPositive(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const work = matrix.map((row, at) => [...row, ...row.map((_, col) => (col === at ? 1 : 0))]);
  for (let pivot = 0; pivot < size; pivot += 1) {
    const pivotRow = work[pivot] as number[];
    const lead = pivotRow[pivot] as number;
    const scaled = pivotRow.map((value) => value / lead);
    work[pivot] = scaled;
    work.forEach((row, at) => {
      if (at === pivot) return;
      const share = row[pivot] as number;
      work[at] = row.map((value, col) => value - share * (scaled[col] as number));
    });
  }
  return work.map((row) => row.slice(size));
}

function multiply(matrix: readonly (readonly number[])[], vector: readonly number[]): number[] {
  return matrix.map((row) => dot(row, vector));
}

function crossVariance(
  left: readonly number[],
  right: readonly number[],
  covariance: readonly (readonly number[])[],
): number {
  return dot(left, multiply(covariance, right));
}

function dot(left: readonly number[], right: readonly number[]): number {
  return left.reduce((sum, value, index) => sum + value * (right[index] as number), 0);
}

function shifted(values: readonly number[], at: number, by: number): number[] {
  return values.map((value, index) => (index === at ? value + by : value));
}

/** One point of a straight line to be fitted, with its weight (1/variance). */
export interface LinePoint {
  /** Where it was read [-], in any unit. */
  readonly x: number;
  /** What was read [-], in any unit. */
  readonly y: number;
  /** One over the variance of y [-], above 0. */
  readonly weight: number;
}

/** A straight line y = start + slope x that never starts or falls below nothing. */
export interface HeldLine {
  /** Value at x = 0 [unit of y], 0 or more. */
  readonly start: number;
  /** Rise for each unit of x [unit of y over that of x], 0 or more. */
  readonly slope: number;
  /** Which of the two came out negative and was held at 0. */
  readonly held: 'start' | 'slope' | 'neither';
  /** Covariance of start and slope, before either was held. */
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Straight line through weighted points, with neither start nor slope negative.
 *
 * Law: least weighted squares of y - start - slope x; one that comes out negative is held at 0 and the other fitted alone.
 * @param points The points [see LinePoint], at two different x or more, none negative.
 * @returns Start and slope [-], with their covariance.
 * @throws CoreError when all points share one x.
 * Accuracy: sums are taken about the mean, so weights far apart cancel nothing.
 * Source: weighted linear least squares with two non-negative unknowns, where trying each bound is exact.
 * @example lineThrough([{ x: 0, y: 1, weight: 1 }, { x: 2, y: 5, weight: 1 }]).slope // 2.000
 */
export function lineThrough(points: readonly LinePoint[]): HeldLine {
  const sum = (pick: (point: LinePoint) => number) =>
    points.reduce((total, point) => total + point.weight * pick(point), 0);
  const weight = sum(() => 1);
  const meanX = sum(({ x }) => x) / weight;
  const meanY = sum(({ y }) => y) / weight;
  const spread = sum(({ x }) => (x - meanX) ** 2);
  if (!(spread > 0)) throw new CoreError('points', points.length, 'at two different x or more');
  const slope = sum(({ x, y }) => (x - meanX) * (y - meanY)) / spread;
  const start = meanY - slope * meanX;
  const covariance = [
    [1 / weight + meanX ** 2 / spread, -meanX / spread],
    [-meanX / spread, 1 / spread],
  ];
  if (start < 0) {
    const alone = sum(({ x, y }) => x * y) / sum(({ x }) => x * x);
    return { start: 0, slope: alone, held: 'start', covariance };
  }
  if (slope < 0) return { start: meanY, slope: 0, held: 'slope', covariance };
  return { start, slope, held: 'neither', covariance };
}
