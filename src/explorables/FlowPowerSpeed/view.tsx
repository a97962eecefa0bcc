import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { pumpHead } from '#core/pump/pump.ts';
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { type HeadAt, pumpLine, systemLine } from '#explorables/example/machine.ts';
import { Frame } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, Marker } from '#ui/charts/marks.tsx';
import { linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction } from '#ui/charts/scale.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink } from '#ui/figure/linkState.ts';
import { guarded } from '#ui/loading/Guard.tsx';
import { createModel, type FlowPowerSpeedModel } from './model.ts';
import { bars, sentence, spoken, table } from './text.ts';

/** Speed the picture opens at [rpm]: slow enough that the cube shows. */
const opening = 1720;

/** Pump and pipes in one picture, and beside it what is left of flow, head and power. */
function FlowPowerSpeed({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleMachine, opening), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['pumpspeed', () => ({ speed: dialInLink(model.speed) })],
    own: () => import('./own.ts'),
  });
  const said = useComputed(() => spoken(model));
  const entry = useComputed(() =>
    quantityEntry('speed', model.units.value, {
      least: model.speed.min.value,
      greatest: model.speed.max.value,
    }),
  );
  return (
    <Figure
      id={id}
      title="One pump in its pipes"
      {...figure}
      note="The example is an invented pad. Wire power holds a fixed draw, so at low speed it lies above the plain cube."
    >
      <div class="fps-row">
        <Picture model={model} said={said} />
        <Bars model={model} />
      </div>
      <RangeField
        id={`${id}-speed`}
        label="Speed"
        dial={model.speed}
        spoken={said}
        entry={entry}
        unit="rpm"
      />
    </Figure>
  );
}

export default guarded(FlowPowerSpeed);

/** Height of a name, as a fraction of a small picture. */
const nameHeight = 0.1;

interface PictureProps {
  readonly model: FlowPowerSpeedModel;
  readonly said: ReadonlySignal<string>;
}

function Picture({ model, said }: PictureProps): JSX.Element {
  const machine = model.machine.value;
  const full = model.full.value;
  const topRatio = machine.topSpeed / machine.referenceSpeed;
  const units = model.units.value;
  const xSide = quantitySide('Flow', 'flow', units, { max: 1.35 * full.flow });
  const ySide = quantitySide('Head', 'head', units, { max: pumpHead(machine.curve, 0, topRatio) });
  const { axis: x } = xSide;
  const { axis: y } = ySide;
  const spot = (at: HeadAt): Spot => ({
    x: fraction(x, at.flow),
    y: 1 - fraction(y, at.head),
  });
  const path = (line: readonly HeadAt[]) =>
    linePath(
      line.filter(({ head }) => head <= y.max).map(({ flow, head }) => ({ x: flow, y: head })),
      x,
      y,
    );
  const pipes = systemLine(machine, x.max);
  const meeting = useComputed(() => spot(model.here.value));
  const slowLine = useComputed(() =>
    path(pumpLine(model.machine.value, model.here.value.speed, x.max)),
  );
  const nameOf = (speed: number) => {
    const flow = 0.04 * x.max;
    const head = pumpHead(machine.curve, flow, speed / machine.referenceSpeed);
    return { ...spot({ flow, head }), above: true, ends: false };
  };
  const fastLabel = nameOf(machine.topSpeed);
  const slowLabel = useComputed(() => nameOf(model.here.value.speed));
  // Near top speed the two names would cover each other, and the one above says enough.
  const slowWords = useComputed(() =>
    slowLabel.value.y - fastLabel.y < nameHeight ? '' : `pump at ${model.here.value.speed} rpm`,
  );
  // Further right the words would be pushed back over the line.
  const pipeEnd = pipes.findLast(({ flow, head }) => head <= 0.8 * y.max && flow <= 0.6 * x.max);
  // The knob slides along the line of the pipes: how far up it stands sets the speed.
  const speedFor = (place: Spot) =>
    machine.topSpeed * Math.sqrt(Math.max(0, (1 - place.y) * (y.max / full.head)));
  return (
    <Frame
      x={xSide}
      y={ySide}
      title="Head of the pump and head that the pipes take, against flow"
      handlesTitle="Set the speed on the picture"
      drawing={
        <>
          <Curve d={path(pumpLine(machine, machine.topSpeed, x.max))} of="head" faint />
          <Curve d={path(pipes)} of="plain" />
          <Curve d={slowLine} of="head" />
        </>
      }
      labels={
        <>
          <CurveLabel at={fastLabel} of="head" text={`pump at ${machine.topSpeed} rpm`} />
          {pipeEnd !== undefined && (
            <CurveLabel
              at={{ ...spot(pipeEnd), above: false, ends: false }}
              of="plain"
              text="the pipes"
            />
          )}
          <CurveLabel at={slowLabel} of="head" text={slowWords} />
          <Marker at={meeting} of="head" />
        </>
      }
    >
      <DragHandle
        dial={model.speed}
        label="Speed"
        spoken={said}
        at={meeting}
        valueAt={speedFor}
        orientation="vertical"
        of="head"
      />
    </Frame>
  );
}

/** Flow, head and power as shares of full speed, each with the plain law as a tick. */
function Bars({ model }: { model: FlowPowerSpeedModel }): JSX.Element {
  const all = useComputed(() => bars(model));
  return (
    <dl class="fps-bars">
      {all.value.map(({ of, label, law, share, plain, shown, percent }) => (
        <div key={of} class="fps-bar" data-quantity={of}>
          <dt>{label}</dt>
          <dd>
            <span class="fps-track" aria-hidden="true">
              <span class="fps-fill" style={`--share:${Math.min(share, 1).toFixed(4)}`} />
              <span class="fps-tick" style={`--share:${plain.toFixed(4)}`} />
            </span>
            <span class="fps-number">
              {percent} <span class="fps-shown">{shown}</span>
            </span>
            <span class="fps-law">
              tick: {law}, {Math.round(plain * 100)} %
            </span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
