import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changedParts, lackingIds, resistingCircuit } from '#core/fit/resistance.ts';
import { branchFlows, systemHead } from '#core/hydraulics/circuit.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { branched } from '../../oracle/circuits.ts';
import { circuit } from './padFixtures.ts';

const flow = 0.003;
const exponent = 1.5;
const side = (of: Circuit, name: 'suction' | 'discharge', at = flow) =>
  systemHead({ ...of, suction: [], discharge: [], staticHead: 0, [name]: of[name] }, at);

describe('a circuit that resists otherwise than described', () => {
  it('loses so many times as much on each side at the flow where the factors hold', () => {
    const factor = fc.double({ min: 0.3, max: 3, noNaN: true });
    fc.assert(
      fc.property(factor, factor, (suction, discharge) => {
        const found = resistingCircuit(circuit, flow, { suction, discharge, exponent });
        expect(side(found, 'suction') / side(circuit, 'suction')).toBeCloseTo(suction, 9);
        expect(side(found, 'discharge') / side(circuit, 'discharge')).toBeCloseTo(discharge, 9);
      }),
    );
  });

  it('where it loses more, what is more goes with its own power of the flow', () => {
    const found = resistingCircuit(circuit, flow, { suction: 1, discharge: 1.4, exponent });
    // By the law: 1.05 times as described, and 0.35 of it as h = h0 (Q/Q0)^n, at half the flow 2^-1.5.
    const [whole, half] = [flow, flow / 2].map((at) => side(circuit, 'discharge', at)) as [
      number,
      number,
    ];
    expect(side(found, 'discharge', flow / 2)).toBeCloseTo(
      1.05 * half + 0.35 * whole * 2 ** -1.5,
      9,
    );
  });

  it('a shade more than described is nearly as described: nothing jumps where the factor passes 1', () => {
    const slow = (discharge: number) =>
      side(
        resistingCircuit(circuit, flow, { suction: 1, discharge, exponent }),
        'discharge',
        0.001,
      );
    const slope = (at: number) => (slow(at + 1e-6) - slow(at - 1e-6)) / 2e-6;
    for (const edge of [1, 1.1]) expect(slope(edge + 1e-4) / slope(edge - 1e-4)).toBeCloseTo(1, 2);
  });

  it('where it loses less, every part does, and none is added', () => {
    const found = resistingCircuit(circuit, flow, { suction: 0.8, discharge: 1, exponent });
    expect(found.suction.map(({ id }) => id)).toEqual(circuit.suction.map(({ id }) => id));
    expect(side(found, 'suction', 0.001)).toBeCloseTo(0.8 * side(circuit, 'suction', 0.001), 9);
    expect(found.discharge).toEqual(circuit.discharge);
  });

  it('holds to powers that water takes, and divides as before', () => {
    const last = (power: number) =>
      resistingCircuit(circuit, flow, { suction: 1, discharge: 2, exponent: power }).discharge.at(
        -1,
      );
    expect(last(0.2)).toMatchObject({ id: lackingIds.discharge, exponent: 1 });
    expect(last(9)).toMatchObject({ exponent: 2.5 });
    // All the water of a side passes what it lacks, so branches that lift nothing share it as they did.
    const more = resistingCircuit(branched, flow, { suction: 1.3, discharge: 1.7, exponent });
    const [now, before] = [more, branched].map((of) => branchFlows(of, flow));
    expect(before?.length).toBeGreaterThan(1);
    now?.forEach((branch, at) => {
      expect(branch.flow / (before?.[at]?.flow ?? 0)).toBeCloseTo(1, 9);
    });
  });
});

describe('a part that is changed', () => {
  const found = resistingCircuit(circuit, flow, { suction: 1.2, discharge: 1.5, exponent });
  const cleaned = (of: Circuit) =>
    changedParts(of, (parts) =>
      parts.map((part) => (part.id === 'filter' ? { ...part, factor: 0.2 } : part)),
    );

  it('changes what its side lacks in the same ratio, as long as nobody knows where that is', () => {
    expect(side(cleaned(found), 'discharge')).toBeCloseTo(
      1.5 * side(cleaned(circuit), 'discharge'),
      9,
    );
    expect(cleaned(found).suction).toEqual(found.suction);
  });

  it('is changed back without a trace, and a side that loses nothing stays', () => {
    const back = changedParts(cleaned(found), (parts) =>
      parts.map((part) => (part.id === 'filter' ? { ...part, factor: 1 } : part)),
    );
    expect(side(back, 'discharge', 0.001)).toBeCloseTo(side(found, 'discharge', 0.001), 9);
    const bare = resistingCircuit({ ...circuit, suction: [] }, flow, {
      suction: 2,
      discharge: 1,
      exponent,
    });
    expect(
      side(
        changedParts(bare, (parts) => parts),
        'suction',
      ),
    ).toBe(0);
  });
});
