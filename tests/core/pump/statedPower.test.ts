import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { cubePower, wirePower } from '#core/pump/power.ts';
import { coversFlow, splitPower, statedPower } from '#core/pump/statedPower.ts';

// An invented sheet; the others are properties of the law and need no source.
const points = [
  { flow: 0.001, power: 700 },
  { flow: 0.003, power: 900 },
  { flow: 0.006, power: 1000 },
];
const sheet = statedPower(points);

describe('watts of a data sheet', () => {
  test('stand at their points, never pass a neighbour between them, and are kept past the ends', () => {
    for (const { flow, power } of points) expect(sheet.wire(flow)).toBeCloseTo(power, 9);
    let before = 700;
    for (let flow = 0.001; flow <= 0.006; flow += 0.0001) {
      const watts = sheet.wire(flow);
      expect(watts).toBeGreaterThanOrEqual(before - 1e-9);
      expect(watts).toBeLessThanOrEqual(1000 + 1e-9);
      before = watts;
    }
    expect(sheet.wire(0)).toBe(700);
    expect(sheet.wire(0.009)).toBe(1000);
  });

  test('at the reference speed they stand whatever fixed draw is split off', () => {
    const draw = fc.double({ min: 0, max: 3000, noNaN: true });
    const flow = fc.double({ min: 0, max: 0.01, noNaN: true });
    const scale = fc.double({ min: 0.5, max: 2, noNaN: true });
    fc.assert(
      fc.property(draw, flow, scale, (fixed, at, times) => {
        const power = splitPower(sheet, fixed, times);
        expect(wirePower(power, at, 1)).toBeCloseTo(times * sheet.wire(at), 8);
        expect(power.fixed).toBeLessThanOrEqual(Math.min(fixed, 700 * times));
      }),
    );
  });

  test('a flow outside the points is told, by the flow that corresponds at the reference speed', () => {
    const power = splitPower(sheet, 40);
    expect(coversFlow(power, 0.001, 1)).toBe(true);
    expect(coversFlow(power, 0.006, 1)).toBe(true);
    expect(coversFlow(power, 0.0062, 1)).toBe(false);
    expect(coversFlow(power, 0.0008, 1)).toBe(false);
    expect(coversFlow(power, 0.003, 0.5)).toBe(true);
    expect(coversFlow(power, 0.0031, 0.5)).toBe(false);
    expect(coversFlow(power, 0, 0)).toBe(true);
    expect(coversFlow(cubePower({ fixed: 40, cube: 1000 }), 1, 1)).toBe(true);
  });

  test('one point is no curve, and what is out of range is refused', () => {
    expect(() => statedPower(points.slice(0, 1))).toThrow(CoreError);
    expect(() => statedPower([{ flow: -1, power: 1 }, ...points])).toThrow(CoreError);
    expect(() => statedPower([...points, { flow: 0.007, power: -1 }])).toThrow(CoreError);
    expect(() => splitPower(sheet, -1)).toThrow(CoreError);
    expect(() => splitPower(sheet, 40, 0)).toThrow(CoreError);
  });
});
