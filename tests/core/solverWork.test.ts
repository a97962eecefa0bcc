import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Circuit } from '#core/circuit.ts';
import { operatingPoint, speedSweep } from '#core/operatingPoint.ts';
import { type PumpCurve, pumpFromPowerLaw } from '#core/pump.ts';
import { water } from '#core/water.ts';
import { branched, equipment, series } from '../oracle/circuits.ts';
import { anyCircuit } from './anyCircuit.ts';

const curve = pumpFromPowerLaw({ a: 25.5, b: 4.2e5, c: 2.1 }, 0.0068);

/** The same curve, and how often it was asked for a head. */
function counted(): { readonly curve: PumpCurve; readonly asked: () => number } {
  let count = 0;
  const head = (flow: number) => {
    count += 1;
    return curve.head(flow);
  };
  return { curve: { ...curve, head }, asked: () => count };
}

const ratios = Array.from({ length: 64 }, (_, at) => 0.3 + (0.7 * at) / 63);

describe('how much work an operating point is', () => {
  // One step at once for flow, friction and branches, from the last speed by affinity, closes in on
  // the meeting in a few heads where halving takes tens; the last head asked is the answer's own.
  test.each([
    ['a plain circuit', series, 4],
    ['a branched circuit', branched, 4],
  ] as const)('%s swept over its speeds takes a few heads each', (_, circuit, most) => {
    const { curve: one, asked } = counted();
    speedSweep(one, circuit, ratios);
    expect(asked() / ratios.length).toBeLessThan(most);
  });

  test('a single speed takes few more', () => {
    const { curve: one, asked } = counted();
    for (const ratio of ratios) operatingPoint(one, series, ratio);
    expect(asked() / ratios.length).toBeLessThan(5.5);
  });

  test('no circuit takes more than a bracket would', () => {
    fc.assert(
      fc.property(anyCircuit, fc.double({ min: 0.1, max: 1.5, noNaN: true }), (circuit, ratio) => {
        const { curve: one, asked } = counted();
        operatingPoint(one, circuit, ratio);
        // Twelve quick steps, then halving to a part in a thousand million: about 30, and a few to
        // come above the meeting.
        expect(asked()).toBeLessThan(60);
      }),
    );
  });
});

describe('an operating point', () => {
  const wide: Circuit = {
    suction: [],
    discharge: [equipment(0.4, 60)],
    staticHead: 0,
    water: water(25),
  };

  test('does not need the slope of the curve: without one it is found by the bracket', () => {
    const bare: PumpCurve = { ...curve, slope: () => Number.NaN };
    for (const circuit of [series, branched, wide]) {
      for (const ratio of [0.3, 0.7, 1]) {
        const [right, found] = [curve, bare].map((one) => operatingPoint(one, circuit, ratio));
        if (right?.kind !== 'flowing' || found?.kind !== 'flowing') throw new Error('no flow');
        expect(found.flow / right.flow).toBeCloseTo(1, 8);
      }
    }
  });
});
