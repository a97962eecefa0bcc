import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { laminarLimit, turbulentLimit } from '#core/hydraulics/friction.ts';
import { Frame } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { Band, Curve, CurveLabel, Marker } from '#ui/charts/marks.tsx';
import { bandPath, linePath, type Point } from '#ui/charts/path.ts';
import { fraction, valueAt } from '#ui/charts/scale.ts';
import { DragHandle, DragSurface } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import {
  bridgeLine,
  factorRange,
  greatestReynolds,
  hazenLine,
  layeredLine,
  turbulentLine,
} from './lines.ts';
import { logSide } from './logSide.ts';
import { leastReynolds, type MoodyModel } from './model.ts';

const x = logSide('Reynolds number', leastReynolds, greatestReynolds, [1e3, 1e4, 1e5]);
const y = logSide('Friction factor', ...factorRange, [0.01, 0.02, 0.03, 0.05, 0.1]);

/** Walls to compare with, as roughness over bore [-]. */
const otherWalls = [
  { roughness: 0.03, label: 'wall 3 % of the bore' },
  { roughness: 0.005, label: '0.5 %' },
  { roughness: 0.0005, label: '0.05 %' },
] as const;

const path = (points: readonly Point[]) => linePath(points, x.axis, y.axis);

const either = bandPath(
  [laminarLimit, turbulentLimit].map((reynolds) => ({
    x: Math.log10(reynolds),
    low: y.axis.min,
    high: y.axis.max,
  })),
  x.axis,
  y.axis,
);
const layered = path(layeredLine);
const others = otherWalls.map(({ roughness, label }) => ({
  label,
  d: path(turbulentLine(roughness)),
  end: turbulentLine(roughness).at(-1) as Point,
}));

const spot = (reynolds: number, factor: number): Spot => ({
  x: fraction(x.axis, Math.log10(reynolds)),
  y: 1 - fraction(y.axis, Math.log10(factor)),
});

/** The friction factor against the Reynolds number, both by powers of ten. */
export function Picture({
  model,
  said,
}: {
  model: MoodyModel;
  said: ReadonlySignal<string>;
}): JSX.Element {
  const line = useComputed(() => {
    const roughness = model.relativeRoughness.value;
    return path([...layeredLine, ...bridgeLine(roughness), ...turbulentLine(roughness)]);
  });
  const hazen = useComputed(() =>
    model.here.value.hazen === undefined ? '' : path(hazenLine(model)),
  );
  const at = useComputed(() => spot(model.here.value.reynolds, model.here.value.factor));
  // Under its line, in the corner that the lines leave free.
  const hazenSpot = useComputed(() => {
    const from = Math.log10(1.1 * turbulentLimit);
    const factor = hazenLine(model).find((point) => point.x >= from)?.y ?? -1.6;
    const { x: left, y: top } = spot(10 ** from, 10 ** factor);
    return { x: left, y: top + 0.23, above: false, ends: false };
  });
  const hazenWords = useComputed(() =>
    model.here.value.hazen === undefined ? '' : 'Hazen–Williams',
  );
  const pipeSpot = useComputed(() => {
    const last = turbulentLine(model.relativeRoughness.value).at(-1) as Point;
    return { ...spot(10 ** last.x, 10 ** (last.y ?? -2)), above: false, ends: true };
  });
  const toFlow = (place: Spot) => model.flowAt(10 ** valueAt(x.axis, place.x));
  return (
    <Frame
      x={x}
      y={y}
      title="Friction factor against Reynolds number, both by powers of ten"
      handlesTitle="Set the flow on the chart"
      drawing={
        <>
          <Band d={either} of="plain" hatched />
          {others.map(({ label, d }) => (
            <Curve key={label} d={d} of="plain" faint />
          ))}
          <Curve d={layered} of="plain" faint />
          <Curve d={hazen} of="head" faint />
          <Curve d={line} of="head" />
        </>
      }
      labels={
        <>
          {others.map(({ label, end }) => (
            <CurveLabel
              key={label}
              at={{ ...spot(10 ** end.x, 10 ** (end.y ?? -2)), above: true, ends: true }}
              of="plain"
              text={label}
            />
          ))}
          <CurveLabel
            at={{ x: 0.01, y: 0.94, above: true, ends: false }}
            of="plain"
            text="layered"
          />
          <CurveLabel
            at={{ x: spot(laminarLimit, 1).x, y: 0, above: true, ends: false }}
            of="plain"
            text="either"
          />
          <CurveLabel
            at={{ ...spot(4200, 0.092), above: false, ends: false }}
            of="plain"
            text="turbulent"
          />
          <CurveLabel at={hazenSpot} of="head" text={hazenWords} />
          <CurveLabel at={pipeSpot} of="head" text="this pipe" />
          <Marker at={at} of="head" />
        </>
      }
    >
      <DragSurface dial={model.flow} valueAt={toFlow} />
      <DragHandle dial={model.flow} label="Flow" spoken={said} at={at} valueAt={toFlow} of="head" />
    </Frame>
  );
}
