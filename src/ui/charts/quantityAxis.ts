import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import { symbolFor } from '#units/format.ts';
import type { Quantity } from '#units/quantities.ts';
import type { Side } from './Frame.tsx';
import { type AxisWish, niceAxis, type ShownUnit } from './scale.ts';

/** How the reader's unit of a quantity relates to its stored value. */
export function shownUnit(quantity: Quantity, choice: UnitChoice): ShownUnit {
  const unit = unitFor(choice, quantity);
  return {
    show: (value) => fromSI(quantity, value, unit),
    store: (shown) => toSI(quantity, shown, unit),
  };
}

/** One side of a picture in the reader's unit, with its name and symbol. */
export function quantitySide(
  title: string,
  quantity: Quantity,
  choice: UnitChoice,
  wish: Omit<AxisWish, 'unit'>,
): Side {
  const axis = niceAxis({ ...wish, unit: shownUnit(quantity, choice) });
  return { axis, title, unit: symbolFor(choice, quantity) };
}
