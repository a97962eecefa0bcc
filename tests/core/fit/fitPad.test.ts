import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { fitPad } from '#core/fit/fitPad.ts';
import type { PadBand, PadFit, Reading } from '#core/fit/padEvidence.ts';
import { typicalInstruments } from '#core/fit/padEvidence.ts';
import { parameterNames, priorDeviations } from '#core/fit/padModel.ts';
import { readingDeviation } from '#core/fit/padReadings.ts';
import { scaleCircuit } from '#core/fit/resistance.ts';
import { systemHead } from '#core/hydraulics/circuit.ts';
import { circuit, evidenceOf, trueReading } from './padFixtures.ts';

// Truth is put in by construction here: readings come from a pad that the fit does not see.
const believed = parameterNames.map(() => 0);
const dirtier = [0.1, 0.4, 0, 0, 0, 0.1, 0.3];

/** The common case: one filter gauge, the speed and the watts of the drive. */
function commonReading(id: string, ratio: number, truth = dirtier): Reading {
  const { dischargePressure, power } = trueReading(truth, ratio);
  return { id, ratio, dischargePressure, power };
}

const width = (fit: PadFit, ratio: number, answer: keyof PadBand) =>
  fit.bandAt(ratio)[answer].high - fit.bandAt(ratio)[answer].low;
const kinds = (items: readonly { kind: string }[]) => items.map((item) => item.kind);

describe('fitting a pad with one filter gauge, speed and watts', () => {
  const fit = fitPad(evidenceOf([commonReading('a', 1), commonReading('b', 0.5)]));

  it.each([0.4, 0.7, 1])('the bands hold the true flow, head and power at %f', (ratio) => {
    const truth = trueReading(dirtier, ratio);
    const band = fit.bandAt(ratio);
    for (const answer of ['flow', 'head', 'power'] as const) {
      expect(band[answer].low).toBeLessThan(truth[answer]);
      expect(band[answer].high).toBeGreaterThan(truth[answer]);
    }
  });

  it('finds that the discharge side resists more than described', () => {
    expect(fit.dischargeFactor).toBeGreaterThan(1.2);
    expect(fit.dischargeFactor).toBeLessThan(Math.exp(0.4) * 1.1);
  });

  it('shows every reading beside the fit in its own unit', () => {
    expect(fit.residuals.map(({ id, quantity }) => `${id} ${quantity}`)).toEqual([
      'a dischargePressure',
      'a power',
      'b dischargePressure',
      'b power',
    ]);
    for (const { measured, predicted, residual } of fit.residuals) {
      expect(measured - predicted).toBeCloseTo(residual, 6);
      expect(Math.abs(residual / measured)).toBeLessThan(0.15);
    }
  });

  it('says what it took for granted', () => {
    expect(kinds(fit.assumptions)).toEqual([
      'curveWithinTolerance',
      'flowReadFromCurve',
      'suctionLossFromPipes',
      'filterGaugeReadsDischargeSide',
      'gaugeLevelUnknown',
    ]);
  });

  it('finds no contradiction in readings that agree', () => {
    expect(fit.contradictions).toEqual([]);
  });

  it('an estimated curve gives a much wider band of flow', () => {
    const rough = fitPad(
      evidenceOf([commonReading('a', 1), commonReading('b', 0.5)], { curveKnown: 'estimated' }),
    );
    expect(kinds(rough.assumptions)).toContain('curveEstimated');
    expect(width(rough, 1, 'flow')).toBeGreaterThan(1.5 * width(fit, 1, 'flow'));
  });

  it('only a nameplate and no reading still gives an answer, with the widest band', () => {
    const blind = fitPad(evidenceOf([], { curveKnown: 'estimated' }));
    expect(kinds(blind.assumptions)).toEqual([
      'curveEstimated',
      'circuitAsDescribed',
      'flowReadFromCurve',
      'suctionLossFromPipes',
      'efficiencyTypical',
      'fixedShareTypical',
    ]);
    expect(width(blind, 1, 'flow')).toBeGreaterThan(width(fit, 1, 'flow'));
    expect(width(blind, 1, 'power')).toBeGreaterThan(width(fit, 1, 'power'));
  });
});

describe('what the bands rest on', () => {
  it('a better gauge narrows the flow', () => {
    const readings = [commonReading('a', 1), commonReading('b', 0.5)];
    const fine = fitPad(
      evidenceOf(readings, {
        instruments: { ...typicalInstruments, filterGauge: { grade: '3A', span: 413_685 } },
      }),
    );
    expect(width(fine, 1, 'flow')).toBeLessThan(width(fitPad(evidenceOf(readings)), 1, 'flow'));
  });

  it('one more reading never widens a band much', () => {
    const before = fitPad(evidenceOf([commonReading('a', 1)]));
    const after = fitPad(evidenceOf([commonReading('a', 1), commonReading('b', 0.5)]));
    for (const answer of ['flow', 'head', 'power'] as const) {
      expect(width(after, 0.6, answer)).toBeLessThan(1.02 * width(before, 0.6, answer));
    }
  });

  it('the reading named as narrowing really narrows by what it promises', () => {
    const start = [commonReading('a', 1)];
    const before = fitPad(evidenceOf(start, { curveKnown: 'estimated' }));
    const { instrument, ratio, widthBefore, widthAfter } = before.narrowingOf.flow;
    expect(widthAfter).toBeLessThan(widthBefore);
    expect(instrument).toBe('flowMeter');
    const flow = before.bandAt(ratio).flow;
    const extra = { id: 'x', ratio, flow: Math.sqrt(flow.low * flow.high) };
    const after = fitPad(evidenceOf([...start, extra], { curveKnown: 'estimated' }));
    const mean = (fit: PadFit) =>
      [0.3, 0.475, 0.65, 0.825, 1].reduce((sum, at) => {
        const band = fit.bandAt(at).flow;
        return sum + (band.high - band.low) / Math.sqrt(band.low * band.high) / 5;
      }, 0);
    expect(mean(before)).toBeCloseTo(widthBefore, 6);
    expect(mean(after) / widthAfter).toBeGreaterThan(0.9);
    expect(mean(after) / widthAfter).toBeLessThan(1.1);
  });

  it('after watts at the two fastest speeds the lowest speed is where power wants a reading', () => {
    const watts = (id: string, ratio: number) => ({
      id,
      ratio,
      power: trueReading(dirtier, ratio).power,
    });
    const fit = fitPad(evidenceOf([watts('a', 1), watts('b', 0.87)]));
    expect(fit.narrowingOf.power).toMatchObject({ instrument: 'wattMeter', ratio: 0.3 });
    const truth = trueReading(dirtier, 0.3).power;
    expect(fit.bandAt(0.3).power.low).toBeLessThan(truth);
    expect(fit.bandAt(0.3).power.high).toBeGreaterThan(truth);
  });

  it('the 95 % bands hold the truth about that often when truth and errors are as stated', () => {
    // Seeded normal draws (Box-Muller over a small congruential generator), so the count is fixed.
    let seed = 12_345;
    const uniform = () => {
      seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
      return (seed + 0.5) / 2_147_483_648;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const spreads = priorDeviations(evidenceOf([]));
    const held = { flow: 0, head: 0, power: 0 };
    const rounds = 120;
    for (let round = 0; round < rounds; round += 1) {
      const truth = spreads.map((spread) => spread * normal());
      const readings = [1, 0.6].map((ratio): Reading => {
        const { dischargePressure, power } = trueReading(truth, ratio);
        const off = (quantity: 'dischargePressure' | 'power', value: number) =>
          value + normal() * readingDeviation(quantity, value, typicalInstruments);
        return {
          id: String(ratio),
          ratio,
          dischargePressure: off('dischargePressure', dischargePressure),
          power: off('power', power),
        };
      });
      const band = fitPad(evidenceOf(readings)).bandAt(0.4);
      const at = trueReading(truth, 0.4);
      for (const answer of ['flow', 'head', 'power'] as const) {
        if (band[answer].low <= at[answer] && at[answer] <= band[answer].high) held[answer] += 1;
      }
    }
    for (const answer of ['flow', 'head', 'power'] as const) {
      expect(held[answer] / rounds).toBeGreaterThan(0.9);
    }
  }, 60_000);
});

describe('readings that cannot be right together', () => {
  const found = (readings: Reading[], more = {}) => {
    const fit = fitPad(evidenceOf(readings, more));
    return kinds(fit.contradictions);
  };
  const at = (ratio: number) => trueReading(believed, ratio);

  it('power that falls as speed rises', () => {
    expect(
      found([
        { id: 'a', ratio: 0.5, power: 900 },
        { id: 'b', ratio: 1, power: 700 },
      ]),
    ).toContain('powerFallsWithSpeed');
  });

  it('flow and pressure that fall as speed rises', () => {
    const readings = [
      { id: 'a', ratio: 0.5, flow: 0.004, dischargePressure: 90_000 },
      { id: 'b', ratio: 1, flow: 0.003, dischargePressure: 40_000 },
    ];
    expect(found(readings)).toContain('flowFallsWithSpeed');
    expect(found(readings)).toContain('pressureFallsWithSpeed');
  });

  it('flow that rises faster than speed', () => {
    const flow = at(1).flow;
    expect(
      found([
        { id: 'a', ratio: 0.5, flow: 0.3 * flow },
        { id: 'b', ratio: 1, flow },
      ]),
    ).toContain('flowRisesFasterThanSpeed');
  });

  it('but not where the water has to be lifted first', () => {
    const lifted = { ...circuit, staticHead: 3 };
    const evidence = evidenceOf([], { circuit: lifted });
    const flowAt = (ratio: number) => trueReading(believed, ratio, evidence).flow;
    const readings = [0.45, 1].map((ratio) => ({ id: String(ratio), ratio, flow: flowAt(ratio) }));
    const fit = fitPad({ ...evidence, readings });
    expect(flowAt(1) / flowAt(0.45)).toBeGreaterThan(1 / 0.45);
    expect(kinds(fit.contradictions)).not.toContain('flowRisesFasterThanSpeed');
  });

  it('gauges that disagree with the meter', () => {
    const { dischargePressure, suctionVacuum, flow } = at(1);
    const gauges = { id: 'a', ratio: 1, dischargePressure, suctionVacuum, gaugeHeight: 0 };
    expect(found([{ ...gauges, flow: 0.5 * flow }])).toContain('gaugesDisagreeWithMeter');
    expect(found([{ ...gauges, flow }])).toEqual([]);
  });

  it('a head above shut-off', () => {
    expect(
      found([{ id: 'a', ratio: 1, dischargePressure: 350_000, suctionVacuum: 10_000 }]),
    ).toContain('headAboveShutoff');
  });

  it('less power than the water gets', () => {
    const { dischargePressure, suctionVacuum, flow } = at(1);
    expect(
      found([{ id: 'a', ratio: 1, dischargePressure, suctionVacuum, flow, power: 200 }]),
    ).toContain('powerBelowHydraulic');
  });

  it('more watts than volts times amperes', () => {
    expect(found([{ id: 'a', ratio: 1, power: 1500, voltage: 230, current: 4 }])).toContain(
      'powerAboveApparent',
    );
  });
});

describe('amperes', () => {
  it('with watts and volts give the power factor and no more', () => {
    const fit = fitPad(evidenceOf([{ id: 'a', ratio: 0.3, power: 130, voltage: 230, current: 1 }]));
    expect(fit.powerFactors[0]?.powerFactor).toBeCloseTo(130 / 230, 12);
    expect(fit.residuals.map((one) => one.quantity)).toEqual(['power']);
  });

  it('without watts stand in for them, widely, and it is said', () => {
    const power = trueReading(believed, 1).power;
    const amps = fitPad(
      evidenceOf([{ id: 'a', ratio: 1, voltage: 230, current: power / 230 / 0.9 }]),
    );
    const watts = fitPad(evidenceOf([{ id: 'a', ratio: 1, power }]));
    expect(kinds(amps.assumptions)).toContain('powerFactorTypical');
    expect(width(amps, 1, 'power')).toBeGreaterThan(2 * width(watts, 1, 'power'));
  });
});

describe('edges', () => {
  it('scaling a circuit scales its loss exactly and leaves the lift', () => {
    const lifted = { ...circuit, staticHead: 1.5 };
    const scaled = scaleCircuit(lifted, 1.7, 1.7);
    const loss = systemHead(lifted, 0.004) - 1.5;
    expect(systemHead(scaled, 0.004)).toBeCloseTo(1.5 + 1.7 * loss, 10);
  });

  it('a pump too weak for the lift has flow from nothing to what its best curve would give', () => {
    const fit = fitPad(evidenceOf([], { circuit: { ...circuit, staticHead: 10 } }));
    const band = fit.bandAt(0.3);
    expect(band.flow).toEqual({ low: 0, high: 0 });
    const near = fit.bandAt(Math.sqrt(10 / 22) * 0.999).flow;
    expect(near.low).toBe(0);
    expect(near.high).toBeGreaterThan(0);
  });

  it('refuses a reading out of range, naming it', () => {
    expect(() => fitPad(evidenceOf([{ id: 'a', ratio: 1, power: -5 }]))).toThrow(CoreError);
    expect(() => fitPad(evidenceOf([{ id: 'a', ratio: 9 }]))).toThrow(
      'ratio is 9; it must be a number from 0.05 to 2.',
    );
  });

  it('wild readings never give a number that is none', () => {
    const maybe = (min: number, max: number) =>
      fc.option(fc.double({ min, max, noNaN: true }), { nil: undefined });
    const reading = fc.record({
      ratio: fc.double({ min: 0.05, max: 2, noNaN: true }),
      flow: maybe(0, 0.05),
      dischargePressure: maybe(-1e5, 1e6),
      suctionVacuum: maybe(-1e5, 1e5),
      gaugeHeight: maybe(-5, 5),
      power: maybe(0.1, 1e4),
      current: maybe(0.01, 50),
      voltage: maybe(1, 500),
    });
    fc.assert(
      fc.property(
        fc.array(reading, { maxLength: 4 }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        fc.constantFrom('dataSheet' as const, 'estimated' as const),
        (some, staticHead, curveKnown) => {
          const readings = some.map((one, index) => ({ ...one, id: String(index) }));
          const fit = fitPad(
            evidenceOf(readings, { curveKnown, circuit: { ...circuit, staticHead } }),
          );
          for (const ratio of [0.05, 0.5, 2]) {
            for (const { low, high } of Object.values(fit.bandAt(ratio))) {
              expect(Number.isFinite(low) && Number.isFinite(high)).toBe(true);
              expect(low).toBeGreaterThanOrEqual(0);
              expect(high).toBeGreaterThanOrEqual(low);
            }
          }
          for (const { residual, deviations } of fit.residuals) {
            expect(Number.isFinite(residual) && Number.isFinite(deviations)).toBe(true);
          }
          const { widthBefore, widthAfter } = fit.narrowing;
          expect(widthAfter).toBeLessThanOrEqual(widthBefore);
        },
      ),
      { numRuns: 60 },
    );
  }, 60_000);
});
