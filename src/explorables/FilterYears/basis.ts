/** Where the example opens: plain numbers, so that the page need not carry the hydraulics for them. */
import { foot, gallonPerMinute } from '#units/factors.ts';
import type { Basis, FilterSetup } from './ask.ts';

/**
 * A filter with so many times the area: at the same dirt on each bit of area, the water is that much
 * slower there, and so the head falls as the power of the flow; and it takes that much longer to get
 * so dirty.
 */
export function ofArea(filter: FilterSetup, times: number, exponent: number): FilterSetup {
  const less = times ** -exponent;
  return {
    cleanHead: filter.cleanHead * less,
    dirtyHead: filter.dirtyHead * less,
    due: Math.round(filter.due * times),
    interval: Math.round(filter.interval * times),
  };
}

/** The filter of the lesson on loading: 4 ft clean and 24 ft due at 60 gpm, eight weeks between. */
const small: FilterSetup = { cleanHead: 4 * foot, dirtyHead: 24 * foot, due: 56, interval: 56 };

/** Media that the water seeps through, as in that lesson [-]. */
export const mediaExponent = 1.3;

/** To a tenth of a foot. */
const onGrid = (head: number) => Math.round((10 * head) / foot) * (foot / 10);
const twice = ofArea(small, 2, mediaExponent);

export const exampleBasis: Basis = {
  leastSpeed: 600,
  topSpeed: 3450,
  speed: 1800,
  filters: [
    small,
    { ...twice, cleanHead: onGrid(twice.cleanHead), dirtyHead: onGrid(twice.dirtyHead) },
  ],
  referenceFlow: 60 * gallonPerMinute,
  currency: '$',
};
