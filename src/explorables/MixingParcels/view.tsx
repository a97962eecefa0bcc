import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { useComputed } from '#ui/controls/failure.ts';
import type { NumberControl } from '#ui/controls/numberControl.ts';
import { QuantityRange } from '#ui/controls/QuantityRange.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkField } from '#ui/figure/linkState.ts';
import { guarded } from '#ui/loading/Guard.tsx';
import type { Quantity as Measured } from '#units/quantities.ts';
import { examplePool } from './example.ts';
import { createModel, type MixingModel, type Settings } from './model.ts';
import { Parcels } from './Parcels.tsx';
import { Picture } from './Picture.tsx';
import { sentence, spoken, table } from './text.ts';

/** Settings in the link; the reader's own pad never travels in it. */
function linkFields(model: MixingModel): Readonly<Record<string, LinkField>> {
  const ofExample = (dial: NumberControl): LinkField => {
    const field = dialInLink(dial);
    return { ...field, read: () => (model.source.value === 'mine' ? '' : field.read()) };
  };
  return {
    volume: ofExample(model.volume),
    flow: ofExample(model.flow),
    time: ofExample(model.time),
  };
}

/** How much of a pool has passed the filter, hour by hour, and which of it waits. */
function MixingParcels({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(examplePool), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['mixing', linkFields],
    own: () => import('./own.ts'),
  });
  return (
    <Figure
      id={id}
      title="A hundred parcels of one pool"
      {...figure}
      note="The pool of the example is invented, and every pool here is mixed perfectly: each parcel is as likely as any other to be drawn next. A real pool has corners where water lingers, and does a little worse."
    >
      <div class="mixing-row">
        <Picture model={model} />
        <Parcels model={model} />
      </div>
      <div class="mixing-controls needs-script">
        <Setting id={id} model={model} name="time" label="Time the pump has run" of="duration" />
        <Setting id={id} model={model} name="flow" label="Flow" of="flow" />
        <Setting id={id} model={model} name="volume" label="Water in the pool" of="volume" />
      </div>
    </Figure>
  );
}

export default guarded(MixingParcels);

interface SettingProps {
  readonly id: string;
  readonly model: MixingModel;
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
