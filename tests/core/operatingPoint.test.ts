import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  branchFlows,
  type Circuit,
  type CircuitPart,
  foldCircuit,
  foldedHead,
  headShares,
  largestVelocity,
  suctionHead,
  systemHead,
} from '#core/circuit.ts';
import { CoreError } from '#core/errors.ts';
import { operatingPoint, ratioForFlow, speedSweep } from '#core/operatingPoint.ts';
import { flowArea } from '#core/pipe.ts';
import { pumpFromPowerLaw, pumpHead } from '#core/pump.ts';
import { water } from '#core/water.ts';
import {
  branch,
  branched,
  elbows,
  equipment,
  pipe,
  series,
  sideBySide,
} from '../oracle/circuits.ts';

const curve = pumpFromPowerLaw({ a: 25.5, b: 4.2e5, c: 2.1 }, 0.0068);

function loop(discharge: readonly CircuitPart[], staticHead = 0): Circuit {
  return { suction: [], discharge, staticHead, water: water(25) };
}

/** Circuits of any shape that plumbing takes: chains and groups, up to two deep, lifts included. */
const sizes = ['sch40-1', 'sch40-1.5', 'sch40-2', 'sch40-2.5', 'pn10-63'] as const;
const leaf = fc.oneof(
  fc.tuple(fc.constantFrom(...sizes), fc.integer({ min: 1, max: 200 })).map(([s, l]) => pipe(s, l)),
  fc.tuple(fc.constantFrom(...sizes), fc.integer({ min: 1, max: 9 })).map(([s, n]) => elbows(s, n)),
  fc
    .tuple(
      fc.double({ min: 0.5, max: 20, noNaN: true }),
      fc.double({ min: 1, max: 2.2, noNaN: true }),
    )
    .map(([head, exponent]) => ({ ...equipment(head, 60), exponent }) as CircuitPart),
);
const chain = fc.array(leaf, { minLength: 1, maxLength: 4 });
const lift = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 4, noNaN: true }));
const group = (inside: fc.Arbitrary<CircuitPart[]>) =>
  fc
    .array(fc.tuple(inside, lift), { minLength: 1, maxLength: 4 })
    .map((branches) => sideBySide(...branches.map(([parts, height]) => branch(parts, height))));
const nested = fc.array(
  fc.oneof({ weight: 3, arbitrary: leaf }, { weight: 1, arbitrary: group(chain) }),
  {
    minLength: 1,
    maxLength: 4,
  },
);
const anyCircuit: fc.Arbitrary<Circuit> = fc.record({
  suction: nested,
  discharge: fc.oneof(
    nested,
    fc.tuple(nested, group(nested)).map(([a, b]) => [...a, b]),
  ),
  staticHead: lift,
  water: fc.double({ min: 0, max: 45, noNaN: true }).map(water),
});
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

  test('folded or not, takes the sum of its shares along any way the water really goes', () => {
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
        expect(foldedHead(foldCircuit(circuit), q)).toBeCloseTo(head, 9);
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
