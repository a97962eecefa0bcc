import { type Quantity, type UnitOf, unitSpec } from './quantities.ts';

/** The stored (SI) value of `value` shown in `unit`. */
export function toSI<Q extends Quantity>(quantity: Q, value: number, unit: UnitOf<Q>): number {
  const { factor, zero = 0 } = unitSpec(quantity, unit);
  return (value - zero) * factor;
}

/** What the stored (SI) value reads in `unit`. */
export function fromSI<Q extends Quantity>(quantity: Q, si: number, unit: UnitOf<Q>): number {
  const { factor, zero = 0 } = unitSpec(quantity, unit);
  return si / factor + zero;
}
