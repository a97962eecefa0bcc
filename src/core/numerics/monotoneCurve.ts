/** A smooth curve through points that never overshoots them. */
export interface MonotoneCurve {
  value(x: number): number;
  slope(x: number): number;
}

/** Slope at an end point, from the two nearest chords, held to what keeps the curve monotone. */
function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (Math.sign(slope) !== Math.sign(d0)) return 0;
  if (Math.sign(d0) !== Math.sign(d1) && Math.abs(slope) > 3 * Math.abs(d0)) return 3 * d0;
  return slope;
}

/** Slope at an inner point: the harmonic mean of both chords, weighted by their lengths. */
function innerSlope(h0: number, h1: number, d0: number, d1: number): number {
  if (d0 * d1 <= 0) return 0;
  const w0 = 2 * h1 + h0;
  const w1 = h1 + 2 * h0;
  return (w0 + w1) / (w0 / d0 + w1 / d1);
}

function slopesAt(x: readonly number[], y: readonly number[]): number[] {
  const at = (list: readonly number[], i: number) => list[i] as number;
  const h = x.slice(1).map((right, i) => right - at(x, i));
  const d = h.map((width, i) => (at(y, i + 1) - at(y, i)) / width);
  if (d.length === 1) return [at(d, 0), at(d, 0)];
  const n = d.length;
  return x.map((_, i) => {
    if (i === 0) return endSlope(at(h, 0), at(h, 1), at(d, 0), at(d, 1));
    if (i === n) return endSlope(at(h, n - 1), at(h, n - 2), at(d, n - 1), at(d, n - 2));
    return innerSlope(at(h, i - 1), at(h, i), at(d, i - 1), at(d, i));
  });
}

/**
 * A smooth curve through points that never overshoots them.
 *
 * Law: piecewise cubic; inner slopes are the harmonic mean of both chords weighted by their lengths (Fritsch and Butland), end slopes by the three-point rule held to what keeps the curve monotone.
 * @param x Places [any], at least 2, rising.
 * @param y Values there [any], finite, as many.
 * @returns Value and slope [any] between the first place and the last; outside them the end pieces go on.
 * @throws nothing; the caller has checked the points.
 * Accuracy: scipy 1.10.1 PchipInterpolator to rounding.
 * Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5, 300 (1984), doi 10.1137/0905021.
 * @example monotoneCurve([0, 1, 2], [0, 1, 4]).value(1) // 1.000
 */
export function monotoneCurve(x: readonly number[], y: readonly number[]): MonotoneCurve {
  const knots = Float64Array.from(x);
  const values = Float64Array.from(y);
  const slopes = Float64Array.from(slopesAt(x, y));
  const pieceOf = (place: number) => {
    let low = 0;
    let high = knots.length - 2;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((knots[middle] as number) <= place) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const piece = (place: number) => {
    const i = pieceOf(place);
    const x0 = knots[i] as number;
    const h = (knots[i + 1] as number) - x0;
    const y0 = values[i] as number;
    const chord = ((values[i + 1] as number) - y0) / h;
    const m0 = slopes[i] as number;
    const m1 = slopes[i + 1] as number;
    const t = place - x0;
    const c2 = (3 * chord - 2 * m0 - m1) / h;
    const c3 = (m0 + m1 - 2 * chord) / (h * h);
    return { t, y0, m0, c2, c3 };
  };
  return {
    value(place) {
      const { t, y0, m0, c2, c3 } = piece(place);
      return y0 + t * (m0 + t * (c2 + t * c3));
    },
    slope(place) {
      const { t, m0, c2, c3 } = piece(place);
      return m0 + t * (2 * c2 + 3 * t * c3);
    },
  };
}
