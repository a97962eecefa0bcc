/** What is always at hand: undo, redo, units, and the way to the answers. */
import { useComputed, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { type UnitChoice, unitFor, withUnit } from '#units/choice.ts';
import {
  isUnitOf,
  type Quantity,
  quantityNames,
  quantitySpec,
  unitSpec,
  unitsOf,
} from '#units/quantities.ts';
import { ChoiceField, SelectField } from '#widgets/kit/ChoiceFields.tsx';
import { useForm } from './form.ts';

/** The bar that stays in sight: at the top of the form on a desk, under the thumb on a phone. */
export function Tools({ answers }: { answers: string }): JSX.Element {
  return (
    <>
      <div class="form-bar" role="toolbar" aria-label="Undo, redo, units">
        <StepButton word="Undo" />
        <StepButton word="Redo" />
        <PresetSwitch id="form-bar-preset" label="System of units" />
        <button type="button" class="button button-quiet form-small" popovertarget="form-units">
          Units
        </button>
        <OtherSide answers={answers} />
      </div>
      <UnitsPanel />
    </>
  );
}

/** On a phone, the way to the answers and, from there, back to the form. */
function OtherSide({ answers }: { answers: string }): JSX.Element {
  const atAnswers = useSignal(false);
  useEffect(() => {
    const there = document.querySelector(answers);
    if (there === null) return;
    const watch = new IntersectionObserver(
      ([entry]) => {
        atAnswers.value = entry?.isIntersecting ?? false;
      },
      { rootMargin: '-50% 0px -50% 0px' },
    );
    watch.observe(there);
    return () => watch.disconnect();
  }, [answers]);
  return (
    <a
      class="button form-small form-to-answers"
      href={atAnswers.value ? '#form-start-title' : answers}
    >
      {atAnswers.value ? 'Form' : 'Answers'}
    </a>
  );
}

function StepButton({ word }: { word: 'Undo' | 'Redo' }): JSX.Element {
  const form = useForm();
  const { store } = form;
  const label = word === 'Undo' ? store.undoLabel : store.redoLabel;
  const none = useComputed(() => label.value === null);
  return (
    <button
      type="button"
      class="button button-quiet form-small form-step-button"
      aria-disabled={none}
      onClick={word === 'Undo' ? form.undo : form.redo}
    >
      <span>{word}</span> <span class="form-what">{label}</span>
    </button>
  );
}

const chosenApart = quantityNames.filter((name) => unitsOf(name).length > 1);

function labelOf(quantity: Quantity): string {
  const { name } = quantitySpec(quantity);
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** The system of units, and the unit of each quantity on its own. */
function UnitsPanel(): JSX.Element {
  const { store } = useForm();
  const choose = (next: UnitChoice, what: string) =>
    store.edit((pad) => ({ ...pad, units: next }), what);
  return (
    <div id="form-units" class="form-units" popover="auto" role="dialog" aria-label="Units">
      <div class="form-units-head">
        <PresetSwitch
          id="form-units-preset"
          label="Units"
          hint="Changing them never changes a value or an answer."
        />
        <button
          type="button"
          class="button button-quiet form-small"
          popovertarget="form-units"
          popovertargetaction="hide"
        >
          Done
        </button>
      </div>
      <p class="field-help">Or a unit for each quantity:</p>
      <div class="form-units-list">
        {chosenApart.map((quantity) => (
          <UnitOfQuantity key={quantity} quantity={quantity} choose={choose} />
        ))}
      </div>
    </div>
  );
}

interface PresetProps {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
}

const presetChoices = [
  { id: 'us', label: 'US' },
  { id: 'metric', label: 'Metric' },
] as const;

/** US or metric; units chosen apart go back to the system’s own. */
export function PresetSwitch(props: PresetProps): JSX.Element {
  const form = useForm();
  const preset = useComputed(() => form.units.value.preset);
  return (
    <ChoiceField
      {...props}
      choices={presetChoices}
      value={preset}
      apply={(id) => form.set(['units'], { preset: id, overrides: {} }, 'the system of units')}
    />
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
