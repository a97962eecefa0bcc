import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import type { Vertex } from '#core/pool/polygon.ts';
import {
  type Outline,
  outlineLength,
  outlinePoints,
  type TwoRadiusOutline,
} from '#core/pool/poolOutline.ts';
import {
  type Depth,
  depthProfileVolume,
  meanDepth,
  outlineArea,
  poolVolume,
} from '#core/pool/poolVolume.ts';

const straight = { kind: 'straight' } as const;
const inward = (radius: number) => ({ kind: 'inward', radius }) as const;
const outward = (radius: number) => ({ kind: 'outward', radius }) as const;

const sloped: Depth = { kind: 'sloped', first: 1, second: 2.4 };

/** An independent judge: the depth integrated by the midpoint rule over a fine polygon's chords. */
function volumeByChords(outline: Outline, depthAt: (x: number) => number, strips = 1000): number {
  const points = outlinePoints(outline, 300);
  const length = outlineLength(outline);
  const step = length / strips;
  let volume = 0;
  for (let index = 0; index < strips; index += 1) {
    const x = (index + 0.5) * step;
    volume += depthAt(x) * chordAt(points, x) * step;
  }
  return volume;
}

function chordAt(points: readonly Vertex[], x: number): number {
  const heights = points.flatMap(([ax, ay], index) => {
    const [bx, by] = points[(index + 1) % points.length] ?? [ax, ay];
    const crosses = (ax <= x && x < bx) || (bx <= x && x < ax);
    return crosses ? [ay + ((by - ay) * (x - ax)) / (bx - ax)] : [];
  });
  return heights
    .toSorted((a, b) => a - b)
    .reduce((sum, height, index) => sum + (index % 2 === 0 ? -height : height), 0);
}

const kidneyLike: TwoRadiusOutline = {
  kind: 'twoRadius',
  length: 9,
  firstRadius: 2,
  secondRadius: 2.6,
  sides: [outward(6), inward(4)],
};

describe('outlines', () => {
  // Plane geometry: a stadium is a rectangle and a circle.
  it('two equal radii and straight sides are a stadium', () => {
    const twoRadius: Outline = {
      ...kidneyLike,
      firstRadius: 2,
      secondRadius: 2,
      sides: [straight, straight],
    };
    expect(outlineArea(twoRadius)).toBeCloseTo(4 * 5 + Math.PI * 4, 10);
  });

  // Plane geometry: two sectors and two right trapezoids under the outer tangents.
  it('two unequal radii and straight sides are a belt around two circles', () => {
    const [large, small, apart] = [3, 1, 5];
    const lean = Math.asin((large - small) / apart);
    const belt =
      (large + small) * apart * Math.cos(lean) +
      (large ** 2 * (Math.PI + 2 * lean)) / 2 +
      (small ** 2 * (Math.PI - 2 * lean)) / 2;
    const outline: Outline = {
      kind: 'twoRadius',
      length: 9,
      firstRadius: large,
      secondRadius: small,
      sides: [straight, straight],
    };
    expect(outlineArea(outline)).toBeCloseTo(belt, 10);
  });

  it('a very large arc is all but the straight side', () => {
    const belt = outlineArea({ ...kidneyLike, sides: [straight, straight] });
    expect(outlineArea({ ...kidneyLike, sides: [inward(9000), straight] })).toBeCloseTo(belt, 2);
    expect(outlineArea({ ...kidneyLike, sides: [outward(9000), straight] })).toBeCloseTo(belt, 2);
  });

  it('an inward arc takes water away and an outward one adds some', () => {
    const belt = outlineArea({ ...kidneyLike, sides: [straight, straight] });
    expect(outlineArea({ ...kidneyLike, sides: [inward(4), straight] })).toBeLessThan(belt);
    expect(outlineArea({ ...kidneyLike, sides: [outward(6), straight] })).toBeGreaterThan(belt);
  });

  it('a two-radius outline closes smoothly: each piece starts where the last one ended', () => {
    const points = outlinePoints(kidneyLike, 400);
    for (const [index, [x, y]] of points.entries()) {
      const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
      expect(Math.hypot(nextX - x, nextY - y)).toBeLessThan(0.05);
    }
  });

  it('the area inside the drawn points is the area of the outline', () => {
    const outlines: readonly Outline[] = [
      { kind: 'circle', diameter: 6 },
      { kind: 'ellipse', length: 9, width: 5 },
      { kind: 'stadium', length: 9, width: 4 },
      kidneyLike,
    ];
    for (const outline of outlines) {
      const drawn = volumeByChords(outline, () => 1);
      expect(Math.abs(drawn / outlineArea(outline) - 1)).toBeLessThan(1e-4);
    }
  });

  it('an outline that cannot close is refused with the reason', () => {
    expect(() => outlineArea({ ...kidneyLike, length: 5 })).toThrow(
      'length is 5; it must be more than the greater diameter of 5.2 m.',
    );
    expect(() =>
      outlineArea({ ...kidneyLike, length: 12, sides: [inward(1.5), straight] }),
    ).toThrow('sides[0].radius is 1.5; it must be greater: the arc would reach the middle.');
    expect(() => outlineArea({ ...kidneyLike, sides: [straight, outward(4.5)] })).toThrow(
      'sides[1].radius is 4.5; it must be more than half the length, 4.5 m.',
    );
    expect(() => outlineArea({ kind: 'stadium', length: 4, width: 5 })).toThrow(
      'width is 5; it must be the length of 4 m or less.',
    );
  });
});

describe('floors', () => {
  // Plane geometry: a sloped floor under a symmetric outline has the mean of its two depths.
  it('a sloped floor under a symmetric outline has the mean depth of its ends', () => {
    const outlines: readonly Outline[] = [
      { kind: 'rectangle', length: 8, width: 4 },
      { kind: 'circle', diameter: 6 },
      { kind: 'ellipse', length: 9, width: 5 },
      { kind: 'stadium', length: 9, width: 4 },
    ];
    for (const outline of outlines)
      expect(meanDepth({ outline, depth: sloped })).toBeCloseTo(1.7, 12);
  });

  // Plane geometry: the water over a triangle has the depth at its centroid.
  it('a sloped floor under a triangle has the depth of its centroid', () => {
    const vertices: readonly Vertex[] = [
      [0, 0],
      [6, 0],
      [6, 4],
    ];
    expect(meanDepth({ outline: { kind: 'polygon', vertices }, depth: sloped })).toBeCloseTo(
      1 + (1.4 * 4) / 6,
      12,
    );
  });

  it('stations in line with a sloped floor change nothing', () => {
    const stations = [0, 2, 5, 9].map((distance) => ({
      distance,
      depth: 1 + (1.4 * distance) / 9,
    }));
    const outlines: readonly Outline[] = [
      { kind: 'ellipse', length: 9, width: 5 },
      kidneyLike,
      {
        kind: 'polygon',
        vertices: [
          [3, 0],
          [9, 1],
          [12, 5],
          [4, 6],
        ],
      },
    ];
    for (const outline of outlines) {
      const exact = poolVolume({ outline, depth: sloped });
      expect(poolVolume({ outline, depth: { kind: 'stations', stations } })).toBeCloseTo(exact, 10);
    }
  });

  it('stations under any outline agree with chords added up', () => {
    const stations = [
      { distance: 0, depth: 0.9 },
      { distance: 3, depth: 1.2 },
      { distance: 6, depth: 2.8 },
      { distance: 9, depth: 2.8 },
    ];
    const depthAt = (x: number) => {
      const index = stations.findLastIndex(({ distance }) => distance <= x);
      const [start, end] = [stations[index], stations[index + 1]];
      if (!start || !end) return 0;
      const share = (x - start.distance) / (end.distance - start.distance);
      return start.depth + share * (end.depth - start.depth);
    };
    const outlines: readonly Outline[] = [
      { kind: 'ellipse', length: 9, width: 5 },
      { kind: 'stadium', length: 9, width: 4 },
      kidneyLike,
      {
        kind: 'polygon',
        vertices: [
          [0, 0],
          [5, 1],
          [9, 0],
          [8, 5],
          [4, 3],
          [1, 6],
        ],
      },
    ];
    for (const outline of outlines) {
      const exact = poolVolume({ outline, depth: { kind: 'stations', stations } });
      expect(Math.abs(volumeByChords(outline, depthAt) / exact - 1)).toBeLessThan(1e-4);
    }
  });

  it('two stations at one distance make a step', () => {
    const stations = [
      { distance: 0, depth: 1 },
      { distance: 4, depth: 1 },
      { distance: 4, depth: 2 },
      { distance: 8, depth: 2 },
    ];
    expect(depthProfileVolume(4, stations)).toBeCloseTo(4 * 4 * 1 + 4 * 4 * 2, 12);
  });

  it('stations out of order, or short of the length, are refused', () => {
    const depth = (distances: readonly number[]): Depth => ({
      kind: 'stations',
      stations: distances.map((distance) => ({ distance, depth: 1 })),
    });
    const outline: Outline = { kind: 'rectangle', length: 8, width: 4 };
    expect(() => poolVolume({ outline, depth: depth([0, 5, 3, 8]) })).toThrow(CoreError);
    expect(() => poolVolume({ outline, depth: depth([0, 7]) })).toThrow(
      'stations[1].distance is 7; it must be the length of the outline, 8 m.',
    );
    expect(() => poolVolume({ outline, depth: depth([1, 8]) })).toThrow(CoreError);
  });
});

describe('wild inputs', () => {
  it('give a finite volume of 0 or more, or a CoreError', () => {
    const wild = fc.oneof(fc.double(), fc.double({ min: 0, max: 20, noNaN: true }));
    const side = fc.oneof(fc.constant(straight), wild.map(inward), wild.map(outward));
    const outline: fc.Arbitrary<Outline> = fc.oneof(
      fc.record({ kind: fc.constant('circle' as const), diameter: wild }),
      fc.record({
        kind: fc.constantFrom('rectangle' as const, 'ellipse' as const, 'stadium' as const),
        length: wild,
        width: wild,
      }),
      fc.record({
        kind: fc.constant('twoRadius' as const),
        length: wild,
        firstRadius: wild,
        secondRadius: wild,
        sides: fc.tuple(side, side),
      }),
      fc.record({
        kind: fc.constant('polygon' as const),
        vertices: fc.array(fc.tuple(wild, wild), { maxLength: 6 }),
      }),
    );
    const depth: fc.Arbitrary<Depth> = fc.oneof(
      fc.record({ kind: fc.constant('uniform' as const), depth: wild }),
      fc.record({ kind: fc.constant('sloped' as const), first: wild, second: wild }),
    );
    fc.assert(
      fc.property(outline, depth, (above, floor) => {
        try {
          const volume = poolVolume({ outline: above, depth: floor });
          expect(Number.isFinite(volume) && volume >= 0).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(CoreError);
        }
      }),
      { numRuns: 2000 },
    );
  });

  // Geometry: a floor that drops from one station to the next at no distance is a step.
  it('takes stations all but on one another as a step in the floor', () => {
    for (const near of [5e-324, 1e-12]) {
      const stations = [
        { distance: 0, depth: 1 },
        { distance: near, depth: 1.5 },
        { distance: 10, depth: 1.5 },
      ];
      expect(depthProfileVolume(4, stations)).toBeCloseTo(4 * 10 * 1.5, 8);
      const outline = { kind: 'circle', diameter: 10 } as const;
      expect(poolVolume({ outline, depth: { kind: 'stations', stations } })).toBeCloseTo(
        Math.PI * 25 * 1.5,
        8,
      );
    }
  });
});
