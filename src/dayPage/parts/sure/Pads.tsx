import type { JSX } from 'preact';
import type { DayAnswer } from '#core/uncertainty/dayBands.ts';
import type { Quantity } from '#ui/charts/marks.tsx';
import { fraction, type TickedAxis } from '#ui/charts/scale.ts';
import type { Shown, SurenessModel } from './model.ts';
import { axisOf, columns, type Pile, pileOf, riseOf } from './plot.ts';
import { answerNames, pictureTitle, plusMinus, valueText } from './text.ts';

/** Whose ink and shape an answer has. */
export const markOf: Readonly<Record<DayAnswer, Quantity>> = {
  water: 'flow',
  energy: 'power',
  cost: 'money',
};

export const percent = (part: number): string => `${(part * 100).toFixed(2)}%`;

interface PadsProps {
  readonly shown: Shown;
  readonly model: SurenessModel;
  /** Rows of marks that there is room for. */
  readonly height: number;
}

/** One answer: trial pads piled on its axis, and under them the bar that holds 95 %. */
export function Pads({ shown, model, height }: PadsProps): JSX.Element {
  const { of, best, told, band, trial } = shown;
  const axis = axisOf(shown, model.units.value);
  const pile = pileOf(shown, axis);
  const at = (value: number) => fraction(axis, value);
  const likely = valueText(model, of, best, told);
  return (
    <figure class="sure-answer" data-quantity={markOf[of]}>
      <figcaption class="sure-title">
        <span>{answerNames[of]}</span> <span class="sure-width">{plusMinus(told)}</span>
      </figcaption>
      <div class="sure-picture" role="img" aria-label={pictureTitle(model, shown)}>
        <p class="sure-best">
          <span style={`--x:${at(best).toFixed(4)};--chars:${likely.length + 12}`}>
            most likely <strong>{likely}</strong>
          </span>
        </p>
        <svg
          class="sure-drawing"
          viewBox={`0 0 ${columns} ${height + 3}`}
          aria-hidden="true"
          focusable="false"
        >
          <path class="sure-likely" d={`M${columns * at(best)},0V${height + 3}`} />
          <path class="sure-mark" d={marksPath(pile, of, height, true)} />
          <path class="sure-mark is-outside" d={marksPath(pile, of, height, false)} />
          <path
            class="sure-ground"
            d={`M0,${height}H${columns}${axis.ticks
              .map(({ value }) => `M${(columns * at(value)).toFixed(2)},${height}v0.5`)
              .join('')}`}
          />
          <rect
            class="sure-bar"
            x={columns * at(band.low)}
            width={Math.max(0.2, columns * (at(band.high) - at(band.low)))}
            y={height + 1}
            height={1.5}
          />
          {trial !== null && (
            <path
              class="sure-stroke"
              d={[trial.low, trial.high]
                .map((end) => `M${(columns * at(end)).toFixed(2)},${height + 0.4}v2.7`)
                .join('')}
            />
          )}
        </svg>
        <EndLabels shown={shown} axis={axis} model={model} />
        <p class="sure-ticks">
          {axis.ticks.map(({ value, label }) => (
            <span key={label} style={`inset-inline-start:${percent(at(value))}`}>
              {label}
            </span>
          ))}
        </p>
      </div>
    </figure>
  );
}

/** Round for water, square for energy, a diamond for money: the marks need no colour. */
function marksPath(pile: readonly Pile[], of: DayAnswer, height: number, inside: boolean): string {
  const radius = 0.4;
  const rise = riseOf(pile, height);
  return pile
    .filter(({ isInside }) => isInside === inside)
    .map(({ column, row }) => {
      const [x, y] = [column + 0.5, height - row * rise - 0.5];
      if (of === 'water')
        return `M${x - radius},${y}a${radius},${radius} 0 1 0 ${2 * radius},0a${radius},${radius} 0 1 0 ${-2 * radius},0Z`;
      if (of === 'energy')
        return `M${x - radius},${y - radius}h${2 * radius}v${2 * radius}h${-2 * radius}Z`;
      return `M${x},${y - 0.48}l0.48,0.48l-0.48,0.48l-0.48,-0.48Z`;
    })
    .join('');
}

interface LabelProps {
  readonly shown: Shown;
  readonly axis: TickedAxis;
  readonly model: SurenessModel;
}

/** Below this share of the axis the two ends are named outward, so that the names keep apart. */
const narrow = 0.45;

/** The ends of the told band, named where they stand. */
function EndLabels({ shown: { of, told }, axis, model }: LabelProps): JSX.Element {
  const [from, to] = [fraction(axis, told.low), fraction(axis, told.high)];
  const label = (value: number, at: number, side: 'low' | 'high') => {
    const text = valueText(model, of, value, told);
    return (
      <span class={`sure-end is-${side}`} style={`--x:${at.toFixed(4)};--chars:${text.length}`}>
        {text}
      </span>
    );
  };
  return (
    <p class={to - from < narrow ? 'sure-ends is-narrow' : 'sure-ends'}>
      {label(told.low, from, 'low')}
      {label(told.high, to, 'high')}
    </p>
  );
}
