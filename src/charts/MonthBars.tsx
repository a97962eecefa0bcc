import type { ComponentChildren, JSX } from 'preact';
import { Frame } from './Frame.tsx';
import type { Quantity } from './marks.tsx';
import { across, niceAxis, type TickedAxis, upward } from './scale.ts';

/** One set of twelve amounts, January first. */
export interface MonthSeries {
  readonly id: string;
  readonly name: string;
  readonly amounts: readonly number[];
}

interface MonthBarsProps {
  readonly first: MonthSeries;
  /** Set beside the first, drawn hollow. */
  readonly second?: MonthSeries | undefined;
  readonly of: Quantity;
  readonly title: string;
  readonly unit: string;
  /** "Jan" to "Dec". */
  readonly months: readonly string[];
  readonly monthTitle?: string;
  /** Drawn under the bars. */
  readonly children?: ComponentChildren;
}

/** Room at both sides of a pair of bars, and the width of one, as shares of a month. */
const layout = { alone: { from: 0.2, width: 0.6 }, left: { from: 0.12, width: 0.36 } };

function bars(
  amounts: readonly number[],
  x: TickedAxis,
  y: TickedAxis,
  from: number,
  width: number,
) {
  const foot = upward(y, 0).toFixed(1);
  return amounts
    .map((amount, index) => {
      const [left, right] = [across(x, index + from), across(x, index + from + width)];
      return `M${left.toFixed(1)},${foot}V${upward(y, amount).toFixed(1)}H${right.toFixed(1)}V${foot}Z`;
    })
    .join('');
}

/** Twelve months as bars, one plan solid and another hollow beside it. */
export function MonthBars(props: MonthBarsProps): JSX.Element {
  const { first, second, of, title, unit, months, monthTitle = 'Month', children } = props;
  const all = [...first.amounts, ...(second?.amounts ?? [])];
  const x: TickedAxis = {
    min: 0,
    max: 12,
    ticks: months.map((label, index) => ({ value: index + 0.5, label })),
  };
  const y = niceAxis({ min: Math.min(0, ...all), max: Math.max(1, ...all) });
  const { alone, left } = layout;
  const solid = second === undefined ? alone : { ...left, from: left.from + left.width + 0.04 };
  return (
    <Frame
      x={{ axis: x, title: monthTitle, unit: '' }}
      y={{ axis: y, title, unit }}
      title={`${title}, month by month: ${first.name}${second === undefined ? '' : ` beside ${second.name}`}`}
      drawing={
        <>
          {children}
          {second !== undefined && (
            <path
              class="month-bar"
              data-quantity={of}
              d={bars(second.amounts, x, y, left.from, left.width)}
            />
          )}
          <path
            class="month-bar is-solid"
            data-quantity={of}
            d={bars(first.amounts, x, y, solid.from, solid.width)}
          />
        </>
      }
    />
  );
}

/** How the bars of a plan are drawn, beside its name. */
export function MonthSwatch({ isSolid }: { isSolid: boolean }): JSX.Element {
  return <span class={isSolid ? 'month-swatch is-solid' : 'month-swatch'} aria-hidden="true" />;
}
