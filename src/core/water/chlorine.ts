import { CoreError, requireNotNegative, requirePositive } from '#core/base/errors.ts';

/**
 * Chlorine that raises the concentration of a pool.
 *
 * Law: m = V x rise; 1 mg/L (the trade's ppm) is 0.001 kg/m3.
 * @param volume Water in the pool [m3], 0 or more.
 * @param rise Rise in concentration [kg/m3], 0 or more.
 * @returns Mass of chlorine as Cl2 [kg], 0 or more; nothing lost on the way.
 * @throws CoreError when either is negative or not finite.
 * Accuracy: exact up to rounding of doubles; reference file chlorine-and-heat.
 * Source: conservation of mass; NIST SP 811, 2008 for the units.
 * @example chlorineMass(50, 0.003) // 0.1500
 */
export function chlorineMass(volume: number, rise: number): number {
  return requireNotNegative('volume', volume, 'm3') * requireNotNegative('rise', rise, 'kg/m3');
}

/**
 * Product that holds a mass of chlorine, for a product sold by its share of available chlorine.
 *
 * Law: product = chlorine / share.
 * @param chlorine Mass of chlorine wanted [kg], 0 or more.
 * @param availableShare Available chlorine by weight [-], above 0 to 1.
 * @returns Mass of product [kg], 0 or more.
 * @throws CoreError when the mass is negative or the share leaves its range.
 * Accuracy: exact up to rounding of doubles; reference file chlorine-and-heat.
 * Source: definition of available chlorine by weight (common practice, no source).
 * @example productMass(0.15, 0.65) // 0.2308
 */
export function productMass(chlorine: number, availableShare: number): number {
  requireNotNegative('chlorine', chlorine, 'kg');
  return chlorine / requireShare('availableShare', availableShare);
}

/**
 * Chlorine in a liquid of a trade percent.
 *
 * Law: 1 trade percent is 1 g of chlorine in 100 mL, 10 kg/m3.
 * @param tradePercent Strength on the label [%], above 0 to 100.
 * @returns Concentration of available chlorine [kg/m3].
 * @throws CoreError when the percent leaves its range.
 * Accuracy: exact; reference file chlorine-and-heat.
 * Source: definition of trade percent (common practice, no source).
 * @example tradePercentConcentration(12.5) // 125.0
 */
export function tradePercentConcentration(tradePercent: number): number {
  if (!(tradePercent > 0 && tradePercent <= 100)) {
    throw new CoreError('tradePercent', tradePercent, 'above 0 and at most 100');
  }
  return 10 * tradePercent;
}

/**
 * Liquid product that holds a mass of chlorine.
 *
 * Law: V = chlorine / concentration.
 * @param chlorine Mass of chlorine wanted [kg], 0 or more.
 * @param concentration Available chlorine in the product [kg/m3], more than 0.
 * @returns Volume of product [m3], 0 or more.
 * @throws CoreError when the mass is negative or the concentration not positive.
 * Accuracy: exact up to rounding of doubles; reference file chlorine-and-heat.
 * Source: conservation of mass; NIST SP 811, 2008 for the units.
 * @example productVolume(0.15, 125) // 0.001200
 */
export function productVolume(chlorine: number, concentration: number): number {
  requireNotNegative('chlorine', chlorine, 'kg');
  return chlorine / requirePositive('concentration', concentration, 'kg/m3');
}

/**
 * Hours a salt cell takes to make a mass of chlorine.
 *
 * Law: t = m / (rate x output share).
 * @param chlorine Mass of chlorine wanted [kg], 0 or more.
 * @param cellRate What the cell makes at full output [kg/s], more than 0.
 * @param outputShare Output it is set to [-], above 0 to 1; 1 unless set.
 * @returns Running time [h], 0 or more; more than 24 means the cell cannot keep up in a day.
 * @throws CoreError when the mass is negative, the rate not positive or the share out of range.
 * Accuracy: 1e-9 relative against reference file chlorine-and-heat.
 * Source: conservation of mass; the label of the cell gives its rate (common practice, no source).
 * @example saltCellHours(0.12, 25e-3 / 3600, 0.8) // 6.000
 */
export function saltCellHours(chlorine: number, cellRate: number, outputShare = 1): number {
  requireNotNegative('chlorine', chlorine, 'kg');
  requirePositive('cellRate', cellRate, 'kg/s');
  return chlorine / (cellRate * requireShare('outputShare', outputShare)) / 3600;
}

/**
 * The trade's rule of thumb for chlorine, to set beside the exact mass.
 *
 * Law: pounds = gallons / 1e6 x ppm x 8.34.
 * @param volumeGal Water in the pool [US gal], 0 or more.
 * @param riseMgL Rise in concentration [mg/L], 0 or more.
 * @param factor Pounds in a million gallons per ppm [lb], more than 0; 8.34 unless set.
 * @returns Mass of chlorine [lb], 0.06 % below the exact mass with the usual factor.
 * @throws CoreError when a number is out of range.
 * Accuracy: 1e-6 absolute against reference file chlorine-and-heat.
 * Source: common practice, no source.
 * @example thumbChlorinePounds(30000, 2) // 0.5004
 */
export function thumbChlorinePounds(volumeGal: number, riseMgL: number, factor = 8.34): number {
  requireNotNegative('volumeGal', volumeGal, 'US gal');
  requireNotNegative('riseMgL', riseMgL, 'mg/L');
  return (volumeGal / 1e6) * riseMgL * requirePositive('factor', factor, 'lb');
}

function requireShare(field: string, share: number): number {
  if (!(share > 0 && share <= 1)) throw new CoreError(field, share, 'above 0 and at most 1');
  return share;
}
