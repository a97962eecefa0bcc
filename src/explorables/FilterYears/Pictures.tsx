import type { JSX } from 'preact';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import { useGrowing } from '#ui/charts/growing.ts';
import { placeLabels, type Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, type Quantity } from '#ui/charts/marks.tsx';
import { linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction, type TickedAxis } from '#ui/charts/scale.ts';
import { type CycleDay, daysOfYear, type FilterYear } from './ask.ts';
import type { FilterYearsModel } from './model.ts';
import { filterNames } from './text.ts';

/** Quarters begin on day 0, 90, 181 and 273 of a year without a leap day (ISO 8601). */
const quarters = [
  { value: 0, label: '1 Jan' },
  { value: 90, label: '1 Apr' },
  { value: 181, label: '1 Jul' },
  { value: 273, label: '1 Oct' },
];
const x: TickedAxis = { min: 0, max: daysOfYear, ticks: quarters };
const xSide: Side = { axis: x, title: 'Day of the year', unit: '' };

/** Room above the lines for their names. */
const headroom = 1.3;
/** A name, as shares of a small picture: width of a letter, height of a line. */
const letter = { width: 0.03, height: 0.09 };

interface PlotProps {
  readonly model: FilterYearsModel;
  /** How often Reset was pressed; the axes begin anew with it. */
  readonly resets: number;
}

interface YearPlotProps extends PlotProps {
  readonly title: string;
  readonly of: Quantity;
  readonly side: Side;
  readonly value: (day: CycleDay) => number;
}

/** A cycle is a smooth line, so that these many of its days draw it. */
const drawn = 8;

/** The days of a year at noon, cycle after cycle: the first and last of each and some between. */
function daysOf({ cycle }: FilterYear, value: (day: CycleDay) => number) {
  const step = Math.ceil(cycle.length / drawn);
  return Array.from({ length: daysOfYear }, (_, at) => ({ at, since: at % cycle.length }))
    .filter(
      ({ at, since }) => since % step === 0 || since === cycle.length - 1 || at === daysOfYear - 1,
    )
    .map(({ at, since }) => {
      const day = cycle[since];
      return { x: at + 0.5, y: day === undefined ? undefined : value(day) };
    });
}

function YearPlot({ model, resets, title, of, side: now, value }: YearPlotProps): JSX.Element {
  const key = `${title} ${model.source.value} ${now.unit} ${resets}`;
  const side = useGrowing(now, key);
  const { axis: y } = side;
  const [small, large] = model.worked.value.filters.map((each) => daysOf(each, value));
  const names = filterNames(model);
  const spots = (points: ReturnType<typeof daysOf> = []): Spot[] =>
    points.map((point) => ({ x: fraction(x, point.x), y: 1 - fraction(y, point.y ?? 0) }));
  const places = placeLabels(
    [small, large].map((points, at) => ({
      line: spots(points),
      width: letter.width * (names[at]?.length ?? 0),
      height: letter.height,
      wish: at === 0 ? 0.05 : 0.75,
    })),
  );
  return (
    <Frame
      x={xSide}
      y={side}
      title={`${title} on each day of the year: ${names.join(' and ')}`}
      drawing={
        <>
          <Curve d={linePath(large ?? [], x, y)} of={of} faint />
          <Curve d={linePath(small ?? [], x, y)} of={of} />
        </>
      }
      labels={places.map(
        (place, at) =>
          place !== undefined && (
            <CurveLabel key={names[at]} of={of} at={place} text={names[at] ?? ''} />
          ),
      )}
    />
  );
}

const most = (model: FilterYearsModel, value: (day: CycleDay) => number) =>
  Math.max(...model.worked.value.filters.flatMap(({ cycle }) => cycle.map(value)));

/** The flow while the pump runs; where more speed keeps it, the speed. */
export function FlowPlot({ model, resets }: PlotProps): JSX.Element {
  const units = model.units.value;
  if (model.way.value === 'speed') {
    const value = ({ speed }: CycleDay) => speed;
    const max = Math.max(headroom * most(model, value), 100);
    const side = quantitySide('Speed', 'speed', units, { max });
    return (
      <YearPlot model={model} resets={resets} title="Speed" of="plain" side={side} value={value} />
    );
  }
  const value = ({ flow }: CycleDay) => flow;
  const max = Math.max(headroom * most(model, value), 1e-4);
  const side = quantitySide('Flow while it runs', 'flow', units, { max });
  return (
    <YearPlot model={model} resets={resets} title="Flow" of="flow" side={side} value={value} />
  );
}

/** What each day takes. */
export function EnergyPlot({ model, resets }: PlotProps): JSX.Element {
  const value = ({ energy }: CycleDay) => energy;
  const max = Math.max(headroom * most(model, value), 3.6e5);
  const side = quantitySide('Energy of the day', 'energy', model.units.value, { max });
  return (
    <YearPlot model={model} resets={resets} title="Energy" of="power" side={side} value={value} />
  );
}
