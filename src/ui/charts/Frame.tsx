import type { ComponentChildren, JSX } from 'preact';
import { across, fraction, span, type TickedAxis, upward } from './scale.ts';

/** One side of a picture: its marks, what they measure and in which unit. */
export interface Side {
  readonly axis: TickedAxis;
  readonly title: string;
  readonly unit: string;
  /** Where an upright axis ended before it grew: marked, so that the growing is seen. */
  readonly former?: number;
}

interface FrameProps {
  readonly x: Side;
  readonly y: Side;
  /** Spoken name of the still picture. */
  readonly title: string;
  /** Lines and areas, drawn in the stretched square. */
  readonly drawing: ComponentChildren;
  /** Words and dots laid over the lines. */
  readonly labels?: ComponentChildren;
  /** Handles; they stay outside the still picture so that keys and screen readers reach them. */
  readonly children?: ComponentChildren;
  readonly handlesTitle?: string;
  /** Width to height, wide screens; phones get a taller shape of their own. */
  readonly shape?: 'wide' | 'square' | 'strip';
}

const percent = (part: number) => `${(part * 100).toFixed(2)}%`;

const withUnit = (side: Side) => (side.unit === '' ? side.title : `${side.title}, ${side.unit}`);

/** Graph paper, axes and their titles around a picture, at one size of writing on any screen. */
export function Frame(props: FrameProps): JSX.Element {
  const { x, y, shape = 'wide' } = props;
  return (
    <div class={`plot plot-${shape}`}>
      <p class="plot-y-title" aria-hidden="true">
        {withUnit(y)}
      </p>
      <div class="plot-body">
        <div class="plot-still" role="img" aria-label={props.title}>
          <svg
            class="plot-lines"
            viewBox={`0 0 ${span} ${span}`}
            preserveAspectRatio="none"
            aria-hidden="true"
            focusable="false"
          >
            <Grid x={x.axis} y={y.axis} />
            {y.former !== undefined && (
              <path class="plot-former" d={`M0,${upward(y.axis, y.former).toFixed(1)}H${span}`} />
            )}
            {props.drawing}
          </svg>
          <Ticks x={x.axis} y={y.axis} />
          {y.former !== undefined && (
            <span class="plot-former-name" style={`top:${percent(1 - fraction(y.axis, y.former))}`}>
              the scale ended here
            </span>
          )}
          {props.labels}
        </div>
        {props.children !== undefined && (
          // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring its own box and legend
          <div class="plot-handles" role="group" aria-label={props.handlesTitle ?? props.title}>
            {props.children}
          </div>
        )}
      </div>
      <p class="plot-x-title" aria-hidden="true">
        {withUnit(x)}
      </p>
    </div>
  );
}

/** The values a fifth of the way from mark to mark, over the whole axis: the fine squares of the paper. */
function fineValues(axis: TickedAxis): readonly number[] {
  if (axis.fine !== undefined) return axis.fine;
  const [first, second] = axis.ticks;
  if (first === undefined || second === undefined) return [];
  const step = (second.value - first.value) / 5;
  const before = Math.floor((first.value - axis.min) / step + 1e-9);
  const count = Math.floor((axis.max - axis.min) / step + 1e-9) + 1;
  return Array.from({ length: count }, (_, index) => first.value + (index - before) * step);
}

function gridPath(
  x: TickedAxis,
  y: TickedAxis,
  values: (axis: TickedAxis) => readonly number[],
): string {
  const down = values(x).map((value) => `M${across(x, value).toFixed(1)},0V${span}`);
  const level = values(y).map((value) => `M0,${upward(y, value).toFixed(1)}H${span}`);
  return [...down, ...level].join('');
}

function Grid({ x, y }: { x: TickedAxis; y: TickedAxis }): JSX.Element {
  const marked = (axis: TickedAxis) => axis.ticks.map((tick) => tick.value);
  return (
    <>
      <path class="plot-grid plot-grid-fine" d={gridPath(x, y, fineValues)} />
      <path class="plot-grid" d={gridPath(x, y, marked)} />
      <path class="plot-axis" d={`M0,0V${span}H${span}`} />
    </>
  );
}

function Ticks({ x, y }: { x: TickedAxis; y: TickedAxis }): JSX.Element {
  return (
    <>
      {x.ticks.map((tick) => (
        <span
          key={`x${tick.label}`}
          class="plot-tick-x"
          style={`left:${percent(fraction(x, tick.value))}`}
        >
          {tick.label}
        </span>
      ))}
      {y.ticks.map((tick) => (
        <span
          key={`y${tick.label}`}
          class="plot-tick-y"
          style={`top:${percent(1 - fraction(y, tick.value))}`}
        >
          {tick.label}
        </span>
      ))}
    </>
  );
}
