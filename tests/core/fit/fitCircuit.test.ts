import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { fitCircuit, flowFromHead } from '#core/fit/fitCircuit.ts';
import { pumpFromPoints, pumpHead } from '#core/pump/pump.ts';

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
    // A flow beyond any pool is refused all the same.
    const flood = { id: 'a', flow: 11, head: 3 };
    expect(() => fitCircuit([flood], { withLift: true })).toThrow('flow is 11');
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

  it('weighs each reading by its tolerance, whatever the power of the flow', () => {
    // Least squares through the origin: k = sum(w x h) / sum(w x x), x = Q^n, w = (2/tolerance)^2
    // (JCGM 100:2008); the variance of k is 1 over the second sum.
    const fit = fitCircuit(
      [
        { id: 'a', flow: 0.002, head: 3, headTolerance: 0.2 },
        { id: 'b', flow: 0.004, head: 9, headTolerance: 0.6 },
        { id: 'c', flow: 0.006, head: 20 },
      ],
      { exponent: 1.8 },
    );
    if (fit.kind !== 'fitted') throw new Error('three flows are enough');
    const x = [0.002 ** 1.8, 0.004 ** 1.8, 0.006 ** 1.8] as const;
    // Three hundredths of 20 m where no tolerance is given (common practice, no source).
    const w = [100, (2 / 0.6) ** 2, (2 / 0.6) ** 2] as const;
    const squares = w[0] * x[0] ** 2 + w[1] * x[1] ** 2 + w[2] * x[2] ** 2;
    const k = (w[0] * x[0] * 3 + w[1] * x[1] * 9 + w[2] * x[2] * 20) / squares;
    expect(fit.k / k).toBeCloseTo(1, 12);
    expect(fit).toMatchObject({ lift: 0, held: 'neither', exponent: 1.8 });
    expect(fit.residuals.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
    expect(fit.residuals[2]?.residual).toBeCloseTo(20 - k * x[2], 9);
    const wide = fit.bandAt(0.005);
    const deviation = 0.005 ** 1.8 / Math.sqrt(squares);
    expect((wide.high - wide.low) / (2 * 1.96 * deviation)).toBeCloseTo(1, 2);
  });

  it('flows within a thousandth of each other count as one', () => {
    const two = (ratio: number) =>
      fitCircuit([onLaw(1, 5e5)(0.004), onLaw(1, 5e5)(0.004 * ratio)], { withLift: true }).kind;
    expect(two(1.0009)).toBe('notEnoughReadings');
    expect(two(1.0011)).toBe('fitted');
  });

  it('says which of the two came out negative', () => {
    const falling = [
      { id: 'a', flow: 0.002, head: 9 },
      { id: 'b', flow: 0.006, head: 5 },
    ];
    expect(fitCircuit(falling, { withLift: true })).toMatchObject({ k: 0, held: 'loss' });
    const sound = [0.002, 0.006].map(onLaw(2, 2e5));
    expect(fitCircuit(sound, { withLift: true })).toMatchObject({ held: 'neither' });
  });

  it('a head of nothing is a reading too, good to a centimetre', () => {
    const fit = fitCircuit([{ id: 'a', flow: 0.004, head: 0 }]);
    expect(fit).toMatchObject({ kind: 'fitted', k: 0 });
  });

  it.each([
    ['flow is 0', { flow: 0 }],
    ['flow is 11', { flow: 11 }],
    ['head is -1', { head: -1 }],
    ['head is 1001', { head: 1001 }],
    ['headTolerance is 0', { headTolerance: 0 }],
  ])('refuses a reading whose %s', (message, wrong) => {
    expect(() => fitCircuit([{ id: 'a', flow: 0.004, head: 3, ...wrong }])).toThrow(message);
  });

  it('refuses an exponent or a flow out of its range', () => {
    const reading = { id: 'a', flow: 0.004, head: 3 };
    expect(() => fitCircuit([reading], { exponent: 0.9 })).toThrow('exponent is 0.9');
    const fit = fitCircuit([reading]);
    if (fit.kind !== 'fitted') throw new Error('one flow is enough without lift');
    expect(() => fit.headAt(-1)).toThrow(CoreError);
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

  it('reaches past the data for as long as the curve falls', () => {
    // H = 20 - 2e5 Q^2 has its 4 m at 0.00894 m3/s, beyond the data's end.
    const law = { shutoffHead: 20, lastFlow: 0.002, head: (q: number) => 20 - 2e5 * q * q };
    const far = flowFromHead(law, 4, 1);
    expect(far.kind === 'found' && far.flow).toBeCloseTo(Math.sqrt(16 / 2e5), 12);
    expect(flowFromHead(law, 20, 1)).toMatchObject({ kind: 'found', extrapolated: false });
    const level = { shutoffHead: 20, lastFlow: 0.002, head: () => 20 };
    expect(() => flowFromHead(level, 4, 1)).toThrow(
      'curve is 4; it must be a curve that falls to the head asked.',
    );
  });

  it('the last flow of the data is not past it, at any speed', () => {
    const law = { shutoffHead: 20, lastFlow: 0.002, head: (q: number) => 20 - 2e5 * q * q };
    fc.assert(
      fc.property(number(0.3, 1.2), (ratio) => {
        const last = flowFromHead(law, 19.2 * ratio ** 2, ratio);
        expect(last.kind === 'found' && last.flow).toBeCloseTo(0.002 * ratio, 12);
        expect(last.kind === 'found' && last.extrapolated).toBe(false);
      }),
    );
  });

  it('refuses a head or a speed out of its range', () => {
    expect(() => flowFromHead(curve, -1, 1)).toThrow('head is -1');
    expect(() => flowFromHead(curve, 1, 0)).toThrow('ratio is 0');
    expect(() => flowFromHead(curve, 1, 2.1)).toThrow('ratio is 2.1');
  });

  it('says when the head is above shut-off or the flow past the data', () => {
    expect(flowFromHead(curve, 12, 0.5)).toEqual({ kind: 'aboveShutoff', shutoffHead: 5.5 });
    expect(flowFromHead(curve, 5, 1)).toMatchObject({ kind: 'found', extrapolated: true });
  });
});
