import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPad } from '#core/fit/fitPad.ts';
import type { Reading, SettledPad } from '#core/fit/padEvidence.ts';
import { typicalInstruments } from '#core/fit/padEvidence.ts';
import { evenBandAbout, uncertaintyOf } from '#core/uncertainty/uncertainty.ts';
import { evidenceOf, trueReading } from '../fit/padFixtures.ts';
import { flatPower, flowAt, only, powerAt, widthOf } from './uncertaintyFixtures.ts';

describe('one more reading', () => {
  const kinds = ['flow', 'dischargePressure', 'suctionVacuum', 'power'] as const;

  it('that shows just what was expected never widens a band, and narrows its own', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.constantFrom(...kinds), fc.double({ min: 0.3, max: 1, noNaN: true })),
          {
            maxLength: 3,
          },
        ),
        fc.constantFrom(...kinds),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (before, kind, at, asked) => {
          const truth = [0.1, 0.2, 0, 0, 0.1, 0.1, 0.2];
          const taken = before.map(([what, ratio], index): Reading => {
            return { id: String(index), ratio, [what]: trueReading(truth, ratio)[what] };
          });
          const first = fitPad(evidenceOf(taken));
          const expected = trueReading(first.spread.parameters, at)[kind];
          const second = fitPad(evidenceOf([...taken, { id: 'new', ratio: at, [kind]: expected }]));
          const ask = (pad: SettledPad) => [...flowAt(asked)(pad), ...powerAt(asked)(pad)];
          const widths = (fit: typeof first) =>
            uncertaintyOf(fit.spread)
              .bandsOf(ask)
              .map(({ low, high }) => Math.log(high / low));
          const [now, then] = [widths(first), widths(second)];
          // The two fits come to rest within their tolerance of one another, not on one point.
          then.forEach((width, index) => {
            expect(width).toBeLessThanOrEqual((now[index] as number) * 1.002);
          });
          const own = (fit: typeof first) =>
            widthOf(
              only(
                uncertaintyOf(fit.spread).bandsOf((pad) => [
                  kind === 'power'
                    ? (powerAt(at)(pad)[0] as number)
                    : (flowAt(at)(pad)[0] as number),
                ]),
              ),
            );
          if (kind === 'power' || kind === 'flow') expect(own(second)).toBeLessThan(own(first));
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is promised what it then brings, for each instrument at its best speed', () => {
    const power = trueReading([0, 0, 0, 0, 0, 0, 0], 1).power;
    const start: Reading[] = [{ id: 'a', ratio: 1, power }];
    const { spread } = fitPad(evidenceOf(start));
    const ask = (pad: SettledPad) => [...flowAt(0.4)(pad), ...powerAt(0.4)(pad)];
    const ratios = [0.4, 0.7, 1];
    const found = uncertaintyOf(spread).narrowingsFor(ask, ratios);
    expect(found.map(({ instrument }) => instrument).sort()).toEqual([
      'filterGauge',
      'flowMeter',
      'vacuumGauge',
      'wattMeter',
    ]);
    const after = found.map(({ widthAfter }) => widthAfter);
    expect(after).toEqual(after.toSorted((a, b) => a - b));
    const kindOf = {
      flowMeter: 'flow',
      filterGauge: 'dischargePressure',
      vacuumGauge: 'suctionVacuum',
      wattMeter: 'power',
    } as const;
    for (const { instrument, ratio, widthBefore, widthAfter, bands } of found) {
      const leaves = (at: number) => {
        const kind = kindOf[instrument];
        const expected = trueReading(spread.parameters, at)[kind];
        const fit = fitPad(evidenceOf([...start, { id: 'x', ratio: at, [kind]: expected }]));
        const values = ask(uncertaintyOf(fit.spread).best);
        const left = uncertaintyOf(fit.spread).bandsOf(ask);
        const width = left.reduce(
          (sum, band, index) => sum + widthOf(band) / (values[index] as number) / 2,
          0,
        );
        return { width, left };
      };
      const { width, left } = leaves(ratio);
      expect(width / widthAfter).toBeCloseTo(1, 2);
      expect(widthAfter).toBeLessThanOrEqual(widthBefore);
      left.forEach((band, index) => {
        expect(band.high / (bands[index]?.high ?? 0)).toBeCloseTo(1, 3);
      });
      // No other of the speeds would have left less; watts at full speed are there already.
      const others = ratios.filter((at) => instrument !== 'wattMeter' || at !== 1);
      for (const at of others) expect(leaves(at).width).toBeGreaterThan(widthAfter * 0.995);
      if (instrument === 'wattMeter') expect(ratio).not.toBe(1);
    }
  });

  it('at a slow speed is worth more to slow speeds than one near full speed, where the pad resists more than described', () => {
    const kinds = ['flow', 'dischargePressure', 'suctionVacuum'] as const;
    const widthsAfter = (more: number) => {
      const shown = trueReading([more, more, 0, 0, 0, 0, 0], 1);
      const taken = kinds.map((kind): Reading => ({ id: kind, ratio: 1, [kind]: shown[kind] }));
      const { spread } = fitPad(evidenceOf(taken));
      const left = (ratio: number) => {
        const { flow } = trueReading(spread.parameters, ratio);
        const fit = fitPad(evidenceOf([...taken, { id: 'x', ratio, flow }]));
        const promised = uncertaintyOf(spread)
          .narrowingsFor(flowAt(0.4), [ratio])
          .find(({ instrument }) => instrument === 'flowMeter')?.bands[0];
        const kept = fit.bandAt(0.4).flow;
        expect(widthOf(kept) / widthOf(promised ?? kept)).toBeCloseTo(1, 1);
        return widthOf(kept);
      };
      return { slow: left(0.4), fast: left(0.95) };
    };
    // Nothing lacks: a meter of so many per cent tells as much at either speed (affinity).
    const asDescribed = widthsAfter(-0.2);
    expect(asDescribed.slow / asDescribed.fast).toBeCloseTo(1, 1);
    // What lacks goes with an unknown power of the flow, which only another speed shows.
    const lacking = widthsAfter(0.5);
    expect(lacking.slow / lacking.fast).toBeLessThan(0.85);
  });

  it('is not asked for where it was taken already, within 2 % of the speed, unless nothing else is left', () => {
    // Our own rule: the same reading twice tells of the instrument, not of the pad.
    const flow = (ratio: number) => ({
      id: String(ratio),
      ratio,
      flow: trueReading([0, 0, 0, 0, 0, 0, 0], ratio).flow,
    });
    const { spread } = fitPad(evidenceOf([flow(0.6), { id: 'w', ratio: 0.9, power: 800 }]));
    const sure = uncertaintyOf(spread);
    const asked = (ratio: number) =>
      sure.narrowingsFor(flowAt(0.6), [ratio]).map(({ instrument }) => instrument);
    for (const ratio of [0.6, 0.611, 0.589]) {
      expect(asked(ratio).toSorted()).toEqual(['filterGauge', 'vacuumGauge', 'wattMeter']);
    }
    for (const ratio of [0.63, 0.57]) expect(asked(ratio)).toContain('flowMeter');
    expect(asked(0.9)).toContain('flowMeter');
    expect(asked(0.9)).not.toContain('wattMeter');
    const { dischargePressure, suctionVacuum, power } = trueReading([0, 0, 0, 0, 0, 0, 0], 0.6);
    const all = { ...flow(0.6), dischargePressure, suctionVacuum, power };
    const full = uncertaintyOf(fitPad(evidenceOf([all])).spread);
    expect(full.narrowingsFor(flowAt(0.6), [0.6])).toHaveLength(4);
  });

  it('is held against the band that the answer asks for, and an answer of nothing has no width', () => {
    const { spread } = fitPad(evidenceOf([], { power: flatPower }));
    const sure = uncertaintyOf(spread);
    const [even] = sure.narrowingsFor(powerAt(1), [1], evenBandAbout);
    expect(even?.widthBefore).toBeCloseTo(2 * 1.96 * 0.1, 6);
    expect(only(sure.bandsOf(powerAt(1), evenBandAbout)).low).toBeCloseTo(1000 * (1 - 0.196), 4);
    const halved = sure.narrowingsFor((pad) => [0, ...powerAt(1)(pad)], [1]);
    expect(halved[0]?.widthBefore).toBeCloseTo(Math.sinh(0.196), 6);
    // An answer below nothing has its width all the same.
    const below = sure.narrowingsFor(
      (pad) => [-(powerAt(1)(pad)[0] as number)],
      [1],
      evenBandAbout,
    );
    expect(below[0]?.widthBefore).toBeCloseTo(2 * 1.96 * 0.1, 6);
  });
});

describe('what the fit is read with', () => {
  it('is the accuracy its evidence names', () => {
    // A promise hangs on the instrument: a better display promises more.
    const promise = (powerShare: number) => {
      const evidence = evidenceOf([], {
        power: flatPower,
        instruments: { ...typicalInstruments, powerShare },
      });
      return (
        uncertaintyOf(fitPad(evidence).spread).narrowingsFor(powerAt(1), [1])[0]?.widthAfter ?? 0
      );
    };
    expect(promise(0.01)).toBeLessThan(promise(0.2));
  });
});
