import type { JSX } from 'preact';
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
  const { first, second, of, title, unit, months } = props;
  const all = [...first.amounts, ...(second?.amounts ?? [])];
  const x: TickedAxis = {
    min: 0,
    max: 12,
    ticks: months.map((label, index) => ({ value: index + 0.5, label })),
  };
  const y = niceAxis({ min: Math.min(0, ...all), max: Math.max(1e-6, ...all) });
  const { alone, left } = layout;
  return (
    <>
      <Frame
        x={{ axis: x, title: 'Month', unit: '' }}
        y={{ axis: y, title, unit }}
        title={`${title}, month by month: ${first.name}${second === undefined ? '' : ` beside ${second.name}`}`}
        drawing={
          second === undefined ? (
            <path
              class="month-bar is-solid"
              data-quantity={of}
              d={bars(first.amounts, x, y, alone.from, alone.width)}
            />
          ) : (
            <>
              <path
                class="month-bar"
                data-quantity={of}
                d={bars(second.amounts, x, y, left.from, left.width)}
              />
              <path
                class="month-bar is-solid"
                data-quantity={of}
                d={bars(first.amounts, x, y, left.from + left.width + 0.04, left.width)}
              />
            </>
          )
        }
      />
      <ul class="month-key" data-quantity={of} role="list">
        {second !== undefined && <KeyLine name={second.name} isSolid={false} />}
        <KeyLine name={first.name} isSolid />
      </ul>
    </>
  );
}

function KeyLine({ name, isSolid }: { name: string; isSolid: boolean }): JSX.Element {
  return (
    <li>
      <span class={isSolid ? 'month-swatch is-solid' : 'month-swatch'} aria-hidden="true" /> {name}
    </li>
  );
}
