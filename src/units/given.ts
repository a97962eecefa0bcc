/** Quantities as a lesson or a test writes them: "6 ft/s", "28 degC". */
import { toSI } from './convert.ts';
import { isUnitOf, type Quantity, unitsOf } from './quantities.ts';

/** Reads "6 ft/s" as the quantity asked for, stored. An author's mistake throws, in words. */
export function readGiven(quantity: Quantity, text: string | undefined): number {
  const match = /^(-?[\d.]+)\s+(\S+)$/.exec(text ?? '');
  const unit = match?.[2] ?? '';
  if (match === null || !isUnitOf(quantity, unit)) {
    throw new RangeError(
      `"${text}" is no ${quantity}: write a number, a space and one of ${unitsOf(quantity).join(', ')}.`,
    );
  }
  return toSI(quantity, Number(match[1]), unit);
}
