/** Where the example opens: plain numbers, so that the page need not carry the hydraulics for them. */
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

/** Clean and dirty head of the filter of the lesson on loading [m]; eight weeks from one to the other. */
const small: FilterSetup = { cleanHead: 1.2, dirtyHead: 15, due: 56, interval: 56 };

/** Media that the water seeps through, as in that lesson [-]. */
export const mediaExponent = 1.3;

const onGrid = (head: number) => Math.round(head * 10) / 10;
const twice = ofArea(small, 2, mediaExponent);

export const exampleBasis: Basis = {
  leastSpeed: 600,
  topSpeed: 3450,
  speed: 1800,
  filters: [
    small,
    { ...twice, cleanHead: onGrid(twice.cleanHead), dirtyHead: onGrid(twice.dirtyHead) },
  ],
  referenceFlow: 0.004,
  currency: '$',
};
