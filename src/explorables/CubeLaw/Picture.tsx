import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { speeds } from '#explorables/example/demo.ts';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import type { Placement, Spot } from '#ui/charts/labels.ts';
import { Band, Curve, CurveLabel, Marker } from '#ui/charts/marks.tsx';
import { bandPath, linePath } from '#ui/charts/path.ts';
import { across, fraction, niceAxis, span, upward, valueAt } from '#ui/charts/scale.ts';
import { DragHandle, DragSurface } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { type CubeLaw, full, pointAt, type SpeedPoint, sweep } from './model.ts';
import { flowText, powerText } from './text.ts';

const x: Side = {
  axis: niceAxis({ max: speeds.rated, count: 7, exact: true }),
  title: 'Speed',
  unit: 'rpm',
};
const y: Side = {
  axis: niceAxis({ max: 100, count: 4, exact: true }),
  title: 'Percent of full-speed value',
  unit: '%',
};

const waterOf = (point: SpeedPoint) => (100 * point.flow) / full.flow;
const powerOf = (point: SpeedPoint) => (100 * point.power) / full.power;

const line = (share: (point: SpeedPoint) => number) =>
  linePath(
    sweep.map((point) => ({ x: point.speed, y: share(point) })),
    x.axis,
    y.axis,
  );
const flowLine = line(waterOf);
const powerLine = line(powerOf);
const between = bandPath(
  sweep.map((point) => ({ x: point.speed, low: powerOf(point), high: waterOf(point) })),
  x.axis,
  y.axis,
);

const spot = (point: SpeedPoint, share: number): Spot => ({
  x: fraction(x.axis, point.speed),
  y: 1 - fraction(y.axis, share),
});

/** Words above a line that rises to the right stand on its left. */
const flowLabel = (point: SpeedPoint): Placement => ({
  ...spot(point, waterOf(point)),
  above: true,
  ends: true,
});

/** The power line bends upward: below it on the right there is room, but not near the ground. */
const powerLabel = (point: SpeedPoint): Placement => {
  const low = powerOf(point) < 11;
  return { ...spot(point, powerOf(point)), above: low, ends: low };
};

/** The lines' names keep to the half of the picture where the hand is not. */
const nameSpeeds = { fast: 2900, slow: 1150 } as const;
const nameBreak = 2050;
const names = {
  fast: { flow: flowLabel(pointAt(nameSpeeds.fast)), power: powerLabel(pointAt(nameSpeeds.fast)) },
  slow: { flow: flowLabel(pointAt(nameSpeeds.slow)), power: powerLabel(pointAt(nameSpeeds.slow)) },
};
const namesFor = (point: SpeedPoint) => (point.speed < nameBreak ? names.fast : names.slow);

/** A line from the handle up to the two points, and no higher: the words stand above it. */
const poleTo = (point: SpeedPoint) =>
  `M${across(x.axis, point.speed).toFixed(1)},${span}V${upward(y.axis, waterOf(point)).toFixed(1)}`;

const speedAt = (place: Spot) => valueAt(x.axis, place.x);

interface PictureProps {
  readonly model: CubeLaw;
  readonly spoken: ReadonlySignal<string>;
}

/** Water and power against speed, both as percentages of their full-speed values. */
export function Picture({ model, spoken }: PictureProps): JSX.Element {
  const { here, units, speed } = model;
  const onAxis = useComputed(() => spot(here.value, 0));
  const pole = useComputed(() => poleTo(here.value));
  const flowSpot = useComputed(() => spot(here.value, waterOf(here.value)));
  const powerSpot = useComputed(() => spot(here.value, powerOf(here.value)));
  const flowPlace = useComputed(() => flowLabel(here.value));
  const powerPlace = useComputed(() => powerLabel(here.value));
  const flowName = useComputed(() => namesFor(here.value).flow);
  const powerName = useComputed(() => namesFor(here.value).power);
  const flow = useComputed(() => flowText(here.value, units.value));
  const power = useComputed(() => powerText(here.value, units.value));
  return (
    <Frame
      x={x}
      y={y}
      title="Flow and power of the example pump against its speed"
      handlesTitle="Set the speed on the picture"
      drawing={
        <>
          <Band d={between} of="plain" />
          <path class="rule" data-quantity="plain" d={pole} />
          <Curve d={flowLine} of="flow" />
          <Curve d={powerLine} of="power" />
        </>
      }
      labels={
        <>
          <Marker at={flowSpot} of="flow" />
          <Marker at={powerSpot} of="power" />
          <CurveLabel at={flowName} of="flow" text="flow" />
          <CurveLabel at={powerName} of="power" text="power" />
          <CurveLabel at={flowPlace} of="flow" text={flow} strong />
          <CurveLabel at={powerPlace} of="power" text={power} strong />
        </>
      }
    >
      <DragSurface dial={speed} valueAt={speedAt} />
      <DragHandle dial={speed} label="Speed" spoken={spoken} at={onAxis} valueAt={speedAt} />
    </Frame>
  );
}
