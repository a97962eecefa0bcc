import { describe, expect, test } from 'vitest';
import { fitPad } from '#core/fit/fitPad.ts';
import { branchFlows, systemHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { headAndSlope } from '#core/hydraulics/compiledHead.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { branch, elbows, equipment, pipe, sideBySide } from '../../oracle/circuits.ts';
import { curve, evidenceOf, trueReading } from '../fit/padFixtures.ts';
import { headsOfEachLine } from './headCount.ts';

/** Values at the ends of what a pad file takes, none of them from a real pool. */
const run = (bore: number, length: number, roughness = 1.5e-6): CircuitPart => {
  return { kind: 'pipe', id: `run-${bore}-${length}`, bore, length, roughness };
};
const plug = (bore: number, k: number): CircuitPart => ({ kind: 'fitting', id: `k-${k}`, k, bore });
const valve = (referenceHead: number, referenceFlow: number, exponent: number): CircuitPart => {
  const id = `valve-${referenceFlow}-${exponent}`;
  return { kind: 'equipment', id, referenceHead, referenceFlow, exponent, factor: 1 };
};
const ways: readonly (readonly CircuitPart[])[] = [
  [run(0.006, 500)],
  [run(0.9, 0.001)],
  [plug(0.05, 2e5)],
  [run(0.05, 1000), plug(0.02, 1000)],
  [valve(100, 1e-6, 2)],
  [valve(100, 1e-5, 1), run(0.01, 0.001, 0.001)],
  [run(0.008, 0.001)],
  [pipe('sch40-1.5', 60)],
  [valve(1e-4, 1, 2.5)],
  [run(0.03, 1000, 0.003)],
  [plug(0.01, 0.001)],
  [run(0.1, 100), valve(50, 1e-4, 1.3)],
];
/** A valve told wide open takes no head at all. */
const open = [...ways.slice(0, 10), [valve(0, 1e-6, 2)], [valve(0, 1e-5, 1)]];
/** Nothing wide among them. */
const narrow = [0, 2, 3, 4, 5, 9, 11].map((at) => ways[at] as (typeof ways)[number]);

const lifts = (at: number) => (at % 5 === 4 ? 1 : at % 7 === 6 ? 3 : 0);
const level = () => 0;

function flat(of: typeof ways, lift: (at: number) => number): CircuitPart {
  return sideBySide(...of.map((parts, at) => branch(parts, lift(at))));
}

/** A third of the ways on each of three levels, the inner ones behind a short narrow pipe. */
function nested(of: typeof ways, lift: (at: number) => number): CircuitPart {
  const all = of.map((parts, at) => branch(parts, lift(at)));
  const third = Math.ceil(all.length / 3);
  const inner = sideBySide(...all.slice(2 * third));
  const middle = [...all.slice(third, 2 * third), branch([run(0.04, 1), inner], lift(4) / 2)];
  return sideBySide(...all.slice(0, third), branch([run(0.04, 1), sideBySide(...middle)]));
}

const pad = (returns: CircuitPart): Circuit => ({
  suction: [pipe('sch40-2.5', 30)],
  discharge: [equipment(4, 60), pipe('sch40-2', 60), elbows('sch40-2', 6), returns],
  staticHead: 0,
  water: water(26),
});

const cases = [
  ['side by side', flat(ways, level)],
  ['side by side, at their own heights', flat(ways, lifts)],
  ['with two valves wide open', flat(open, lifts)],
  ['all narrow', flat(narrow, lifts)],
  ['three deep', nested(ways, level)],
  ['three deep, at their own heights', nested(ways, lifts)],
  ['three deep with two valves wide open', nested(open, lifts)],
  ['three deep, all narrow', nested(narrow, level)],
] as const;

describe.each(cases)('ways that differ by a factor of a thousand million, %s', (_, returns) => {
  const circuit = pad(returns);
  const ratios = [0.1, 0.2, 0.4, 0.7, 1, 1.3];

  test('take no more steps than others: a guess near enough, and Newton from there', () => {
    for (const ratio of ratios) {
      const heads = headsOfEachLine(
        circuit,
        (compiled) => void operatingPoint(curve, compiled, ratio),
      );
      // From even shares thirty halvings would come first: 2^30 is a thousand million.
      expect(heads, `at ratio ${ratio}`).toBeLessThan(25);
    }
    for (const flow of [1e-4, 1e-3, 6e-3]) {
      const heads = headsOfEachLine(circuit, (compiled) =>
        headAndSlope(compiled, flow, { head: 0, slope: 0 }),
      );
      expect(heads, `at ${flow} m3/s`).toBeLessThan(35);
    }
  });

  test('share one head, add up to what enters, and meet the pump', () => {
    for (const ratio of ratios) {
      const point = operatingPoint(curve, circuit, ratio);
      if (point.kind !== 'flowing') throw new Error('no flow');
      // Definition of the operating point, with the head worked out on its own.
      const excess = (flow: number) =>
        ratio ** 2 * curve.head(flow / ratio) - systemHead(circuit, flow);
      expect(excess(point.flow * (1 - 1e-8))).toBeGreaterThan(0);
      expect(excess(point.flow * (1 + 1e-8))).toBeLessThan(0);
      if (returns.kind !== 'parallel') throw new Error('a group');
      const alone = (parts: readonly CircuitPart[], staticHead: number) => ({
        ...circuit,
        suction: [],
        discharge: parts,
        staticHead,
      });
      const head = systemHead(alone([returns], 0), point.flow);
      const flows = branchFlows(circuit, point.flow);
      const flowOf = (id: string) => flows.find((one) => one.branchId === id)?.flow ?? 0;
      const sum = returns.branches.reduce((all, { id }) => all + flowOf(id), 0);
      expect(Math.abs(sum / point.flow - 1)).toBeLessThan(1e-12);
      // Kirchhoff's rule, each way alone; what is off may only be what no reading would show.
      for (const { id, parts, lift } of returns.branches) {
        const own = systemHead(alone(parts, lift), flowOf(id));
        if (flowOf(id) > 0) expect(Math.abs(own - head)).toBeLessThan(1e-9 * head + 1e-14);
        else expect(own).toBeGreaterThanOrEqual(head * (1 - 1e-9) - 1e-14);
      }
    }
  });

  test('are fitted with as few heads of the pump as a plain loop', () => {
    const headsOf = (loop: Circuit): number => {
      const readings = [1, 0.7, 0.45].map((ratio) => ({
        id: `at ${ratio}`,
        ratio,
        dischargePressure:
          1.1 * trueReading([], ratio, evidenceOf([], { circuit: loop })).head * 9780,
      }));
      let heads = 0;
      const counted: PumpCurve = {
        ...curve,
        head: (flow) => {
          heads += 1;
          return curve.head(flow);
        },
      };
      fitPad(evidenceOf(readings, { circuit: loop, curve: counted }));
      return heads;
    };
    // As many rounds of the fit at most, with twice the steps in each.
    expect(headsOf(circuit) / headsOf(pad(elbows('sch40-2', 4)))).toBeLessThan(4);
  });
});
