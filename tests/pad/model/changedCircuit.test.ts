import { describe, expect, it } from 'vitest';
import { scaleCircuit } from '#core/fit/resistance.ts';
import type { CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { emptyPad, newFitting, newPipe } from '#pad/document/parts.ts';
import { padModel } from '#pad/model/assemble.ts';
import {
  circuitWithLoading,
  circuitWithSizes,
  circuitWithWater,
  loadingNow,
  sizeRange,
} from '#pad/model/changedCircuit.ts';

const inch = 0.0254;

function described() {
  const { described: circuit } = padModel(ownerPad);
  return circuit ?? expect.fail('the example has no circuit');
}

/** Every part that is no group, by its name. */
function leaves(parts: readonly CircuitPart[]): ReadonlyMap<string, CircuitPart> {
  const each = parts.flatMap((part): readonly (readonly [string, CircuitPart])[] =>
    part.kind === 'parallel'
      ? part.branches.flatMap((branch) => [...leaves(branch.parts)])
      : [[part.id, part]],
  );
  return new Map(each);
}

describe('pipes of one side in other nominal sizes', () => {
  const { plumbing } = ownerPad;
  const larger = leaves(circuitWithSizes(described(), plumbing, 'discharge', 1).discharge);
  const before = leaves(described().discharge);

  it('each pipe takes the next size of its own schedule', () => {
    // ASTM D1785, Schedule 40: 2-1/2 in is 2.875 in less twice 0.203 in; 2 in is 2.375 in less twice 0.154 in.
    expect(larger.get('return-run')).toMatchObject({ bore: expect.closeTo(2.469 * inch, 9) });
    expect(larger.get('return-1-run')).toMatchObject({ bore: expect.closeTo(2.067 * inch, 9) });
  });

  it('lengths, lifts and equipment stay', () => {
    expect(larger.get('filter')).toEqual(before.get('filter'));
    expect(larger.get('return-run')).toMatchObject({
      length: before.get('return-run')?.kind === 'pipe' ? expect.closeTo(52 * 0.3048, 9) : 0,
    });
  });

  it('fittings follow their table, typed coefficients stay', () => {
    // Crane TP-410: six standard elbows, K = 30 f_T each, f_T = 0.25/log10(e/3.7 D)^2, e = 0.0018 in.
    const friction = 0.25 / Math.log10((0.0018 * inch) / (3.7 * 2.469 * inch)) ** 2;
    expect(larger.get('return-elbows')).toMatchObject({ k: expect.closeTo(6 * 30 * friction, 9) });
    expect(larger.get('return-1-eyeball')).toMatchObject({
      k: 8,
      bore: expect.closeTo(2.067 * inch, 9),
    });
  });

  it('what readings have taught of the pipes is kept', () => {
    const taught = scaleCircuit(described(), 1, 1.7);
    const moved = leaves(circuitWithSizes(taught, plumbing, 'discharge', 1).discharge);
    for (const name of ['return-elbows', 'return-1-eyeball'] as const) {
      const [one, other] = [moved.get(name), larger.get(name)];
      if (one?.kind !== 'fitting' || other?.kind !== 'fitting') return expect.fail(name);
      expect(one.k).toBeCloseTo(1.7 * other.k, 12);
    }
    const run = moved.get('return-run');
    expect(run?.kind === 'pipe' && run.length).toBeCloseTo(1.7 * 52 * 0.3048, 9);
  });

  it('the other side stays, and no step changes nothing', () => {
    expect(circuitWithSizes(described(), plumbing, 'discharge', 1).suction).toEqual(
      described().suction,
    );
    expect(circuitWithSizes(described(), plumbing, 'suction', 0)).toEqual(described());
  });

  it('goes as far as the table of every pipe goes', () => {
    // Schedule sizes 3/4, 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 4, 5, 6 in; the returns are 1-1/2 in, the rest 2 in.
    expect(sizeRange(plumbing, 'discharge')).toMatchObject({ least: -3, most: 5, typed: 0 });
    expect(sizeRange(plumbing, 'discharge')?.mainSize(1).nominal).toBe('2-1/2 in');
    // Metric sizes 50, 63, 75, 90, 110 mm; the wall inlets are 50 mm.
    expect(sizeRange(lodgePad.plumbing, 'discharge')).toMatchObject({ least: 0, most: 3 });
  });

  it('a typed bore has no next size', () => {
    const suction = [
      newPipe('typed', { bore: 0.05, length: 3 }),
      newPipe('sized', { sizeId: 'sch40-2', length: 9 }),
      newFitting('elbow', 'elbow90', { bore: 0.05 }),
    ];
    const own = { ...emptyPad('us').plumbing, suction };
    expect(sizeRange(own, 'suction')).toMatchObject({ typed: 2 });
    expect(sizeRange(own, 'discharge')).toBeNull();
    const { described: circuit } = padModel({ ...emptyPad('us'), plumbing: own });
    const moved = leaves(
      circuitWithSizes(circuit ?? expect.fail('no circuit'), own, 'suction', 1).suction,
    );
    expect(moved.get('typed')).toMatchObject({ bore: 0.05 });
    expect(moved.get('sized')).toMatchObject({ bore: expect.closeTo(2.469 * inch, 9) });
  });
});

describe('the filter and the water', () => {
  it('a filter due for cleaning takes its dirty head, whatever the fit made of it', () => {
    // The example: 3 ft clean, 22 ft due, at the same flow.
    const { plumbing } = ownerPad;
    expect(loadingNow(plumbing)).toBe(0.2);
    for (const taught of [1, 1.7]) {
      const scaled = scaleCircuit(described(), 1, taught);
      const heads = [0, 1].map((loading) => {
        const filter = leaves(circuitWithLoading(scaled, plumbing, loading).discharge).get(
          'filter',
        );
        return filter?.kind === 'equipment' ? filter.factor * filter.referenceHead : Number.NaN;
      });
      expect(heads[0]).toBeCloseTo(taught * 3 * 0.3048, 9);
      expect(heads[1]).toBeCloseTo(taught * 22 * 0.3048, 9);
    }
    expect(loadingNow(emptyPad('us').plumbing)).toBeNull();
  });

  it('only the water becomes colder', () => {
    const cold = circuitWithWater(described(), 4);
    // Density of water at 4 degC, its greatest: 999.97 kg/m3 (from memory).
    expect(cold.water.density).toBeCloseTo(999.97, 1);
    expect(cold.discharge).toBe(described().discharge);
  });
});
