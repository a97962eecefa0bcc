import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { equipmentHead, filterFactor } from '#core/hydraulics/equipment.ts';

// Expected values are the law h = h0 (Q/Q0)^n worked by hand; the law itself is common practice,
// no source. The equipment is invented.
const heater = { referenceHead: 2, referenceFlow: 0.003, exponent: 2, factor: 1 };
const media = { referenceHead: 3, referenceFlow: 0.004, exponent: 1, factor: 1 };

const pieces = fc.record({
  referenceHead: fc.double({ min: 0.01, max: 30, noNaN: true }),
  referenceFlow: fc.double({ min: 1e-4, max: 0.05, noNaN: true }),
  exponent: fc.oneof(fc.constant(2), fc.double({ min: 1, max: 2.5, noNaN: true })),
  factor: fc.double({ min: 0.5, max: 10, noNaN: true }),
});
const flows = fc.double({ min: 1e-6, max: 0.1, noNaN: true });

describe('head lost in equipment', () => {
  it('half the flow through a heater costs a quarter, through clean media a half', () => {
    expect(equipmentHead(heater, 0.0015)).toBeCloseTo(0.5, 14);
    expect(equipmentHead(media, 0.002)).toBeCloseTo(1.5, 14);
  });

  it('four times the flow at exponent 1.5 costs eight times', () => {
    expect(equipmentHead({ ...heater, exponent: 1.5 }, 0.012)).toBeCloseTo(16, 12);
  });

  it('is the label head at the label flow, times the loading', () => {
    fc.assert(
      fc.property(pieces, (piece) => {
        const head = equipmentHead(piece, piece.referenceFlow);
        expect(head / (piece.referenceHead * piece.factor)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('no flow loses nothing, and nothing loses nothing', () => {
    fc.assert(fc.property(pieces, (piece) => equipmentHead(piece, 0) === 0));
    expect(equipmentHead({ ...heater, referenceHead: 0 }, 0.01)).toBe(0);
    expect(equipmentHead({ ...heater, factor: 0 }, 0.01)).toBe(0);
  });

  it('more flow loses more, and so does more loading', () => {
    fc.assert(
      fc.property(pieces, flows, (piece, flow) => {
        const head = equipmentHead(piece, flow);
        expect(equipmentHead(piece, flow * 1.01)).toBeGreaterThan(head);
        expect(equipmentHead({ ...piece, factor: piece.factor * 1.01 }, flow)).toBeGreaterThan(
          head,
        );
      }),
    );
  });

  it('the square, worked quickly, is the limit of the general power', () => {
    fc.assert(
      fc.property(pieces, flows, (piece, flow) => {
        const square = equipmentHead({ ...piece, exponent: 2 }, flow);
        const nearly = equipmentHead({ ...piece, exponent: 2 + 1e-12 }, flow);
        expect(nearly / square).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('loading of a filter', () => {
  it('goes in a straight line from clean to dirty', () => {
    const ends = { cleanHead: 2, dirtyHead: 9 };
    expect(filterFactor(ends, 0)).toBe(1);
    expect(filterFactor(ends, 0.5)).toBe(2.75);
    expect(filterFactor(ends, 1)).toBe(4.5);
    expect(filterFactor({ cleanHead: 2, dirtyHead: 2 }, 0.7)).toBe(1);
  });

  it('flow falls when the filter loads: the same flow costs more head', () => {
    const heads = fc.tuple(
      fc.double({ min: 0.1, max: 5, noNaN: true }),
      fc.double({ min: 1.1, max: 5, noNaN: true }),
      fc.double({ min: 0, max: 0.99, noNaN: true }),
    );
    fc.assert(
      fc.property(heads, ([cleanHead, times, loading]) => {
        const ends = { cleanHead, dirtyHead: cleanHead * times };
        const factor = filterFactor(ends, loading);
        expect(factor).toBeGreaterThanOrEqual(1);
        expect(factor).toBeLessThanOrEqual(times * (1 + 1e-14));
        expect(filterFactor(ends, loading + 0.01)).toBeGreaterThan(factor);
      }),
    );
  });

  it('gives the dirty head back when applied to the clean one', () => {
    const factor = filterFactor({ cleanHead: 2, dirtyHead: 9 }, 1);
    expect(equipmentHead({ ...heater, factor }, 0.003)).toBeCloseTo(9, 12);
  });
});

describe('equipment beyond the contract', () => {
  const calls = [equipmentHead];
  const refusals = [
    [
      'a negative head',
      { ...heater, referenceHead: -1 },
      1,
      new CoreError('reference head', -1, 'a number from 0 to 1000000 m'),
    ],
    [
      'no label flow',
      { ...heater, referenceFlow: 0 },
      1,
      new CoreError('reference flow', 0, 'a number from 1e-9 to 1000000 m3/s'),
    ],
    [
      'an exponent below 1',
      { ...heater, exponent: 0.99 },
      1,
      new CoreError('exponent', 0.99, 'a number from 1 to 2.5'),
    ],
    [
      'an exponent above 2.5',
      { ...heater, exponent: 2.51 },
      1,
      new CoreError('exponent', 2.51, 'a number from 1 to 2.5'),
    ],
    [
      'a negative loading',
      { ...heater, factor: -1 },
      1,
      new CoreError('factor', -1, 'a number from 0 to 1000'),
    ],
    ['a backward flow', heater, -1, new CoreError('flow', -1, 'a number from 0 to 1000000 m3/s')],
  ] as const;
  for (const [what, piece, flow, error] of refusals) {
    it(`${what} is refused with its range`, () => {
      for (const call of calls) expect(() => call(piece, flow)).toThrow(error);
    });
  }

  it('a filter that runs easier dirty than clean is refused', () => {
    expect(() => filterFactor({ cleanHead: 2, dirtyHead: 1 }, 0)).toThrow(
      new CoreError('dirty head', 1, 'a number from 2 to 1000000 m'),
    );
    expect(() => filterFactor({ cleanHead: 0, dirtyHead: 1 }, 0)).toThrow(
      new CoreError('clean head', 0, 'a number from 0.000001 to 1000000 m'),
    );
    for (const loading of [-0.01, 1.01, Number.NaN]) {
      expect(() => filterFactor({ cleanHead: 2, dirtyHead: 9 }, loading)).toThrow(
        new CoreError('loading', loading, 'a number from 0 to 1'),
      );
    }
  });

  it('any numbers give a finite number or a CoreError', () => {
    const wild = fc.oneof(fc.double(), fc.double({ min: -0.5, max: 3 }));
    fc.assert(
      fc.property(wild, wild, wild, wild, wild, (a, b, c, d, e) => {
        const piece = { referenceHead: a, referenceFlow: b, exponent: c, factor: d };
        for (const call of [
          () => equipmentHead(piece, e),
          () => filterFactor({ cleanHead: a, dirtyHead: b }, c),
        ]) {
          try {
            expect(Number.isFinite(call())).toBe(true);
          } catch (error) {
            expect(error).toBeInstanceOf(CoreError);
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});
