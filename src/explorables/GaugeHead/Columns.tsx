import type { JSX } from 'preact';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import { useGrowing } from '#ui/charts/growing.ts';
import { Band, Curve, CurveLabel } from '#ui/charts/marks.tsx';
import { bandPath, linePath } from '#ui/charts/path.ts';
import { quantitySide, shownUnit } from '#ui/charts/quantityAxis.ts';
import { fraction, niceAxis } from '#ui/charts/scale.ts';
import { useComputed } from '#ui/controls/failure.ts';
import type { GaugeHeadModel, Heads } from './model.ts';
import { headText } from './text.ts';

/** One column from the level that those before it reached to its own. */
interface Column {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** The head it stands for [m]. */
  readonly head: number;
}

/** The pieces one on top of the other, and all together beside them. */
export function columnsOf({ vacuum, height, pressure, total }: Heads): readonly Column[] {
  return [
    { name: 'Vacuum', from: 0, to: vacuum, head: vacuum },
    { name: 'Height', from: vacuum, to: vacuum + height, head: height },
    { name: 'Filter', from: vacuum + height, to: total, head: pressure },
    { name: 'Total', from: 0, to: total, head: total },
  ];
}

const names: Side = {
  title: '',
  unit: '',
  axis: {
    min: 0,
    max: 4,
    ticks: ['Vacuum', 'Height', 'Filter', 'Total'].map((label, index) => ({
      value: index + 0.5,
      label,
    })),
  },
};

/** Room above the highest column for its number. */
const headroom = 1.12;

interface ColumnsProps {
  readonly model: GaugeHeadModel;
  /** How often Reset was pressed; the axis begins anew with it. */
  readonly resets: number;
}

/** The head stacked up in steps, piece by piece. */
export function Columns({ model, resets }: ColumnsProps): JSX.Element {
  const units = model.units.value;
  const { least, most } = model.reach.value;
  const { max } = niceAxis({ max: headroom * most, unit: shownUnit('head', units) });
  const wished = quantitySide('Head', 'head', units, { min: least, max, exact: true });
  const y = useGrowing(wished, `${model.source.value} ${least} ${wished.unit} ${resets}`);
  return (
    <Frame
      key={`${y.axis.max} ${least} ${y.unit}`}
      x={names}
      y={y}
      shape="square"
      title="Head of the vacuum, of the height, of the filter gauge, and all together"
      drawing={<Pieces model={model} y={y} />}
      labels={[0, 1, 2, 3].map((index) => (
        <ColumnLabel key={index} model={model} y={y} index={index} />
      ))}
    />
  );
}

interface PieceProps {
  readonly model: GaugeHeadModel;
  readonly y: Side;
}

function Pieces({ model, y }: PieceProps): JSX.Element {
  const slices = (column: Column, index: number) =>
    [index + 0.16, index + 0.84].map((x) => ({
      x,
      low: Math.min(column.from, column.to),
      high: Math.max(column.from, column.to),
    }));
  const bands = useComputed(() =>
    columnsOf(model.heads.value)
      .map((column, index) => bandPath(slices(column, index), names.axis, y.axis))
      .join(''),
  );
  const tops = useComputed(() =>
    columnsOf(model.heads.value)
      .map(({ to }, index) =>
        linePath(
          [
            { x: index + 0.16, y: to },
            { x: index < 3 ? index + 1.16 : index + 0.84, y: to },
          ],
          names.axis,
          y.axis,
        ),
      )
      .join(''),
  );
  const ground = linePath(
    [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
    ],
    names.axis,
    y.axis,
  );
  return (
    <>
      <Band d={bands} of="head" />
      <Curve d={tops} of="head" />
      <Curve d={ground} of="plain" faint />
    </>
  );
}

function ColumnLabel({ model, y, index }: PieceProps & { readonly index: number }): JSX.Element {
  const column = useComputed(() => columnsOf(model.heads.value)[index] as Column);
  const place = useComputed(() => ({
    x: (index + 0.1) / 4,
    y: 1 - fraction(y.axis, Math.max(column.value.from, column.value.to)),
    above: true,
    ends: false,
  }));
  const words = useComputed(() => headText(model, column.value.head));
  return <CurveLabel at={place} of="head" text={words} strong={index === 3} />;
}
