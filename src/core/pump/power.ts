/**
 * From water power to the wire: what the meter sees, and the speed that moves most water per kWh.
 */
import { standardGravity } from '#core/base/constants.ts';
import { requireBetween, requireNotNegative, requirePositive } from '#core/base/errors.ts';
import type { PumpCurve } from './pump.ts';

/** A range of flows at the reference speed. */
export interface FlowRange {
  /** Lowest flow [m3/s], 0 or more. */
  readonly first: number;
  /** Highest flow [m3/s], the lowest or more. */
  readonly last: number;
}

/** Wire power of a pump and its drive at any speed. */
export interface PumpPower {
  /** Draw that does not fall with speed [W], 0 or more: electronics, fan. */
  readonly fixed: number;
  /** Wire power above the fixed draw [W] at the reference speed and a flow [m3/s] there. */
  atReference(flow: number): number;
  /** Draw while the pump is stopped [W], 0 or more; 0 when left out. */
  readonly standby?: number | undefined;
  /** Flows at the reference speed that watts were given for; every flow when left out. */
  readonly covered?: FlowRange | undefined;
}

/** Wire power along a closed loop: P = fixed + cube r^3. */
export interface CubePower {
  /** Draw that does not fall with speed [W], 0 or more. */
  readonly fixed: number;
  /** Draw above it at the reference speed [W], 0 or more. */
  readonly cube: number;
}

/** Where the efficiency of the wet end is best. */
export interface BestPoint {
  /** Flow at the best efficiency, reference speed [m3/s], above 0. */
  readonly flow: number;
  /** Best efficiency of the wet end [-], above 0 to 1. */
  readonly efficiency: number;
}

/** What wire power from efficiency needs. */
export interface EfficiencyPower {
  /** Draw that does not fall with speed [W], 0 or more. */
  readonly fixed: number;
  /** Head curve at the reference speed [see PumpCurve], any. */
  readonly curve: PumpCurve;
  /** Best point of the wet end [see BestPoint], fields as there. */
  readonly best: BestPoint;
  /** Shaft power over wire power above the fixed draw [-], above 0 to 1. */
  readonly driveEfficiency: number;
  /** Density of the water [kg/m3], 900 to 1100. */
  readonly density: number;
}

/**
 * Power that the water takes up.
 *
 * Law: P = rho g Q H.
 * @param density Density of the water [kg/m3], 500 to 1500.
 * @param flow Flow [m3/s], 0 or more.
 * @param head Head [m], 0 or more.
 * @returns Power [W].
 * @throws CoreError when a number is out of range.
 * Accuracy: exact.
 * Source: Hydraulic Institute data tool, "pump power".
 * @example hydraulicPower(1000, 0.004, 15) // 588.399
 */
export function hydraulicPower(density: number, flow: number, head: number): number {
  requireBetween('density', density, 500, 1500, 'kg/m3');
  requireNotNegative('flow', flow, 'm3/s');
  requireNotNegative('head', head, 'm');
  return density * standardGravity * flow * head;
}

/**
 * Power at the shaft for a water power.
 *
 * Law: P = P_water / eta.
 * @param hydraulic Water power [W], 0 or more.
 * @param efficiency Efficiency of the wet end [-], 0.001 to 1.
 * @returns Power [W]; the same step from shaft to wire with a motor's efficiency.
 * @throws CoreError when a number is out of range.
 * Accuracy: exact.
 * Source: definition of efficiency; Hydraulic Institute data tool.
 * @example shaftPower(588.399, 0.6) // 980.665
 */
export function shaftPower(hydraulic: number, efficiency: number): number {
  requireNotNegative('hydraulic power', hydraulic, 'W');
  return hydraulic / requireBetween('efficiency', efficiency, 1e-3, 1, '');
}

/**
 * Wire power that is a fixed draw and a cube, whatever the flow.
 *
 * Law: P = P_fixed + c r^3, true along a closed loop.
 * @param law The two numbers [see CubePower], fields as there.
 * @returns The power [see PumpPower].
 * @throws CoreError when a number is below zero.
 * Accuracy: exact where the flow is proportional to speed.
 * Source: affinity laws, ANSI/HI 14.3; the fixed draw is common practice, no source.
 * @example cubePower({ fixed: 40, cube: 1400 }).atReference(0) // 1400
 */
export function cubePower(law: CubePower): PumpPower {
  const fixed = requireNotNegative('fixed draw', law.fixed, 'W');
  const cube = requireNotNegative('cube coefficient', law.cube, 'W');
  return { fixed, atReference: () => cube };
}

/** Flow over best flow beyond which the efficiency parabola is no longer followed [-]. */
const efficiencyEnd = 1.8;

/**
 * Wire power from the head curve and the usual parabola of efficiency.
 *
 * Law: eta = eta_b (2x - x^2), x = Q/Q_b; shaft = rho g Q H / eta = rho g H Q_b / (eta_b (2 - x)), which stays finite at no flow; wire = shaft / eta_drive. Past x = 1.8 the value there is kept.
 * @param pump What is known of the pump [see EfficiencyPower], fields as there.
 * @returns The power [see PumpPower].
 * @throws CoreError when a number is out of range.
 * Accuracy: exact at the best point; away from it as good as the parabola.
 * Source: common practice, no source.
 * @example powerFromEfficiency({ fixed: 30, curve: { shutoffHead: 20, lastFlow: 0.01, provenance: 'points', head: () => 15, slope: () => 0 }, best: { flow: 0.004, efficiency: 0.6 }, driveEfficiency: 0.8, density: 1000 }).atReference(0.004) // 1225.83
 */
export function powerFromEfficiency(pump: EfficiencyPower): PumpPower {
  const { curve } = pump;
  const fixed = requireNotNegative('fixed draw', pump.fixed, 'W');
  const flow = requirePositive('best flow', pump.best.flow, 'm3/s');
  const efficiency = requireBetween('best efficiency', pump.best.efficiency, 1e-3, 1, '');
  const drive = requireBetween('drive efficiency', pump.driveEfficiency, 1e-3, 1, '');
  const density = requireBetween('density', pump.density, 900, 1100, 'kg/m3');
  const scale = (density * standardGravity * flow) / (efficiency * drive);
  return {
    fixed,
    atReference(at) {
      const share = Math.min(Math.max(at / flow, 0), efficiencyEnd);
      return (scale * Math.max(curve.head(share * flow), 0)) / (2 - share);
    },
  };
}

/**
 * Wire power at any speed and flow.
 *
 * Law: P = P_fixed + r^3 P_ref(Q/r) while it turns; the standby draw while it is stopped.
 * @param power Power at the reference speed [see PumpPower], any.
 * @param flow Flow [m3/s], 0 to 10.
 * @param ratio Speed over reference speed [-], 0 to 10; at 0 the pump is stopped.
 * @returns Wire power [W].
 * @throws CoreError when the flow or the ratio is out of range.
 * Accuracy: as good as the power at the reference speed.
 * Source: affinity laws, ANSI/HI 14.3.
 * @example wirePower(cubePower({ fixed: 40, cube: 1400 }), 0.002, 0.25) // 61.875
 */
export function wirePower(power: PumpPower, flow: number, ratio: number): number {
  requireBetween('flow', flow, 0, 10, 'm3/s');
  requireBetween('speed ratio', ratio, 0, 10, '');
  if (ratio < 1e-9) return power.standby ?? 0;
  return power.fixed + ratio ** 3 * power.atReference(flow / ratio);
}

/**
 * Speed ratio with the most volume per kWh, along a closed loop.
 *
 * Law: r* = (P_fixed / 2c)^(1/3), the least of (P_fixed + c r^3) / r.
 * @param law Wire power [see CubePower], cube above 0.
 * @returns Speed ratio [-]; 0 with no fixed draw, where slower is always better.
 * @throws CoreError when a number is out of range.
 * Accuracy: exact where the flow is proportional to speed.
 * Source: calculus on the law of cubePower.
 * @example bestMileageRatio({ fixed: 40, cube: 1400 }) // 0.24264275
 */
export function bestMileageRatio(law: CubePower): number {
  const fixed = requireNotNegative('fixed draw', law.fixed, 'W');
  return Math.cbrt(fixed / (2 * requirePositive('cube coefficient', law.cube, 'W')));
}

/** Golden section: how much of the bracket each step keeps. */
const golden = (Math.sqrt(5) - 1) / 2;

/**
 * Speed ratio with the most volume per kWh, for any circuit.
 *
 * Law: the least of P(r) / Q(r) on the range, by a scan and golden section about its best place.
 * @param costAt Energy per volume [J/m3] at a speed ratio [-], above 0; Infinity where no water moves.
 * @param least Slowest ratio [-], above 0.
 * @param greatest Fastest ratio [-], the slowest or more.
 * @returns Speed ratio [-]; the slowest where no speed moves water.
 * @throws CoreError when the range is empty or out of range.
 * Accuracy: 1e-7 of the range, from a scan of 64 places.
 * Source: common practice, no source (golden section search).
 * @example bestMileageSpeed((r) => (40 + 1400 * r ** 3) / r, 0.1, 1) // 0.242643
 */
export function bestMileageSpeed(
  costAt: (ratio: number) => number,
  least: number,
  greatest: number,
): number {
  requirePositive('least ratio', least, '');
  requireBetween('greatest ratio', greatest, least, 10, '');
  const places = 64;
  const at = (index: number) => least + ((greatest - least) * index) / places;
  let best = 0;
  for (let index = 1; index <= places; index += 1) {
    if (costAt(at(index)) < costAt(at(best))) best = index;
  }
  let low = at(Math.max(0, best - 1));
  let high = at(Math.min(places, best + 1));
  for (let step = 0; step < 40; step += 1) {
    const width = golden * (high - low);
    if (costAt(high - width) <= costAt(low + width)) high = low + width;
    else low = high - width;
  }
  const middle = (low + high) / 2;
  // The best may lie at an end of the range, which golden section only comes near to.
  return [least, greatest, middle].reduce((a, b) => (costAt(b) < costAt(a) ? b : a));
}

/**
 * Line current of a single-phase load.
 *
 * Law: I = P / (V pf).
 * @param power Wire power [W], 0 or more.
 * @param voltage Voltage [V], above 0.
 * @param factor Power factor [-], 0.01 to 1.
 * @returns Current [A].
 * @throws CoreError when a number is out of range.
 * Accuracy: exact.
 * Source: definition of the power factor, IEC 60050-131.
 * @example lineCurrent(400, 230, 0.95) // 1.8306636
 */
export function lineCurrent(power: number, voltage: number, factor: number): number {
  requireNotNegative('power', power, 'W');
  requirePositive('voltage', voltage, 'V');
  return power / (voltage * requireBetween('power factor', factor, 0.01, 1, ''));
}

/**
 * Power factor that a power, a voltage and a current imply.
 *
 * Law: pf = P / (V I).
 * @param power Wire power [W], 0 or more.
 * @param voltage Voltage [V], above 0.
 * @param current Current [A], above 0.
 * @returns Power factor [-]; above 1 the readings contradict each other.
 * @throws CoreError when a number is out of range.
 * Accuracy: exact.
 * Source: definition of the power factor, IEC 60050-131.
 * @example powerFactor(1748, 230, 8) // 0.9500
 */
export function powerFactor(power: number, voltage: number, current: number): number {
  requireNotNegative('power', power, 'W');
  return (
    power / (requirePositive('voltage', voltage, 'V') * requirePositive('current', current, 'A'))
  );
}

/**
 * Line current of a single-phase motor of which a part only magnetises and does not fall with load.
 *
 * Law: I = sqrt((P/V)^2 + I_m^2): the part in step with the voltage does the work, the other lags by a quarter turn.
 * @param power Wire power [W], 0 or more.
 * @param voltage Voltage [V], above 0.
 * @param magnetising Magnetising current [A], 0 or more.
 * @returns Current [A].
 * @throws CoreError when a number is out of range.
 * Accuracy: exact for sinusoidal current; the distorted current of an electronic drive follows another law.
 * Source: apparent, active and reactive power, IEC 60050-131, from memory; that the magnetising part stays is common practice, no source.
 * @example motorCurrent(690, 230, 4) // 5.000
 */
export function motorCurrent(power: number, voltage: number, magnetising: number): number {
  requireNotNegative('power', power, 'W');
  requirePositive('voltage', voltage, 'V');
  requireNotNegative('magnetising current', magnetising, 'A');
  return Math.hypot(power / voltage, magnetising);
}
