import { type ReadonlySignal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { QuantityRange } from '#ui/controls/QuantityRange.tsx';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkFields } from '#ui/figure/linkState.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { format, speak } from '#units/format.ts';
import { type Way, type Worked, ways } from './ask.ts';
import { exampleBasis } from './basis.ts';
import { createModel, type FilterYearsModel } from './model.ts';
import { EnergyPlot, FlowPlot } from './Pictures.tsx';
import { capital, filterNames, note, readings, sentence, spokenInterval, table } from './text.ts';

const wayLabels: Readonly<Record<Way, string>> = {
  left: 'Nothing',
  hours: 'More hours',
  speed: 'More speed',
};

/** Settings of the example in the page's address. */
function inLink(model: FilterYearsModel): LinkFields {
  const opening = model.way.peek();
  const [small, large] = model.filters;
  return {
    way: {
      read: () => (model.way.value === opening ? '' : model.way.value),
      write: (text) => choose(model, text),
    },
    speed: dialInLink(model.speed),
    hours: dialInLink(model.hours),
    small: dialInLink(small.interval),
    large: dialInLink(large.interval),
  };
}

function choose(model: FilterYearsModel, id: string): void {
  const found = ways.find((way) => way === id);
  if (found !== undefined) model.way.value = found;
}

interface ViewProps {
  readonly id: string;
  /** The opening years, worked out when the page was built. */
  readonly first: Worked;
}

/** The same pool, pump and plan over a year with two filters. */
function FilterYears({ id, first }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel(exampleBasis, first), []);
  useEffect(() => {
    void import('./example.ts').then(
      ({ solveExample }) => {
        model.solver.value = solveExample;
      },
      () => {
        // Out of reach: the first picture stands.
      },
    );
  }, []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['filteryears', inLink],
    own: () => import('./own.ts'),
  });
  const resets = useSignal(0);
  return (
    <Figure
      id={id}
      title="A year under two filters"
      {...figure}
      onReset={() => {
        figure.onReset();
        resets.value += 1;
      }}
      note={note(model)}
    >
      <ChoiceField
        id={`${id}-way`}
        label="As the filter loads, you give the pump"
        choices={ways.map((way) => ({ id: way, label: wayLabels[way] }))}
        value={model.way}
        apply={(way) => choose(model, way)}
      />
      <div class="filter-years">
        <FlowPlot model={model} resets={resets.value} />
        <EnergyPlot model={model} resets={resets.value} />
      </div>
      <Figures model={model} />
      <Settings id={id} model={model} />
    </Figure>
  );
}

export default guarded(FilterYears);

function Figures({ model }: { model: FilterYearsModel }): JSX.Element {
  return <Readings items={readings(model)} />;
}

interface PartProps {
  readonly id: string;
  readonly model: FilterYearsModel;
}

function Settings({ id, model }: PartProps): JSX.Element {
  const spokenSpeed = useComputed(() => speak('speed', model.speed.value.value, model.units.value));
  const spokenHours = useComputed(() => `${model.hours.value.value} hours a day`);
  return (
    <div class="filter-settings needs-script">
      <Interval id={id} model={model} at={0} />
      <Interval id={id} model={model} at={1} />
      <QuantityRange
        id={`${id}-speed`}
        label="Speed you set"
        dial={model.speed}
        of="speed"
        units={model.units}
        spoken={spokenSpeed}
      />
      <RangeField
        id={`${id}-hours`}
        label="Hours a day you set"
        dial={model.hours}
        spoken={spokenHours}
        unit="h"
        entry={hoursEntry}
      />
      <details class="filter-more">
        <summary>The filters themselves</summary>
        <div class="filter-settings">
          <FilterHeads id={`${id}-0`} model={model} at={0} />
          <FilterHeads id={`${id}-1`} model={model} at={1} />
        </div>
      </details>
    </div>
  );
}

const hoursEntry = plainEntry('number of hours');
const daysEntry = plainEntry('number of days', {}, true);

type FilterProps = PartProps & { readonly at: 0 | 1 };

function Interval({ id, model, at }: FilterProps): JSX.Element {
  const spoken = useComputed(() => spokenInterval(model, at));
  const name = filterNames(model)[at];
  return (
    <RangeField
      id={`${id}-interval-${at}`}
      label={`Days between cleanings, ${name}`}
      dial={model.filters[at].interval}
      spoken={spoken}
      entry={daysEntry}
      unit="days"
    />
  );
}

/** Clean and dirty head of a filter, and how long it takes from one to the other. */
function FilterHeads({ id, model, at }: FilterProps): JSX.Element {
  const { cleanHead, dirtyHead, due } = model.filters[at];
  const units = model.units;
  const spokenHead = (of: ReadonlySignal<number>) => () => speak('head', of.value, units.value);
  const clean = useComputed(spokenHead(cleanHead.value));
  const dirty = useComputed(spokenHead(dirtyHead.value));
  const days = useComputed(() => `${due.value.value} days`);
  const name = filterNames(model)[at];
  const atFlow = format('flow', model.basis.value.referenceFlow, units.value);
  return (
    <fieldset class="filter-heads">
      <legend>{capital(name)}</legend>
      <QuantityRange
        id={`${id}-clean`}
        label={`Head at ${atFlow}, clean, ${name}`}
        dial={cleanHead}
        of="head"
        units={units}
        spoken={clean}
      />
      <QuantityRange
        id={`${id}-dirty`}
        label={`Head at ${atFlow}, due for cleaning, ${name}`}
        dial={dirtyHead}
        of="head"
        units={units}
        spoken={dirty}
      />
      <RangeField
        id={`${id}-due`}
        label={`Days from clean to due, ${name}`}
        dial={due}
        spoken={days}
        entry={daysEntry}
        unit="days"
      />
    </fieldset>
  );
}
