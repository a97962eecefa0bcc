/**
 * The invented pump of the home picture where something other than its speed moves it along its curve:
 * a valve, a filter that loads, a lift. With valves open and the filter clean it draws what the home
 * picture says, 1692 W at full speed.
 */
import { powerFromEfficiency } from '#core/pump/power.ts';
import { foot, gallonPerMinute } from '#units/factors.ts';
import { demoCircuit, demoCurve, fixedDraw } from './demo.ts';

/** Drive and motor together [-]. */
export const driveEfficiency = 0.82;

/** Power that follows the flow: a fixed draw, and shaft power by the usual parabola of efficiency. */
export const demoPowerByFlow = powerFromEfficiency({
  fixed: fixedDraw,
  curve: demoCurve,
  best: { flow: 0.0048, efficiency: 0.709 },
  driveEfficiency,
  density: demoCircuit.water.density,
});

/** Head of a filter due for cleaning, and its flow: the usual figure of the pad's own form. */
export const dueFilter = { head: 24 * foot, flow: 60 * gallonPerMinute } as const;

/** The same at another flow, for a loss that goes as a power of the flow [m]. */
export function dueHeadAt(flow: number, exponent: number): number {
  return dueFilter.head * (flow / dueFilter.flow) ** exponent;
}
