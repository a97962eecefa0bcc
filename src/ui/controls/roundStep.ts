import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import type { Quantity } from '#units/quantities.ts';

/** The power of ten in the reader's unit that lies at or next below a stored amount, stored. */
export function roundStep(quantity: Quantity, about: number, units: UnitChoice): number {
  const unit = unitFor(units, quantity);
  const power = Math.floor(Math.log10(fromSI(quantity, about, unit)) + 1e-9);
  return toSI(quantity, 10 ** power, unit);
}
