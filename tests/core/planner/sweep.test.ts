import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { pipeSizes } from '#core/hydraulics/pipe.ts';
import type { FoundDay } from '#core/planner/cheapestDay.ts';
import { settableRatios } from '#core/planner/inputs.ts';
import { type SweptDay, sweepCheapestDay } from '#core/planner/sweep.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { pumpFromThreePoints } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { ordinaryCase } from './cases.ts';
import { asked, evenly, foundIn } from './sweepFixtures.ts';

const anySeed = fc.integer({ min: 0, max: 5000 });

/*
 * One price and only water to move. Power F + c r^3 and flow q r give the price of a litre
 * (F + c r^3)/(q r), least at r* = (F/2c)^(1/3): calculus. Less water than r* moves all day: r* for
 * part of it, price in proportion; more: one steady speed all day, since power is convex in the
 * flow (Jensen, Acta Mathematica 30, 1906).
 */
describe('one price and only turnovers', () => {
  const [fixed, cube, flow, volume, price] = [54, 900, 0.006, 60, 0.25];
  const best = (fixed / (2 * cube)) ** (1 / 3);
  const steadyRatio = (turnovers: number) => (turnovers * volume) / 86_400 / flow;
  const law = (turnovers: number) => {
    const ratio = Math.max(best, steadyRatio(turnovers));
    const share = Math.min(1, steadyRatio(turnovers) / best);
    return (share * 24 * price * (fixed + cube * ratio ** 3)) / 1000;
  };
  const speeds = settableRatios({ least: 0.15, top: 1, step: 0.005 }, []).map((ratio) => ({
    ratio,
    flow: flow * ratio,
    power: fixed + cube * ratio ** 3,
  }));
  const narrowTo = 0.01;
  const sweep = sweepCheapestDay({
    values: evenly(0, 8, 33),
    inputsAt: (turnovers) => ({ ...asked, speeds, leastVolume: turnovers * volume }),
    narrowTo,
  });

  it('the price follows the law', () => {
    for (const swept of sweep.days) {
      const expected = law(swept.value);
      // Speeds come in steps of 0.005, whose chord lies less than 0.1 % above the cube.
      expect(foundIn(swept).cost).toBeGreaterThanOrEqual(expected * (1 - 1e-9));
      expect(foundIn(swept).cost).toBeLessThanOrEqual(expected * 1.001 + 1e-12);
    }
  });

  it('the plan changes where r* all day is just enough, and nowhere else', () => {
    const enough = (best * flow * 86_400) / volume;
    const rests = sweep.changes.filter(({ differences }) =>
      differences.some((each) => each.kind === 'stops' && !each.stops),
    );
    expect(rests).toHaveLength(1);
    // A rest of less than ten minutes does not count as one.
    expect(rests[0]?.after.value).toBeLessThanOrEqual(enough + narrowTo);
    expect(rests[0]?.before.value).toBeGreaterThanOrEqual(enough * (1 - 10 / 1440) - narrowTo);
    const others = sweep.changes.filter(
      ({ before, differences }) =>
        before.value > 0.25 && differences.some(({ kind }) => kind !== 'stops'),
    );
    expect(others).toEqual([]);
  });

  it('the slope is that of the law', () => {
    for (const { value, slope } of sweep.days.slice(1, -1)) {
      const rise = (law(value + 0.25) - law(value)) / 0.25;
      expect(Math.abs((slope ?? 0) / rise - 1)).toBeLessThan(0.01);
    }
  });
});

describe('whatever is asked for', { timeout: 60_000 }, () => {
  it('more turnovers are never cheaper, and each costs no less than the one before', () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const inputs = ordinaryCase(seed, 24);
        const { days } = sweepCheapestDay({
          values: evenly(0, 200, 9),
          inputsAt: (leastVolume) => ({ ...inputs, leastVolume }),
        });
        const found = days.filter(({ day }) => day?.kind === 'found').map(foundIn);
        for (const [place, day] of found.slice(1).entries()) {
          const before = found[place] as FoundDay;
          expect(day.cost).toBeGreaterThanOrEqual(before.bound - 1e-12);
          const next = found[place + 2];
          // The least cost of a linear programme is convex in what it asks: Dantzig, 1963.
          if (next !== undefined)
            expect(before.cost + next.cost).toBeGreaterThanOrEqual(2 * day.bound - 1e-12);
        }
      }),
      { numRuns: 40, seed: 21 },
    );
  });

  it('more hours of a need are never cheaper, and once there is no day there is none further on', () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const inputs = ordinaryCase(seed, 24);
        const { days, changes } = sweepCheapestDay({
          values: evenly(0, 720, 9),
          inputsAt: (minutes) => ({
            ...inputs,
            needs: inputs.needs.map((need, place) => (place === 0 ? { ...need, minutes } : need)),
          }),
          narrowTo: 4,
        });
        const lost = days.findIndex(({ day }) => day?.kind !== 'found');
        const kept = lost < 0 ? days : days.slice(0, lost);
        expect(days.slice(kept.length).every(({ character }) => character === null)).toBe(true);
        for (const [place, day] of kept.slice(1).entries())
          expect(foundIn(day).cost).toBeGreaterThanOrEqual(
            foundIn(kept[place] as SweptDay).bound - 1e-12,
          );
        const ends = changes.filter(({ differences: [first] }) => first?.kind === 'day');
        expect(ends).toHaveLength(lost > 0 ? 1 : 0);
      }),
      { numRuns: 30, seed: 22 },
    );
  });

  it('all prices times k: the cost times k, and the same plan', () => {
    fc.assert(
      fc.property(anySeed, (seed) => {
        const inputs = ordinaryCase(seed, 24);
        const at = (k: number) => ({
          ...inputs,
          prices: inputs.prices.map((span) => ({ ...span, price: span.price * k })),
        });
        // Halving and doubling leave every digit as it is, so that nothing but the law is tested.
        const values = [0.25, 0.5, 1, 2, 4];
        const { days, changes } = sweepCheapestDay({ values, inputsAt: at });
        const today = foundIn(days[2] as SweptDay);
        for (const swept of days) {
          expect(foundIn(swept).cost).toBeCloseTo(swept.value * today.cost, 12);
          expect(foundIn(swept).blocks).toEqual(today.blocks);
        }
        expect(changes).toEqual([]);
      }),
      { numRuns: 40, seed: 23 },
    );
  });

  it('a larger bore never makes the day dearer on a loop without lift', () => {
    // Same power, more flow at every speed: Darcy–Weisbach, whose loss falls with the bore.
    const bores = pipeSizes.filter(({ series }) => series === 'sch40').map(({ bore }) => bore);
    const curve = pumpFromThreePoints([
      { flow: 0, head: 20 },
      { flow: 0.004, head: 17 },
      { flow: 0.008, head: 8 },
    ]);
    const circuit = (bore: number, length: number): Circuit => ({
      suction: [{ kind: 'pipe', id: 'in', bore: 0.0627, length: 9, roughness: 1.5e-6 }],
      discharge: [
        { kind: 'pipe', id: 'out', bore, length, roughness: 1.5e-6 },
        {
          kind: 'equipment',
          id: 'filter',
          referenceHead: 3,
          referenceFlow: 0.004,
          exponent: 1.5,
          factor: 1,
        },
      ],
      staticHead: 0,
      water: water(25),
    });
    const ratios = settableRatios({ least: 0.2, top: 1, step: 0.0125 });
    const speedsAt = (bore: number, length: number) => {
      const compiled = compileCircuit(circuit(bore, length));
      return ratios.flatMap((ratio) => {
        const point = operatingPoint(curve, compiled, ratio);
        const power = 45 + 1200 * ratio ** 3;
        return point.kind === 'flowing' ? [{ ratio, flow: point.flow, power }] : [];
      });
    };
    let compared = 0;
    fc.assert(
      fc.property(anySeed, fc.integer({ min: 5, max: 80 }), (seed, length) => {
        const inputs = { ...ordinaryCase(seed, 2), limits: [], quiet: [] };
        const { days } = sweepCheapestDay({
          values: bores.slice(2),
          inputsAt: (bore) => ({ ...inputs, speeds: speedsAt(bore, length) }),
        });
        const first = days.findIndex(({ day }) => day?.kind === 'found');
        const found = first < 0 ? [] : days.slice(first).map(foundIn);
        for (const [place, day] of found.slice(1).entries())
          expect(day.bound).toBeLessThanOrEqual((found[place]?.cost ?? 0) + 1e-12);
        compared += found.length;
      }),
      { numRuns: 12, seed: 24 },
    );
    expect(compared).toBeGreaterThan(40);
  });
});
