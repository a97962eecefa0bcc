import { type UnitChoice, unitFor } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { type FormatOptions, format } from '#units/format.ts';
import { minusSign } from '#units/numerals.ts';
import type { Quantity } from '#units/quantities.ts';

/** A figure as the reader sees it, and the stored value of just that: what a printed working goes on with. */
export interface Printed {
  readonly text: string;
  readonly value: number;
}

/** The number that a text shows, spaces between its thousands left out. */
export const shownNumber = (text: string): number =>
  Number(text.replace(/\s/g, '').replace(minusSign, '-'));

/** Rounds a figure to what is printed, so that a working adds up as printed. */
export function asPrinted(
  quantity: Quantity,
  value: number,
  units: UnitChoice,
  options: FormatOptions = {},
): Printed {
  const bare = format(quantity, value, units, { ...options, withUnit: false });
  return {
    text: format(quantity, value, units, options),
    value: toSI(quantity, shownNumber(bare), unitFor(units, quantity)),
  };
}
