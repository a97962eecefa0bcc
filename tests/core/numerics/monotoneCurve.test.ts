import { describe, expect, test } from 'vitest';
import { monotoneCurve } from '#core/numerics/monotoneCurve.ts';

/** Points, and at places from the first to the last: value and slope. */
interface Curve {
  readonly what: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly at: readonly (readonly [number, number, number])[];
}

// Values and slopes by scipy 1.17.1, interpolate.PchipInterpolator and its derivative.
const curves: readonly Curve[] = [
  {
    what: 'points at uneven places',
    x: [0, 1, 3, 4, 7],
    y: [10, 9.5, 6, 5.8, 1],
    at: [
      [0, 10, -0.08333333333333333],
      [0.3, 9.925901162790696, -0.3940891472868217],
      [2, 7.649321198100572, -2.359399732131986],
      [3, 6, -0.329842931937173],
      [6.4, 2.486583606557376, -2.295868852459016],
      [7, 1, -2.65],
    ],
  },
  {
    what: 'a level stretch',
    x: [0, 2, 3, 5],
    y: [8, 6, 6, 1],
    at: [
      [0, 8, -1.6666666666666667],
      [0.6, 7.078, -1.3766666666666665],
      [2.5, 6, 0],
      [3, 6, 0],
      [4.6, 2.5866666666666687, -3.7333333333333325],
      [5, 1, -4.166666666666667],
    ],
  },
  {
    what: 'rises and falls',
    x: [0, 1, 2.5, 4, 6],
    y: [1, 4, 2, 2.5, -3],
    at: [
      [0, 1, 4.733333333333333],
      [0.3, 2.3438, 4.1113333333333335],
      [1.75, 3, -2],
      [2.5, 2, 0],
      [5.6, -1.272952380952379, -4.083809523809524],
      [6, -3, -4.511904761904762],
    ],
  },
  {
    what: 'an end slope of the wrong sign, held at nothing',
    x: [0, 1, 2],
    y: [0, 0.1, 3],
    at: [
      [0, 0, 0],
      [0.3, 0.00942, 0.0622],
      [1.5, 1.0366666666666668, 3.226666666666667],
      [1.8, 2.1541866666666674, 4.105866666666667],
      [2, 3, 4.3],
    ],
  },
  {
    what: 'a first slope too steep, held at three chords',
    x: [0, 1, 1.2],
    y: [0, 1, -3],
    at: [
      [0, 0, 3],
      [0.3, 0.657, 1.47],
      [1.1, -0.4125, -24.125],
      [1.16, -1.9824, -26.72],
      [1.2, -3, -23.5],
    ],
  },
  {
    what: 'a last slope too steep, held at three chords',
    x: [0, 0.2, 1.2],
    y: [-3, 1, 0],
    at: [
      [0, -3, 23.5],
      [0.06, -1.4451, 26.845],
      [0.7, 0.875, -0.75],
      [1, 0.488, -1.92],
      [1.2, 0, -3],
    ],
  },
];

describe('a curve that never overshoots', () => {
  test.each(curves)('is that of the reference library: $what', ({ x, y, at }) => {
    const curve = monotoneCurve(x, y);
    for (const [place, value, slope] of at) {
      expect(curve.value(place), `value at ${place}`).toBeCloseTo(value, 12);
      expect(curve.slope(place), `slope at ${place}`).toBeCloseTo(slope, 11);
    }
  });

  test('two points make a straight line, and the end pieces go on', () => {
    // Geometry: y = 3 - 2 (x - 1).
    const line = monotoneCurve([1, 2], [3, 1]);
    for (const place of [0, 1, 1.5, 2, 4]) {
      expect(line.value(place)).toBeCloseTo(3 - 2 * (place - 1), 12);
      expect(line.slope(place)).toBeCloseTo(-2, 12);
    }
  });
});
