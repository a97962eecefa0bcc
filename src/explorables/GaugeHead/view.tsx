import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { QuantityRange } from '#ui/controls/QuantityRange.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkField } from '#ui/figure/linkState.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { Columns } from './Columns.tsx';
import {
  createModel,
  type GaugeHeadModel,
  type GaugeName,
  type GaugeScene,
  measured,
} from './model.ts';
import { PadDrawing } from './PadDrawing.tsx';
import { flowText, headText, roundedNote, sentence, spoken, table } from './text.ts';

interface ViewProps extends GaugeScene {
  readonly id: string;
  /** Says what the example is. */
  readonly note: string;
}

/** Settings in the link; the reader's own readings never travel in it. */
function linkFields(model: GaugeHeadModel): Readonly<Record<string, LinkField>> {
  const ofExample = (name: GaugeName): LinkField => {
    const field = dialInLink(model.dials[name]);
    return { ...field, read: () => (model.source.value === 'mine' ? '' : field.read()) };
  };
  return {
    pressure: ofExample('filterPressure'),
    vacuum: ofExample('suctionVacuum'),
    height: ofExample('gaugeHeight'),
  };
}

/** Two gauges beside a pump, and the head that they add up to. */
function GaugeHead({ id, note, states, density }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel({ states, density }), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['gauges', linkFields],
    own: () => import('./own.ts'),
  });
  const state = useComputed(() => model.picked.value?.id ?? '');
  const resets = useSignal(0);
  return (
    <Figure
      id={id}
      title="Two gauges and the head between them"
      {...figure}
      onReset={() => {
        figure.onReset();
        resets.value += 1;
      }}
      note={note}
    >
      <div class="needs-script">
        <ChoiceField
          key={model.source.value}
          id={`${id}-state`}
          label={model.source.value === 'mine' ? 'Your readings' : 'The state of the pad'}
          choices={model.scene.value.states}
          value={state}
          apply={model.pick}
        />
      </div>
      <div class="gauge-row">
        <PadDrawing model={model} />
        <Columns model={model} resets={resets.value} />
      </div>
      <Sums model={model} />
      <div class="gauge-controls">
        <Setting id={id} model={model} name="suctionVacuum" label="Suction gauge" />
        <Setting id={id} model={model} name="filterPressure" label="Filter gauge" />
        <Setting id={id} model={model} name="gaugeHeight" label="Height between" />
      </div>
    </Figure>
  );
}

export default guarded(GaugeHead);

function Sums({ model }: { model: GaugeHeadModel }): JSX.Element {
  const total = useComputed(() => headText(model, model.heads.value.total));
  const rounded = useComputed(() => headText(model, model.heads.value.rounded));
  const roundedBy = useComputed(() => roundedNote(model));
  const flow = useComputed(() => flowText(model));
  return (
    <Readings
      items={[
        { id: 'total', label: 'Total dynamic head', value: total, of: 'head' },
        { id: 'rounded', label: 'By 2.31 and 1.13', value: rounded, note: roundedBy, of: 'head' },
        { id: 'flow', label: 'Flow at these gauges', value: flow, of: 'flow' },
      ]}
    />
  );
}

interface SettingProps {
  readonly id: string;
  readonly model: GaugeHeadModel;
  readonly name: GaugeName;
  readonly label: string;
}

function Setting({ id, model, name, label }: SettingProps): JSX.Element {
  const said = useComputed(() => spoken(model, name));
  return (
    <QuantityRange
      id={`${id}-${name}`}
      label={label}
      dial={model.dials[name]}
      of={measured[name]}
      units={model.units}
      spoken={said}
    />
  );
}
