import { computed, type ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { Frame } from '#ui/charts/Frame.tsx';
import { type Placement, placeLabels, type Spot } from '#ui/charts/labels.ts';
import { Curve, CurveLabel, Marker, type Quantity, Rule } from '#ui/charts/marks.tsx';
import { linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction, valueAt } from '#ui/charts/scale.ts';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { DragHandle, DragSurface } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink } from '#ui/figure/linkState.ts';
import { guarded } from '#ui/loading/Guard.tsx';
import { unitFor } from '#units/choice.ts';
import { fromSI } from '#units/convert.ts';
import { symbolFor } from '#units/format.ts';
import type { Quantity as Measured } from '#units/quantities.ts';
import { type BoreVelocityModel, type BoreVelocityProps, createModel, type Run } from './model.ts';
import { note, quotedLength, sentence, spokenFlow, table } from './text.ts';

interface ViewProps extends BoreVelocityProps {
  readonly id: string;
}

/** Which of a run's figures a picture draws. */
interface Drawn {
  readonly of: Quantity;
  readonly measured: Measured;
  readonly title: string;
  readonly value: (run: Run) => number;
}

function greatest(model: BoreVelocityModel, drawn: Drawn): number {
  return Math.max(...model.lines.value.flatMap(({ runs }) => runs.map(drawn.value)));
}

/** Velocity and loss against flow, one above the other, in pipes that share a name. */
function BoreVelocity({ id, ...props }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel(props), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: [
      id.replace(/[^a-z]/gi, ''),
      () => ({
        flow: dialInLink(model.flow),
        pipe: {
          read: () =>
            model.source.value === 'mine' || model.pipeId.value === props.pipes[0]
              ? ''
              : model.pipeId.value,
          write: model.choosePipe,
        },
      }),
    ],
    own: () => import('./own.ts'),
  });
  const spoken = useComputed(() => spokenFlow(model));
  const entry = useComputed(() => quantityEntry('flow', model.units.value));
  const small = useComputed(() => note(model));
  const velocity: Drawn = {
    of: 'velocity',
    measured: 'velocity',
    title: 'Velocity',
    value: (run) => run.velocity,
  };
  const length = quotedLength(model);
  const loss: Drawn = {
    of: 'head',
    measured: 'head',
    title: `Head lost over ${fromSI('length', length, unitFor(model.units.value, 'length'))} ${symbolFor(model.units.value, 'length')}`,
    value: (run) => run.gradient * length,
  };
  // Other pipes or other units make another pair of axes.
  const drawing = `${model.source.value}-${model.units.value.preset}`;
  return (
    <Figure
      id={id}
      title={model.source.value === 'mine' ? 'Your bores' : 'One name, two bores'}
      {...figure}
      note={small}
    >
      <div class="needs-script">
        <ChoiceField
          id={`${id}-pipe`}
          label="The pipe you look at"
          choices={model.lines.value.map(({ pipe }) => ({ id: pipe.id, label: pipe.label }))}
          value={model.pipeId}
          apply={model.choosePipe}
        />
      </div>
      <Plot
        key={`velocity-${drawing}`}
        model={model}
        drawn={velocity}
        spoken={spoken}
        limit={model.chosen.value.limit}
      />
      <Plot key={`loss-${drawing}`} model={model} drawn={loss} spoken={spoken} />
      <RangeField
        id={`${id}-flow`}
        label="Flow"
        dial={model.flow}
        spoken={spoken}
        entry={entry}
        unit={symbolFor(model.units.value, 'flow')}
      />
    </Figure>
  );
}

export default guarded(BoreVelocity);

interface PlotProps {
  readonly model: BoreVelocityModel;
  readonly drawn: Drawn;
  readonly spoken: ReadonlySignal<string>;
  readonly limit?: number;
}

function Plot({ model, drawn, spoken, limit }: PlotProps): JSX.Element {
  const { units } = model;
  const xSide = quantitySide('Flow', 'flow', units.value, {
    max: model.scene.value.greatestFlow,
    exact: true,
  });
  const ySide = quantitySide(drawn.title, drawn.measured, units.value, {
    max: Math.max(greatest(model, drawn), 1.1 * (limit ?? 0)),
  });
  const { axis: x } = xSide;
  const { axis: y } = ySide;
  const spot = (run: Run): Spot => ({
    x: fraction(x, run.flow),
    y: 1 - fraction(y, drawn.value(run)),
  });
  const at = useMemo(() => computed(() => spot(model.here.value)), [model, y.max]);
  const turbulent = useMemo(
    () => computed(() => fraction(x, model.turbulentFlow.value)),
    [model, x.max],
  );
  const toFlow = ({ x: across }: Spot) => valueAt(x, across);
  const places = placeLabels(
    model.lines.value.map(({ runs }, index) => ({
      line: runs.map(spot),
      width: 0.3,
      height: 0.08,
      wish: 0.55 + 0.25 * index,
    })),
  );
  return (
    <Frame
      x={xSide}
      y={ySide}
      title={`${drawn.title} against flow`}
      handlesTitle={`Flow, on the picture of ${drawn.title.toLowerCase()}`}
      drawing={
        <>
          <Rule at={turbulent} />
          {limit !== undefined && <Rule at={1 - fraction(y, limit)} level of="velocity" />}
          {model.lines.value.map(({ pipe, runs }) => (
            <Curve
              key={pipe.id}
              of={drawn.of}
              faint={pipe.id !== model.pipeId.value}
              d={linePath(
                runs.map((run) => ({ x: run.flow, y: drawn.value(run) })),
                x,
                y,
              )}
            />
          ))}
        </>
      }
      labels={
        <>
          {model.lines.value.map(({ pipe }, index) => (
            <LineLabel key={pipe.id} at={places[index]} of={drawn.of} text={pipe.label} />
          ))}
          {limit !== undefined && (
            <CurveLabel
              at={{ x: 0.98, y: 1 - fraction(y, limit), above: false, ends: true }}
              of="velocity"
              text="the limit"
            />
          )}
          <Marker at={at} of={drawn.of} />
        </>
      }
    >
      <DragSurface dial={model.flow} valueAt={toFlow} />
      <DragHandle
        dial={model.flow}
        label="Flow"
        spoken={spoken}
        at={at}
        valueAt={toFlow}
        of={drawn.of}
      />
    </Frame>
  );
}

interface LineLabelProps {
  readonly at: Placement | undefined;
  readonly of: Quantity;
  readonly text: string;
}

function LineLabel({ at, of, text }: LineLabelProps): JSX.Element | null {
  return at === undefined ? null : <CurveLabel at={at} of={of} text={text} />;
}
