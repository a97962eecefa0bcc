import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  branchFlows,
  headShares,
  largestVelocity,
  suctionHead,
  systemHead,
} from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import { flowArea } from '#core/hydraulics/pipe.ts';
import { operatingPoint, ratioForFlow } from '#core/pump/operatingPoint.ts';
import { pumpFromPowerLaw } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { branch, branched, equipment, pipe, series, sideBySide } from '../../oracle/circuits.ts';
import { anyCircuit } from './anyCircuit.ts';

const curve = pumpFromPowerLaw({ a: 25.5, b: 4.2e5, c: 2.1 }, 0.0068);

function loop(discharge: readonly CircuitPart[], staticHead = 0): Circuit {
  return { suction: [], discharge, staticHead, water: water(25) };
}

describe('the circuit', () => {
  const flow = fc.double({ min: 0, max: 0.02, noNaN: true });

  test('takes more head for more flow', () => {
    fc.assert(
      fc.property(
        anyCircuit,
        flow,
        fc.double({ min: 1e-5, max: 0.01, noNaN: true }),
        (circuit, q, more) => {
          expect(systemHead(circuit, q + more)).toBeGreaterThan(systemHead(circuit, q) - 1e-12);
        },
      ),
    );
  });

  test('compiled or not, takes the sum of its shares along any way the water really goes', () => {
    fc.assert(
      fc.property(anyCircuit, fc.double({ min: 1e-4, max: 0.02, noNaN: true }), (circuit, q) => {
        const shares = headShares(circuit, q);
        const flows = branchFlows(circuit, q);
        // Energy: walk one open branch of each group and add its own lift.
        const along = (parts: readonly CircuitPart[]): number =>
          parts.reduce((sum, part) => {
            if (part.kind !== 'parallel') {
              return sum + (shares.find((share) => share.id === part.id)?.head ?? Number.NaN);
            }
            const open = part.branches.find((one) => {
              const through = flows.find((f) => f.parallelId === part.id && f.branchId === one.id);
              return (through?.flow ?? 0) > 1e-9 * q;
            });
            return open === undefined ? Number.NaN : sum + open.lift + along(open.parts);
          }, 0);
        const total = along(circuit.suction) + along(circuit.discharge) + circuit.staticHead;
        const head = systemHead(circuit, q);
        expect(Math.abs(total - head)).toBeLessThan(1e-7 * Math.max(head, 0.01));
        expect(compiledHead(compileCircuit(circuit), q)).toBeCloseTo(head, 9);
      }),
      { numRuns: 200 },
    );
  });

  test('splits the flow without loss', () => {
    fc.assert(
      fc.property(anyCircuit, flow, (circuit, q) => {
        const flows = branchFlows(circuit, q);
        // Conservation of mass, group by group at the outermost level.
        for (const part of [...circuit.suction, ...circuit.discharge]) {
          if (part.kind !== 'parallel') continue;
          const sum = flows
            .filter(({ parallelId }) => parallelId === part.id)
            .reduce((total, { flow: one }) => total + one, 0);
          // A flow below a drop in a fortnight is not split.
          expect(Math.abs(sum - q)).toBeLessThanOrEqual(1e-9 * q + 1e-13);
        }
        for (const { flow: one } of flows) expect(one).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('a branch that the head does not reach carries none', () => {
    const circuit = loop([
      sideBySide(branch([pipe('sch40-2', 10)]), branch([pipe('sch40-2', 10)], 3)),
    ]);
    const [low, high] = branchFlows(circuit, 0.002);
    expect(low?.flow).toBeCloseTo(0.002, 12);
    expect(high?.flow).toBe(0);
    const [first, second] = branchFlows(circuit, 0.02);
    expect(second?.flow).toBeGreaterThan(0);
    expect((first?.flow ?? 0) + (second?.flow ?? 0)).toBeCloseTo(0.02, 12);
  });

  test('its fastest place is where the bore is least for the flow it carries', () => {
    // Continuity: V = Q/A in the 1.5 in branch, which carries half of the flow.
    const same = [pipe('sch40-1.5', 20)];
    const circuit = {
      ...loop([]),
      suction: [pipe('sch40-3', 5), sideBySide(branch(same), branch(same))],
    };
    const bore = 0.0254 * 1.61;
    expect(largestVelocity(circuit, 0.004, 'suction')?.velocity).toBeCloseTo(
      0.002 / flowArea(bore),
      9,
    );
    expect(largestVelocity(circuit, 0.004, 'discharge')).toBeUndefined();
  });

  test('of two equally fast places the water meets, the first is named', () => {
    // Our own choice: the same flow in the same bore is equally fast.
    const twice = { ...loop([pipe('sch40-2', 5), pipe('sch40-2', 9)]) };
    expect(largestVelocity(twice, 0.004, 'discharge')?.partId).toBe(twice.discharge[0]?.id);
  });

  test('every share says where its part stands and how fast the water is there', () => {
    const [inner, outer] = [pipe('sch40-1', 4), pipe('sch40-2', 4)];
    const filter = equipment(4, 60);
    const within = branch([inner]);
    const nest = sideBySide(within);
    const way = branch([nest]);
    const group = sideBySide(way);
    const shares = headShares(loop([outer, filter, group]), 0.002);
    // The names on the way from the outside in: a part of no group has none.
    expect(shares.map(({ id, path }) => ({ id, path }))).toEqual([
      { id: outer.id, path: [] },
      { id: filter.id, path: [] },
      { id: inner.id, path: [group.id, way.id, nest.id, within.id] },
    ]);
    // Continuity: V = Q/A; what goes on inside a piece of equipment has no one bore.
    expect(shares[0]).toMatchObject({ bore: 0.0525018, velocity: 0.002 / flowArea(0.0525018) });
    expect(shares[1]).not.toHaveProperty('velocity');
    expect(shares[1]).not.toHaveProperty('bore');
  });

  test('the suction side counts alone', () => {
    expect(suctionHead(series, 0.003)).toBeCloseTo(
      headShares(series, 0.003)
        .filter(({ side }) => side === 'suction')
        .reduce((sum, { head }) => sum + head, 0),
      12,
    );
    expect(suctionHead(branched, 0.003)).toBeGreaterThan(0);
  });

  test('the lift is a share of its own', () => {
    expect(headShares(loop([], 2), 0.001)).toEqual([
      { id: 'static', side: 'discharge', path: [], head: 2, flow: 0.001 },
    ]);
    expect(headShares(loop([]), 0.001)).toEqual([]);
  });

  test.each([
    ['flow', () => systemHead(series, -1)],
    ['flow', () => systemHead(series, Number.NaN)],
    ['static head', () => systemHead(loop([], -1), 0.001)],
    [
      'K of bad',
      () => systemHead(loop([{ kind: 'fitting', id: 'bad', k: -1, bore: 0.05 }]), 0.001),
    ],
    [
      'length',
      () =>
        systemHead(
          loop([{ kind: 'pipe', id: 'bad', bore: 0.05, length: -1, roughness: 0 }]),
          0.001,
        ),
    ],
    [
      'roughness',
      () =>
        systemHead(
          loop([{ kind: 'pipe', id: 'bad', bore: 0.05, length: 1, roughness: 0.01 }]),
          0.001,
        ),
    ],
    [
      'branches of bad',
      () => systemHead(loop([{ kind: 'parallel', id: 'bad', branches: [] }]), 0.001),
    ],
    ['speed ratio', () => operatingPoint(curve, series, 11)],
    ['flow', () => ratioForFlow(curve, series, 0)],
    ['greatest ratio', () => ratioForFlow(curve, series, 0.001, { min: 0.5, max: 0.4 })],
  ])('a wrong %s is refused by name', (field, call) => {
    let caught: unknown;
    try {
      call();
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(CoreError);
    expect((caught as CoreError).field).toBe(field);
  });
});
