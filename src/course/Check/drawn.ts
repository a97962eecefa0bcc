import type { UnitChoice } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';

/** A flow in round numbers of the reader's own system [m3/s]: gpm, or m3/h. */
export function roundFlow(units: UnitChoice, us: number, metric: number): number {
  return units.preset === 'us' ? toSI('flow', us, 'gpm') : toSI('flow', metric, 'm3/h');
}
