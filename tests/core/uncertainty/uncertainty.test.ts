import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPad } from '#core/fit/fitPad.ts';
import type { PadEvidence, PadSpread, SettledPad } from '#core/fit/padEvidence.ts';
import { parameterNames, priorDeviations } from '#core/fit/padModel.ts';
import {
  monteCarloSamples,
  partingOf,
  sampleBand,
  uncertaintyOf,
} from '#core/uncertainty/uncertainty.ts';
import { curve, evidenceOf, trueReading } from '../fit/padFixtures.ts';
import { anyCircuit } from '../hydraulics/anyCircuit.ts';
import { flatPower, flowAt, only, powerAt } from './uncertaintyFixtures.ts';

/*
 * How far the ends of a 95 % band of n trials scatter, in standard deviations of the answer: for a
 * normal law the root of p(1 - p)/n over the density at 1.96, 0.0584 (standard tables). Five of these
 * are allowed, so that a fixed seed passes for good reason and a wrong band does not.
 */
const scatter = (trials: number) => (5 * Math.sqrt((0.025 * 0.975) / trials)) / 0.0584;

const seed = 11;
const drawn = (spread: PadSpread, count: number) => {
  const next = monteCarloSamples(spread, seed);
  return Array.from({ length: count }, () => next());
};
const none = parameterNames.map(() => parameterNames.map(() => 0));
const variances = (given: Partial<Record<(typeof parameterNames)[number], number>>) =>
  parameterNames.map((row) => parameterNames.map((col) => (row === col ? (given[row] ?? 0) : 0)));
describe('a power proportional to one lognormal number', () => {
  // Closed form: P = 1000 r^3 exp(s z), so 95 % lies within exp(+-1.96 s) (standard tables). The width
  // beforehand, s = 0.1 for a known power, is common practice, no source.
  it.each([0.4, 1])('has the exact band by slopes and by trials at ratio %f', (ratio) => {
    const { spread } = fitPad(evidenceOf([], { power: flatPower }));
    const most = 1000 * ratio ** 3;
    const band = only(uncertaintyOf(spread).bandsOf(powerAt(ratio)));
    expect(band.low / most).toBeCloseTo(Math.exp(-0.196), 6);
    expect(band.high / most).toBeCloseTo(Math.exp(0.196), 6);
    const count = 4000;
    const trial = sampleBand(drawn(spread, count).flatMap(powerAt(ratio)));
    expect(Math.abs(Math.log(trial.low / most) + 0.196)).toBeLessThan(0.1 * scatter(count));
    expect(Math.abs(Math.log(trial.high / most) - 0.196)).toBeLessThan(0.1 * scatter(count));
  });

  it('is known after one reading as belief and display together say', () => {
    // Precisions add: 1/s^2 = 1/0.1^2 + 1/d^2, d the display's half of 5 % joined with 1 % of the model.
    const display = Math.hypot(0.05 / 2, 0.01);
    const s = 1 / Math.sqrt(1 / 0.01 + 1 / display ** 2);
    const reading = { id: 'a', ratio: 1, power: 1000 };
    const { spread } = fitPad(evidenceOf([reading], { power: flatPower }));
    const band = only(uncertaintyOf(spread).bandsOf(powerAt(0.5)));
    expect(Math.log(band.high / 125)).toBeCloseTo(1.96 * s, 5);
    expect(Math.log(band.low / 125)).toBeCloseTo(-1.96 * s, 5);
    // And before that reading was taken, that is what it was promised to leave.
    const before = uncertaintyOf(fitPad(evidenceOf([], { power: flatPower })).spread);
    const [best] = before.narrowingsFor(powerAt(0.5), [1]);
    expect(best?.instrument).toBe('wattMeter');
    expect(best?.widthBefore).toBeCloseTo(2 * Math.sinh(0.196), 6);
    expect(best?.widthAfter).toBeCloseTo(2 * Math.sinh(1.96 * s), 5);
    expect(Math.log((best?.bands[0]?.high ?? 0) / 125)).toBeCloseTo(1.96 * s, 5);
  });
});

describe('where the doubt is large', () => {
  it('the trials keep to the exact band and the slopes do not', () => {
    // P = 1000 e^f + 1000, f normal with 0.6: exactly from 1000(1 + e^-1.176) to 1000(1 + e^1.176).
    const spread = {
      evidence: evidenceOf([], { power: { fixed: 1000, atReference: () => 1000 } }),
      parameters: parameterNames.map(() => 0),
      covariance: variances({ fixed: 0.36 }),
    };
    const count = 4000;
    const trial = sampleBand(drawn(spread, count).flatMap(powerAt(1)));
    const off = (end: number, sign: number) =>
      Math.abs(Math.log(end / 1000 - 1) - sign * 1.96 * 0.6);
    expect(off(trial.low, -1)).toBeLessThan(0.6 * scatter(count));
    expect(off(trial.high, 1)).toBeLessThan(0.6 * scatter(count));
    // By slopes: 2000 exp(+-1.96 x 600/2000), too low at both ends.
    const band = only(uncertaintyOf(spread).bandsOf(powerAt(1)));
    expect(band.high).toBeCloseTo(2000 * Math.exp(0.588), 2);
    expect(band.low).toBeLessThan(trial.low);
    expect(band.high).toBeLessThan(trial.high);
    expect(partingOf(band, trial)).toBeGreaterThan(0.15);
    // Lopsided: further to the top than to the bottom.
    expect(trial.high - 2000).toBeGreaterThan(1.5 * (2000 - trial.low));
  });

  it('a pump too weak for its lift by the best guess moves water in some trials', () => {
    const evidence = evidenceOf([], { circuit: { ...evidenceOf([]).circuit, staticHead: 10 } });
    const ratio = Math.sqrt(10 / 22) * 0.999;
    const { spread } = fitPad(evidence);
    const band = only(uncertaintyOf(spread).bandsOf(flowAt(ratio)));
    const trial = sampleBand(drawn(spread, 400).flatMap(flowAt(ratio)));
    expect(band).toEqual({ low: 0, high: 0 });
    expect(trial.low).toBe(0);
    expect(trial.high).toBeGreaterThan(0);
    expect(partingOf(band, trial)).toBe(1);
  });
});

describe('trial pads', () => {
  const reading = { id: 'a', ratio: 1, ...only([trueReading([0.1, 0.2, 0, 0, 0, 0, 0], 1)]) };
  const { dischargePressure, power } = reading;
  const { spread } = fitPad(
    evidenceOf([{ id: 'a', ratio: 1, dischargePressure, power }], { curveKnown: 'estimated' }),
  );

  it('scatter about the fit with its means and covariances', () => {
    // Scatter of a mean: root of v/n; of a covariance: root of (v w + c^2)/n (textbook, from memory).
    const count = 5000;
    const pads = drawn(spread, count);
    const names = ['suction', 'discharge', 'head', 'flow', 'gaugeLevel'] as const;
    const rows = pads.map((pad) => [
      Math.log(pad.suctionFactor),
      Math.log(pad.dischargeFactor),
      Math.log(pad.curve.shutoffHead / curve.shutoffHead),
      Math.log(pad.curve.lastFlow / curve.lastFlow),
      pad.gaugeLevel,
    ]);
    const mean = (of: (row: number[]) => number) => rows.reduce((s, row) => s + of(row), 0) / count;
    const centre = names.map((_, at) => mean((row) => row[at] as number));
    const known = (row: number, col: number) => spread.covariance[row]?.[col] as number;
    expect(Math.abs(known(1, 2))).toBeGreaterThan(0.001);
    names.forEach((_, row) => {
      const off = Math.abs((centre[row] as number) - (spread.parameters[row] as number));
      expect(off).toBeLessThan(5 * Math.sqrt(known(row, row) / count));
      names.forEach((__, col) => {
        const found = mean(
          (one) =>
            ((one[row] as number) - (centre[row] as number)) *
            ((one[col] as number) - (centre[col] as number)),
        );
        const spreadOf = Math.sqrt(
          (known(row, row) * known(col, col) + known(row, col) ** 2) / count,
        );
        expect(Math.abs(found - known(row, col))).toBeLessThan(5 * spreadOf);
      });
    });
  });

  it('come out the same from the same seed and other from another', () => {
    const factors = (from: number) => {
      const next = monteCarloSamples(spread, from);
      return [next(), next(), next()].map(({ dischargeFactor }) => dischargeFactor);
    };
    expect(factors(3)).toEqual(factors(3));
    expect(factors(3)).not.toEqual(factors(4));
    expect(new Set(factors(3)).size).toBe(3);
  });

  it('are one and the same pad where all is known for certain, and the bands have no width', () => {
    const certain = { ...spread, covariance: none };
    const sure = uncertaintyOf(certain);
    const [flow] = flowAt(0.6)(sure.best);
    expect(new Set(drawn(certain, 5).flatMap(flowAt(0.6)))).toEqual(new Set([flow]));
    expect(only(sure.bandsOf(flowAt(0.6)))).toEqual({ low: flow, high: flow });
    // Of readings that tell as much, here nothing, the first is as good as any.
    const [first] = sure.narrowingsFor(flowAt(0.6), [0.6, 0.8]);
    expect(first).toMatchObject({ widthBefore: 0, widthAfter: 0, ratio: 0.6 });
  });
});

describe('slopes against trials', () => {
  it('agree on any pad while the doubt is small', () => {
    fc.assert(
      fc.property(
        anyCircuit,
        fc.double({ min: 0.75, max: 1, noNaN: true }),
        fc.double({ min: 0.01, max: 0.1, noNaN: true }),
        (circuit, ratio, share) => {
          const evidence = evidenceOf([], { circuit });
          const spread = {
            evidence,
            parameters: parameterNames.map(() => 0),
            covariance: choleskyDiagonal(evidence, share),
          };
          const ask = (pad: SettledPad) => [...flowAt(ratio)(pad), ...powerAt(ratio)(pad)];
          const sure = uncertaintyOf(spread);
          const bands = sure.bandsOf(ask);
          const count = 300;
          const trials = drawn(spread, count).map(ask);
          bands.forEach((band, at) => {
            const trial = sampleBand(trials.map((row) => row[at] as number));
            // Of the width: scatter of a normal law, and a twentieth for what is not straight.
            const allowed = scatter(count) / 3.92 + 0.05;
            expect(partingOf(band, trial)).toBeLessThan(allowed);
          });
        },
      ),
      { numRuns: 25 },
    );
  });

  function choleskyDiagonal(evidence: PadEvidence, share: number) {
    const spreads = priorDeviations(evidence);
    return spreads.map((one, row) =>
      spreads.map((_, col) => (row === col ? (share * one) ** 2 : 0)),
    );
  }
});

describe('the pads that slopes are taken from', () => {
  it('are the best and two for each uncertain number, and no other is asked', () => {
    const sure = uncertaintyOf(fitPad(evidenceOf([])).spread);
    expect(sure.pads).toHaveLength(1 + 2 * parameterNames.length);
    expect(sure.pads[0]).toBe(sure.best);
    const asked = new Set<SettledPad>();
    sure.bandsOf((pad) => {
      asked.add(pad);
      return [pad.dischargeFactor];
    });
    expect(asked).toEqual(new Set(sure.pads));
  });
});
