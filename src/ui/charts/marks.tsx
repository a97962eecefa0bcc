import { computed } from '@preact/signals';
import type { JSX } from 'preact';
import { useId, useMemo } from 'preact/hooks';
import type { Placement, Spot } from './labels.ts';
import { type Live, read } from './live.ts';
import { span } from './scale.ts';

/** Each quantity owns an ink, a line pattern and a shape of dot; `plain` belongs to none. */
export type Quantity = 'flow' | 'head' | 'power' | 'velocity' | 'money' | 'plain';

interface CurveProps {
  readonly d: Live<string>;
  readonly of: Quantity;
  /** A line to compare with, drawn thin. */
  readonly faint?: boolean;
}

/** One line in its quantity's ink and pattern. */
export function Curve({ d, of, faint = false }: CurveProps): JSX.Element {
  return <path class={faint ? 'curve curve-faint' : 'curve'} data-quantity={of} d={d} />;
}

interface BandProps {
  readonly d: Live<string>;
  readonly of: Quantity;
  /** Beyond measured data, or not allowed: hatched instead of tinted. */
  readonly hatched?: boolean;
}

/** Lines over the whole drawing, steep enough to slant on a strip and on a square. */
const hatchLines = Array.from({ length: 57 }, (_, place) => {
  const foot = 22 * place - 250;
  return `M${foot},${span}L${foot + 250},0`;
}).join('');

/** A marked area: an uncertainty, a saving, a range that is not allowed. */
export function Band({ d, of, hatched = false }: BandProps): JSX.Element {
  const clip = `hatch-${of}-${useId()}`;
  if (!hatched) return <path class="band" data-quantity={of} d={d} />;
  return (
    <>
      <clipPath id={clip}>
        <path d={d} />
      </clipPath>
      <path class="hatch" data-quantity={of} d={hatchLines} clip-path={`url(#${clip})`} />
      <path class="band is-hatched" data-quantity={of} d={d} />
    </>
  );
}

interface RuleProps {
  /** Fraction of the picture: from the left for an upright rule, from the top for a level one. */
  readonly at: Live<number>;
  readonly level?: boolean;
  readonly of?: Quantity;
}

/** A thin straight line right through the picture, for a limit or the present setting. */
export function Rule({ at, level = false, of = 'plain' }: RuleProps): JSX.Element {
  const d = useMemo(
    () =>
      computed(() => {
        const place = (read(at) * 1000).toFixed(1);
        return level ? `M0,${place}H1000` : `M${place},0V1000`;
      }),
    [at, level],
  );
  return <path class="rule" data-quantity={of} d={d} />;
}

/** Inline style that lays a mark over the picture by fraction. */
export function placed(spot: Spot): string {
  return `--x:${spot.x.toFixed(4)};--y:${spot.y.toFixed(4)}`;
}

interface MarkerProps {
  readonly at: Live<Spot>;
  readonly of: Quantity;
}

/** A dot on a line: round for flow, square for power, and so on, so that it needs no colour. */
export function Marker({ at, of }: MarkerProps): JSX.Element {
  const style = useMemo(() => computed(() => placed(read(at))), [at]);
  return <span class="marker" data-quantity={of} style={style} />;
}

interface CurveLabelProps {
  readonly at: Live<Placement>;
  readonly of: Quantity;
  readonly text: Live<string>;
  /** For a number that moves along the line, heavier than the line's name. */
  readonly strong?: boolean;
  /** For the name of a line with a handle on it: far enough away for the handle to pass. */
  readonly clear?: boolean;
}

/** Words beside their line; they stay within the frame however narrow it gets. */
export function CurveLabel(props: CurveLabelProps): JSX.Element {
  const { at, of, text, strong = false, clear = false } = props;
  const style = useMemo(
    () => computed(() => `${placed(read(at))};--chars:${read(text).length}`),
    [at, text],
  );
  const side = useMemo(
    () =>
      computed(() => {
        const spot = read(at);
        return `curve-label ${strong ? 'is-strong ' : ''}${clear ? 'is-clear ' : ''}${spot.above ? 'is-above' : 'is-below'} ${spot.ends ? 'is-end' : 'is-start'}`;
      }),
    [at, strong, clear],
  );
  return (
    <span class={side} data-quantity={of} style={style}>
      {text}
    </span>
  );
}
