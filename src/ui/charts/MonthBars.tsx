import type { ComponentChildren, JSX } from 'preact';
import { Frame } from './Frame.tsx';
import { useGrowing } from './growing.ts';
import { CurveLabel, type Quantity } from './marks.tsx';
import { across, fraction, niceAxis, type ShownUnit, type TickedAxis, upward } from './scale.ts';

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
  /** How a stored amount is shown; as it is unless set. */
  readonly shownAs?: ShownUnit;
  /** "Jan" to "Dec". */
  readonly months: readonly string[];
  readonly monthTitle?: string;
  /** What the amounts belong to: while it stays the same, the axis never shrinks. */
  readonly steady?: string;
  /** Drawn under the bars. */
  readonly children?: ComponentChildren;
}

/** Where a bar begins and how wide it is, as shares of a month. */
interface Bar {
  readonly from: number;
  readonly width: number;
}

const alone: Bar = { from: 0.2, width: 0.6 };
const left: Bar = { from: 0.12, width: 0.36 };
const right: Bar = { from: left.from + left.width + 0.04, width: left.width };

/** The month whose bar each name is tied to: far enough apart for both names in one line. */
const namedAt = { first: 7, second: 0 };
/** Share of the height kept free above the bars for their names, and where the tie to a bar begins. */
const headroom = 0.12;
const tieFrom = 0.085;

function bars(amounts: readonly number[], x: TickedAxis, y: TickedAxis, { from, width }: Bar) {
  const foot = upward(y, 0).toFixed(1);
  return amounts
    .map((amount, index) => {
      const [start, end] = [across(x, index + from), across(x, index + from + width)];
      return `M${start.toFixed(1)},${foot}V${upward(y, amount).toFixed(1)}H${end.toFixed(1)}V${foot}Z`;
    })
    .join('');
}

/** Twelve months as bars, one plan solid and another hollow beside it, each named on the picture. */
export function MonthBars(props: MonthBarsProps): JSX.Element {
  const { first, second, of, title, unit, shownAs, months, monthTitle = 'Month', children } = props;
  const all = [...first.amounts, ...(second?.amounts ?? [])];
  const x: TickedAxis = {
    min: 0,
    max: 12,
    ticks: months.map((label, index) => ({ value: index + 0.5, label })),
  };
  const most = Math.max(...all, 0);
  const wished = niceAxis({
    min: Math.min(0, ...all),
    max: (most > 0 ? most : (shownAs?.store(1) ?? 1)) / (1 - headroom),
    ...(shownAs !== undefined && { unit: shownAs }),
  });
  // Without a name for what they belong to, every change of the amounts is a picture of its own.
  const ySide = useGrowing({ axis: wished, title, unit }, props.steady ?? all.join(' '));
  const { axis: y } = ySide;
  const solid = second === undefined ? alone : right;
  const middle = (at: number, bar: Bar) => at + bar.from + bar.width / 2;
  const tie = (series: MonthSeries, at: number, bar: Bar) =>
    `M${across(x, middle(at, bar)).toFixed(1)},${1000 * tieFrom}V${upward(y, series.amounts[at] ?? 0).toFixed(1)}`;
  const spot = (at: number, bar: Bar) => ({
    x: fraction(x, at + bar.from),
    y: 0,
    above: false,
    ends: false,
  });
  return (
    <Frame
      x={{ axis: x, title: monthTitle, unit: '' }}
      y={ySide}
      title={`${title}, month by month: ${first.name}${second === undefined ? '' : ` beside ${second.name}`}`}
      drawing={
        <>
          {children}
          {second !== undefined && (
            <>
              <path class="month-bar" data-quantity={of} d={bars(second.amounts, x, y, left)} />
              <path class="month-tie" data-quantity={of} d={tie(second, namedAt.second, left)} />
            </>
          )}
          <path
            class="month-bar is-solid"
            data-quantity={of}
            d={bars(first.amounts, x, y, solid)}
          />
          <path class="month-tie" data-quantity={of} d={tie(first, namedAt.first, solid)} />
        </>
      }
      labels={
        <>
          {second !== undefined && (
            <CurveLabel of={of} at={spot(namedAt.second, left)} text={second.name} />
          )}
          <CurveLabel of={of} at={spot(namedAt.first, solid)} text={first.name} />
        </>
      }
    />
  );
}

/** How the bars of a plan are drawn, beside its name. */
export function MonthSwatch({ isSolid }: { isSolid: boolean }): JSX.Element {
  return <span class={isSolid ? 'month-swatch is-solid' : 'month-swatch'} aria-hidden="true" />;
}
