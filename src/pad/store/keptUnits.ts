import { presets, type UnitChoice } from '#units/choice.ts';
import { isUnitOf, quantityNames } from '#units/quantities.ts';
import { padKey } from './padKey.ts';

/**
 * The units of the pad this browser keeps, or null when it keeps none.
 *
 * Read by hand: what reads a whole pad weighs more than all else that a lesson loads for this.
 */
export function keptUnits(): UnitChoice | null {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(padKey) ?? 'null');
    return unitsIn(found);
  } catch {
    return null;
  }
}

/** The units a kept document names; what is not known in it is passed over. */
export function unitsIn(document: unknown): UnitChoice | null {
  const units = field(document, 'units');
  if (units === undefined) return null;
  const base = field(units, 'preset') === 'metric' ? presets.metric : presets.us;
  const chosen = quantityNames.flatMap((name) => {
    const unit = field(field(units, 'overrides'), name);
    return typeof unit === 'string' && isUnitOf(name, unit) ? [[name, unit]] : [];
  });
  return chosen.length === 0 ? base : { ...base, overrides: Object.fromEntries(chosen) };
}

function field(holder: unknown, name: string): unknown {
  if (typeof holder !== 'object' || holder === null || !Object.hasOwn(holder, name))
    return undefined;
  return (holder as Record<string, unknown>)[name];
}
