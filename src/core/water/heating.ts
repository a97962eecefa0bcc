import {
  CoreError,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '#core/base/errors.ts';
import type { Water } from './water.ts';

/**
 * Heat that warms a pool, losses left out.
 *
 * Law: E = density x V x specific heat x rise, properties at the mean temperature.
 * @param volume Water in the pool [m3], 0 or more.
 * @param rise Rise in temperature [K], 0 to 100.
 * @param water Density and specific heat at the mean temperature [see Water], both more than 0.
 * @returns Heat into the water [J], 0 or more. A pool also loses heat while it is warmed: this is the least.
 * @throws CoreError when a number is out of range.
 * Accuracy: 1e-7 relative against reference file chlorine-and-heat.
 * Source: definition of specific heat; properties from IAPWS SR6-08(2011).
 * @example heatingEnergy(50, 8, { density: 997.3, specificHeat: 4181.9 }) // 1.668e9
 */
export function heatingEnergy(
  volume: number,
  rise: number,
  water: Pick<Water, 'density' | 'specificHeat'>,
): number {
  requireNotNegative('volume', volume, 'm3');
  requireBetween('rise', rise, 0, 100, 'K');
  const density = requirePositive('density', water.density, 'kg/m3');
  return density * volume * requirePositive('specificHeat', water.specificHeat, 'J/(kg K)') * rise;
}

/**
 * Hours a heater takes to give a quantity of heat.
 *
 * Law: t = E / (power x efficiency).
 * @param energy Heat wanted in the water [J], 0 or more.
 * @param power Power the heater takes [W], more than 0; with efficiency 1, power into the water.
 * @param efficiency Part of it that reaches the water [-], above 0 to 1; 1 unless set. A heat pump is given by its power into the water.
 * @returns Running time [h], 0 or more; more than 24 means it takes more than a day.
 * @throws CoreError when a number is out of range.
 * Accuracy: 1e-7 relative against reference file chlorine-and-heat.
 * Source: definition of power (NIST SP 811, 2008).
 * @example heaterHours(1.668e9, 16000) // 28.96
 */
export function heaterHours(energy: number, power: number, efficiency = 1): number {
  requireNotNegative('energy', energy, 'J');
  requirePositive('power', power, 'W');
  if (!(efficiency > 0 && efficiency <= 1)) {
    throw new CoreError('efficiency', efficiency, 'above 0 and at most 1');
  }
  return energy / (power * efficiency) / 3600;
}

/**
 * The trade's rule of thumb for heat, to set beside the exact figure.
 *
 * Law: Btu = 8.34 x gallons x degF.
 * @param volumeGal Water in the pool [US gal], 0 or more.
 * @param riseF Rise in temperature [degF], 0 or more.
 * @returns Heat [Btu], 0.3 to 0.7 % above the exact heat in warm water.
 * @throws CoreError when a number is negative or not finite.
 * Accuracy: 1e-7 relative against reference file chlorine-and-heat.
 * Source: common practice, no source.
 * @example thumbHeatBtu(20000, 10) // 1668000
 */
export function thumbHeatBtu(volumeGal: number, riseF: number): number {
  requireNotNegative('volumeGal', volumeGal, 'US gal');
  return 8.34 * volumeGal * requireNotNegative('riseF', riseF, 'degF');
}

/**
 * The trade's rule of thumb for the size of a heater, from the surface of the pool.
 *
 * Law: Btu/h = 12 x area x (water temperature - air temperature).
 * @param areaFt2 Surface of the pool [ft2], 0 or more.
 * @param riseF Water over air temperature [degF], 0 or more.
 * @returns Heater size [Btu/h].
 * @throws CoreError when a number is negative or not finite.
 * Accuracy: exact; reference file chlorine-and-heat.
 * Source: common practice, no source (the factor 12 is ascribed to the U.S. Department of Energy).
 * @example thumbHeaterBtuPerHour(720, 25) // 216000
 */
export function thumbHeaterBtuPerHour(areaFt2: number, riseF: number): number {
  requireNotNegative('areaFt2', areaFt2, 'ft2');
  return 12 * areaFt2 * requireNotNegative('riseF', riseF, 'degF');
}
