import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { ToggleField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import type { NumberControl } from '#ui/controls/numberControl.ts';
import { QuantityRange } from '#ui/controls/QuantityRange.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkField } from '#ui/figure/linkState.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import type { Quantity as Measured } from '#units/quantities.ts';
import { exampleLine } from './example.ts';
import { createModel, type Settings, type SuctionLadderModel } from './model.ts';
import { Picture } from './Picture.tsx';
import { headText, sentence, spoken, stateText, table } from './text.ts';

/** Settings in the link; the reader's own pad never travels in it. */
function linkFields(model: SuctionLadderModel): Readonly<Record<string, LinkField>> {
  const ofExample = (dial: NumberControl): LinkField => {
    const field = dialInLink(dial);
    return { ...field, read: () => (model.source.value === 'mine' ? '' : field.read()) };
  };
  return {
    altitude: ofExample(model.altitude),
    temperature: ofExample(model.temperature),
    lift: ofExample(model.lift),
    flow: ofExample(model.flow),
    basket: {
      read: () => (model.basketFull.value ? 'full' : ''),
      write: (text) => {
        model.basketFull.value = text === 'full';
      },
    },
  };
}

/** The pressure on its way from the pool to the eye of the pump, as a ladder that falls. */
function SuctionLadder({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleLine), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['suction', linkFields],
    own: () => import('./own.ts'),
  });
  const hasBasket = useComputed(() => model.line.value.basketId !== undefined);
  return (
    <Figure
      id={id}
      title="From the air on the pool to the eye of the pump"
      {...figure}
      note="Pipe, basket and pump of the example are invented. Pressure is drawn as the height of the water column it holds up, and the little that the motion holds is counted. What the pump needs is taken at full speed; slower it needs less."
    >
      <Picture model={model} />
      <Margins model={model} />
      <div class="suction-controls needs-script">
        <Setting id={id} model={model} name="lift" label="Pump above the water" of="length" />
        <Setting id={id} model={model} name="flow" label="Flow" of="flow" />
        <Setting id={id} model={model} name="altitude" label="Height above the sea" of="length" />
        <Setting
          id={id}
          model={model}
          name="temperature"
          label="Water temperature"
          of="temperature"
        />
        {hasBasket.value && (
          <ToggleField
            id={`${id}-basket`}
            label="Basket full of leaves"
            value={model.basketFull}
            apply={(on) => {
              model.basketFull.value = on;
            }}
          />
        )}
      </div>
    </Figure>
  );
}

export default guarded(SuctionLadder);

interface SettingProps {
  readonly id: string;
  readonly model: SuctionLadderModel;
  readonly name: keyof Settings;
  readonly label: string;
  readonly of: Measured;
}

function Setting({ id, model, name, label, of }: SettingProps): JSX.Element {
  const said = useComputed(() => spoken(model, name));
  return (
    <QuantityRange
      id={`${id}-${name}`}
      label={label}
      dial={model[name]}
      of={of}
      units={model.units}
      spoken={said}
    />
  );
}

/** What is available, what is needed and what that leaves. */
function Margins({ model }: { readonly model: SuctionLadderModel }): JSX.Element {
  const of = (value: () => number) => useComputed(() => headText(model, value()));
  const state = useComputed(() => stateText(model.state.value));
  const available = of(() => model.rungs.value.available);
  const required = of(() => model.rungs.value.required);
  const margin = of(() => model.rungs.value.margin);
  return (
    <div class="suction-margins" data-state={model.state}>
      <Readings
        items={[
          { id: 'available', label: 'NPSH available', value: available, of: 'head' },
          { id: 'required', label: 'NPSH required', value: required, of: 'head' },
          { id: 'margin', label: 'Margin', value: margin, note: state, of: 'head' },
        ]}
      />
    </div>
  );
}
