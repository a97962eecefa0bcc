import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { systemHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { headAndSlope, tangent } from '#core/hydraulics/compiledHead.ts';
import { darcyWeisbach } from '#core/hydraulics/friction.ts';
import { water } from '#core/water/water.ts';
import { branch, elbows, equipment, pipe, sideBySide } from '../../oracle/circuits.ts';
import { anyCircuit } from './anyCircuit.ts';

function loop(discharge: readonly CircuitPart[], staticHead = 0): Circuit {
  return { suction: [], discharge, staticHead, water: water(25) };
}

function at(circuit: Circuit, flow: number) {
  const point = { head: 0, slope: 0 };
  headAndSlope(compileCircuit(circuit), flow, point);
  return point;
}

const anyFlow = fc.double({ min: 1e-4, max: 0.02, noNaN: true });

describe('a compiled circuit', () => {
  test('has the slope of its head', () => {
    fc.assert(
      fc.property(anyCircuit, anyFlow, (circuit, flow) => {
        const step = 1e-4 * flow;
        const [below, above] = [flow - step, flow + step].map((q) => at(circuit, q));
        if (below === undefined || above === undefined) throw new Error('two points');
        const measured = (above.head - below.head) / (2 * step);
        const { slope } = at(circuit, flow);
        // Where a branch opens or a regime ends between the two, the slope lies between theirs.
        const slopes = [below.slope, slope, above.slope];
        const slack = 2e-3 * (slope + 1);
        expect(measured).toBeGreaterThan(Math.min(...slopes) - slack);
        expect(measured).toBeLessThan(Math.max(...slopes) + slack);
      }),
    );
  });

  test('once its branches are settled, is met by their tangents', () => {
    fc.assert(
      fc.property(anyCircuit, anyFlow, (circuit, flow) => {
        const compiled = compileCircuit(circuit);
        const settled = { head: 0, slope: 0 };
        headAndSlope(compiled, flow, settled);
        // A closed branch has a tangent of its own and is no part of what is carried along.
        fc.pre(compiled.groups.every((group) => allOpen(group)));
        const carried = { head: 0, slope: 0 };
        tangent(compiled, flow, carried);
        expect(carried.head / settled.head).toBeCloseTo(1, 8);
        expect(carried.slope / settled.slope).toBeCloseTo(1, 5);
      }),
    );
  });

  test('keeps one run of pipe for each bore and wall, however it is cut up', () => {
    const rough = { ...pipe('sch40-2', 3), roughness: 1e-4 } as CircuitPart;
    const parts = [pipe('sch40-2', 10), pipe('sch40-1', 4), pipe('sch40-2', 30), rough];
    const compiled = compileCircuit(loop([...parts, pipe('sch40-3', 0)]));
    expect(compiled.runs).toHaveLength(3);
    // Darcy–Weisbach, run by run: friction adds up along a line.
    const flow = 0.003;
    const { kinematicViscosity } = water(25);
    const sum = parts.reduce(
      (head, part) =>
        part.kind === 'pipe' ? head + darcyWeisbach({ ...part, flow, kinematicViscosity }) : head,
      0,
    );
    expect(systemHead(loop(parts), flow) / sum).toBeCloseTo(1, 10);
  });

  test('keeps bores apart whose walls have no roughness at all', () => {
    // Darcy–Weisbach once more, pipe by pipe.
    const smooth = (['sch40-1', 'sch40-2'] as const).map(
      (size) => ({ ...pipe(size, 10), roughness: 0 }) as CircuitPart,
    );
    const { kinematicViscosity } = water(25);
    const sum = smooth.reduce(
      (head, part) =>
        part.kind === 'pipe'
          ? head + darcyWeisbach({ ...part, flow: 0.002, kinematicViscosity })
          : head,
      0,
    );
    expect(systemHead(loop(smooth), 0.002) / sum).toBeCloseTo(1, 12);
  });

  test('has a power of the flow only where there is one that is no square', () => {
    const power = (exponent: number, factor: number) =>
      ({ ...equipment(4, 60, factor), exponent }) as CircuitPart;
    const compiled = compileCircuit(
      loop([power(2, 1), power(2, 2), power(1.5, 0), elbows('sch40-2', 1)]),
    );
    expect(compiled.powers).toEqual([]);
    // h = h0 (Q/Q0)^2 and K V^2/2g add up to one coefficient: three times 4 ft at 60 gpm, and an elbow.
    const flow = 60 * ((231 * 0.0254 ** 3) / 60);
    const elbow = systemHead(loop([elbows('sch40-2', 1)]), flow);
    expect(compiled.quadratic * flow ** 2).toBeCloseTo(3 * 4 * 0.3048 + elbow, 12);
    expect(compileCircuit(loop([power(1.5, 1)])).powers).toHaveLength(1);
  });

  test('in slow flow takes head in proportion to flow', () => {
    // Hagen–Poiseuille: h = 32 nu L V / (g D^2), below Reynolds number 2000.
    const { kinematicViscosity: nu } = water(25);
    const bore = 0.0525018;
    const flow = (Math.PI / 4) * bore * nu * 1500;
    const velocity = flow / ((Math.PI / 4) * bore ** 2);
    const head = (32 * nu * 100 * 0.3048 * velocity) / (9.80665 * bore ** 2);
    const point = at(loop([pipe('sch40-2', 100)]), flow);
    expect(point.head / head).toBeCloseTo(1, 10);
    expect((point.slope * flow) / head).toBeCloseTo(1, 10);
  });

  test('at rest takes its lift and the lowest way out of every group, nests and all', () => {
    const nest = sideBySide(branch([pipe('sch40-1', 1)], 1.5), branch([elbows('sch40-1', 1)], 0.7));
    const group = sideBySide(branch([pipe('sch40-2', 5)], 2), branch([nest], 0.4));
    // Hydrostatics: 1 m of lift, then 2 m or 0.4 + 0.7 m.
    expect(at(loop([group], 1), 0).head).toBeCloseTo(2.1, 12);
    expect(at(loop([pipe('sch40-2', 5)]), 0).head).toBe(0);
  });

  test('at rest equipment that goes as the flow has its slope already, other equipment none', () => {
    const power = (exponent: number) => ({ ...equipment(4, 60), exponent }) as CircuitPart;
    // 4 ft at 60 gpm (NIST SP 811).
    const perFlow = (4 * 0.3048) / ((60 * 231 * 0.0254 ** 3) / 60);
    expect(at(loop([power(1)]), 0).slope / perFlow).toBeCloseTo(1, 12);
    expect(at(loop([power(1.5)]), 0).slope).toBe(0);
    const half = 30 * ((231 * 0.0254 ** 3) / 60);
    expect(at(loop([power(1.5)]), half).head).toBeCloseTo(4 * 0.3048 * 0.5 ** 1.5, 10);
  });

  test.each([
    ['reference head of filter', { referenceHead: -1 }],
    ['reference flow of filter', { referenceFlow: 0 }],
    ['exponent of filter', { exponent: 0.9 }],
    ['exponent of filter', { exponent: 2.6 }],
    ['factor of filter', { factor: -1 }],
    ['factor of filter', { factor: 1001 }],
  ])('a wrong %s is refused by name', (field, wrong) => {
    const filter = { ...equipment(4, 60), id: 'filter', ...wrong } as CircuitPart;
    expect(() => compileCircuit(loop([filter]))).toThrow(new RegExp(`^${field} is `));
  });

  test('lengths, lifts and coefficients beyond any pool are refused', () => {
    const far = { ...pipe('sch40-2', 1), length: 1e5 + 1 } as CircuitPart;
    expect(() => compileCircuit(loop([far]))).toThrow('length is 100001');
    expect(() => compileCircuit(loop([], 1001))).toThrow('static head is 1001');
    const tight = { kind: 'fitting', id: 'plug', k: 1e6 + 1, bore: 0.05 } as const;
    expect(() => compileCircuit(loop([tight]))).toThrow('K of plug is 1000001');
    expect(() => compileCircuit(loop([sideBySide(branch([], -1))]))).toThrow('static head is -1');
  });
});

type Compiled = ReturnType<typeof compileCircuit>;

function allOpen({ branches }: Compiled['groups'][number]): boolean {
  return branches.every(({ flow, compiled }) => flow > 0 && compiled.groups.every(allOpen));
}
