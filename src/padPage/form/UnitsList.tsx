import type { JSX } from 'preact';
import { SelectField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { type UnitChoice, unitFor, withUnit } from '#units/choice.ts';
import {
  isUnitOf,
  type Quantity,
  quantityNames,
  quantitySpec,
  unitSpec,
  unitsOf,
} from '#units/quantities.ts';
import { useForm } from './form.ts';

const chosenApart = quantityNames.filter((name) => unitsOf(name).length > 1);

function labelOf(quantity: Quantity): string {
  const { name } = quantitySpec(quantity);
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** A unit for each quantity that has more than one. */
export function UnitsList(): JSX.Element {
  const { store } = useForm();
  const choose = (next: UnitChoice, what: string) =>
    store.edit((pad) => ({ ...pad, units: next }), what);
  return (
    <div class="form-units-list">
      {chosenApart.map((quantity) => (
        <UnitOfQuantity key={quantity} quantity={quantity} choose={choose} />
      ))}
    </div>
  );
}

interface UnitProps {
  readonly quantity: Quantity;
  readonly choose: (next: UnitChoice, what: string) => void;
}

function UnitOfQuantity({ quantity, choose }: UnitProps): JSX.Element {
  const { units } = useForm();
  const unit = useComputed(() => unitFor(units.value, quantity) as string);
  const choices = unitsOf(quantity).map((id) => ({ id, label: unitSpec(quantity, id).symbol }));
  return (
    <SelectField
      id={`form-unit-${quantity}`}
      label={labelOf(quantity)}
      choices={choices}
      value={unit}
      apply={(id) => {
        if (isUnitOf(quantity, id)) {
          choose(
            withUnit(units.peek(), quantity, id),
            `the unit of ${quantitySpec(quantity).name}`,
          );
        }
      }}
    />
  );
}
