import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { exampleRig } from '#explorables/example/valve.ts';
import { Frame } from '#ui/charts/Frame.tsx';
import type { Placement, Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, Marker, placed, Rule } from '#ui/charts/marks.tsx';
import { fraction, valueAt } from '#ui/charts/scale.ts';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
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
import { createModel, type ValveWalkModel } from './model.ts';
import { drawnOf, type Sides, sidesOf, spotOf } from './plot.ts';
import { readings, sentence, spokenFilter, spokenValve, table } from './text.ts';

/** A pump before a valve: the point where it meets the pipes walks along the curve of the pump. */
function ValveWalk({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleRig), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: [
      'valve',
      () => ({
        open: dialInLink(model.open),
        dirt: dialInLink(model.loading),
        pump: {
          read: () => (model.pumpId.value === exampleRig.pumps[0].id ? '' : model.pumpId.value),
          write: model.choosePump,
        },
      }),
    ],
    own: () => import('./own.ts'),
  });
  const said = useComputed(() => spokenValve(model));
  const sides = useComputed(() => sidesOf(model));
  return (
    <Figure
      id={id}
      title="A pump, its pipes, and a valve between"
      {...figure}
      note="Pumps and pipes of the example are invented. The small rings are the points of the pump’s sheet. The valve is taken as a gap behind which the jet widens out; a real valve closes by its own law, so the percent are only a guide."
    >
      <HeadPicture model={model} sides={sides.value} said={said} />
      <EfficiencyPicture model={model} sides={sides.value} />
      <Controls id={id} model={model} said={said} />
      <Figures model={model} />
    </Figure>
  );
}

export default guarded(ValveWalk);

interface PictureProps {
  readonly model: ValveWalkModel;
  readonly sides: Sides;
}

function HeadPicture({
  model,
  sides,
  said,
}: PictureProps & { readonly said: ReadonlySignal<string> }): JSX.Element {
  const drawn = useComputed(() => drawnOf(model, sides));
  const at = useComputed(() => spotOf(sides, model.here.value));
  const known = useComputed(() => drawn.value.known);
  const beyond = useComputed(() => drawn.value.beyond);
  const pipes = useComputed(() => drawn.value.pipes);
  const free = useComputed(() => drawn.value.free);
  const lost = useComputed(() => drawn.value.lost);
  const words = useComputed(() => {
    const { flow, head } = model.here.value;
    const units = model.units.value;
    return flow === 0
      ? 'no flow'
      : `${format('flow', flow, units)}, ${format('head', head, units)}`;
  });
  // Beside the knob, in the wedge between the falling and the rising line, where nothing is drawn.
  const strong = useComputed<Placement>(() => {
    const ends = at.value.x > 0.5;
    const x = at.value.x + (ends ? -0.04 : 0.04);
    return { x, y: at.value.y - 0.045, above: false, ends };
  });
  const valveFor = (spot: Spot) => model.throttleTo(valueAt(sides.flow.axis, spot.x));
  const { pumpLabel, freeLabel, pipesLabel } = drawn.value;
  return (
    <Frame
      x={sides.flow}
      y={sides.head}
      title="Head of the pump and head that the pipes take, against flow"
      handlesTitle="Set the valve on the picture"
      drawing={
        <>
          <path class="walk-lost" d={lost} />
          <Curve d={free} of="plain" faint />
          <Curve d={pipes} of="plain" />
          <Curve d={known} of="head" />
          <path class="curve walk-beyond" data-quantity="head" d={beyond} />
        </>
      }
      labels={
        <>
          {model.pump.value.points.map((point) => (
            <span key={point.flow} class="walk-point" style={placed(spotOf(sides, point))} />
          ))}
          {pumpLabel && <CurveLabel at={pumpLabel} of="head" text={model.pump.value.label} />}
          {freeLabel && <CurveLabel at={freeLabel} of="plain" text="open and clean" />}
          {pipesLabel && <CurveLabel at={pipesLabel} of="plain" text="pipes now" />}
          <Marker at={at} of="head" />
          <CurveLabel at={strong} of="head" text={words} strong />
        </>
      }
    >
      <DragHandle
        dial={model.open}
        label="Valve"
        spoken={said}
        at={at}
        valueAt={valveFor}
        of="head"
      />
    </Frame>
  );
}

/** How much of the wire's power ends in the water, along the same flows. */
function EfficiencyPicture({ model, sides }: PictureProps): JSX.Element {
  const line = useComputed(() => drawnOf(model, sides).efficiency);
  const across = useComputed(() => fraction(sides.flow.axis, model.here.value.flow));
  const at = useComputed(() => ({
    x: across.value,
    y: 1 - fraction(sides.efficiency.axis, model.here.value.efficiency),
  }));
  return (
    <Frame
      x={sides.flow}
      y={sides.efficiency}
      shape="strip"
      title="Efficiency from wire to water, against flow"
      drawing={
        <>
          <Rule at={across} />
          <Curve d={line} of="plain" />
        </>
      }
      labels={<Marker at={at} of="plain" />}
    />
  );
}

interface ControlsProps {
  readonly id: string;
  readonly model: ValveWalkModel;
  readonly said: ReadonlySignal<string>;
}

function Controls({ id, model, said }: ControlsProps): JSX.Element {
  const filterSaid = useComputed(() => spokenFilter(model));
  const entry = useMemo(
    () => quantityEntry('share', model.units.peek(), { least: 0, greatest: 1 }),
    [model],
  );
  const rig = model.rig.value;
  return (
    <div class="walk-controls">
      {rig.pumps.length > 1 && (
        <div class="needs-script">
          <ChoiceField
            id={`${id}-pump`}
            label="Pump"
            choices={rig.pumps.map(({ id: name, label }) => ({ id: name, label }))}
            value={model.pumpId}
            apply={model.choosePump}
          />
        </div>
      )}
      <RangeField
        id={`${id}-valve`}
        label="Valve open"
        dial={model.open}
        spoken={said}
        entry={entry}
        unit="%"
      />
      {rig.filter !== undefined && (
        <RangeField
          id={`${id}-filter`}
          label="Filter, from clean to dirty"
          dial={model.loading}
          spoken={filterSaid}
          entry={entry}
          unit="%"
        />
      )}
    </div>
  );
}

function Figures({ model }: { readonly model: ValveWalkModel }): JSX.Element {
  const all = useComputed(() => readings(model));
  return (
    <Readings
      items={[
        { id: 'flow', label: 'Flow', of: 'flow', value: useComputed(() => all.value.flow) },
        { id: 'head', label: 'Head', of: 'head', value: useComputed(() => all.value.head) },
        {
          id: 'power',
          label: 'Wire power',
          of: 'power',
          value: useComputed(() => all.value.power),
        },
        {
          id: 'efficiency',
          label: 'Efficiency, wire to water',
          value: useComputed(() => all.value.efficiency),
        },
        {
          id: 'mileage',
          label: 'Water for a kilowatt-hour',
          value: useComputed(() => all.value.mileage),
        },
      ]}
    />
  );
}
