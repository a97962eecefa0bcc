import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/errors.ts';
import { crossingEdges, polygonArea, type Vertex } from '#core/polygon.ts';
import type { Outline } from '#core/poolOutline.ts';
import { outlineArea } from '#core/poolVolume.ts';

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
});
