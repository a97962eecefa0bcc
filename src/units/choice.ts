/** Which unit a reader sees for each quantity: a preset, and any quantity chosen apart from it. */
import { isUnitOf, type Quantity, quantitySpec, type UnitOf } from './quantities.ts';

export type Preset = 'us' | 'metric';

export interface UnitChoice {
  readonly preset: Preset;
  readonly overrides: { readonly [Q in Quantity]?: UnitOf<Q> };
}

export const us: UnitChoice = { preset: 'us', overrides: {} };
export const metric: UnitChoice = { preset: 'metric', overrides: {} };
export const presets: Readonly<Record<Preset, UnitChoice>> = { us, metric };

/** The unit to show a quantity in. An override that is no unit of the quantity is passed over. */
export function unitFor<Q extends Quantity>(choice: UnitChoice, quantity: Q): UnitOf<Q> {
  const chosen: string | undefined = choice.overrides[quantity];
  if (chosen !== undefined && isUnitOf(quantity, chosen)) return chosen;
  return quantitySpec(quantity)[choice.preset] as UnitOf<Q>;
}

/** The same choice with one quantity in another unit; choosing the preset's own unit clears it. */
export function withUnit<Q extends Quantity>(
  choice: UnitChoice,
  quantity: Q,
  unit: UnitOf<Q>,
): UnitChoice {
  const { [quantity]: _dropped, ...others } = choice.overrides;
  const isPreset = quantitySpec(quantity)[choice.preset] === unit;
  return { ...choice, overrides: isPreset ? others : { ...others, [quantity]: unit } };
}
