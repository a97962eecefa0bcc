import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Live } from '#ui/charts/live.ts';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { symbolFor } from '#units/format.ts';
import type { Quantity } from '#units/quantities.ts';
import { useComputed } from './failure.ts';
import type { NumberControl } from './numberControl.ts';
import { quantityEntry } from './quantityEntry.ts';
import { RangeField } from './RangeField.tsx';

interface QuantityRangeProps {
  readonly id: string;
  readonly label: string;
  readonly dial: NumberControl;
  readonly of: Quantity;
  readonly units: ReadonlySignal<UnitChoice>;
  readonly spoken: Live<string>;
}

/** A slider of a measured number, typed and shown in the reader's unit. */
export function QuantityRange({ of, units, ...range }: QuantityRangeProps): JSX.Element {
  const entry = useComputed(() => quantityEntry(of, units.value));
  const unit = useComputed(() => symbolFor(units.value, of));
  // Another unit is another field: what was half typed in the one means nothing in the other.
  return <RangeField key={unitFor(units.value, of)} {...range} entry={entry} unit={unit} />;
}
