import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { Frame } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, Marker, placed } from '#ui/charts/marks.tsx';
import { span } from '#ui/charts/scale.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { format } from '#units/format.ts';
import type { AnswersModel } from './model.ts';
import { type Moving, movingOf, plotOf, type RungMark, speedFor } from './plot.ts';
import { rpm } from './text.ts';

interface PictureProps {
  readonly model: AnswersModel;
  readonly said: ReadonlySignal<string>;
}

/** Height of a name, as a fraction of a small picture. */
const nameHeight = 0.08;

const nowhere: Moving = {
  spot: { x: 0, y: 1 },
  known: '',
  beyond: '',
  cross: '',
  label: { x: 0, y: 1, above: true, ends: false },
  name: { x: 0, y: 1, above: true, ends: false },
  leaves: () => true,
};

/** Pump and pipes in one picture, with the band of the fit and a knob that sets the speed. */
export function OperatingPicture({ model, said }: PictureProps): JSX.Element | null {
  const { scene, rungs, here, units } = model;
  const drawn = useComputed(() =>
    scene.value === null ? null : plotOf(scene.value, rungs.value, units.value),
  );
  const moving = useComputed(() => {
    const [still, now] = [drawn.value, here.value];
    return still === null || now === null ? nowhere : movingOf(still, now);
  });
  const spot = useComputed(() => moving.value.spot);
  const known = useComputed(() => moving.value.known);
  const beyond = useComputed(() => moving.value.beyond);
  const cross = useComputed(() => moving.value.cross);
  const label = useComputed(() => moving.value.label);
  const name = useComputed(() => moving.value.name);
  const words = useComputed(() => {
    const now = here.value;
    if (now === null) return '';
    return now.flow === 0
      ? 'no flow'
      : `${format('flow', now.flow, units.value)}, ${format('power', now.power, units.value)}`;
  });
  const pumpName = useComputed(() => {
    if (here.value === null || here.value.flow === 0) return '';
    const below = moving.value.name.y - (drawn.value?.topLabel.y ?? 0);
    // Near top speed the two names would cover each other, and the one above says enough; near the
    // axis the knob and its figure need the room.
    return below < nameHeight || moving.value.name.y > 0.84
      ? ''
      : `at ${rpm(here.value.speed, units.value)}`;
  });
  const valueAt = useMemo(
    () => (place: Spot) => (drawn.value === null ? Number.NaN : speedFor(drawn.value, place)),
    [drawn],
  );
  const plot = drawn.value;
  if (plot === null) return null;
  return (
    <Frame
      x={plot.x}
      y={plot.y}
      title="Head of the pump and head that the pipes take, against flow"
      handlesTitle="Set the speed on the picture"
      drawing={
        <>
          {plot.stop !== null && (
            <path
              class="answers-stop"
              d={`M${(plot.stop.at * span).toFixed(1)},0H${span}V${span}H${(plot.stop.at * span).toFixed(1)}Z`}
            />
          )}
          {plot.limit !== null && (
            <path
              class="answers-limit-rule"
              d={`M${(plot.limit.at * span).toFixed(1)},0V${span}`}
            />
          )}
          <path class="answers-reach" d={plot.reach} />
          <Curve d={plot.topCurve} of="head" faint />
          <Curve d={plot.pipes} of="plain" />
          <Curve d={known} of="head" />
          <path class="curve curve-faint answers-beyond" data-quantity="head" d={beyond} />
          <path class="answers-cross" data-quantity="head" d={cross} />
        </>
      }
      labels={
        <>
          <CurveLabel at={plot.topLabel} of="head" text={plot.topText} />
          {plot.pipesLabel !== null && (
            <CurveLabel at={plot.pipesLabel} of="plain" text="the pipes" />
          )}
          {plot.limit !== null && (
            <span class="answers-limit-label">
              <CurveLabel at={plot.limit.label} of="plain" text={plot.limit.text} />
            </span>
          )}
          {plot.stop !== null && (
            <span class="answers-stop-label">
              <CurveLabel at={plot.stop.label} of="plain" text={plot.stop.text} />
            </span>
          )}
          <RungMarks marks={plot.rungs} moving={moving} />
          <CurveLabel at={name} of="head" text={pumpName} />
          <Marker at={spot} of="head" />
          <CurveLabel at={label} of="head" text={words} strong />
        </>
      }
    >
      <DragHandle
        dial={model.speed}
        label="Speed"
        spoken={said}
        at={spot}
        valueAt={valueAt}
        orientation="vertical"
        of="head"
      />
    </Frame>
  );
}

/** The rungs of the ladder on the line of the pipes, by their numbers below. */
function RungMarks(props: {
  readonly marks: readonly RungMark[];
  readonly moving: ReadonlySignal<Moving>;
}): JSX.Element {
  return (
    <>
      {props.marks.map(({ spot, text }) => (
        <span key={text} class="answers-mark" style={placed(spot)}>
          {props.moving.value.leaves(spot) && <span class="answers-mark-number">{text}</span>}
        </span>
      ))}
    </>
  );
}
