import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { crossingEdges, polygonArea, type Vertex } from '#core/pool/polygon.ts';
import type { Outline } from '#core/pool/poolOutline.ts';
import { outlineArea } from '#core/pool/poolVolume.ts';

describe('polygons', () => {
  // Plane geometry: Gauss's area formula on a 3-4-5 triangle.
  it('a triangle of 3, 4 and 5 has area 6, walked either way', () => {
    expect(
      polygonArea([
        [0, 0],
        [4, 0],
        [4, 3],
      ]),
    ).toBe(6);
    expect(
      polygonArea([
        [4, 3],
        [4, 0],
        [0, 0],
      ]),
    ).toBe(6);
  });

  it('moving or turning round an outline keeps its area', () => {
    const radii = fc.array(fc.double({ min: 1, max: 9, noNaN: true }), {
      minLength: 3,
      maxLength: 12,
    });
    const shift = fc.double({ min: -900, max: 900, noNaN: true });
    fc.assert(
      fc.property(radii, shift, shift, (lengths, dx, dy) => {
        const star = lengths.map((radius, index): Vertex => {
          const angle = (2 * Math.PI * index) / lengths.length;
          return [radius * Math.cos(angle), radius * Math.sin(angle)];
        });
        const moved = star.map(([x, y]): Vertex => [x + dx, y + dy]);
        const area = polygonArea(star);
        expect(Math.abs(polygonArea(moved) / area - 1)).toBeLessThan(1e-9);
        expect(Math.abs(polygonArea(star.toReversed()) / area - 1)).toBeLessThan(1e-12);
        const outline: Outline = { kind: 'polygon', vertices: moved };
        expect(Math.abs(outlineArea(outline) / area - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it('an outline that crosses itself is refused and its edges are named', () => {
    const bow: readonly Vertex[] = [
      [0, 0],
      [4, 4],
      [4, 0],
      [0, 4],
    ];
    expect(crossingEdges(bow)).toEqual([{ firstEdge: 0, secondEdge: 2 }]);
    expect(() => polygonArea(bow)).toThrow(
      'vertices is an outline in which edge 1 (corner 1 to 2) meets edge 3 (corner 3 to 4); it must be an outline whose edges meet only at corners.',
    );
  });

  it('an outline that touches itself, runs back or repeats a corner is refused', () => {
    const touching: readonly Vertex[] = [
      [0, 0],
      [6, 0],
      [6, 4],
      [3, 0],
      [0, 4],
    ];
    const spike: readonly Vertex[] = [
      [0, 0],
      [6, 0],
      [3, 0],
      [3, 4],
    ];
    const repeated: readonly Vertex[] = [
      [0, 0],
      [6, 0],
      [6, 0],
      [3, 4],
    ];
    for (const vertices of [touching, spike, repeated]) {
      expect(() => polygonArea(vertices)).toThrow(CoreError);
    }
  });

  it('a corner in the middle of a straight edge is allowed', () => {
    expect(
      polygonArea([
        [0, 0],
        [3, 0],
        [6, 0],
        [6, 4],
        [0, 4],
      ]),
    ).toBe(24);
  });

  it('fewer than three corners, or all in line, are no outline', () => {
    expect(() =>
      polygonArea([
        [0, 0],
        [1, 1],
      ]),
    ).toThrow('3 corners or more');
    expect(() =>
      polygonArea([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toThrow(CoreError);
  });

  it('a corner further off than ten kilometres, or nowhere, is refused by its place', () => {
    const with2 = (x: number, y: number): readonly Vertex[] => [
      [0, 0],
      [6, 0],
      [x, y],
    ];
    expect(() => polygonArea(with2(10_001, 4))).toThrow('vertices[2] x is 10001');
    expect(() => polygonArea(with2(6, -10_001))).toThrow('vertices[2] y is -10001');
    expect(() => polygonArea(with2(Number.NaN, 4))).toThrow('vertices[2] x is NaN');
    expect(polygonArea(with2(-1e4, -1e4))).toBe(3e4);
  });

  it('an outline thinner than a millimetre is refused, however short its edges', () => {
    for (const width of [5e-324, 1e-9, 9e-4]) {
      const sliver: readonly Vertex[] = [
        [0, 0],
        [width, 0],
        [0, 1.5],
      ];
      expect(() => polygonArea(sliver)).toThrow('at least 1 mm long and wide');
      expect(() => polygonArea(sliver.map(([x, y]) => [y, x]))).toThrow('1 mm');
    }
  });

  it('a millimetre is wide enough, and far from the origin the area keeps its digits', () => {
    expect(
      polygonArea([
        [0, 0],
        [1e-3, 0],
        [0, 2],
      ]),
    ).toBe(1e-3);
    // Plane geometry: half of leg times leg. Steps of 2^-36 m, so that the legs are exact doubles.
    const step = 2 ** -36;
    const whole = fc.integer({ min: 2 ** 27, max: 2 ** 31 - 1 });
    fc.assert(
      fc.property(whole, whole, whole, (across, up, shift) => {
        const [x, y] = [9000 + shift * step, -7000 - shift * step];
        const area = polygonArea([
          [x, y],
          [x + across * step, y],
          [x, y + up * step],
        ]);
        expect(area / ((across * up * step ** 2) / 2)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('one whose area is lost in rounding is refused', () => {
    // Corners 2 and 4 lie a last place of a double apart, on either side of the line from 1 to 3.
    const lens: readonly Vertex[] = [
      [0, 0],
      [1.4314985333019563, 0.43194497884435357],
      [3.3580120765541626, 1.0132573814243033],
      [1.431498533301956, 0.4319449788443534],
    ];
    expect(crossingEdges(lens)).toEqual([]);
    expect(() => polygonArea(lens)).toThrow('vertices is without area');
  });
});

/** The pairs of edges as the outline is told from another corner on. */
const turnedBy = (corners: number, count: number, pairs: ReturnType<typeof crossingEdges>) =>
  pairs.map(({ firstEdge, secondEdge }) =>
    [(firstEdge + corners) % count, (secondEdge + corners) % count].sort(),
  );

describe('edges that meet where they should not', () => {
  // Plane geometry, by hand.
  it('are all named: a spike, a corner on an edge, a corner twice, three corners in line', () => {
    const pairs = (vertices: readonly Vertex[]) =>
      crossingEdges(vertices).map(({ firstEdge, secondEdge }) => [firstEdge, secondEdge]);
    const spike: readonly Vertex[] = [
      [0, 0],
      [6, 0],
      [3, 0],
      [3, 4],
    ];
    // The second edge runs back over the first, and the third starts on the first.
    expect(pairs(spike)).toEqual([
      [0, 1],
      [0, 2],
    ]);
    const cornerOnEdge: readonly Vertex[] = [
      [0, 0],
      [6, 0],
      [6, 4],
      [3, 0],
      [0, 4],
    ];
    expect(pairs(cornerOnEdge)).toEqual([
      [0, 2],
      [0, 3],
    ]);
    const twice: readonly Vertex[] = [
      [0, 0],
      [6, 0],
      [6, 0],
      [3, 4],
    ];
    expect(pairs(twice)).toContainEqual([1, 2]);
    const inLine: readonly Vertex[] = [
      [0, 0],
      [1, 1],
      [2, 2],
    ];
    expect(pairs(inLine)).toEqual([
      [0, 2],
      [1, 2],
    ]);
  });

  it('two edges in one line meet only where they lie side by side', () => {
    // A rectangle with a notch from below; where the notch has no width, its sides lie on each other.
    const notched = (left: number): readonly Vertex[] => [
      [0, 0],
      [2, 0],
      [2, 1],
      [left, 1],
      [left, 0],
      [5, 0],
      [5, 3],
      [0, 3],
    ];
    expect(crossingEdges(notched(3))).toEqual([]);
    expect(crossingEdges(notched(2))).toContainEqual({ firstEdge: 1, secondEdge: 3 });
    const upright = notched(3).map(([x, y]): Vertex => [y, x]);
    expect(crossingEdges(upright)).toEqual([]);
  });

  it('a corner turns back or goes on, whichever way the outline lies and from wherever it is told', () => {
    const whole = fc.integer({ min: -9, max: 9 });
    const length = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(
        fc.tuple(whole, whole),
        fc.tuple(whole, whole).filter(([x, y]) => x !== 0 || y !== 0),
        length,
        whole,
        fc.nat(3),
        ([x, y], [dx, dy], far, on, told) => {
          // From the first corner along a direction, on or back along it, then off to a side.
          const along = (steps: number): Vertex => [x + steps * dx, y + steps * dy];
          const aside: Vertex = [x - 30 * dy + dx, y + 30 * dx + dy];
          const vertices = [along(0), along(far), along(far + on), aside];
          const from = (corner: number) => vertices[(corner + told) % 4] as Vertex;
          const pairs = turnedBy(told, 4, crossingEdges([from(0), from(1), from(2), from(3)]));
          const meets = pairs.some(([one, other]) => one === 0 && other === 1);
          expect(meets).toBe(on <= 0);
          if (on > 0) expect(pairs).toEqual([]);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('two edges cross when each has the ends of the other on both sides', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }));
    fc.assert(
      fc.property(place, place, place, place, (a, b, c, d) => {
        const crossed = crossingEdges([a, b, c, d]).some(
          ({ firstEdge, secondEdge }) => firstEdge === 0 && secondEdge === 2,
        );
        expect(crossed).toBe(shareAPoint(a, b, c, d));
      }),
      { numRuns: 2000 },
    );
  });
});

/** Whether a-b and c-d share a point, by Cramer's rule for where along each, in whole numbers. */
function shareAPoint(a: Vertex, b: Vertex, c: Vertex, d: Vertex): boolean {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const [wx, wy] = [c[0] - a[0], c[1] - a[1]];
  const whole = ux * vy - uy * vx;
  const [s, t] = [(wx * vy - wy * vx) / whole, (wx * uy - wy * ux) / whole];
  if (whole !== 0) return s >= 0 && s <= 1 && t >= 0 && t <= 1;
  // Side by side, or one of no length: some end of one lies on the other.
  return onEdge(a, c, d) || onEdge(b, c, d) || onEdge(c, a, b) || onEdge(d, a, b);
}

/** A point lies on an edge when its ways to both ends add up to no more than the edge is long. */
function onEdge(point: Vertex, from: Vertex, to: Vertex): boolean {
  const way = (one: Vertex, other: Vertex) => Math.hypot(one[0] - other[0], one[1] - other[1]);
  return way(from, point) + way(point, to) - way(from, to) < 1e-9;
}
