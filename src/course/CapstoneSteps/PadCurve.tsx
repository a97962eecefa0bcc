import type { JSX } from 'preact';
import type { PumpCurve } from '#core/pump/pump.ts';
import { Frame } from '#ui/charts/Frame.tsx';
import { Curve, CurveLabel } from '#ui/charts/marks.tsx';
import { evenly, linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction } from '#ui/charts/scale.ts';
import { Table } from '#ui/charts/Table.tsx';
import { us } from '#units/choice.ts';
import { formatIn } from '#units/format.ts';

/** The pump's curve at full speed, to be read from; a still picture that needs no script. */
export function PadCurve({
  curve,
  flows,
}: {
  curve: PumpCurve;
  flows: readonly number[];
}): JSX.Element {
  const xSide = quantitySide('Flow', 'flow', us, { max: curve.lastFlow, count: 6 });
  const ySide = quantitySide('Head', 'head', us, { max: 1.05 * curve.shutoffHead, count: 8 });
  const { axis: x } = xSide;
  const { axis: y } = ySide;
  const points = evenly(0, curve.lastFlow, 60).map((flow) => ({ x: flow, y: curve.head(flow) }));
  // To the right of the curve, level with a point further left: clear of the line.
  const [named, level] = [0.68 * curve.lastFlow, 0.4 * curve.lastFlow];
  return (
    <div>
      <Frame
        x={xSide}
        y={ySide}
        title="Head of the pump against flow at 3450 rpm"
        shape="wide"
        drawing={<Curve d={linePath(points, x, y)} of="head" />}
        labels={
          <CurveLabel
            at={{
              x: fraction(x, named),
              y: 1 - fraction(y, curve.head(level)),
              above: true,
              ends: false,
            }}
            of="head"
            text="the pump at 3450 rpm"
          />
        }
      />
      <Table
        summary="The curve as a table, in both units"
        data={{
          caption: 'Points of the curve at 3450 rpm',
          columns: ['Flow, gpm', 'Flow, m³/h', 'Head, ft', 'Head, m'],
          rows: flows.map((flow) => [
            formatIn('flow', flow, 'gpm', { withUnit: false }),
            formatIn('flow', flow, 'm3/h', { withUnit: false }),
            formatIn('head', curve.head(flow), 'ft', { withUnit: false }),
            formatIn('head', curve.head(flow), 'm', { withUnit: false }),
          ]),
        }}
      />
    </div>
  );
}
