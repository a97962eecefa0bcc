import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { systemHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import type { CompiledCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { headAndSlope } from '#core/hydraulics/compiledHead.ts';
import { operatingPoint, ratioForFlow, speedSweep } from '#core/pump/operatingPoint.ts';
import { type PumpCurve, pumpFromPowerLaw, pumpHead } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import {
  branch,
  branched,
  elbows,
  equipment,
  pipe,
  series,
  sideBySide,
} from '../../oracle/circuits.ts';
import { anyCircuit } from './anyCircuit.ts';
import { headsOfEachLine } from './headCount.ts';

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

/** Logarithms taken: one for each step towards a friction factor. */
function logarithms(work: () => void): number {
  const spy = vi.spyOn(Math, 'log').mockClear();
  work();
  return spy.mock.calls.length;
}

const loop = (...discharge: CircuitPart[]): Circuit => ({
  suction: [],
  discharge,
  staticHead: 0,
  water: water(25),
});

/** Losses that go as the square of the flow, and nothing else. */
const square = loop(elbows('sch40-2', 12), equipment(12, 60));

/** A way out that the pump never reaches. */
const shut = loop(
  pipe('sch40-2', 60),
  sideBySide(branch([pipe('sch40-2', 20)]), branch([pipe('sch40-1.5', 20)], 30)),
);

/** A branch that branches again. */
const nested = loop(
  pipe('sch40-2', 60),
  sideBySide(
    branch([
      pipe('sch40-1.5', 10),
      sideBySide(branch([pipe('sch40-1', 10)]), branch([pipe('sch40-1', 30)])),
    ]),
    branch([pipe('sch40-1.5', 30)]),
  ),
);

describe('how much work an operating point is', () => {
  afterEach(() => void vi.restoreAllMocks());

  // One step at once for flow, friction and branches, from the last speed by affinity, closes in on
  // the meeting in a few heads where halving takes tens; the last head asked is the answer's own.
  // Newton's error squares: from a neighbour off by 1e-3 the second step is the last.
  test.each([
    ['a plain circuit', series],
    ['a branched circuit', branched],
  ] as const)('%s swept over its speeds takes three heads each', (_, circuit) => {
    const { curve: one, asked } = counted();
    speedSweep(one, circuit, ratios);
    expect(asked() / ratios.length).toBeLessThan(3.1);
  });

  test('branches do not make a run of pipe more work: one factor a step, once more after a far one', () => {
    for (const [runs, circuit] of [
      [2, series],
      [7, branched],
      [5, nested],
    ] as const) {
      const count = logarithms(() => speedSweep(curve, circuit, ratios));
      expect(count / ratios.length / runs).toBeLessThan(3.2);
    }
  });

  test('where losses go as the square the neighbour is the answer: one step and its own head', () => {
    // ANSI/HI 14.3: flow as speed, head as its square, so the first guess by affinity is exact.
    const { curve: one, asked } = counted();
    const points = speedSweep(one, square, ratios);
    expect(asked() / ratios.length).toBeLessThan(2.1);
    // A speed that moves no water is no neighbour, and one that moves much is one all the same.
    const gapped = counted();
    speedSweep(gapped.curve, square, [0.5, 0, 3, 0, 0.1, 0.1]);
    expect(gapped.asked()).toBe(asked() - 2 * points.length + 8);
  });

  test('one speed alone is as much work as any other, by the same law', () => {
    const work = [0.05, 0.3, 1, 3, 9].map((ratio) => {
      const { curve: one, asked } = counted();
      operatingPoint(one, square, ratio);
      return asked();
    });
    expect(new Set(work).size).toBe(1);
    // Three steps from 30 % off: 0.3, 0.05, 1e-3, 1e-6, and the answer's own head.
    expect(work[0]).toBeLessThanOrEqual(5);
  });

  test('a single speed takes few more', () => {
    for (const circuit of [series, branched]) {
      const { curve: one, asked } = counted();
      for (const ratio of ratios) operatingPoint(one, circuit, ratio);
      expect(asked() / ratios.length).toBeLessThan(5.5);
    }
  });

  test('a branch that stays shut costs a few heads, no halving', () => {
    for (const ratio of ratios) {
      const { curve: one, asked } = counted();
      operatingPoint(one, shut, ratio);
      expect(asked()).toBeLessThan(12);
    }
  });

  test('no circuit takes more than a bracket would', () => {
    fc.assert(
      fc.property(anyCircuit, fc.double({ min: 0.1, max: 1.5, noNaN: true }), (circuit, ratio) => {
        const { curve: one, asked } = counted();
        operatingPoint(one, circuit, ratio);
        // Twelve quick steps, then halving to a part in a thousand million: about 30, and a few to
        // come above the meeting.
        expect(asked()).toBeLessThan(50);
      }),
    );
  });
});

/** Twelve ways side by side with the same pieces in all: in one group, or in groups within groups. */
function twelveWays(level: number, lift: number): Circuit {
  const ways = Array.from({ length: 12 }, (_, at) => branch([pipe('sch40-1.5', 6 + 4 * at)]));
  let nested = sideBySide(...ways.splice(level === 1 ? 0 : 10));
  while (ways.length > 0) {
    // What is left goes outwards, the last level with all of it.
    level -= 1;
    const beside = ways.splice(level <= 1 ? 0 : Math.max(0, ways.length - 2));
    nested = sideBySide(...beside, branch([pipe('sch40-2', 3), nested], lift));
  }
  return loop(pipe('sch40-2', 60), nested);
}

describe('how much work groups within groups are', () => {
  const split = (compiled: CompiledCircuit) => headAndSlope(compiled, 0.004, { head: 0, slope: 0 });
  const sweep = (compiled: CompiledCircuit) => speedSweep(curve, compiled, ratios);

  // Newton's method on all flows at once: a step takes one head of each piece, and how many steps
  // there are hangs on how far off the first guess is, not on how the pieces stand in one another.
  test.each([
    ['all returning below the surface', 0],
    ['the inner ones a hand higher', 0.1],
    ['the inner ones so high that the pump reaches them at its faster speeds alone', 2],
  ] as const)('%s: work goes with the pieces, not with the levels', (_, lift) => {
    for (const work of [split, sweep]) {
      const flat = headsOfEachLine(twelveWays(1, lift), work);
      for (const level of [2, 3, 4, 6]) {
        const deep = headsOfEachLine(twelveWays(level, lift), work);
        expect(deep / flat, `level ${level}`).toBeLessThan(1.5);
      }
    }
  });

  test('a split takes few heads of each piece, from even shares some ten, near the last one four', () => {
    for (const level of [1, 2, 3, 6]) {
      expect(headsOfEachLine(twelveWays(level, 0), split)).toBeLessThan(10);
      const again = headsOfEachLine(twelveWays(level, 0), (compiled) => {
        split(compiled);
        headAndSlope(compiled, 0.0041, { head: 0, slope: 0 });
      });
      expect(again - headsOfEachLine(twelveWays(level, 0), split)).toBeLessThanOrEqual(4);
    }
  });

  test('no circuit takes more than some tens of heads of each piece', () => {
    fc.assert(
      fc.property(anyCircuit, fc.double({ min: -5, max: -1.7, noNaN: true }), (circuit, power) => {
        const heads = headsOfEachLine(circuit, (compiled) =>
          headAndSlope(compiled, 10 ** power, { head: 0, slope: 0 }),
        );
        // Thirty whole steps, then steps halved: a way that only just opens is left by halves.
        expect(heads).toBeLessThan(60);
      }),
      { numRuns: 400 },
    );
  });
});

describe('an operating point', () => {
  const wide = loop(equipment(0.4, 60));

  test('does not need the slope of the curve: without one it is found by halving', () => {
    for (const circuit of [series, branched, wide, square, shut]) {
      for (const ratio of [0.3, 0.7, 1]) {
        const { curve: one, asked } = counted();
        const bare: PumpCurve = { ...one, slope: () => Number.NaN };
        const [right, found] = [curve, bare].map((each) => operatingPoint(each, circuit, ratio));
        if (right?.kind !== 'flowing' || found?.kind !== 'flowing') throw new Error('no flow');
        expect(Math.abs(found.flow / right.flow - 1)).toBeLessThan(1e-9);
        // 2^30 is a thousand million; one quick step, one head each side, and the answer's own.
        expect(asked()).toBeLessThanOrEqual(36);
      }
    }
  });

  test('is found though the curve is wrong about its own slope', () => {
    const wrong: PumpCurve = { ...curve, slope: (flow) => -3 * curve.slope(flow) };
    for (const circuit of [wide, series, square]) {
      for (const ratio of [0.3, 1]) {
        const [right, found] = [curve, wrong].map((each) => operatingPoint(each, circuit, ratio));
        if (right?.kind !== 'flowing' || found?.kind !== 'flowing') throw new Error('no flow');
        expect(Math.abs(found.flow / right.flow - 1)).toBeLessThan(1e-8);
      }
    }
  });

  test('is none at the very head that the lift asks for, nor at next to no speed', () => {
    // Hydrostatics: water moves once the head is more than the lift.
    const lifted = { ...wide, staticHead: curve.shutoffHead };
    expect(operatingPoint(curve, lifted, 1)).toMatchObject({ kind: 'noFlow', reason: 'belowLift' });
    expect(operatingPoint(curve, wide, 1e-7)).toMatchObject({ kind: 'noFlow', reason: 'stopped' });
  });

  test('is right to a part in a thousand million, by halving head against head', () => {
    fc.assert(
      fc.property(anyCircuit, fc.double({ min: 0.1, max: 1.5, noNaN: true }), (circuit, ratio) => {
        const point = operatingPoint(curve, circuit, ratio);
        fc.pre(point.kind === 'flowing');
        const flow = point.kind === 'flowing' ? point.flow : 0;
        // Definition of the operating point: below it the pump makes more than the circuit takes.
        const excess = (at: number) => pumpHead(curve, at, ratio) - systemHead(circuit, at);
        expect(excess(flow * (1 - 1e-9))).toBeGreaterThan(0);
        expect(excess(flow * (1 + 1e-9))).toBeLessThan(0);
      }),
      { numRuns: 300 },
    );
  });
});

describe('the speed for a flow', () => {
  test('is halved to a part in 1e14, no further', () => {
    const { curve: one, asked } = counted();
    const found = ratioForFlow(one, series, 0.003);
    // From 0 to 10 times: 2^50 is 1e15; one head more at the far end.
    expect(asked()).toBeLessThanOrEqual(55);
    expect(asked()).toBeGreaterThanOrEqual(46);
    expect(found.kind).toBe('found');
  });
});
