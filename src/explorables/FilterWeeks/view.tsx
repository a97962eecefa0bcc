import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { exampleBench, openingSpeed } from '#explorables/example/filter.ts';
import { weeksToDue } from '#explorables/example/filterBench.ts';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import { placeLabels, type Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, Marker, Rule } from '#ui/charts/marks.tsx';
import { linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction, niceAxis, valueAt } from '#ui/charts/scale.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink } from '#ui/figure/linkState.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { format } from '#units/format.ts';
import { createModel, type FilterWeeksModel, type Moment, usualRise } from './model.ts';
import { readings, sentence, spokenSpeed, spokenWeeks, table } from './text.ts';

const weeksSide: Side = {
  axis: niceAxis({ max: weeksToDue, count: 4, exact: true }),
  title: 'Weeks since cleaning',
  unit: '',
};

/** A filter from clean to due: the flow and the gauge at a speed, and the speed that holds the flow. */
function FilterWeeks({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleBench, openingSpeed), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: [
      'filterweeks',
      () => ({ weeks: dialInLink(model.weeks), speed: dialInLink(model.speed) }),
    ],
    own: () => import('./own.ts'),
  });
  const said = useComputed(() => spokenWeeks(model));
  const saidSpeed = useComputed(() => spokenSpeed(model));
  const entry = useComputed(() =>
    quantityEntry('speed', model.units.value, {
      least: model.speed.min.value,
      greatest: model.speed.max.value,
    }),
  );
  return (
    <Figure
      id={id}
      title="A filter, week by week"
      {...figure}
      note="The example is an invented pad. That a filter takes eight weeks, and loads in a straight line, is made up too: yours may take two or twenty, and hurry at the end. The gauge is taken at the level of the pool."
    >
      <div class="plot-pair">
        <FlowPlot model={model} said={said} />
        <GaugePlot model={model} />
      </div>
      <Figures model={model} />
      <RangeField
        id={`${id}-weeks`}
        label="Weeks since cleaning"
        dial={model.weeks}
        spoken={said}
      />
      <RangeField
        id={`${id}-speed`}
        label="Speed"
        dial={model.speed}
        spoken={saidSpeed}
        entry={entry}
        unit="rpm"
      />
    </Figure>
  );
}

export default guarded(FilterWeeks);

function Figures({ model }: { model: FilterWeeksModel }): JSX.Element {
  return <Readings items={readings(model)} />;
}

interface PlotProps {
  readonly model: FilterWeeksModel;
}

/** Path of one figure over the weeks; gaps where it cannot be had. */
function pathOf(
  model: FilterWeeksModel,
  y: Side['axis'],
  value: (moment: Moment) => number | undefined,
): string {
  return linePath(
    model.moments.value.map((moment) => ({ x: moment.weeks, y: value(moment) })),
    weeksSide.axis,
    y,
  );
}

/** Flow at the speed left alone, below the flow of the clean filter. */
function FlowPlot({ model, said }: PlotProps & { said: ReadonlySignal<string> }): JSX.Element {
  const clean = model.clean.value.left.flow;
  const side = quantitySide('Flow', 'flow', model.units.value, { max: model.reach.value.flow });
  const { axis: y } = side;
  const line = useComputed(() => pathOf(model, y, ({ left }) => left.flow));
  const level = 1 - fraction(y, clean);
  const at = useComputed(() => ({
    x: fraction(weeksSide.axis, model.here.value.weeks),
    y: 1 - fraction(y, model.here.value.left.flow),
  }));
  const name = useComputed(() => `at ${Math.round(model.speed.value.value)} rpm, left alone`);
  const end = model.due.value.left.flow;
  return (
    <Frame
      x={weeksSide}
      y={side}
      shape="square"
      title="Flow against weeks since cleaning, at a speed left alone"
      handlesTitle="Weeks since cleaning, on the picture"
      drawing={
        <>
          <Rule at={level} level of="flow" />
          <Curve d={line} of="flow" />
        </>
      }
      labels={
        <>
          <CurveLabel
            of="flow"
            at={{ x: 0.02, y: level, above: true, ends: false }}
            text="clean, or held by more speed"
            clear
          />
          <CurveLabel
            of="flow"
            at={{ x: 0.98, y: 1 - fraction(y, end), above: fraction(y, end) < 0.2, ends: true }}
            text={name}
            clear
          />
          <Marker at={at} of="flow" />
        </>
      }
    >
      <DragHandle
        dial={model.weeks}
        label="Weeks since cleaning"
        spoken={said}
        at={at}
        valueAt={({ x }: Spot) => valueAt(weeksSide.axis, x)}
        of="flow"
      />
    </Frame>
  );
}

/** The filter gauge both ways, under the usual sign for cleaning. */
function GaugePlot({ model }: PlotProps): JSX.Element {
  const clean = model.clean.value.left.pressure;
  const units = model.units.value;
  const side = quantitySide('Filter gauge', 'pressure', units, { max: model.reach.value.pressure });
  const { axis: y } = side;
  const left = useComputed(() => pathOf(model, y, (moment) => moment.left.pressure));
  const held = useComputed(() => pathOf(model, y, (moment) => moment.held?.pressure));
  const spot = (pressure: number) => ({
    x: fraction(weeksSide.axis, model.here.value.weeks),
    y: 1 - fraction(y, pressure),
  });
  const at = useComputed(() => spot(model.here.value.left.pressure));
  const heldAt = useComputed(() => spot(model.here.value.held?.pressure ?? Number.NaN));
  const sign = 1 - fraction(y, clean + usualRise);
  const line = (value: (moment: Moment) => number | undefined): Spot[] =>
    model.moments.value.flatMap((moment) => {
      const pressure = value(moment);
      if (pressure === undefined) return [];
      return [{ x: fraction(weeksSide.axis, moment.weeks), y: 1 - fraction(y, pressure) }];
    });
  const heldLine = line(({ held }) => held?.pressure);
  const [leftName, heldName] = placeLabels(
    [
      { line: line((moment) => moment.left.pressure), width: 0.44, height: 0.09, wish: 0.98 },
      // A line that soon ends is no more than a spot, and is not named.
      ...((heldLine.at(-1)?.x ?? 0) > 1 / weeksToDue
        ? [{ line: heldLine, width: 0.3, height: 0.09, wish: 0.98 }]
        : []),
    ],
    [{ left: 0, right: 1, top: sign - 0.1, bottom: sign }],
  );
  return (
    <Frame
      x={weeksSide}
      y={side}
      shape="square"
      title="Filter gauge against weeks since cleaning"
      drawing={
        <>
          <Rule at={sign} level />
          <Curve d={left} of="head" />
          <Curve d={held} of="head" faint />
        </>
      }
      labels={
        <>
          <CurveLabel
            of="plain"
            at={{ x: 0.02, y: sign, above: true, ends: false }}
            text={`usual sign: ${format('pressure', usualRise, units, { digits: 2 })} above clean`}
          />
          {leftName && <CurveLabel of="head" at={leftName} text="speed left alone" />}
          {heldName && <CurveLabel of="head" at={heldName} text="flow held" />}
          <Marker at={at} of="head" />
          {model.here.value.held !== undefined && <Marker at={heldAt} of="head" />}
        </>
      }
    />
  );
}
