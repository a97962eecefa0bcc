import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { ToggleField } from '#ui/controls/ChoiceFields.tsx';
import type { Entry } from '#ui/controls/entry.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink } from '#ui/figure/linkState.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { formatTimeOfDay, parseTimeOfDay } from '#units/timeOfDay.ts';
import type { Setting, WorkedDay } from './bench.ts';
import { type BlockName, blockNames, createModel, type ThreeBlockModel } from './model.ts';
import { FlowPlot, PowerPlot } from './Picture.tsx';
import {
  blockLabels,
  needText,
  readings,
  sentence,
  spokenBegin,
  spokenSpeed,
  table,
  usualText,
  wishText,
} from './text.ts';

/** A time of the day as it is typed: "9", "09:30", "2 pm". */
const timeEntry: Entry<number> = {
  format: (minute) => formatTimeOfDay(minute),
  parse: (text) => {
    const read = parseTimeOfDay(text);
    return read.ok
      ? { ok: true, value: read.minute }
      : { ok: false, problem: 'Give a time of the day, such as 09:30.' };
  },
};

function inLink(model: ThreeBlockModel) {
  return {
    high: dialInLink(model.begins.high),
    middle: dialInLink(model.begins.middle),
    low: dialInLink(model.begins.low),
    fast: dialInLink(model.speeds.high),
    half: dialInLink(model.speeds.middle),
    slow: dialInLink(model.speeds.low),
    stops: {
      read: () => (model.stops.value ? '1' : ''),
      write: (text: string) => {
        model.stops.value = text === '1';
      },
    },
  };
}

interface ViewProps {
  readonly id: string;
  /** The example and its opening day, worked out when the page was built. */
  readonly setting: Setting;
  readonly first: WorkedDay;
}

/** Three blocks over 24 hours on a tariff of two prices, with all that follows from them. */
function ThreeBlockDay({ id, setting, first }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel(setting, first), []);
  useEffect(() => {
    void import('./example.ts').then(
      ({ exampleWorker }) => {
        model.worker.value = exampleWorker;
      },
      () => {
        // Out of reach: the first picture stands.
      },
    );
  }, []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['threeblocks', inLink],
    own: () => import('./own.ts'),
  });
  return (
    <Figure
      id={id}
      title="A day in three blocks"
      {...figure}
      note="The example is an invented pump, pool and tariff. The price is that of the energy alone, without a daily charge."
    >
      <FlowPlot model={model} />
      <PowerPlot model={model} />
      <Totals model={model} />
      <div class="blocks-row needs-script">
        {blockNames.map((name) => (
          <BlockFields key={name} id={`${id}-${name}`} model={model} name={name} />
        ))}
      </div>
      <Usual model={model} />
    </Figure>
  );
}

export default guarded(ThreeBlockDay);

function Totals({ model }: { model: ThreeBlockModel }): JSX.Element {
  return (
    <div class="blocks-totals">
      <Readings items={readings(model)} />
      <ul class="blocks-needs">
        {model.here.value.report.needs.map((served) => (
          <li key={served.need.id} data-met={served.met}>
            <span>{wishText(served.need, model)}</span> <b>{needText(served)}</b>
          </li>
        ))}
      </ul>
    </div>
  );
}

interface FieldsProps {
  readonly id: string;
  readonly model: ThreeBlockModel;
  readonly name: BlockName;
}

function BlockFields({ id, model, name }: FieldsProps): JSX.Element {
  const saidBegin = useComputed(() => spokenBegin(model, name));
  const saidSpeed = useComputed(() => spokenSpeed(model, name));
  const label = blockLabels[name];
  const speed = model.speeds[name];
  const entry = useComputed(() =>
    quantityEntry('speed', model.units.value, {
      least: speed.min.value,
      greatest: speed.max.value,
    }),
  );
  return (
    <div class="blocks-fields">
      <RangeField
        id={`${id}-begins`}
        label={`${label} block begins`}
        dial={model.begins[name]}
        spoken={saidBegin}
        entry={timeEntry}
      />
      <RangeField
        id={`${id}-speed`}
        label={`${label} speed`}
        dial={speed}
        spoken={saidSpeed}
        entry={entry}
        unit="rpm"
      />
      {name === 'low' && (
        <ToggleField
          id={`${id}-stops`}
          label="Stop instead of running low"
          value={model.stops}
          apply={(on) => {
            model.stops.value = on;
          }}
        />
      )}
    </div>
  );
}

function Usual({ model }: { model: ThreeBlockModel }): JSX.Element {
  const words = useComputed(() => usualText(model));
  return <p class="figure-note">{words}</p>;
}
