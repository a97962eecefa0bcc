import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { polygonArea } from '#core/pool/polygon.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import type { Pool } from '#pad/document/schema.ts';
import {
  type Corner,
  cornerAt,
  cornersOf,
  crossingSentence,
  frameAround,
  gridStep,
  movedByKey,
  outlineAs,
  planShape,
  planStep,
  snapped,
  spotOf,
  withCornerOn,
} from '#padPage/form/outline.ts';
import { metric, us } from '#units/choice.ts';

const square: readonly Corner[] = [
  { x: 0, y: 0 },
  { x: 4, y: 0 },
  { x: 4, y: 4 },
  { x: 0, y: 4 },
];
const bowTie: readonly Corner[] = [square[0], square[2], square[1], square[3]].flatMap(
  (corner) => corner ?? [],
);

const corner = fc.record({
  x: fc.double({ min: -500, max: 500, noNaN: true }),
  y: fc.double({ min: -500, max: 500, noNaN: true }),
});

describe('the plan', () => {
  it('holds every corner, whatever the outline', () => {
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 20 }), (corners) => {
        const frame = frameAround(corners);
        expect(frame.width / frame.height).toBeCloseTo(planShape, 9);
        for (const each of corners) {
          const { x, y } = spotOf(each, frame);
          expect(Math.min(x, y)).toBeGreaterThan(0);
          expect(Math.max(x, y)).toBeLessThan(1);
        }
      }),
    );
  });

  it('gives back the corner of a spot, north up', () => {
    const frame = frameAround(square);
    fc.assert(
      fc.property(corner, (each) => {
        const back = cornerAt(spotOf(each, frame), frame);
        expect(back.x).toBeCloseTo(each.x, 9);
        expect(back.y).toBeCloseTo(each.y, 9);
      }),
    );
    expect(spotOf({ x: 2, y: 4 }, frame).y).toBeLessThan(spotOf({ x: 2, y: 0 }, frame).y);
  });

  it('has squares of a round size in the reader’s unit', () => {
    // A frame 5.2 m high: 1 m squares; in feet 17 ft high: 5 ft squares, 1.524 m.
    expect(gridStep(metric, frameAround(square))).toBe(1);
    expect(gridStep(us, frameAround(square))).toBeCloseTo(1.524, 12);
  });
});

describe('a corner', () => {
  it('moves one step by arrow, five with Shift, and not by other keys', () => {
    const from = { x: 1, y: 1 };
    expect(movedByKey(from, 'ArrowUp', 0.1, false)).toEqual({ x: 1, y: 1.1 });
    expect(movedByKey(from, 'ArrowLeft', 0.1, true)).toEqual({ x: 0.5, y: 1 });
    expect(movedByKey(from, 'Enter', 0.1, false)).toBeNull();
  });

  it('snaps to half feet or tenths of a metre and stays within what a pad holds', () => {
    expect(planStep(us)).toBeCloseTo(0.1524, 12);
    expect(snapped({ x: 1.04, y: 9999 }, planStep(metric)).x).toBeCloseTo(1, 12);
    expect(snapped({ x: 1.04, y: 9999 }, planStep(metric)).y).toBe(500);
    expect(movedByKey({ x: 500, y: 0 }, 'ArrowRight', 0.1, false)?.x).toBe(500);
  });

  it('added on a side stands halfway and leaves the area as it was', () => {
    const more = withCornerOn(square, 3);
    expect(more).toHaveLength(5);
    expect(more[4]).toEqual({ x: 0, y: 2 });
    // A square of 4 m: 16 m², by geometry.
    expect(polygonArea(more.map(({ x, y }) => [x, y] as const))).toBeCloseTo(16, 12);
  });
});

describe('an outline that crosses itself', () => {
  it('is told with the sides at fault and what to do', () => {
    expect(crossingSentence(square)).toBeUndefined();
    expect(crossingSentence(bowTie)).toBe(
      'The side from corner 1 to 2 meets the side from corner 3 to 4. ' +
        'Move a corner so that the sides meet only at corners.',
    );
  });
});

describe('another shape', () => {
  it('starts from the sizes of the one before', () => {
    const { pool } = ownerPad;
    if (pool.kind !== 'shape' || pool.outline.kind !== 'rectangle') throw new Error('wrong kind');
    const { length, width } = pool.outline;
    expect(outlineAs('ellipse', pool)).toEqual({ kind: 'ellipse', length, width });
    expect(outlineAs('circle', pool)).toEqual({ kind: 'circle', diameter: length });
  });

  it('to be drawn starts from the corners of the one before', () => {
    const corners = cornersOf(ownerPad.pool);
    expect(corners).toHaveLength(4);
    // 32 ft × 16 ft.
    const area = polygonArea(corners.map(({ x, y }) => [x, y] as const));
    expect(area).toBeCloseTo(512 * 0.3048 ** 2, 9);
  });

  it('to be drawn starts from a plain rectangle when nothing is known', () => {
    const unknown: Pool = { kind: 'known', volume: null };
    expect(outlineAs('polygon', unknown)).toMatchObject({ vertices: [{ x: 0, y: 0 }, {}, {}, {}] });
  });

  it('from a round one keeps near its area', () => {
    const round: Pool = {
      kind: 'shape',
      outline: { kind: 'circle', diameter: 6 },
      depth: { kind: 'uniform', depth: 1 },
    };
    const area = polygonArea(cornersOf(round).map(({ x, y }) => [x, y] as const));
    // Regular 12-gon in a circle of radius 3: 12/2 × 9 × sin 30° = 27 m².
    expect(area).toBeCloseTo(27, 9);
  });
});
