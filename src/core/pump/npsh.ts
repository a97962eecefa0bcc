import { standardGravity } from '#core/base/constants.ts';
import { requireBetween, requireNotNegative } from '#core/base/errors.ts';

/** Sea-level pressure of the standard atmosphere [Pa], exact by definition (ISO 2533:1975). */
export const seaLevelPressure = 101_325;

/** Nominal earth radius of the standard atmosphere [m] (ISO 2533:1975, 2.3). */
const nominalEarthRadius = 6_356_766;

/** Sea-level temperature [K] and its fall with height [K/m] below 11 km (ISO 2533:1975, table 4). */
const seaLevelTemperature = 288.15;
const temperatureLapse = 0.0065;

/** Specific gas constant of dry air [J/(kg K)] (ISO 2533:1975, table 1). */
const airGasConstant = 287.052_87;

/** The two properties of the water that NPSH needs. */
export interface SuctionWater {
  /** Density [kg/m3], 500 to 1500. */
  readonly density: number;
  /** Vapour pressure, absolute [Pa], 0 or more. */
  readonly vapourPressure: number;
}

/** What NPSH available follows from when the suction side is described. */
export interface SuctionSide {
  /** Absolute pressure on the pool surface [Pa], 0 to 110000. */
  readonly atmosphere: number;
  /** The water [see SuctionWater]. */
  readonly water: SuctionWater;
  /** Height of the pool surface above the pump centreline [m], -50 to 50; negative when the pump stands higher. */
  readonly surfaceAbovePump: number;
  /** Loss from the pool to the pump inlet [m], 0 or more. */
  readonly suctionLoss: number;
}

/** What NPSH available follows from when a vacuum gauge at the pump inlet is read. */
export interface SuctionGauge {
  /** Absolute pressure of the air about the gauge [Pa], 0 to 110000. */
  readonly atmosphere: number;
  /** The water [see SuctionWater]. */
  readonly water: SuctionWater;
  /** Reading below atmosphere [Pa], up to 110000; negative when the inlet stands under pressure. */
  readonly suctionVacuum: number;
  /** Velocity in the pipe where the gauge is tapped [m/s], 0 to 30. */
  readonly velocity: number;
  /** Height of the gauge above the pump centreline [m], -50 to 50; 0 when left out. */
  readonly gaugeAbovePump?: number | undefined;
}

/**
 * Geopotential altitude of a place from its height on a map.
 *
 * Law: H = R z/(R + z), R = 6356766 m.
 * @param geometric Height above sea level [m], -2000 to 11000.
 * @returns Geopotential altitude [m].
 * @throws CoreError when the height is outside the range, which is that of the law it feeds.
 * Accuracy: exact for the standard's own earth.
 * Source: ISO 2533:1975, 2.3.
 * @example geopotentialAltitude(3000) // 2998.585
 */
export function geopotentialAltitude(geometric: number): number {
  requireBetween('geometric', geometric, -2000, 11_000, 'm');
  return (nominalEarthRadius * geometric) / (nominalEarthRadius + geometric);
}

/**
 * Pressure of the standard atmosphere at an altitude.
 *
 * Law: p = 101325 (1 - 0.0065 H/288.15)^(g/(0.0065 R)), R = 287.05287 J/(kg K).
 * @param altitude Geopotential altitude [m], -2000 to 11000; a height on a map may stand in for it.
 * @returns Absolute pressure [Pa].
 * @throws CoreError when the altitude is outside the range; the law changes above 11 km.
 * Accuracy: exact for the standard; a map height in place of the geopotential one is 0.02 % low at 3000 m; weather moves the real pressure by about 3 %.
 * Source: ISO 2533:1975, equation 12 and table 4.
 * @example atmosphericPressure(1500) // 84555.99
 */
export function atmosphericPressure(altitude: number): number {
  requireBetween('altitude', altitude, -2000, 11_000, 'm');
  const exponent = standardGravity / (airGasConstant * temperatureLapse);
  return seaLevelPressure * (1 - (temperatureLapse * altitude) / seaLevelTemperature) ** exponent;
}

/**
 * Net positive suction head available, from the described suction side.
 *
 * Law: NPSHA = (p_atm - p_v)/(rho g) + z - h_loss; no velocity head, the reference is the pool surface.
 * @param side The suction side [see SuctionSide], fields as there.
 * @returns NPSH available at the pump centreline [m]; negative when the water would boil.
 * @throws CoreError when a field is outside its range; a negative result is a value, not an error.
 * Accuracy: closed sum; 1e-6 against ISO 2533 with IAPWS water.
 * Source: Hydraulic Institute equation 1.D.6; ISO 17769-1:2012 for the term.
 * @example npshAvailable({ atmosphere: 101325, water: { density: 998.2065, vapourPressure: 2339.215 }, surfaceAbovePump: 0.5, suctionLoss: 1.2 }) // 9.412
 */
export function npshAvailable(side: SuctionSide): number {
  requireBetween('surfaceAbovePump', side.surfaceAbovePump, -50, 50, 'm');
  requireNotNegative('suctionLoss', side.suctionLoss, 'm');
  return boilingMargin(side, 0) + side.surfaceAbovePump - side.suctionLoss;
}

/**
 * Net positive suction head available, from a vacuum gauge at the pump inlet.
 *
 * Law: NPSHA = (p_atm - vacuum - p_v)/(rho g) + V^2/2g + z_gauge.
 * @param gauge The reading [see SuctionGauge], fields as there.
 * @returns NPSH available at the pump centreline [m]; negative when the water would boil.
 * @throws CoreError when a field is outside its range; a negative result is a value, not an error.
 * Accuracy: closed sum; 1e-6 against ISO 2533 with IAPWS water.
 * Source: Hydraulic Institute equation 1.D.6 with the gauge as the reference.
 * @example npshFromVacuum({ atmosphere: 101325, water: { density: 998.2065, vapourPressure: 2339.215 }, suctionVacuum: 20000, velocity: 2 }) // 8.273
 */
export function npshFromVacuum(gauge: SuctionGauge): number {
  requireBetween('suctionVacuum', gauge.suctionVacuum, -1e6, 110_000, 'Pa');
  requireBetween('velocity', gauge.velocity, 0, 30, 'm/s');
  const height = requireBetween('gaugeAbovePump', gauge.gaugeAbovePump ?? 0, -50, 50, 'm');
  const velocityHead = gauge.velocity ** 2 / (2 * standardGravity);
  return boilingMargin(gauge, gauge.suctionVacuum) + velocityHead + height;
}

/**
 * What is left of the suction head after the pump has taken what it needs.
 *
 * Law: margin = NPSHA - NPSHR.
 * @param available NPSH available [m], -100 to 100.
 * @param required NPSH the pump needs at this flow and speed [m], 0 to 100.
 * @returns Margin [m]; negative when the pump would cavitate.
 * @throws CoreError when either is outside its range; a negative margin is a value, not an error.
 * Accuracy: exact; NPSHR itself is stated at 3 % lost head, so some margin is always wanted.
 * Source: ANSI/HI 9.6.1 for the idea of a margin; from memory, text not seen.
 * @example npshMargin(9.4, 2.75) // 6.650
 */
export function npshMargin(available: number, required: number): number {
  requireBetween('available', available, -100, 100, 'm');
  requireBetween('required', required, 0, 100, 'm');
  return available - required;
}

/** Head between the absolute pressure at a point and the vapour pressure [m]. */
function boilingMargin(
  at: { readonly atmosphere: number; readonly water: SuctionWater },
  vacuum: number,
): number {
  requireBetween('atmosphere', at.atmosphere, 0, 110_000, 'Pa');
  requireBetween('density', at.water.density, 500, 1500, 'kg/m3');
  requireNotNegative('vapourPressure', at.water.vapourPressure, 'Pa');
  return (at.atmosphere - vacuum - at.water.vapourPressure) / (at.water.density * standardGravity);
}
