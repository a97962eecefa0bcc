/** Flow and power over the day, one above the other: the areas are water and energy. */
import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { Band, Curve, CurveLabel, Rule } from '#ui/charts/marks.tsx';
import { bandPath, linePath, type Slice } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { stripPieces } from '#ui/charts/ring.ts';
import { fraction, type TickedAxis, valueAt } from '#ui/charts/scale.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { formatPrice } from '#units/money.ts';
import { type BlockName, blockNames, type ThreeBlockModel } from './model.ts';
import { blockLabels, spokenBegin, spokenSpeed } from './text.ts';

const hours: TickedAxis = {
  min: 0,
  max: 1440,
  ticks: Array.from({ length: 9 }, (_, index) => ({
    value: index * 180,
    label: String(index * 3).padStart(2, '0'),
  })),
};
const hoursSide: Side = { axis: hours, title: 'Hour of the day', unit: '' };

/** Heights of the handles of the three ends, so that near ones can still be taken hold of. */
const lanes: Readonly<Record<BlockName, number>> = { high: 0.2, middle: 0.5, low: 0.8 };

type Drawn = 'flow' | 'power';

/** The value over the whole day, minute by minute where it changes. */
function steps(model: ThreeBlockModel, drawn: Drawn) {
  return model.here.value.report.segments.flatMap((segment) => [
    { x: segment.start, y: segment[drawn] },
    { x: segment.end, y: segment[drawn] },
  ]);
}

function areas(model: ThreeBlockModel, drawn: Drawn): Slice[] {
  return steps(model, drawn).map(({ x, y }) => ({ x, low: 0, high: y }));
}

function useSide(model: ThreeBlockModel, drawn: Drawn, title: string): ReadonlySignal<Side> {
  return useComputed(() => {
    const { top } = model.here.value;
    const max = drawn === 'flow' ? top.flow : 1.05 * top.power;
    return quantitySide(title, drawn, model.units.value, { max, count: 3 });
  });
}

/** The middle of the longer piece of a block that is cut at midnight [min]. */
function middleOf(model: ThreeBlockModel, name: BlockName): number {
  const block = model.here.value.parts[blockNames.indexOf(name)]?.block ?? { start: 0, end: 0 };
  const { from, to } = stripPieces(block.start, block.end).reduce((best, piece) =>
    piece.to - piece.from > best.to - best.from ? piece : best,
  );
  return valueAt(hours, (from + to) / 2);
}

interface PlotProps {
  readonly model: ThreeBlockModel;
}

/** Flow: drag a block up and down to change its speed. */
export function FlowPlot({ model }: PlotProps): JSX.Element {
  const side = useSide(model, 'flow', 'Flow').value;
  const { axis: y } = side;
  const line = useComputed(() => linePath(steps(model, 'flow'), hours, y));
  const area = useComputed(() => bandPath(areas(model, 'flow'), hours, y));
  const { speeds } = model.setting.value;
  const topFlow = model.here.value.top.flow;
  // Flow goes nearly as speed, so height on the picture is turned into speed by that alone.
  const speedFor = ({ y: down }: Spot) =>
    topFlow > 0 ? (speeds.top * valueAt(y, 1 - down)) / topFlow : speeds.least;
  return (
    <Frame
      x={hoursSide}
      y={side}
      shape="strip"
      title="Flow over the day; the area under the line is the water moved"
      handlesTitle="Speed of each block, on the picture"
      drawing={
        <>
          <Band d={area} of="flow" />
          <Curve d={line} of="flow" />
        </>
      }
    >
      {blockNames
        .filter((name) => name !== 'low' || !model.stops.value)
        .map((name) => (
          <SpeedHandle key={name} model={model} name={name} y={y} valueAt={speedFor} />
        ))}
    </Frame>
  );
}

interface SpeedHandleProps {
  readonly model: ThreeBlockModel;
  readonly name: BlockName;
  readonly y: TickedAxis;
  readonly valueAt: (spot: Spot) => number;
}

function SpeedHandle({ model, name, y, valueAt: speedAt }: SpeedHandleProps): JSX.Element {
  const at = useComputed(() => ({
    x: fraction(hours, middleOf(model, name)),
    y: 1 - fraction(y, model.here.value.parts[blockNames.indexOf(name)]?.flow ?? 0),
  }));
  const said = useComputed(() => spokenSpeed(model, name));
  return (
    <DragHandle
      dial={model.speeds[name]}
      label={`Speed of the ${name} block`}
      spoken={said}
      at={at}
      valueAt={speedAt}
      orientation="vertical"
      of="flow"
    />
  );
}

/** Power: drag an end sideways; hatched hours are those of the greatest price. */
export function PowerPlot({ model }: PlotProps): JSX.Element {
  const side = useSide(model, 'power', 'Wire power').value;
  const { axis: y } = side;
  const line = useComputed(() => linePath(steps(model, 'power'), hours, y));
  const area = useComputed(() => bandPath(areas(model, 'power'), hours, y));
  const { dear } = model.here.value;
  return (
    <Frame
      x={hoursSide}
      y={side}
      shape="strip"
      title="Wire power over the day; the area under the line is the energy"
      handlesTitle="Where each block begins, on the picture"
      drawing={
        <>
          {dear.map(({ start, end }) => (
            <Band
              key={start}
              of="money"
              hatched
              d={bandPath(
                [
                  { x: start, low: 0, high: y.max },
                  { x: end, low: 0, high: y.max },
                ],
                hours,
                y,
              )}
            />
          ))}
          <Band d={area} of="power" />
          <Curve d={line} of="power" />
          {blockNames.map((name) => (
            <BeginRule key={name} model={model} name={name} />
          ))}
        </>
      }
      labels={dear
        .slice(0, 1)
        .map(({ start, price }) => (
          <CurveLabel
            key={start}
            of="money"
            at={{ x: Math.max(fraction(hours, start), 0.5), y: 0, above: true, ends: false }}
            text={`peak, ${formatPrice(price, model.setting.value.currency)}`}
          />
        ))}
    >
      {blockNames.map((name) => (
        <BeginHandle key={name} model={model} name={name} />
      ))}
    </Frame>
  );
}

interface BeginProps {
  readonly model: ThreeBlockModel;
  readonly name: BlockName;
}

function BeginRule({ model, name }: BeginProps): JSX.Element {
  const at = useComputed(() => fraction(hours, model.begins[name].value.value));
  return <Rule at={at} />;
}

function BeginHandle({ model, name }: BeginProps): JSX.Element {
  const at = useComputed(() => ({
    x: fraction(hours, model.begins[name].value.value),
    y: lanes[name],
  }));
  const said = useComputed(() => spokenBegin(model, name));
  return (
    <DragHandle
      dial={model.begins[name]}
      label={`${blockLabels[name]} block begins`}
      spoken={said}
      at={at}
      valueAt={({ x }) => valueAt(hours, x)}
      of="power"
    />
  );
}
