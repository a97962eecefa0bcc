import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { systemHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { operatingPoint, ratioForFlow, speedSweep } from '#core/pump/operatingPoint.ts';
import { pumpFromPowerLaw, pumpHead } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { elbows, equipment, pipe } from '../../oracle/circuits.ts';
import { anyCircuit } from '../hydraulics/anyCircuit.ts';

const curve = pumpFromPowerLaw({ a: 25.5, b: 4.2e5, c: 2.1 }, 0.0068);

function loop(discharge: readonly CircuitPart[], staticHead = 0): Circuit {
  return { suction: [], discharge, staticHead, water: water(25) };
}

const anyRatio = fc.double({ min: 0.1, max: 1.5, noNaN: true });

describe('the operating point', () => {
  test('gives the head that pump and circuit both have there', () => {
    fc.assert(
      fc.property(anyCircuit, anyRatio, (circuit, ratio) => {
        const point = operatingPoint(curve, circuit, ratio);
        if (point.kind === 'noFlow') {
          expect(point.shutoffHead).toBeLessThanOrEqual(systemHead(circuit, 0) + 1e-12);
          return;
        }
        // Definition of the operating point; energy balance around the loop.
        const scale = Math.max(point.head, 0.01);
        expect(Math.abs(pumpHead(curve, point.flow, ratio) - point.head)).toBeLessThan(
          1e-9 * scale,
        );
        expect(Math.abs(systemHead(circuit, point.flow) - point.head)).toBeLessThan(1e-7 * scale);
      }),
      { numRuns: 300 },
    );
  });

  test('moves more water at a higher speed', () => {
    fc.assert(
      fc.property(
        anyCircuit,
        anyRatio,
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        (circuit, ratio, more) => {
          const slow = operatingPoint(curve, circuit, ratio);
          const fast = operatingPoint(curve, circuit, ratio + more);
          if (slow.kind === 'flowing') {
            expect(fast.kind === 'flowing' && fast.flow > slow.flow).toBe(true);
          }
        },
      ),
    );
  });

  test('flow falls when the filter loads', () => {
    const at = (factor: number) =>
      operatingPoint(curve, loop([pipe('sch40-2', 100), equipment(4, 60, factor)]), 1);
    const [clean, dirty] = [at(1), at(5)];
    if (clean.kind !== 'flowing' || dirty.kind !== 'flowing') throw new Error('no flow');
    expect(dirty.flow).toBeLessThan(clean.flow);
  });

  test('with quadratic losses and no lift the affinity laws are exact', () => {
    const circuit = loop([elbows('sch40-2', 12), equipment(12, 60)]);
    const full = operatingPoint(curve, circuit, 1);
    fc.assert(
      fc.property(anyRatio, (ratio) => {
        const point = operatingPoint(curve, circuit, ratio);
        if (point.kind !== 'flowing' || full.kind !== 'flowing') throw new Error('no flow');
        // ANSI/HI 14.3: flow as speed, head as its square, along a parabola through the origin.
        expect(point.flow / (ratio * full.flow)).toBeCloseTo(1, 9);
        expect(point.head / (ratio ** 2 * full.head)).toBeCloseTo(1, 9);
      }),
    );
  });

  test('in smooth pipe it falls a little more than the speed, since friction goes as about flow^1.8', () => {
    const circuit = loop([pipe('sch40-2', 300)]);
    const [full, half] = [1, 0.5].map((ratio) => operatingPoint(curve, circuit, ratio));
    if (full?.kind !== 'flowing' || half?.kind !== 'flowing') throw new Error('no flow');
    // Blasius: f as Re^-1/4, so the loss goes as flow^1.75 and the factor rises as the flow falls.
    expect(half.flow / full.flow).toBeLessThan(0.5);
    expect(half.flow / full.flow).toBeGreaterThan(0.45);
  });

  test('below the lift no water moves, and the least speed is said', () => {
    const circuit = loop([pipe('sch40-2', 100)], 9);
    const point = operatingPoint(curve, circuit, 0.5);
    // Reference affinity-laws.json, "least speed ratio that moves water": sqrt(z / shut-off head).
    expect(point).toEqual({
      kind: 'noFlow',
      ratio: 0.5,
      reason: 'belowLift',
      shutoffHead: 25.5 / 4,
      staticHead: 9,
      leastRatio: Math.sqrt(9 / 25.5),
    });
    expect(operatingPoint(curve, circuit, 0).kind).toBe('noFlow');
    expect(operatingPoint(curve, loop([pipe('sch40-2', 1)]), 0)).toMatchObject({
      reason: 'stopped',
    });
    const just = Math.sqrt(9 / 25.5) * 1.0001;
    expect(operatingPoint(curve, circuit, just).kind).toBe('flowing');
  });

  test('past the end of the data it is marked as extrapolated', () => {
    const open = operatingPoint(curve, loop([equipment(0.1, 60)]), 1);
    const tight = operatingPoint(curve, loop([equipment(60, 60)]), 1);
    expect(open).toMatchObject({ kind: 'flowing', extrapolated: true });
    expect(tight).toMatchObject({ kind: 'flowing', extrapolated: false });
  });

  test('a sweep finds the same points as one at a time, in any order', () => {
    fc.assert(
      fc.property(
        anyCircuit,
        fc.array(anyRatio, { minLength: 1, maxLength: 12 }),
        (circuit, ratios) => {
          const swept = speedSweep(curve, circuit, ratios);
          ratios.forEach((ratio, index) => {
            const alone = operatingPoint(curve, circuit, ratio);
            const point = swept[index];
            expect(point?.kind).toBe(alone.kind);
            if (point?.kind === 'flowing' && alone.kind === 'flowing') {
              expect(point.flow / alone.flow).toBeCloseTo(1, 8);
            }
          });
        },
      ),
    );
  });
});

describe('the speed for a flow', () => {
  test('gives that flow back', () => {
    fc.assert(
      fc.property(anyCircuit, fc.double({ min: 0.2, max: 1, noNaN: true }), (circuit, ratio) => {
        const point = operatingPoint(curve, circuit, ratio);
        fc.pre(point.kind === 'flowing');
        if (point.kind !== 'flowing') return;
        const found = ratioForFlow(curve, circuit, point.flow);
        expect(found.kind).toBe('found');
        if (found.kind === 'found') expect(found.ratio).toBeCloseTo(ratio, 7);
      }),
    );
  });

  test('comes with the head that the circuit takes there', () => {
    const circuit = loop([pipe('sch40-2', 100), equipment(4, 60)], 1);
    const found = ratioForFlow(curve, circuit, 0.003);
    expect(found.kind === 'found' && found.head).toBeCloseTo(systemHead(circuit, 0.003), 12);
    // At the slowest allowed the head is that of the pump there, or none where nothing moves.
    const slowest = ratioForFlow(curve, circuit, 1e-4, { min: 0.5 });
    const point = operatingPoint(curve, circuit, 0.5);
    expect(slowest).toEqual({
      kind: 'found',
      ratio: 0.5,
      head: point.kind === 'flowing' ? point.head : Number.NaN,
    });
  });

  test('just at the fastest allowed it is found, and never above', () => {
    const circuit = loop([pipe('sch40-2', 100)]);
    for (const max of [0.6, 1, 1.4]) {
      const top = operatingPoint(curve, circuit, max);
      if (top.kind !== 'flowing') throw new Error('no flow');
      const found = ratioForFlow(curve, circuit, top.flow, { max });
      expect(found.kind).toBe('found');
      expect(found.kind === 'found' && found.ratio <= max).toBe(true);
      expect(ratioForFlow(curve, circuit, 1.0001 * top.flow, { max }).kind).toBe('outOfReach');
    }
  });

  test('out of reach, the speed that it would take is the one that gives it', () => {
    const circuit = loop([pipe('sch40-2', 100), equipment(4, 60)], 2);
    const far = ratioForFlow(curve, circuit, 0.012);
    if (far.kind !== 'outOfReach' || far.ratioNeeded === undefined) throw new Error('within ten');
    const there = operatingPoint(curve, circuit, far.ratioNeeded);
    expect(there.kind === 'flowing' && there.flow / 0.012).toBeCloseTo(1, 8);
    expect(ratioForFlow(curve, circuit, 5)).toMatchObject({ ratioNeeded: undefined });
  });

  test('a range or a flow that is none is refused by name', () => {
    const circuit = loop([pipe('sch40-2', 100)]);
    expect(() => ratioForFlow(curve, circuit, 0.001, { min: 0 })).toThrow('least ratio is 0');
    expect(() => ratioForFlow(curve, circuit, 0.001, { max: 11 })).toThrow('greatest ratio is 11');
    expect(() => ratioForFlow(curve, circuit, 11)).toThrow('flow is 11');
    expect(() => speedSweep(curve, circuit, [0.5, -1])).toThrow('speed ratio is -1');
  });

  test('is out of reach beyond the top speed, and says how far the pump gets', () => {
    const circuit = loop([pipe('sch40-2', 100)]);
    const top = operatingPoint(curve, circuit, 1);
    if (top.kind !== 'flowing') throw new Error('no flow');
    const far = ratioForFlow(curve, circuit, 2 * top.flow);
    expect(far).toMatchObject({ kind: 'outOfReach', greatestFlow: top.flow });
    if (far.kind === 'outOfReach') expect(far.ratioNeeded).toBeGreaterThan(1.8);
    expect(ratioForFlow(curve, loop([pipe('sch40-2', 1)], 500), 0.001)).toMatchObject({
      kind: 'outOfReach',
      greatestFlow: 0,
    });
    expect(ratioForFlow(curve, loop([pipe('sch40-2', 1)], 900), 9).kind).toBe('outOfReach');
  });

  test('is the slowest allowed where that gives enough already', () => {
    const circuit = loop([pipe('sch40-2', 100)]);
    expect(ratioForFlow(curve, circuit, 1e-4, { min: 0.3, max: 1 })).toMatchObject({ ratio: 0.3 });
    expect(
      ratioForFlow(curve, loop([pipe('sch40-2', 1)], 1), 1e-5, { min: 0.05, max: 1 }),
    ).toMatchObject({ kind: 'found' });
  });
});
