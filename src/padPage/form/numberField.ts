import { computed, type ReadonlySignal } from '@preact/signals';
import { type FieldRule, ruleAt } from '#pad/document/fieldRule.ts';
import type { Entry } from '#ui/controls/entry.ts';
import { minutesEntry } from '#ui/controls/minutesEntry.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import type { UnitChoice } from '#units/choice.ts';
import { symbolFor } from '#units/format.ts';
import type { BoundField, Form } from './form.ts';
import { pattern, type Spot } from './spot.ts';

/** How a number of the pad is written: in its unit, whole, or minutes shown as a time. */
export type Writing = 'measured' | 'whole' | 'minutes';

export interface BoundNumber extends BoundField<number | undefined> {
  readonly entry: ReadonlySignal<Entry<number>>;
  /** The unit to write after it; none for a plain number. */
  readonly unit: ReadonlySignal<string> | undefined;
}

/** The entry of a number, with the unit and the range that the definition of the pad gives it. */
function entryFor(
  { quantity, ...range }: FieldRule,
  name: string,
  writing: Writing,
  units: UnitChoice,
): Entry<number> {
  if (writing === 'minutes') return minutesEntry(name, units);
  if (quantity === undefined) return plainEntry(name, range, writing === 'whole');
  return quantityEntry(quantity, units, range, name);
}

/** A number of the pad, ready for a field. */
export function numberField(form: Form, spot: Spot, name: string, writing: Writing): BoundNumber {
  const { units } = form;
  const rule = ruleAt(form.rules, pattern(spot));
  const quantity = writing === 'minutes' ? 'duration' : rule.quantity;
  return {
    ...form.bound<number | undefined>(spot, undefined),
    entry: computed(() => entryFor(rule, name, writing, units.value)),
    unit: quantity === undefined ? undefined : computed(() => symbolFor(units.value, quantity)),
  };
}
