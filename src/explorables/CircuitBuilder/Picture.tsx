import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { Frame } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, Marker } from '#ui/charts/marks.tsx';
import { linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction, valueAt } from '#ui/charts/scale.ts';
import { DragHandle, DragSurface } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import type { CircuitBuilderModel, HeadAt } from './model.ts';

interface PictureProps {
  readonly model: CircuitBuilderModel;
  readonly said: ReadonlySignal<string>;
}

/** Head against flow: the circuit as it stands, and the one to compare with. */
export function Picture({ model, said }: PictureProps): JSX.Element {
  const drawing = `${model.source.value} ${model.units.value.preset}`;
  return <Plot key={drawing} model={model} said={said} />;
}

function Plot({ model, said }: PictureProps): JSX.Element {
  const units = model.units.value;
  const xSide = quantitySide('Flow', 'flow', units, {
    max: model.scene.value.greatestFlow,
    exact: true,
  });
  const ySide = quantitySide('Head', 'head', units, { max: model.greatestHead.value });
  const { axis: x } = xSide;
  const { axis: y } = ySide;
  const spot = ({ flow, head }: HeadAt): Spot => ({
    x: fraction(x, flow),
    y: 1 - fraction(y, head),
  });
  const path = (line: readonly HeadAt[]) =>
    linePath(
      line.map(({ flow, head }) => ({ x: flow, y: head })),
      x,
      y,
    );
  const now = useComputed(() => path(model.line.value));
  const kept = useComputed(() => (model.isKept.value ? '' : path(model.keptLine.value)));
  const at = useComputed(() => spot(model.here.value));
  // The higher line is named on its left, the lower one on its right, clear of both.
  const placeOn = (line: readonly HeadAt[], higher: boolean) => {
    const named = line[Math.round((higher ? 0.9 : 0.66) * (line.length - 1))] as HeadAt;
    return { ...spot(named), above: higher, ends: higher };
  };
  const isHigher = useComputed(
    () => (model.line.value.at(-1)?.head ?? 0) >= (model.keptLine.value.at(-1)?.head ?? 0),
  );
  const nowPlace = useComputed(() => placeOn(model.line.value, isHigher.value));
  const keptPlace = useComputed(() => placeOn(model.keptLine.value, !isHigher.value));
  const keptWords = useComputed(() => (model.isKept.value ? '' : 'to compare with'));
  const lift = useComputed(() => {
    const head = model.here.value.lift;
    return head > 0 ? path([0, x.max].map((flow) => ({ flow, head }))) : '';
  });
  const liftSpot = useComputed(() => ({
    ...spot({ flow: 0.02 * x.max, head: model.here.value.lift }),
    above: true,
    ends: false,
  }));
  const liftWords = useComputed(() => (model.here.value.lift > 0 ? 'lift' : ''));
  const toFlow = (place: Spot) => valueAt(x, place.x);
  return (
    <Frame
      x={xSide}
      y={ySide}
      title="Head that the circuit takes, against flow"
      handlesTitle="Set the flow on the picture"
      drawing={
        <>
          <Curve d={lift} of="head" faint />
          <Curve d={kept} of="plain" faint />
          <Curve d={now} of="plain" />
        </>
      }
      labels={
        <>
          <CurveLabel at={liftSpot} of="head" text={liftWords} />
          <CurveLabel at={keptPlace} of="plain" text={keptWords} />
          <CurveLabel at={nowPlace} of="plain" text="the circuit" strong />
          <Marker at={at} of="head" />
        </>
      }
    >
      <DragSurface dial={model.flow} valueAt={toFlow} />
      <DragHandle dial={model.flow} label="Flow" spoken={said} at={at} valueAt={toFlow} of="head" />
    </Frame>
  );
}
