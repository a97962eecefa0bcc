import type { JSX } from 'preact';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import type { Placement, Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, Rule } from '#ui/charts/marks.tsx';
import { linePath } from '#ui/charts/path.ts';
import { fraction, valueAt } from '#ui/charts/scale.ts';
import { DragHandle, DragSurface } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { longest, type MixingModel } from './model.ts';
import { percentText, spoken } from './text.ts';

const hour = 3600;

const x: Side = {
  axis: {
    min: 0,
    max: longest,
    ticks: [0, 12, 24, 36, 48].map((hours) => ({ value: hours * hour, label: String(hours) })),
  },
  title: 'Hours the pump has run',
  unit: '',
};
const y: Side = {
  axis: {
    min: 0,
    // Above the whole there is room for the name of a line.
    max: 1.2,
    ticks: [0, 0.25, 0.5, 0.75, 1].map((share) => ({ value: share, label: String(100 * share) })),
  },
  title: 'Water that has passed the filter',
  unit: '%',
};

const down = (share: number) => 1 - fraction(y.axis, share);
const timeAt = ({ x: across }: Spot) => valueAt(x.axis, across);

/** Share passed against time, beside what it would be if no water came round twice. */
export function Picture({ model }: { readonly model: MixingModel }): JSX.Element {
  const mixed = useComputed(() =>
    linePath(
      model.line.value.map(({ time, share }) => ({ x: time, y: share })),
      x.axis,
      y.axis,
    ),
  );
  const once = useComputed(() => {
    const whole = model.turnover.value;
    if (whole === undefined) return '';
    const end = Math.min(whole, longest);
    const points = [
      { x: 0, y: 0 },
      { x: end, y: end / whole },
      { x: longest, y: Math.min(1, longest / whole) },
    ];
    return linePath(points, x.axis, y.axis);
  });
  const turnover = useComputed(() => fraction(x.axis, model.turnover.value ?? 2 * longest));
  const inside = useComputed(() => turnover.value <= 1);
  const at = useComputed<Spot>(() => ({
    x: Math.min(1, fraction(x.axis, model.settings.value.time)),
    y: down(model.here.value.share),
  }));
  const words = useComputed(() => percentText(model.here.value.share));
  // Under the line's name while the knob is near it.
  const wordsAt = useComputed<Placement>(() => {
    const late = at.value.x > 0.55;
    return {
      x: at.value.x + (late ? 0 : 0.05),
      y: at.value.y + (late ? 0.16 : 0),
      above: false,
      ends: late,
    };
  });
  const said = useComputed(() => spoken(model, 'time'));
  return (
    <Frame
      x={x}
      y={y}
      title="Share of the water that has passed the filter, against hours"
      handlesTitle="Set the time on the picture"
      drawing={
        <>
          {inside.value && <Rule at={turnover} />}
          <Curve d={once} of="plain" faint />
          <Curve d={mixed} of="flow" />
        </>
      }
      labels={
        <>
          <Names model={model} inside={inside.value} at={turnover.value} />
          <CurveLabel at={wordsAt} of="flow" text={words} strong />
        </>
      }
    >
      <DragSurface dial={model.time} valueAt={timeAt} />
      <DragHandle
        dial={model.time}
        label="Time the pump has run"
        spoken={said}
        at={at}
        valueAt={timeAt}
        of="flow"
      />
    </Frame>
  );
}

interface NamesProps {
  readonly model: MixingModel;
  readonly inside: boolean;
  readonly at: number;
}

/** The names of the two lines and of the upright one. */
function Names({ model, inside, at }: NamesProps): JSX.Element {
  const late = at > 0.5;
  const mixedAt = useComputed<Placement>(() => {
    const { share, time } = model.line.value[94] ?? { share: 0, time: 0 };
    return { x: fraction(x.axis, time), y: down(share), above: share < 0.2, ends: true };
  });
  return (
    <>
      {inside && (
        <CurveLabel
          at={{ x: at, y: 0.86, above: false, ends: late }}
          of="plain"
          text="one turnover"
        />
      )}
      {inside && (
        <CurveLabel
          at={{ x: 0.99, y: down(1), above: true, ends: true }}
          of="plain"
          text="if no water came round twice"
          clear
        />
      )}
      <CurveLabel at={mixedAt} of="flow" text="as the pool mixes" clear />
    </>
  );
}
