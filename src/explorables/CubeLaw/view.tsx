import { type ReadonlySignal, useModel } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { speeds } from '#explorables/example/demo.ts';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkFields, useLinkState } from '#ui/figure/linkState.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { metric, us } from '#units/choice.ts';
import { CubeLawModel, type CubeLaw as Model } from './model.ts';
import { Picture } from './Picture.tsx';
import * as text from './text.ts';

/** One pump, one speed to drag: water falls with the speed, power with its cube. */
function CubeLaw({ id }: { id: string }): JSX.Element {
  const model = useModel(CubeLawModel);
  const fields = useMemo(() => linkFields(model), [model]);
  useLinkState('cubelaw', fields);
  const sentence = useComputed(() => text.sentence(model));
  const numbers = useComputed(() => text.table(model.units.value));
  const note = useComputed(() => text.note(model.units.value));
  const spoken = useComputed(() => text.spoken(model));
  return (
    <Figure
      id={id}
      title="One pump, any speed: drag it"
      sentence={sentence}
      table={numbers}
      note={note}
      onReset={model.reset}
    >
      <Claim model={model} />
      <div class="law-picture plot-low-marks">
        <Picture model={model} spoken={spoken} />
      </div>
      <Controls id={id} model={model} spoken={spoken} />
      <Outcome model={model} />
    </Figure>
  );
}

export default guarded(CubeLaw);

function linkFields(model: Model): LinkFields {
  return {
    speed: dialInLink(model.speed),
    units: {
      read: () => (model.units.value.preset === 'us' ? '' : 'metric'),
      write: (name) => {
        if (name === 'metric') model.units.value = metric;
      },
    },
  };
}

/** The two numbers that say it all, as large as the page allows. */
function Claim({ model }: { model: Model }): JSX.Element {
  const water = useComputed(() => text.shareText(model.waterShare.value));
  const power = useComputed(() => text.shareText(model.powerShare.value));
  return (
    <p class="law-claim">
      <span class="law-part" data-quantity="flow">
        <b>{water}</b> of the water,
      </span>{' '}
      <span class="law-part" data-quantity="power">
        <b>{power}</b> of the power
      </span>
    </p>
  );
}

interface ControlsProps {
  readonly id: string;
  readonly model: Model;
  readonly spoken: ReadonlySignal<string>;
}

function Controls({ id, model, spoken }: ControlsProps): JSX.Element {
  const { units, speed } = model;
  const entry = useComputed(() =>
    quantityEntry('speed', units.value, { least: speeds.slowest, greatest: speeds.rated }),
  );
  return (
    <div class="law-controls">
      <RangeField
        id={`${id}-speed`}
        label="Speed"
        dial={speed}
        spoken={spoken}
        entry={entry}
        unit="rpm"
      />
      <div class="law-units needs-script">
        <ChoiceField
          id={`${id}-units`}
          label="Units"
          choices={[
            { id: 'us', label: 'US' },
            { id: 'metric', label: 'Metric' },
          ]}
          value={units.value.preset}
          apply={(preset) => {
            units.value = preset === 'us' ? us : metric;
          }}
        />
      </div>
    </div>
  );
}

/** What the speed means for water, watts and money. */
function Outcome({ model }: { model: Model }): JSX.Element {
  const { here, units } = model;
  const flow = useComputed(() => text.flowText(here.value, units.value));
  const power = useComputed(() => text.powerText(here.value, units.value));
  const mileage = useComputed(() => text.mileageText(here.value, units.value));
  const thrifty = useComputed(() => `best near ${text.thriftiestText(units.value)}`);
  const hours = useComputed(() => text.hoursText(here.value, units.value));
  const cost = useComputed(() => text.costText(here.value));
  return (
    <Readings
      items={[
        { id: 'flow', label: 'Flow', value: flow, of: 'flow' },
        { id: 'power', label: 'Power', value: power, of: 'power' },
        { id: 'mileage', label: 'Water per kWh', value: mileage, note: thrifty },
        { id: 'hours', label: 'Whole pool, once a day', value: hours },
        { id: 'cost', label: 'Cost a day', value: cost, of: 'money' },
      ]}
    />
  );
}
