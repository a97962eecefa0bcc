import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { branchFlows, systemHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import type { CompiledCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { headAndSlope } from '#core/hydraulics/compiledHead.ts';
import { darcyWeisbach } from '#core/hydraulics/friction.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { pumpFromPowerLaw } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { branch, branched, elbows, equipment, pipe, sideBySide } from '../../oracle/circuits.ts';
import { anyCircuit } from './anyCircuit.ts';

const { kinematicViscosity } = water(25);

function loop(...discharge: CircuitPart[]): Circuit {
  return { suction: [], discharge, staticHead: 0, water: water(25) };
}

/** Head of one part by its own law: Darcy–Weisbach, K V^2/2g, or h0 (Q/Q0)^n. */
function headOf(part: CircuitPart, flow: number): number {
  if (part.kind === 'pipe') return darcyWeisbach({ ...part, flow, kinematicViscosity });
  if (part.kind === 'fitting')
    return (part.k * (flow / ((Math.PI / 4) * part.bore ** 2)) ** 2) / (2 * 9.80665);
  if (part.kind === 'equipment')
    return part.factor * part.referenceHead * (flow / part.referenceFlow) ** part.exponent;
  throw new Error('one part, no group');
}

const quadratic = (k: number) =>
  ({
    kind: 'equipment',
    id: `${k}`,
    referenceHead: k,
    referenceFlow: 1,
    exponent: 2,
    factor: 1,
  }) as const;

const sizes = ['sch40-1', 'sch40-1.5', 'sch40-2'] as const;
const part: fc.Arbitrary<CircuitPart> = fc.oneof(
  fc.tuple(fc.constantFrom(...sizes), fc.integer({ min: 1, max: 90 })).map(([s, l]) => pipe(s, l)),
  fc.tuple(fc.constantFrom(...sizes), fc.integer({ min: 1, max: 9 })).map(([s, n]) => elbows(s, n)),
  fc
    .double({ min: 1, max: 2.2, noNaN: true })
    .map((exponent) => ({ ...equipment(5, 60), exponent }) as CircuitPart),
);
const ways = (...lifts: number[]) =>
  fc.array(
    fc.record({
      parts: fc.array(part, { minLength: 1, maxLength: 3 }),
      lift: fc.constantFrom(...lifts),
    }),
    { minLength: 1, maxLength: 4 },
  );
const flowFrom = (least: number) =>
  fc.double({ min: least, max: -1.7, noNaN: true }).map((exponent) => 10 ** exponent);

describe('water that may go several ways', () => {
  // Heads of a few metres carry rounding of 1e-15 m, which is 1e-7 of a flow of 1e-6 m3/s.
  test.each([
    ['all at one height', ways(0), flowFrom(-11), 1e-9],
    ['at heights of their own', ways(0, 1, 3.999, 4), flowFrom(-6), 1e-6],
  ] as const)(
    '%s, loses the same head on each and takes none that asks for more',
    (_, any, flows, near) => {
      fc.assert(
        fc.property(any, flows, (taken, flow) => {
          const group = sideBySide(...taken.map(({ parts, lift }) => branch(parts, lift)));
          const head = systemHead(loop(group), flow);
          const split = branchFlows(loop(group), flow).map((one) => one.flow);
          // Continuity and Kirchhoff's rule for pipes (textbook, from memory).
          const sum = split.reduce((whole, one) => whole + one, 0);
          expect(Math.abs(sum / flow - 1)).toBeLessThan(near);
          for (const [place, { parts, lift }] of taken.entries()) {
            const own = split[place] as number;
            const lost = parts.reduce((whole, one) => whole + headOf(one, own), lift);
            if (own > 0) expect(Math.abs(lost - head)).toBeLessThan(1e-9 * head);
            else expect(lift).toBeGreaterThanOrEqual(head * (1 - 1e-9));
          }
        }),
        { numRuns: 300 },
      );
    },
  );

  test.each([1e-9, 1e-3, 0.3, 0.99, 1.01, 1.5, 4])('meets the closed form under %f m', (head) => {
    // h = z + k Q^2 on each way: Q = sqrt((h - z)/k), and dh/dQ = 1/sum(1/2kQ) over those that flow.
    const ways = [
      [1e5, 0],
      [3e5, 0],
      [4e4, 1],
    ] as const;
    const flows = ways.map(([k, lift]) => Math.sqrt(Math.max(0, head - lift) / k));
    const flow = flows.reduce((sum, one) => sum + one);
    const conductance = flows
      .filter((one) => one > 0)
      .reduce((sum, one, at) => sum + 1 / (2 * (ways[at]?.[0] ?? 0) * one), 0);
    const group = sideBySide(...ways.map(([k, lift]) => branch([quadratic(k)], lift)));
    const point = { head: 0, slope: 0 };
    headAndSlope(compileCircuit(loop(group)), flow, point);
    expect(point.head / head).toBeCloseTo(1, 10);
    expect(point.slope * conductance).toBeCloseTo(1, 9);
    branchFlows(loop(group), flow).forEach((one, at) => {
      expect(one.flow).toBeCloseTo(flows[at] as number, 12);
    });
  });

  test('two ways up to different heights never give less flow at more speed', () => {
    // Both curves rise, so the meeting moves out. Wide pipe to 2 m costs little beyond its height.
    const curve = pumpFromPowerLaw({ a: 25.5, b: 4.2e5, c: 2.1 }, 0.0068);
    const up = sideBySide(branch([elbows('sch40-3', 3)], 2), branch([pipe('sch40-2', 20)], 4));
    const circuit = loop(elbows('sch40-2', 12), equipment(12, 60), up);
    let before = 0;
    for (let ratio = 0.28; ratio < 0.5; ratio += 0.001) {
      const point = operatingPoint(curve, circuit, ratio);
      const flow = point.kind === 'flowing' ? point.flow : 0;
      expect(flow, `at ratio ${ratio}`).toBeGreaterThanOrEqual(before * (1 - 1e-9));
      // Hydrostatics: below 4 m no water goes the upper way.
      const head = systemHead(loop(up), flow);
      if (head < 4) expect(branchFlows(circuit, flow)[1]?.flow).toBe(0);
      before = flow;
    }
    expect(before).toBeGreaterThan(0.001);
  });

  test('ways a thousandth of a millimetre apart are told apart', () => {
    // A second way a thousandth of a millimetre up, and inside it one as much higher again.
    const [wide, inlet, top] = [elbows('sch40-2', 3), elbows('sch40-2', 3), elbows('sch40-2', 3)];
    const long = pipe('sch40-2', 50);
    const nest = sideBySide(branch([long]), branch([top], 1e-6));
    const group = sideBySide(branch([wide]), branch([inlet, nest], 1e-6));
    const flow = 1e-5;
    const compiled = compileCircuit(loop(group));
    const point = { head: 0, slope: 0 };
    headAndSlope(compiled, flow, point);
    const [first = 0, second = 0, inner = 0, upper = 0] = branchFlows(loop(group), flow).map(
      (one) => one.flow,
    );
    // Kirchhoff's rules once more; the highest way is not reached.
    expect((first + second) / flow).toBeCloseTo(1, 12);
    expect([inner / second, upper]).toEqual([expect.closeTo(1, 12), 0]);
    expect(point.head / headOf(wide, first)).toBeCloseTo(1, 10);
    expect((1e-6 + headOf(inlet, second) + headOf(long, inner)) / point.head).toBeCloseTo(1, 10);
    // Tangents side by side: conductances add, and what stands in a row adds up.
    const slopes = [
      (2 * headOf(wide, first)) / first,
      (2 * headOf(inlet, second) + headOf(long, inner)) / second,
    ] as const;
    expect(point.slope * (1 / slopes[0] + 1 / slopes[1])).toBeCloseTo(1, 9);
  });
});

describe('the friction factor that a run remembers', () => {
  afterEach(() => void vi.restoreAllMocks());

  test('never shows in the head, however far the flow has moved since', () => {
    const runs = [pipe('sch40-2', 100), { ...pipe('sch40-1', 4), roughness: 2e-3 } as CircuitPart];
    const compiled = compileCircuit(loop(...runs));
    // From Re 500 in the wide run to 5e5 in the narrow one, and back: all three regimes.
    for (const flow of [2e-5, 1e-2, 2e-4, 9e-3, 8e-5, 1e-4, 1.2e-4, 1e-2, 1e-2]) {
      const point = { head: 0, slope: 0 };
      headAndSlope(compiled, flow, point);
      const head = (at: number) => runs.reduce((sum, run) => sum + headOf(run, at), 0);
      expect(Math.abs(point.head / head(flow) - 1)).toBeLessThan(1e-13);
      const rise = (head(flow * (1 + 1e-6)) - head(flow * (1 - 1e-6))) / (2e-6 * flow);
      expect(Math.abs(point.slope / rise - 1)).toBeLessThan(1e-7);
    }
  });

  test('is taken one step on where the flow has hardly moved, two where it has', () => {
    // A step of order four from 1e-3 off is exact; the factor of smooth pipe goes as Re^-1/5 or so.
    const compiled = compileCircuit(loop(pipe('sch40-2', 100)));
    const steps = (flow: number) => {
      const spy = vi.spyOn(Math, 'log').mockClear();
      headAndSlope(compiled, flow, { head: 0, slope: 0 });
      return spy.mock.calls.length;
    };
    expect(steps(0.003)).toBe(2);
    expect([steps(0.003), steps(0.00301), steps(0.00299)]).toEqual([1, 1, 1]);
    expect([steps(0.006), steps(0.006), steps(0.001)]).toEqual([2, 1, 2]);
  });

  test('shows that a way up does not go on for the sake of rounding', () => {
    // 4 m carry rounding of 1e-15 m, far above 1e-13 of the flow times the slope of so wide a pipe.
    const up = [2, 4].map((lift) => branch([pipe('sch40-3', 9)], lift));
    const compiled = compileCircuit(loop(sideBySide(...up)));
    const spy = vi.spyOn(Math, 'log').mockClear();
    for (let flow = 6e-4; flow < 1e-3; flow += 1e-5) {
      headAndSlope(compiled, flow, { head: 0, slope: 0 });
      expect(spy.mock.calls.length).toBeLessThan(40);
      spy.mockClear();
    }
  });

  test('shows that no split of a flow in a pool needs halving, however the branches nest', () => {
    // All levels settle together, within 30 steps as a rule; halving takes 1e4.
    const runsIn = ({ runs, groups }: CompiledCircuit): number =>
      groups
        .flatMap(({ branches }) => branches.map(({ compiled }) => runsIn(compiled)))
        .reduce((sum, one) => sum + one, runs.length);
    fc.assert(
      fc.property(anyCircuit, fc.double({ min: 1e-4, max: 0.02, noNaN: true }), (circuit, flow) => {
        const compiled = compileCircuit(circuit);
        const spy = vi.spyOn(Math, 'log').mockClear();
        headAndSlope(compiled, flow, { head: 0, slope: 0 });
        expect(spy.mock.calls.length).toBeLessThanOrEqual(60 * runsIn(compiled));
      }),
      { numRuns: 400 },
    );
  });

  test('and the split that a group remembers save steps', () => {
    const compiled = compileCircuit(branched);
    const steps = (flow: number) => {
      const spy = vi.spyOn(Math, 'log').mockClear();
      headAndSlope(compiled, flow, { head: 0, slope: 0 });
      return spy.mock.calls.length;
    };
    // Seven runs: from even shares several steps, from the shares last found fewer.
    const [first, second] = [steps(0.004), steps(0.004)];
    expect(second).toBeLessThan(0.7 * first);
    expect(first).toBeLessThan(60);
  });
});
