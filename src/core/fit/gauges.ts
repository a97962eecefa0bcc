import { standardGravity } from '#core/base/constants.ts';
import { requireBetween, requirePositive } from '#core/base/errors.ts';

/** The pressure gauges beside a pump, read at one moment. */
export interface GaugePair {
  /** Reading of the gauge after the pump [Pa above atmosphere], -110000 to 2000000. */
  readonly dischargePressure: number;
  /** Reading of the gauge before the pump [Pa below atmosphere], -1000000 to 110000; negative when the inlet stands under pressure. */
  readonly suctionVacuum: number;
  /** Height of the discharge gauge above the suction gauge [m], -50 to 50. */
  readonly gaugeHeight: number;
  /** Density of the water [kg/m3], 500 to 1500. */
  readonly density: number;
  /** Flow [m3/s], 0 or more; needed only for the velocity term. */
  readonly flow?: number | undefined;
  /** Bore where the discharge gauge is tapped [m], above 0; needed only for the velocity term. */
  readonly dischargeBore?: number | undefined;
  /** Bore where the suction gauge is tapped [m], above 0; needed only for the velocity term. */
  readonly suctionBore?: number | undefined;
}

/** Accuracy grades of dial gauges, the tightest first. */
export type GaugeGrade = '4A' | '3A' | '2A' | '1A' | 'A' | 'B' | 'C' | 'D';

/** Allowed error of a grade, as shares of the span. */
export interface GradeTolerance {
  /** In the middle half of the scale [-], 0.001 to 0.05. */
  readonly middle: number;
  /** In the first and last quarter of the scale [-], 0.001 to 0.05. */
  readonly ends: number;
}

/** A dial gauge: how good it is and how far its scale goes. */
export interface Gauge {
  /** Accuracy grade [see GaugeGrade], as printed on the dial. */
  readonly grade: GaugeGrade;
  /** From the lowest to the highest mark of the scale [Pa], above 0. */
  readonly span: number;
}

/**
 * Allowed error of each grade as a share of the span (ASME B40.100-2013, accuracy grades; from
 * memory, text not seen).
 */
export const gaugeGrades: Readonly<Record<GaugeGrade, GradeTolerance>> = {
  '4A': { middle: 0.001, ends: 0.001 },
  '3A': { middle: 0.0025, ends: 0.0025 },
  '2A': { middle: 0.005, ends: 0.005 },
  '1A': { middle: 0.01, ends: 0.01 },
  A: { middle: 0.01, ends: 0.02 },
  B: { middle: 0.02, ends: 0.03 },
  C: { middle: 0.03, ends: 0.04 },
  D: { middle: 0.05, ends: 0.05 },
};

/**
 * Height of a water column that presses as hard as the given pressure.
 *
 * Law: h = p/(rho g).
 * @param pressure Pressure [Pa], -2000000 to 2000000.
 * @param density Density of the water [kg/m3], 500 to 1500.
 * @returns Head [m], negative for a negative pressure.
 * @throws CoreError when either is outside its range.
 * Accuracy: exact for the density given.
 * Source: hydrostatics; standard gravity as in NIST SP 811, B.8.
 * @example pressureHead(100000, 998.2) // 10.22
 */
export function pressureHead(pressure: number, density: number): number {
  requireBetween('pressure', pressure, -2e6, 2e6, 'Pa');
  requireBetween('density', density, 500, 1500, 'kg/m3');
  return pressure / (density * standardGravity);
}

/**
 * Pressure at the foot of a water column.
 *
 * Law: p = rho g h.
 * @param head Height of the column [m], -1000 to 1000.
 * @param density Density of the water [kg/m3], 500 to 1500.
 * @returns Pressure [Pa], negative for a negative head.
 * @throws CoreError when either is outside its range.
 * Accuracy: exact for the density given.
 * Source: hydrostatics; standard gravity as in NIST SP 811, B.8.
 * @example columnPressure(10, 1000) // 98066.5
 */
export function columnPressure(head: number, density: number): number {
  requireBetween('head', head, -1000, 1000, 'm');
  requireBetween('density', density, 500, 1500, 'kg/m3');
  return head * density * standardGravity;
}

/**
 * Head the pump adds, from the gauges on either side of it.
 *
 * Law: TDH = (p_d + vacuum)/(rho g) + gauge height + (V_d^2 - V_s^2)/2g.
 * @param pair The gauges [see GaugePair], fields as there; the velocity term counts only when the flow and both bores are given.
 * @returns Total dynamic head [m].
 * @throws CoreError when a field is outside its range.
 * Accuracy: exact for the density given; the trade's 2.31 ft/psi and 1.13 ft/inHg are off by up to 0.6 % in pool water.
 * Source: Hydraulic Institute, total head of a pump from gauges; NIST SP 811 for the units.
 * @example totalDynamicHead({ dischargePressure: 124106, suctionVacuum: 20318, gaugeHeight: 0, density: 998.2065 }) // 14.75
 */
export function totalDynamicHead(pair: GaugePair): number {
  requireBetween('dischargePressure', pair.dischargePressure, -110_000, 2e6, 'Pa');
  requireBetween('suctionVacuum', pair.suctionVacuum, -1e6, 110_000, 'Pa');
  requireBetween('gaugeHeight', pair.gaugeHeight, -50, 50, 'm');
  const across = pressureHead(pair.dischargePressure, pair.density);
  const vacuum = pressureHead(pair.suctionVacuum, pair.density);
  return across + vacuum + pair.gaugeHeight + velocityTerm(pair);
}

/** The trade's rounded head of one psi and of one inch of mercury [m]: 2.31 ft and 1.13 ft; common practice. */
const roundedHead = { psi: 2.31 * 0.3048, inchOfMercury: 1.13 * 0.3048 };

/** Pound-force per square inch and conventional inch of mercury [Pa] (NIST SP 811, B.8). */
const gaugeUnits = { psi: 4.4482216152605 / 0.0254 ** 2, inchOfMercury: 3386.389 };

/**
 * Head the pump adds by the trade's rounded factors, to set beside totalDynamicHead.
 *
 * Law: TDH = 2.31 ft/psi x p_d + 1.13 ft/inHg x vacuum + gauge height, whatever the density.
 * @param pair The gauges [see GaugePair], fields as there; density and the velocity term are passed over.
 * @returns Total dynamic head [m].
 * @throws CoreError when a field is outside its range.
 * Accuracy: 2.31 is exact at about 18 degC and 0.6 % low at 38 degC; 1.13 is 0.3 % to 1 % low.
 * Source: common practice, no source.
 * @example roundedDynamicHead({ dischargePressure: 124106, suctionVacuum: 20318, gaugeHeight: 0, density: 998.2065 }) // 14.74
 */
export function roundedDynamicHead(pair: GaugePair): number {
  requireBetween('dischargePressure', pair.dischargePressure, -110_000, 2e6, 'Pa');
  requireBetween('suctionVacuum', pair.suctionVacuum, -1e6, 110_000, 'Pa');
  requireBetween('gaugeHeight', pair.gaugeHeight, -50, 50, 'm');
  const across = (pair.dischargePressure / gaugeUnits.psi) * roundedHead.psi;
  const vacuum = (pair.suctionVacuum / gaugeUnits.inchOfMercury) * roundedHead.inchOfMercury;
  return across + vacuum + pair.gaugeHeight;
}

/**
 * Largest error a gauge of some grade may show at a reading.
 *
 * Law: share of the span by grade; grades A, B and C are tighter in the middle half of the scale.
 * @param gauge The gauge [see Gauge], fields as there.
 * @param reading Where the pointer stands, above the lowest mark [Pa], any finite number; one off the scale counts as at its end.
 * @returns Allowed error to either side [Pa], more than 0.
 * @throws CoreError when the span is not above 0 or the reading is not a finite number.
 * Accuracy: the grade speaks of a sound gauge; an old one on a pad may be far worse.
 * Source: ASME B40.100-2013, accuracy grades; from memory, text not seen.
 * @example gaugeTolerance({ grade: 'B', span: 413685 }, 100000) // 12410.55
 */
export function gaugeTolerance(gauge: Gauge, reading: number): number {
  requirePositive('span', gauge.span, 'Pa');
  requireBetween('reading', reading, -1e9, 1e9, 'Pa');
  const along = reading / gauge.span;
  const { middle, ends } = gaugeGrades[gauge.grade];
  return gauge.span * (along >= 0.25 && along <= 0.75 ? middle : ends);
}

/** Velocity head gained between the two tappings [m]; 0 when it cannot be known. */
function velocityTerm({ flow, dischargeBore, suctionBore }: GaugePair): number {
  if (flow === undefined || dischargeBore === undefined || suctionBore === undefined) return 0;
  requireBetween('flow', flow, 0, 10, 'm3/s');
  return velocityHead(flow, dischargeBore) - velocityHead(flow, suctionBore);
}

function velocityHead(flow: number, bore: number): number {
  requirePositive('bore', bore, 'm');
  const velocity = flow / ((Math.PI / 4) * bore ** 2);
  return velocity ** 2 / (2 * standardGravity);
}
