import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/errors.ts';
import { fitCircuit, flowFromHead } from '#core/fitCircuit.ts';
import { pumpFromPoints, pumpHead } from '#core/pump.ts';

const onLaw =
  (lift: number, k: number, exponent = 2) =>
  (flow: number) => ({
    id: String(flow),
    flow,
    head: lift + k * flow ** exponent,
  });
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a circuit from head against flow', () => {
  it('gives back the law that the readings follow, with and without lift', () => {
    fc.assert(
      fc.property(number(0, 5), number(1e4, 1e6), (lift, k) => {
        const fit = fitCircuit([0.001, 0.003, 0.006].map(onLaw(lift, k)), { withLift: true });
        if (fit.kind !== 'fitted') throw new Error('three flows are enough');
        expect(fit.lift).toBeCloseTo(lift, 6);
        expect(fit.k / k).toBeCloseTo(1, 6);
        const closed = fitCircuit([onLaw(0, k)(0.004)]);
        if (closed.kind !== 'fitted') throw new Error('one flow is enough without lift');
        expect(closed.k / k).toBeCloseTo(1, 9);
      }),
    );
  });

  it('holds a lift that would be negative at nothing', () => {
    const fit = fitCircuit([onLaw(-1, 5e5)(0.003), onLaw(-1, 5e5)(0.006)], { withLift: true });
    expect(fit).toMatchObject({ kind: 'fitted', lift: 0, held: 'lift' });
  });

  it('says how many flows it needs', () => {
    const one = [onLaw(1, 5e5)(0.003)];
    expect(fitCircuit(one, { withLift: true })).toEqual({
      kind: 'notEnoughReadings',
      flowsNeeded: 2,
    });
    expect(fitCircuit([])).toEqual({ kind: 'notEnoughReadings', flowsNeeded: 1 });
  });

  it('a better gauge gives a tighter band', () => {
    const spread = (headTolerance: number) => {
      const fit = fitCircuit([{ id: 'a', flow: 0.004, head: 10, headTolerance }]);
      if (fit.kind !== 'fitted') throw new Error('one flow is enough without lift');
      return fit.bandAt(0.004).high - fit.bandAt(0.004).low;
    };
    expect(spread(0.2)).toBeLessThan(spread(1));
    // A 95 % tolerance of 0.2 m on the one reading is a 95 % band of about +-0.2 m at its flow.
    expect(spread(0.2)).toBeCloseTo(0.4, 1);
  });

  it('refuses a flow that is none', () => {
    expect(() => fitCircuit([{ id: 'a', flow: 0, head: 3 }])).toThrow(CoreError);
  });
});

describe('flow from the pump curve', () => {
  const curve = pumpFromPoints([
    { flow: 0, head: 22 },
    { flow: 0.003, head: 19.5 },
    { flow: 0.006, head: 12 },
  ]);

  it('is the flow at which the pump makes that head, at any speed', () => {
    fc.assert(
      fc.property(number(0.0005, 0.0058), number(0.3, 1.2), (flow, ratio) => {
        const found = flowFromHead(curve, pumpHead(curve, flow * ratio, ratio), ratio);
        expect(found.kind === 'found' && found.flow / (flow * ratio)).toBeCloseTo(1, 6);
        expect(found.kind === 'found' && found.extrapolated).toBe(false);
      }),
    );
  });

  it('says when the head is above shut-off or the flow past the data', () => {
    expect(flowFromHead(curve, 12, 0.5)).toEqual({ kind: 'aboveShutoff', shutoffHead: 5.5 });
    expect(flowFromHead(curve, 5, 1)).toMatchObject({ kind: 'found', extrapolated: true });
  });
});
