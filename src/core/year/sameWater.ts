/** One-speed days that go on moving the same water while the circuit changes, as a filter does. */

import { minutesPerDay } from '#core/base/constants.ts';
import { requireBetween, requireNotNegative } from '#core/base/errors.ts';
import { type Block, type OneSpeedPlan, oneSpeedDay } from '#core/day/day.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import type { CompiledCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { operatingPoint, ratioForFlow } from '#core/pump/operatingPoint.ts';
import type { PumpCurve } from '#core/pump/pump.ts';

/** The water that is to be kept, and what has to move it. */
export interface SameWater {
  /** Pump curve at the reference speed [see PumpCurve]. */
  readonly curve: PumpCurve;
  /** The circuit as it stands on that day [see Circuit], as it is or compiled. */
  readonly circuit: Circuit | CompiledCircuit;
  /** Water of the day [m3], 0 or more. */
  readonly water: number;
}

/** A minute more is not run for less than this share of the water [-]. */
const rounding = 1e-6;

/**
 * The day at one speed that runs as long as the water takes.
 *
 * Law: minutes = water / flow, rounded up to whole minutes, the flow where pump and circuit meet.
 * @param same The water and what moves it [see SameWater], fields as there.
 * @param plan Speed ratio [-], 0 or more, and start [min], 0 to 1439; its own length is not looked at.
 * @returns One block [see Block], all 24 hours where even that is too short; none when there is no water to move.
 * @throws CoreError when the water is negative, or the speed, the start or a part is out of range.
 * Accuracy: never short by more than 1e-6 of the water.
 * Source: as operatingPoint; rounding up is common practice, no source.
 * @example longerDay({ curve: { shutoffHead: 20, lastFlow: 0.01, provenance: 'points', head: (q) => 20 - 2e5 * q * q, slope: (q) => -4e5 * q }, circuit: { suction: [], discharge: [{ kind: 'equipment', id: 'loop', referenceHead: 15, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, water: 90 }, { ratio: 1, minutes: 0, start: 0 })[0].end // 300.0
 */
export function longerDay(
  { curve, circuit, water }: SameWater,
  plan: OneSpeedPlan,
): readonly Block[] {
  requireNotNegative('water', water, 'm3');
  if (water === 0) return [];
  const point = operatingPoint(curve, circuit, plan.ratio);
  const wanted = point.kind === 'flowing' ? water / point.flow / 60 : minutesPerDay;
  const minutes = Math.min(minutesPerDay, Math.ceil(wanted * (1 - rounding)));
  return oneSpeedDay({ ...plan, minutes });
}

/**
 * The day of one length that runs as fast as the water takes.
 *
 * Law: the ratio at which flow = water / time.
 * @param same The water and what moves it [see SameWater], fields as there.
 * @param plan Length [min], 0 to 1440, and start [min], 0 to 1439; its own speed is not looked at.
 * @param maxRatio Fastest speed ratio there is [-], 0.01 to 10.
 * @returns One block [see Block], at the fastest ratio where even that is too slow; none when there is no water or no time.
 * @throws CoreError when the water is negative, the water per time above 10 m3/s, or another field out of range.
 * Accuracy: as ratioForFlow.
 * Source: as ratioForFlow.
 * @example fasterDay({ curve: { shutoffHead: 20, lastFlow: 0.01, provenance: 'points', head: (q) => 20 - 2e5 * q * q, slope: (q) => -4e5 * q }, circuit: { suction: [], discharge: [{ kind: 'equipment', id: 'loop', referenceHead: 15, referenceFlow: 0.005, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, water: 90 }, { ratio: 1, minutes: 600 }, 1)[0].ratio // 0.5000
 */
export function fasterDay(
  { curve, circuit, water }: SameWater,
  plan: OneSpeedPlan,
  maxRatio: number,
): readonly Block[] {
  requireNotNegative('water', water, 'm3');
  requireBetween('minutes', plan.minutes, 0, minutesPerDay, 'min');
  if (water === 0 || plan.minutes === 0) return [];
  const flow = water / plan.minutes / 60;
  const found = ratioForFlow(curve, circuit, flow, { max: maxRatio });
  return oneSpeedDay({ ...plan, ratio: found.kind === 'found' ? found.ratio : maxRatio });
}
