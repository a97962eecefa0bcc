import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import type { Limit } from '#core/day/limits.ts';
import { costPerHour, type LadderInputs, type Need, speedLadder } from '#core/day/needs.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { cubePower } from '#core/pump/power.ts';
import { circuit, curve } from '../fit/padFixtures.ts';

const step = 10 / 3450; // speeds set in tens of rpm, reference speed 3450: common practice, no source
const need = (leastFlow: number, more: Partial<Need> = {}): Need => ({
  id: 'skim',
  kind: 'skimming',
  leastFlow,
  minutes: 240,
  windows: [],
  shortestRun: 30,
  ...more,
});
const pad = (more: Partial<LadderInputs> = {}): LadderInputs => ({
  needs: [],
  curve,
  circuit,
  power: cubePower({ fixed: 45, cube: 1100 }),
  limits: [],
  minRatio: 600 / 3450,
  maxRatio: 1,
  ratioStep: step,
  ...more,
});
const rungFor = (one: Need, more: Partial<LadderInputs> = {}) => {
  const [rung] = speedLadder(pad({ needs: [one], ...more }));
  if (rung === undefined) throw new Error('one need makes one rung');
  return rung;
};
const flowAt = (ratio: number, on = circuit) => {
  const point = operatingPoint(curve, on, ratio);
  return point.kind === 'flowing' ? point.flow : 0;
};
const cover: Limit = {
  id: 'suctionCover:a',
  kind: 'suctionCover',
  greatestFlow: 0.003,
  hard: true,
  partId: 'a',
};

describe('the speed ladder', () => {
  it('gives the slowest speed on the step: it serves, and one step slower does not', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0005, max: 0.004, noNaN: true }), (leastFlow) => {
        const rung = rungFor(need(leastFlow));
        if (rung.kind !== 'served') throw new Error('these flows are in reach');
        expect(rung.flow).toBeGreaterThanOrEqual(leastFlow * (1 - 1e-6));
        expect(Math.abs(rung.ratio / step - Math.round(rung.ratio / step))).toBeLessThan(1e-6);
        if (rung.ratio > 600 / 3450 + step) {
          expect(flowAt(rung.ratio - step)).toBeLessThan(leastFlow);
        }
      }),
    );
  });

  it('gives head, watts and velocity of the same operating point', () => {
    const rung = rungFor(need(0.003));
    if (rung.kind !== 'served') throw new Error('in reach');
    const point = operatingPoint(curve, circuit, rung.ratio);
    expect(point).toMatchObject({ flow: rung.flow, head: rung.head });
    // Along a closed loop wire power is fixed + cube r^3.
    expect(rung.power).toBeCloseTo(45 + 1100 * rung.ratio ** 3, 9);
    const area = (bore: number) => (Math.PI / 4) * bore ** 2;
    expect(rung.velocity.suction).toBeCloseTo(rung.flow / area(0.057), 9);
    expect(rung.velocity.discharge).toBeCloseTo(rung.flow / area(0.0454), 9);
  });

  it('a need that asks for nothing runs at the slowest speed', () => {
    expect(rungFor(need(0))).toMatchObject({ kind: 'served', ratio: 600 / 3450 });
  });

  it('names the soft limits that a speed crosses and stays off the hard ones', () => {
    const velocity: Limit = { ...cover, id: 'v', kind: 'dischargeVelocity', hard: false };
    expect(rungFor(need(0.0035), { limits: [velocity] })).toMatchObject({
      kind: 'served',
      crossed: [velocity],
    });
    expect(rungFor(need(0.0035), { limits: [cover] })).toMatchObject({
      kind: 'unreachable',
      reason: { kind: 'beyondLimit', limit: cover },
      greatestReachableFlow: 0.003,
    });
  });

  it('rounding up to the step may not carry a speed over a hard limit', () => {
    const tight = { ...cover, greatestFlow: 0.0030001 };
    const coarse = { limits: [tight], ratioStep: 0.1 };
    expect(rungFor(need(0.003), coarse)).toMatchObject({ reason: { kind: 'beyondLimit' } });
  });
});

describe('the ends and the steps of the range', () => {
  it('the slowest speed can be set though it stands on no step', () => {
    const slowest = 605 / 3450;
    expect(rungFor(need(0), { minRatio: slowest })).toMatchObject({ ratio: slowest });
  });

  it('a flow had exactly on a step takes that step, not the next', () => {
    const rung = rungFor(need(flowAt(200 * step)));
    expect(rung.kind === 'served' && rung.ratio).toBeCloseTo(200 * step, 12);
  });

  it('a need of one flow alone is served where any speed can be set', () => {
    const exact = rungFor(need(0.003, { greatestFlow: 0.003 }), { ratioStep: 0 });
    expect(exact.kind === 'served' && exact.flow).toBeCloseTo(0.003, 10);
  });

  it('is not looked for beyond the fastest speed, which may be below the reference speed', () => {
    const above = need(flowAt(0.8));
    expect(rungFor(above, { maxRatio: 0.6 })).toMatchObject({
      reason: { kind: 'beyondTopSpeed' },
      greatestReachableFlow: flowAt(0.6),
    });
    expect(rungFor(need(flowAt(1.1)), { maxRatio: 1.2 }).kind).toBe('served');
  });

  it('where nothing flows yet a need of nothing has the head at rest', () => {
    const lifted = { ...circuit, staticHead: 5 };
    const ratio = 600 / 3450;
    // Affinity: head at no flow goes as the square of the speed.
    expect(rungFor(need(0), { circuit: lifted })).toMatchObject({
      kind: 'served',
      flow: 0,
      head: ratio ** 2 * curve.shutoffHead,
    });
  });

  it('a side without pipe has no velocity', () => {
    const bare = { ...circuit, suction: [] };
    const rung = rungFor(need(0.003), { circuit: bare });
    expect(rung.kind === 'served' && rung.velocity.suction).toBeUndefined();
  });
});

describe('why a need is unreachable', () => {
  it('beyond a hard limit, the tightest of them, even where the pump could not reach it', () => {
    const tighter = { ...cover, id: 'suctionCover:b', greatestFlow: 0.002 };
    const soft: Limit = {
      ...cover,
      id: 'v',
      kind: 'dischargeVelocity',
      greatestFlow: 1e-4,
      hard: false,
    };
    const limits = [soft, cover, tighter];
    expect(rungFor(need(0.0035), { limits })).toMatchObject({
      reason: { kind: 'beyondLimit', limit: tighter },
      greatestReachableFlow: 0.002,
    });
    expect(rungFor(need(0.05), { limits: [cover] })).toMatchObject({
      reason: { kind: 'beyondLimit', limit: cover },
    });
    expect(rungFor(need(0.05), { limits: [soft] })).toMatchObject({
      reason: { kind: 'beyondTopSpeed' },
      greatestReachableFlow: flowAt(1),
    });
  });

  it('beyond the top speed, with the flow that can be had', () => {
    expect(rungFor(need(0.05))).toMatchObject({
      reason: { kind: 'beyondTopSpeed' },
      greatestReachableFlow: flowAt(1),
    });
  });

  it('too slow to lift the water', () => {
    const rung = rungFor(need(0.001), { circuit: { ...circuit, staticHead: 30 } });
    // Shut-off head must pass the lift: r = sqrt(30/22).
    expect(rung).toMatchObject({
      reason: { kind: 'tooSlowToLift', leastRatio: Math.sqrt(30 / curve.shutoffHead) },
      greatestReachableFlow: 0,
    });
  });

  it('a least flow above the greatest', () => {
    const rung = rungFor(need(0.003, { greatestFlow: 0.002 }));
    expect(rung).toMatchObject({ reason: { kind: 'leastAboveGreatest' } });
  });

  it('too much water already at the slowest speed', () => {
    const rung = rungFor(need(0.0001, { greatestFlow: 0.0002 }));
    expect(rung).toMatchObject({
      reason: { kind: 'tooMuchAtSlowest', flow: flowAt(600 / 3450) },
    });
  });

  it('a speed step too coarse to land between least and greatest', () => {
    const narrow = need(0.003, { greatestFlow: 0.00301 });
    expect(rungFor(narrow, { ratioStep: 0.2 })).toMatchObject({
      reason: { kind: 'speedStepTooCoarse' },
    });
    expect(rungFor(narrow, { ratioStep: 0 }).kind).toBe('served');
  });
});

describe('cost', () => {
  it('1500 W at 0.30 a kilowatt-hour is 0.45 an hour', () => {
    // Definition of the kilowatt-hour: 1.5 kW x 1 h x 0.30.
    expect(costPerHour(1500, 0.3)).toBeCloseTo(0.45, 12);
  });

  it('refuses a power that is none', () => {
    expect(() => costPerHour(Number.NaN, 0.3)).toThrow(CoreError);
  });
});

it('wild needs never give a number that is none', () => {
  const flow = fc.double({ min: 0, max: 0.1, noNaN: true });
  fc.assert(
    fc.property(
      flow,
      fc.option(flow),
      fc.double({ min: 0, max: 30, noNaN: true }),
      (least, most, staticHead) => {
        const one = need(least, most === null ? {} : { greatestFlow: most });
        const rung = rungFor(one, { circuit: { ...circuit, staticHead } });
        const numbers =
          rung.kind === 'served'
            ? [rung.ratio, rung.flow, rung.head, rung.power]
            : [rung.greatestReachableFlow];
        expect(numbers.every((value) => Number.isFinite(value) && value >= 0)).toBe(true);
      },
    ),
  );
});
