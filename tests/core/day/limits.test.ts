import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  crossedLimits,
  greatestRatioWithin,
  type LimitInputs,
  limitsFor,
} from '#core/day/limits.ts';
import { branchFlows, largestVelocity, suctionHead } from '#core/hydraulics/circuit.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { npshAvailable } from '#core/pump/npsh.ts';
import { circuit } from '../fit/padFixtures.ts';

const inch = 0.0254; // exact, NIST SP 811
const gallonsPerMinute = 3.785_411_784 / 60_000; // exact, NIST SP 811
const only = (inputs: Omit<LimitInputs, 'circuit'>, on: Circuit = circuit) => {
  const [limit] = limitsFor({ circuit: on, ...inputs });
  if (limit === undefined) throw new Error('a limit was expected');
  return limit;
};

const line = (id: string, bore: number, length: number) => ({
  id,
  lift: 0,
  parts: [{ kind: 'pipe' as const, id: `${id} pipe`, bore, length, roughness: 1.5e-6 }],
});
const twoLines: Circuit = {
  ...circuit,
  suction: [
    {
      kind: 'parallel',
      id: 'lines',
      branches: [line('drain', 0.05, 8), line('skimmer', 0.05, 16)],
    },
  ],
};

describe('velocity', () => {
  it('6 ft/s in 2 in is 62.8 gpm in Schedule 40 and 55.2 in Schedule 80', () => {
    // V = 0.4085 Q/d^2 (gpm, in, ft/s), as the Hydraulic Institute prints it; bores ASTM D1785.
    for (const bore of [2.067, 1.939]) {
      const pipe = { kind: 'pipe', id: 'p', bore: bore * inch, length: 5, roughness: 0 } as const;
      const limit = only({ suctionVelocity: 6 * 0.3048 }, { ...circuit, suction: [pipe] });
      const expected = (6 * bore ** 2) / 0.4085;
      expect(limit.greatestFlow / gallonsPerMinute / expected).toBeCloseTo(1, 3);
      expect(limit).toMatchObject({ kind: 'suctionVelocity', partId: 'p', hard: false });
    }
  });

  it('in branches counts the flow of the branch, and binds at the fastest', () => {
    const limit = only({ suctionVelocity: 1.5 }, twoLines);
    expect(largestVelocity(twoLines, limit.greatestFlow, 'suction')?.velocity).toBeCloseTo(1.5, 9);
    expect(limit.partId).toBe('drain pipe');
  });

  it('sets no limit where there is no pipe', () => {
    expect(limitsFor({ circuit: { ...circuit, suction: [] }, suctionVelocity: 2 })).toEqual([]);
  });
});

describe('equipment', () => {
  it('the filter bears its area times its rate', () => {
    expect(only({ filterRate: 0.0125, filters: [{ area: 0.3 }] }).greatestFlow).toBeCloseTo(
      0.00375,
      15,
    );
  });

  it('a heater in a branch lets more flow through the pump than through itself', () => {
    const branch = { ...twoLines, suction: circuit.suction, discharge: twoLines.suction };
    const limit = only({ heaters: [{ greatestFlow: 0.002, branchId: 'skimmer' }] }, branch);
    const through = branchFlows(branch, limit.greatestFlow).find((b) => b.branchId === 'skimmer');
    expect(through?.flow).toBeCloseTo(0.002, 12);
    expect(limit.greatestFlow).toBeGreaterThan(0.004);
    expect(only({ heaters: [{ greatestFlow: 0.002 }] }).greatestFlow).toBe(0.002);
  });
});

describe('equipment of which there are several', () => {
  // 20 gpm/ft2 of 3 ft2 is 60 gpm: the label of a sand filter; common practice, no source.
  const rate = 20 * gallonsPerMinute * 10.763_910_416_709_722;
  const gpm = (flow: number) => flow / gallonsPerMinute;

  it('two filters in series bind at the smaller, not at their sum', () => {
    // Worked by hand: every drop passes both, so 0.3 m2 x 0.0125 m/s = 3.75 L/s.
    const filters = [
      { id: 'small', area: 0.3 },
      { id: 'large', area: 0.4 },
    ];
    expect(only({ filterRate: 0.0125, filters })).toMatchObject({
      greatestFlow: 0.3 * 0.0125,
      partId: 'small',
    });
  });

  it('two filters side by side bind each at its own flow', () => {
    const pipes = { ...twoLines, suction: [], discharge: twoLines.suction };
    const filters = [
      { id: 'short way', area: 0.3, branchId: 'drain' },
      { id: 'long way', area: 0.3, branchId: 'skimmer' },
    ];
    const limit = only({ filterRate: rate, filters }, pipes);
    const flows = branchFlows(pipes, limit.greatestFlow);
    // The shorter way carries more, so its filter binds while the other is still below its rate.
    expect(limit.partId).toBe('short way');
    expect(flows.find(({ branchId }) => branchId === 'drain')?.flow).toBeCloseTo(0.3 * rate, 9);
    expect(gpm(limit.greatestFlow)).toBeLessThan(gpm(2 * 0.3 * rate));
  });

  it('of two heaters in series the one with the smaller mark binds, wherever it stands', () => {
    const heaters = [
      { id: 'first', greatestFlow: 0.0088 },
      { id: 'second', greatestFlow: 0.0029 },
    ];
    for (const order of [heaters, heaters.toReversed()])
      expect(only({ heaters: order })).toMatchObject({ greatestFlow: 0.0029, partId: 'second' });
  });
});

describe('suction covers', () => {
  it('are one hard stop, by the rule of suctionStop', () => {
    const suctionCovers = [
      { id: 'a', markedFlow: 0.005, branchId: 'drain' },
      { id: 'b', markedFlow: 0.004, branchId: 'skimmer' },
    ];
    expect(limitsFor({ circuit: twoLines, suctionCovers })).toMatchObject([
      { kind: 'suctionCover', id: 'suctionCover:b', partId: 'b', hard: true },
    ]);
  });
});

describe('NPSH', () => {
  const need = {
    atmosphere: 101_325,
    surfaceAbovePump: -1,
    margin: 0.5,
    required: (flow: number) => 1 + 1e5 * flow ** 2,
  };

  it('is met with just the margin at the greatest flow', () => {
    const { greatestFlow } = only({ npsh: need });
    const available = npshAvailable({
      atmosphere: need.atmosphere,
      water: circuit.water,
      surfaceAbovePump: -1,
      suctionLoss: suctionHead(circuit, greatestFlow),
    });
    expect(available - need.required(greatestFlow)).toBeCloseTo(0.5, 8);
  });

  it('allows no flow where it is missed before the water moves', () => {
    expect(only({ npsh: { ...need, surfaceAbovePump: -10 } }).greatestFlow).toBe(0);
  });
});

describe('a limit that no pool pump comes to', () => {
  // Beyond 1 m3/s there is no pool pump (common practice, no source).
  it('is no limit', () => {
    const heaters = [{ greatestFlow: 2, branchId: 'skimmer' }];
    expect(limitsFor({ circuit: twoLines, heaters })).toEqual([]);
    const suctionCovers = [{ id: 'a', markedFlow: 2, branchId: 'drain' }];
    expect(limitsFor({ circuit: twoLines, suctionCovers })).toEqual([]);
    const nothing = { atmosphere: 101_325, surfaceAbovePump: 0, margin: 0, required: () => 0 };
    expect(limitsFor({ circuit: { ...circuit, suction: [] }, npsh: nothing })).toEqual([]);
  });
});

describe('limits together', () => {
  it('are called by their kind and by where they bind', () => {
    const limits = limitsFor({
      circuit: twoLines,
      suctionVelocity: 1.5,
      filterRate: 0.0125,
      filters: [{ area: 0.5 }],
      heaters: [{ greatestFlow: 0.003, branchId: 'skimmer' }],
      suctionCovers: [{ id: 'a', markedFlow: 0.005 }],
    });
    expect(limits.map(({ id, partId, hard }) => [id, partId, hard]).toSorted()).toEqual([
      ['filterRate', undefined, false],
      ['heaterFlow:skimmer', 'skimmer', false],
      ['suctionCover:a', 'a', true],
      ['suctionVelocity:drain pipe', 'drain pipe', false],
    ]);
    expect(limits.find(({ kind }) => kind === 'filterRate')).not.toHaveProperty('partId');
  });

  it('stand with the tightest first', () => {
    const limits = limitsFor({
      circuit,
      suctionVelocity: 1.8,
      dischargeVelocity: 2.4,
      filterRate: 0.0125,
      filters: [{ area: 0.5 }],
      heaters: [{ greatestFlow: 0.007 }],
      suctionCovers: [{ id: 'a', markedFlow: 0.006 }],
    });
    const flows = limits.map((limit) => limit.greatestFlow);
    expect(limits).toHaveLength(5);
    expect([...flows].sort((a, b) => a - b)).toEqual(flows);
  });

  it('are crossed above and not at their flow, and more of them the more flows', () => {
    const limits = limitsFor({ circuit, suctionVelocity: 1.8, dischargeVelocity: 2.4 });
    for (const limit of limits) {
      expect(crossedLimits([limit], limit.greatestFlow)).toEqual([]);
      expect(crossedLimits([limit], limit.greatestFlow * 1.001)).toEqual([limit]);
    }
    const [one] = limits.map((limit) => ({ ...limit, greatestRatio: 0.8 }));
    if (one === undefined) throw new Error('a limit was expected');
    expect(crossedLimits([one], 0, 0.8)).toEqual([]);
    expect(crossedLimits([one], 0, 0.81)).toEqual([one]);
    const flow = fc.double({ min: 0, max: 0.02, noNaN: true });
    fc.assert(
      fc.property(flow, flow, (a, b) => {
        const count = (at: number) => crossedLimits(limits, at).length;
        expect(count(Math.max(a, b))).toBeGreaterThanOrEqual(count(Math.min(a, b)));
      }),
    );
  });
});

describe('the greatest speed that keeps a flow', () => {
  it('is where the flow comes to it, and none where every speed keeps it', () => {
    const flowAt = (ratio: number) => 0.01 * Math.max(0, ratio - 0.2);
    expect(greatestRatioWithin(flowAt, 0.004, 1)).toBeCloseTo(0.6, 9);
    expect(greatestRatioWithin(flowAt, 0.008, 1)).toBeUndefined();
    expect(greatestRatioWithin(flowAt, 0.009, 1)).toBeUndefined();
  });

  it('refuses a flow below 0 and a top speed that is none', () => {
    expect(() => greatestRatioWithin(() => 0, -1, 1)).toThrow(CoreError);
    expect(() => greatestRatioWithin(() => 0, 1, 0)).toThrow(CoreError);
    expect(() => crossedLimits([], 0.001, -1)).toThrow(CoreError);
  });
});

describe('several of a kind', () => {
  it('of two heaters the one that binds first is the limit', () => {
    const heaters = [{ greatestFlow: 0.003 }, { greatestFlow: 0.002 }];
    const found = limitsFor({ circuit, heaters });
    expect(found.map(({ greatestFlow }) => greatestFlow)).toEqual([0.002]);
  });

  it('three covers on one line bear one mark, unless their line is balanced', () => {
    const suctionCovers = ['a', 'b', 'c'].map((id) => ({ id, markedFlow: 0.004 }));
    expect(only({ suctionCovers }).greatestFlow).toBeCloseTo(0.004, 12);
    expect(only({ suctionCovers, coversBalanced: true }).greatestFlow).toBeCloseTo(0.008, 12);
  });
});
