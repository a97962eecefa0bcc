/** The fields of one part of the plumbing. */
import { signal, useSignalEffect } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import type { EquipmentSection, FittingSection, PipeSection } from '#pad/document/schema.ts';
import { SelectField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { createNumberControl } from '#ui/controls/numberControl.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { speak } from '#units/format.ts';
import { More } from './Entry.tsx';
import { CountField, NumberField, PickField, WordsField } from './fields.tsx';
import { useForm } from './form.ts';
import {
  chosenSize,
  equipmentChoices,
  fittingChoices,
  mediaChoices,
  ownBore,
  sizeChoices,
  withSize,
} from './parts.ts';
import { elementId, type Spot, valueAtSpot } from './spot.ts';
import { isUsualEquipment, usualEquipment } from './usual.ts';

type Sized = PipeSection | FittingSection;

/** A size from the table, or a bore that is typed. */
function SizeFields({ at, of }: { at: Spot; of: string }): JSX.Element {
  const form = useForm();
  const chosen = useComputed(() => {
    const part = valueAtSpot(form.pad.value, at) as Sized | undefined;
    return part === undefined ? '' : chosenSize(part);
  });
  const error = useComputed(() => form.errorsIn([...at, 'sizeId'])[0]);
  const preset = useComputed(() => form.units.value.preset);
  const choices = useMemo(() => sizeChoices(preset.value), [preset.value]);
  const choose = (choice: string) =>
    form.change(at, (part: Sized) => withSize(part, choice), `the size of ${of}`);
  return (
    <>
      <SelectField
        id={`${elementId(at)}-size`}
        label="Size"
        choices={choices}
        value={chosen}
        problem={error}
        apply={choose}
      />
      {chosen.value === ownBore && (
        <NumberField
          at={[...at, 'bore']}
          label="Bore"
          what={`the bore of ${of}`}
          hint="Inside diameter, wall to wall."
        />
      )}
    </>
  );
}

export function PipeFields({ at }: { at: Spot }): JSX.Element {
  return (
    <>
      <SizeFields at={at} of="a pipe" />
      <NumberField at={[...at, 'length']} label="Length" what="the length of a pipe" />
      <More title="Rough wall">
        <NumberField
          at={[...at, 'roughness']}
          label="Roughness of the wall"
          what="the roughness of a pipe"
          hint="Leave empty for smooth plastic."
        />
      </More>
    </>
  );
}

export function FittingFields({ at }: { at: Spot }): JSX.Element {
  const form = useForm();
  const isOther = useComputed(
    () => (valueAtSpot(form.pad.value, at) as FittingSection | undefined)?.fitting === 'other',
  );
  const ownK = (
    <NumberField
      at={[...at, 'k']}
      label="Loss coefficient K of one"
      what="the K of a fitting"
      hint={isOther.value ? 'From the maker’s sheet.' : 'Leave empty to take it from the table.'}
    />
  );
  return (
    <>
      <PickField
        at={[...at, 'fitting']}
        label="Which fitting"
        what="the kind of a fitting"
        choices={fittingChoices}
      />
      <div class="form-pair">
        <CountField at={[...at, 'count']} label="How many" what="the number of fittings" />
        <SizeFields at={at} of="a fitting" />
      </div>
      {isOther.value ? ownK : <More title="A K of its own">{ownK}</More>}
    </>
  );
}

/** Equipment of another kind; its usual loss comes along as long as nothing else was typed. */
function ofKind(
  part: EquipmentSection,
  kind: EquipmentSection['equipment'],
  preset: 'us' | 'metric',
): EquipmentSection {
  const untouched = part.head === null || isUsualEquipment(part);
  const usual = usualEquipment(kind, preset) ?? { head: null, flow: null };
  return { ...part, equipment: kind, ...(untouched ? usual : {}) };
}

export function EquipmentFields({ at }: { at: Spot }): JSX.Element {
  const form = useForm();
  const part = useComputed(() => valueAtSpot(form.pad.value, at) as EquipmentSection | undefined);
  const kind = useComputed(() => part.value?.equipment ?? 'other');
  const isUsual = useComputed(() => part.value !== undefined && isUsualEquipment(part.value));
  return (
    <>
      <SelectField
        id={`${elementId(at)}-kind`}
        label="Which equipment"
        choices={equipmentChoices}
        value={kind}
        apply={(id) =>
          form.change(
            at,
            (before: EquipmentSection) =>
              ofKind(before, id as EquipmentSection['equipment'], form.units.peek().preset),
            'the kind of equipment',
          )
        }
      />
      <WordsField at={[...at, 'name']} label="Name" what="the name of a part" />
      <div class="form-pair">
        <NumberField
          at={[...at, 'head']}
          label={kind.value === 'filter' ? 'Head lost, clean' : 'Head lost'}
          what="the head of a part"
        />
        <NumberField at={[...at, 'flow']} label="At this flow" what="the flow of a part" />
      </div>
      {isUsual.value && (
        <p class="form-usual">
          A usual figure (common practice, no source). Its manual knows better.
        </p>
      )}
      {kind.value === 'filter' && <FilterFields at={at} />}
      <More title="How the loss grows">
        <NumberField
          at={[...at, 'exponent']}
          label="Exponent of flow"
          what="the exponent of a part"
          hint="2 when left empty; clean filter media may be nearer 1."
        />
      </More>
    </>
  );
}

function FilterFields({ at }: { at: Spot }): JSX.Element {
  return (
    <>
      <div class="form-pair">
        <NumberField at={[...at, 'area']} label="Filter area" hint="On its label." />
        <PickField
          at={[...at, 'media']}
          label="Filters through"
          what="the filter media"
          choices={mediaChoices}
          unsaid="Not said"
        />
      </div>
      <NumberField
        at={[...at, 'dirtyHead']}
        label="Head lost when due for cleaning"
        hint="At the same flow."
      />
      <Loading at={[...at, 'loading']} />
    </>
  );
}

/** How loaded the filter is now, as a slider. */
function Loading({ at }: { at: Spot }): JSX.Element {
  const form = useForm();
  const loading = useComputed(() => (valueAtSpot(form.pad.value, at) as number | null) ?? 0);
  const { shown, dial } = useMemo(() => {
    const shown = signal(loading.peek());
    const set = (next: number) => form.set(at, next, 'the loading of the filter');
    return { shown, dial: createNumberControl({ value: shown, min: 0, max: 1, step: 0.01, set }) };
  }, [form, elementId(at)]);
  useSignalEffect(() => {
    shown.value = loading.value;
  });
  const spoken = useComputed(() => `${speak('share', loading.value, form.units.value)} loaded`);
  const entry = useComputed(() =>
    quantityEntry('share', form.units.value, { least: 0, greatest: 1 }),
  );
  return (
    <RangeField
      id={elementId(at)}
      label="Loaded by now"
      hint="0 when just cleaned, 100 when due for cleaning."
      dial={dial}
      spoken={spoken}
      entry={entry}
      unit="%"
    />
  );
}
