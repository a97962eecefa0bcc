import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { Frame } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, Marker, Rule } from '#ui/charts/marks.tsx';
import { fraction, valueAt } from '#ui/charts/scale.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { QuantityRange } from '#ui/controls/QuantityRange.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink } from '#ui/figure/linkState.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { exampleSetup } from './example.ts';
import { liftStartingAt, startSpeed } from './mileage.ts';
import { createModel, type WaterModel } from './model.ts';
import { type Drawn, drawnOf, type Sides, sidesOf } from './plot.ts';
import { readings, sentence, spokenFixed, spokenLift, spokenSpeed, table } from './text.ts';

/** Speed the picture opens at [rpm]: between the best speed and the top. */
const opening = 1400;

/** Water for a kilowatt-hour against speed: where the cube law stops paying. */
function WaterPerKilowattHour({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleSetup, opening), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: [
      'perkwh',
      () => ({
        speed: dialInLink(model.speed),
        fixed: dialInLink(model.fixed),
        lift: dialInLink(model.lift),
      }),
    ],
    own: () => import('./own.ts'),
  });
  const sides = useComputed(() => sidesOf(model));
  const drawn = useComputed(() => drawnOf(model, sides.value));
  const said = {
    speed: useComputed(() => spokenSpeed(model)),
    fixed: useComputed(() => spokenFixed(model)),
    lift: useComputed(() => spokenLift(model)),
  };
  return (
    <Figure
      id={id}
      title="Water for a kilowatt-hour"
      {...figure}
      note="The pump and its pipes are invented. The thin line is the plain cube: the same pump without fixed draw and lift, flow with the speed and power with its cube. Where a line runs off the top, it keeps rising."
    >
      <WaterPicture model={model} sides={sides.value} drawn={drawn} said={said} />
      <PowerPicture model={model} sides={sides.value} drawn={drawn} said={said} />
      <Controls id={id} model={model} said={said} />
      <Figures model={model} />
    </Figure>
  );
}

export default guarded(WaterPerKilowattHour);

interface Said {
  readonly speed: ReadonlySignal<string>;
  readonly fixed: ReadonlySignal<string>;
  readonly lift: ReadonlySignal<string>;
}

interface PictureProps {
  readonly model: WaterModel;
  readonly sides: Sides;
  readonly drawn: ReadonlySignal<Drawn>;
  readonly said: Said;
}

function WaterPicture({ model, sides, drawn, said }: PictureProps): JSX.Element {
  const x = sides.speed.axis;
  const y = sides.water.axis;
  const line = useComputed(() => drawn.value.water);
  const plain = useComputed(() => drawn.value.plainWater);
  const best = useComputed(() => fraction(x, model.best.value?.speed ?? 0));
  // Under the line, unless the line leaves no room there.
  const bestLevel = useComputed(() => {
    const most = fraction(y, (model.best.value?.mileage ?? 0) * joulesPerKilowattHour);
    return most < 0.4 ? { y: 0.02, above: false } : { y: 0.9, above: true };
  });
  const at = useComputed<Spot>(() => ({
    x: fraction(x, model.here.value.speed),
    // A knob above the paper would be out of reach.
    y: Math.max(0, 1 - fraction(y, model.here.value.mileage * joulesPerKilowattHour)),
  }));
  const start = useComputed<Spot>(() => ({
    x: Math.min(fraction(x, startSpeed(model.asked.value)), 1),
    // Just above the axis, so that the marks below it can be read.
    y: 0.95,
  }));
  const liftFor = (spot: Spot) => liftStartingAt(model.setup.value, valueAt(x, spot.x));
  const { waterLabel, plainLabel } = drawn.value;
  return (
    <Frame
      x={sides.speed}
      y={sides.water}
      title="Water for a kilowatt-hour against speed, and by the plain cube"
      handlesTitle="Set the speed and the lift on the picture"
      drawing={
        <>
          <Rule at={best} />
          <Curve d={plain} of="plain" faint />
          <Curve d={line} of="flow" />
        </>
      }
      labels={
        <>
          {plainLabel && <CurveLabel at={plainLabel} of="plain" text="the plain cube" />}
          {waterLabel && <CurveLabel at={waterLabel} of="flow" text="this pump" />}
          <CurveLabel
            at={{ x: best.value, ...bestLevel.value, ends: best.value > 0.7 }}
            of="plain"
            text="best speed"
          />
          <Marker at={at} of="flow" />
        </>
      }
    >
      <DragHandle
        dial={model.lift}
        label="Lift"
        spoken={said.lift}
        at={start}
        valueAt={liftFor}
        of="head"
      />
      <DragHandle
        dial={model.speed}
        label="Speed"
        spoken={said.speed}
        at={at}
        valueAt={(spot) => valueAt(x, spot.x)}
        of="flow"
      />
    </Frame>
  );
}

/** The lowest watts, where the fixed draw shows. */
function PowerPicture({ model, sides, drawn, said }: PictureProps): JSX.Element {
  const y = sides.power.axis;
  const line = useComputed(() => drawn.value.power);
  const plain = useComputed(() => drawn.value.plainPower);
  const at = useComputed<Spot>(() => ({
    // A little inside, where the line is still level and no mark of the axis is covered.
    x: 0.04,
    y: 1 - fraction(y, model.fixed.value.value),
  }));
  return (
    <Frame
      x={sides.speed}
      y={sides.power}
      shape="strip"
      title="Wire power at low speeds, and the cube alone"
      handlesTitle="Set the fixed draw on the picture"
      drawing={
        <>
          <Curve d={plain} of="plain" faint />
          <Curve d={line} of="power" />
        </>
      }
    >
      <DragHandle
        dial={model.fixed}
        label="Fixed draw"
        spoken={said.fixed}
        at={at}
        valueAt={(spot) => valueAt(y, 1 - spot.y)}
        orientation="vertical"
        of="power"
      />
    </Frame>
  );
}

function Controls({
  id,
  model,
  said,
}: {
  readonly id: string;
  readonly model: WaterModel;
  readonly said: Said;
}): JSX.Element {
  const { units } = model;
  return (
    <>
      <QuantityRange
        id={`${id}-speed`}
        label="Speed"
        dial={model.speed}
        of="speed"
        units={units}
        spoken={said.speed}
      />
      <QuantityRange
        id={`${id}-fixed`}
        label="Fixed draw"
        dial={model.fixed}
        of="power"
        units={units}
        spoken={said.fixed}
      />
      <QuantityRange
        id={`${id}-lift`}
        label="Lift"
        dial={model.lift}
        of="head"
        units={units}
        spoken={said.lift}
      />
    </>
  );
}

function Figures({ model }: { readonly model: WaterModel }): JSX.Element {
  const all = useComputed(() => readings(model));
  return (
    <Readings
      items={[
        { id: 'flow', label: 'Flow', of: 'flow', value: useComputed(() => all.value.flow) },
        {
          id: 'power',
          label: 'Wire power',
          of: 'power',
          value: useComputed(() => all.value.power),
        },
        {
          id: 'efficiency',
          label: 'Wire to water',
          value: useComputed(() => all.value.efficiency),
        },
        {
          id: 'mileage',
          label: 'Water for a kilowatt-hour',
          value: useComputed(() => all.value.mileage),
        },
        {
          id: 'best',
          label: 'Best speed',
          value: useComputed(() => all.value.best),
          note: useComputed(() => all.value.formula),
        },
      ]}
    />
  );
}
