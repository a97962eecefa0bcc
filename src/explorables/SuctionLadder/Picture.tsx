import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { pressureHead } from '#core/fit/gauges.ts';
import { seaLevelPressure } from '#core/pump/npsh.ts';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import type { Placement, Spot } from '#ui/charts/labels.ts';
import { Band, Curve, CurveLabel, Rule } from '#ui/charts/marks.tsx';
import { bandPath, linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction, upward, valueAt } from '#ui/charts/scale.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { bounds, type Rungs, type SuctionLadderModel } from './model.ts';
import { changeText, headText, spoken } from './text.ts';

/** One tread each, along the way of the water. */
const steps = ['air', 'height', 'line', 'pump'] as const;

const x: Side = {
  axis: {
    min: 0,
    max: steps.length,
    ticks: steps.map((label, index) => ({ value: index + 0.5, label })),
  },
  title: 'The way of the water',
  unit: '',
};

/** The heaviest air on the coldest water and a pump that stands below the pool [m], and room for words. */
const highest = 1.1 * (pressureHead(seaLevelPressure, 1000) - bounds.lift.min);

const levels = ({ air, height, line, eye }: Rungs) => [air, height, line, eye];

/** What the ladder stands on: it is drawn no lower than absolute vacuum. */
const drawn = (head: number) => Math.max(head, 0);

interface PictureProps {
  readonly model: SuctionLadderModel;
}

/** The falling ladder over the line where the water boils. */
export function Picture({ model }: PictureProps): JSX.Element {
  const ySide = quantitySide('Head above absolute vacuum', 'head', model.units.value, {
    max: highest,
    count: 6,
  });
  const { axis: y } = ySide;
  const across = (step: number) => fraction(x.axis, step);
  const down = (head: number) => 1 - fraction(y, head);
  const ladder = useComputed(() =>
    linePath(
      levels(model.rungs.value).flatMap((head, step) => [
        { x: step, y: drawn(head) },
        { x: step + 1, y: drawn(head) },
      ]),
      x.axis,
      y,
    ),
  );
  const boiling = useComputed(() => {
    const high = model.rungs.value.boils;
    return bandPath(
      [0, steps.length].map((at) => ({ x: at, low: 0, high })),
      x.axis,
      y,
    );
  });
  const boils = useComputed(() => down(model.rungs.value.boils));
  const gap = useComputed(() => {
    const { eye, boils: low } = model.rungs.value;
    const [from, to] = [drawn(eye), low].map((head) => upward(y, head).toFixed(1));
    return `M${(across(3.5) * 1000).toFixed(1)},${from}V${to}`;
  });
  const tread = (step: number, head: () => number): ReadonlySignal<Spot> =>
    useComputed(() => ({ x: across(step + 0.5), y: down(drawn(head())) }));
  const heightSpot = tread(1, () => model.rungs.value.height);
  const lineSpot = tread(2, () => model.rungs.value.line);
  const liftSaid = useComputed(() => spoken(model, 'lift'));
  const flowSaid = useComputed(() => spoken(model, 'flow'));
  const liftFor = ({ y: at }: Spot) => model.rungs.value.air - valueAt(y, 1 - at);
  const flowFor = ({ y: at }: Spot) => model.flowForLine(valueAt(y, 1 - at));
  return (
    <Frame
      x={x}
      y={ySide}
      title="Head left at each step from the pool to the pump"
      handlesTitle="Set height and flow on the picture"
      drawing={
        <>
          <Band d={boiling} of="plain" hatched />
          <Rule at={boils} level />
          <Curve d={ladder} of="head" />
          <path class="suction-gap" data-state={model.state} d={gap} />
        </>
      }
      labels={
        <>
          <StepLabel model={model} step={0} down={down} />
          <StepLabel model={model} step={1} down={down} />
          <StepLabel model={model} step={2} down={down} />
          <StepLabel model={model} step={3} down={down} />
          <Boils model={model} down={down} />
          <Gap model={model} down={down} />
        </>
      }
    >
      <DragHandle
        dial={model.lift}
        label="Pump above the water"
        spoken={liftSaid}
        at={heightSpot}
        valueAt={liftFor}
        orientation="vertical"
        of="head"
      />
      <DragHandle
        dial={model.flow}
        label="Flow"
        spoken={flowSaid}
        at={lineSpot}
        valueAt={flowFor}
        orientation="vertical"
        of="flow"
      />
    </Frame>
  );
}

interface LabelProps extends PictureProps {
  readonly down: (head: number) => number;
}

/** What the air gives, and what each step after it takes. */
function StepLabel({ model, step, down }: LabelProps & { readonly step: number }): JSX.Element {
  // Where a handle sits on the tread, the number stands clear of it.
  const clear = step === 1 || step === 2 ? 0.05 : 0;
  const at = useComputed<Placement>(() => ({
    x: step / steps.length,
    y: down(drawn(levels(model.rungs.value)[step] ?? 0)) - clear,
    above: true,
    ends: false,
  }));
  const words = useComputed(() => {
    const { air, lift, loss, required } = model.rungs.value;
    return step === 0
      ? headText(model, air)
      : changeText(model, -([0, lift, loss, required][step] ?? 0));
  });
  return <CurveLabel at={at} of="head" text={words} strong />;
}

function Boils({ model, down }: LabelProps): JSX.Element {
  const at = useComputed<Placement>(() => ({
    x: 0.01,
    y: down(model.rungs.value.boils),
    above: true,
    ends: false,
  }));
  const words = useComputed(() => `boils at ${headText(model, model.rungs.value.boils)}`);
  return <CurveLabel at={at} of="plain" text={words} />;
}

/** The margin, beside its line; once it is gone, what is lacking. */
function Gap({ model, down }: LabelProps): JSX.Element {
  const at = useComputed<Placement>(() => {
    const { eye, boils } = model.rungs.value;
    const [tread, ground] = [down(drawn(eye)), down(boils)];
    // A short line leaves no room beside it; a ladder that ends so low leaves the corner free.
    if (ground - tread < 0.16) return { x: 0.99, y: 0.02, above: false, ends: true };
    return { x: 3.5 / steps.length - 0.01, y: (tread + ground) / 2, above: true, ends: true };
  });
  const words = useComputed(() => {
    const { margin } = model.rungs.value;
    return margin < 0
      ? `short by ${headText(model, -margin)}`
      : `margin ${headText(model, margin)}`;
  });
  return <CurveLabel at={at} of="plain" text={words} strong />;
}
