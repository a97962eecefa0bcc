import {
  CoreError,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '#core/base/errors.ts';

/**
 * Time in which a flow moves as much water as the pool holds.
 *
 * Law: t = V/Q.
 * @param volume Water in the pool [m3], more than 0.
 * @param flow Flow [m3/s], more than 0.
 * @returns Time of one turnover [s], more than 0.
 * @throws CoreError when volume or flow is not positive; no flow has no turnover time.
 * Accuracy: exact up to rounding of doubles.
 * Source: definition (common practice, no source).
 * @example turnoverTime(75, 0.0025) // 30000
 */
export function turnoverTime(volume: number, flow: number): number {
  return requirePositive('volume', volume, 'm3') / requirePositive('flow', flow, 'm3/s');
}

/**
 * How many times over a run moves the water of the pool.
 *
 * Law: n = Q t / V.
 * @param volume Water in the pool [m3], more than 0.
 * @param flow Flow [m3/s], 0 or more.
 * @param time Length of the run [s], 0 or more.
 * @returns Turnovers [-], 0 or more.
 * @throws CoreError when the volume is not positive, or flow or time is negative or not finite.
 * Accuracy: exact up to rounding of doubles; reference file mixing.
 * Source: definition (common practice, no source).
 * @example turnoversInRun(75, 0.0025, 28800) // 0.9600
 */
export function turnoversInRun(volume: number, flow: number, time: number): number {
  requireNotNegative('flow', flow, 'm3/s');
  requireNotNegative('time', time, 's');
  return (flow / requirePositive('volume', volume, 'm3')) * time;
}

/**
 * Share of the water that has passed the filter, in a perfectly mixed pool.
 *
 * Law: 1 - exp(-e n).
 * @param turnovers Water moved over water in the pool, n [-], 0 or more.
 * @param efficiency Part of what passes that the filter keeps, e [-], above 0 to 1; 1 unless set.
 * @returns Share [-], 0 to 1.
 * @throws CoreError when turnovers is negative or not finite, or the efficiency leaves its range.
 * Accuracy: 1e-10 relative against reference file mixing.
 * Source: Gage and Bidwell 1926; with efficiency Simmonds et al., Water 13(17) 2350, 2021.
 * @example filteredShare(1) // 0.6321
 */
export function filteredShare(turnovers: number, efficiency = 1): number {
  requireNotNegative('turnovers', turnovers, '');
  // expm1 keeps the digits of a small share; subtracting from zero avoids -0 at no turnover.
  return 0 - Math.expm1(-requireEfficiency(efficiency) * turnovers);
}

/**
 * Turnovers after which a share of the water has passed the filter, in a perfectly mixed pool.
 *
 * Law: n = -ln(1 - share) / e.
 * @param share Share wanted [-], 0 to below 1.
 * @param efficiency Part of what passes that the filter keeps, e [-], above 0 to 1; 1 unless set.
 * @returns Turnovers [-], 0 or more.
 * @throws CoreError when the share leaves its range (all of it would take for ever), or the efficiency does.
 * Accuracy: 1e-10 relative against reference file mixing.
 * Source: Gage and Bidwell 1926; with efficiency Simmonds et al., Water 13(17) 2350, 2021.
 * @example turnoversForShare(0.95) // 2.996
 */
export function turnoversForShare(share: number, efficiency = 1): number {
  if (!(share >= 0 && share < 1)) throw new CoreError('share', share, 'from 0 to below 1');
  return (0 - Math.log1p(-share)) / requireEfficiency(efficiency);
}

/**
 * Share of the water that has passed the filter just so many times, in a perfectly mixed pool.
 *
 * Law: n^k e^-n / k!: parcels are drawn by chance, each as likely as any other, whatever came before.
 * @param turnovers Water moved over water in the pool, n [-], 0 to 500.
 * @param times How often it has passed, k [-], whole, 0 to 100.
 * @returns Share [-], 0 to 1.
 * @throws CoreError when turnovers or times is out of range.
 * Accuracy: 1e-12 relative against filteredShare for k = 0.
 * Source: Poisson's distribution, NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.19.
 * @example sharePassed(1, 1) // 0.3679
 */
export function sharePassed(turnovers: number, times: number): number {
  requireBetween('turnovers', turnovers, 0, 500, '');
  if (!Number.isInteger(times) || times < 0 || times > 100) {
    throw new CoreError('times', times, 'a whole number from 0 to 100');
  }
  let share = Math.exp(-turnovers);
  for (let time = 1; time <= times; time += 1) share *= turnovers / time;
  return share;
}

function requireEfficiency(efficiency: number): number {
  if (!(efficiency > 0 && efficiency <= 1)) {
    throw new CoreError('efficiency', efficiency, 'above 0 and at most 1');
  }
  return efficiency;
}
