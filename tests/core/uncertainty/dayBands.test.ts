import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import type { Block } from '#core/day/day.ts';
import { dayReport, type FlowLimit, type ServiceNeed } from '#core/day/dayReport.ts';
import { fitPad } from '#core/fit/fitPad.ts';
import type { SettledPad } from '#core/fit/padEvidence.ts';
import { padState } from '#core/fit/padModel.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import { flatTariff, type Tariff } from '#core/tariff/tariff.ts';
import {
  type DayTrial,
  dayBands,
  dayQuestions,
  dayTrial,
  priceLaw,
  trialSummary,
  type UncertainDay,
} from '#core/uncertainty/dayBands.ts';
import { monteCarloSamples, uncertaintyOf } from '#core/uncertainty/uncertainty.ts';
import { anyDay, anyNeed, inventedTariff } from '../day/dayFixtures.ts';
import { circuit, evidenceOf } from '../fit/padFixtures.ts';

const date = { year: 2027, month: 7, day: 14 };
const day = (given: Partial<UncertainDay<ServiceNeed, FlowLimit>> = {}) => ({
  blocks: [{ id: 'a', start: 480, end: 960, ratio: 0.6 }] as readonly Block[],
  needs: [] as readonly ServiceNeed[],
  limitsOf: (): readonly FlowLimit[] => [],
  tariff: inventedTariff as Tariff | null,
  date,
  ...given,
});
const need = (given: Partial<ServiceNeed> = {}): ServiceNeed => ({
  id: 'need',
  leastFlow: 0.001,
  minutes: 60,
  windows: [],
  shortestRun: 0,
  ...given,
});
/** A power apart from the flow, lognormal with a deviation of 0.1 (see sureness). */
const flatPower = { fixed: 1e-9, atReference: () => 1000 };
const { spread } = fitPad(evidenceOf([]));
const sure = uncertaintyOf(spread);
const sureOfFlat = uncertaintyOf(fitPad(evidenceOf([], { power: flatPower })).spread);
/** Two solves of one point may differ in the last places. */
const near = (got: number, want: number) =>
  expect(Math.abs(got - want)).toBeLessThanOrEqual(1e-8 * Math.abs(want));
const trials = (count: number) => {
  const next = monteCarloSamples(spread, 5);
  return Array.from({ length: count }, () => next());
};

describe('what a day can be asked', () => {
  it('is what the report of that pad and its price say', () => {
    fc.assert(
      fc.property(anyDay, (blocks) => {
        // The pump's slowest in the core is 0.01.
        const planned = blocks.map((one) => ({ ...one, ratio: one.ratio < 0.02 ? 0 : one.ratio }));
        const { answers } = dayQuestions(day({ blocks: planned }));
        const report = dayReport({
          blocks: planned,
          pointAt: (ratio) => {
            const { flow, power } = padState(sure.best, ratio);
            return { kind: 'flowing', flow, power, suctionVelocity: 0, dischargeVelocity: 0 };
          },
          volume: 1,
          needs: [],
          limits: [],
          quiet: [],
        });
        near(answers.water(sure.best), report.volumeMoved);
        near(answers.energy(sure.best), report.energy);
        near(answers.cost(sure.best), priceDay(inventedTariff, date, report.segments).cost);
      }),
    );
  });

  it('leaves the price at nothing without a tariff', () => {
    const questions = dayQuestions(day({ tariff: null }));
    expect(questions.answers.cost(sure.best)).toBe(0);
    expect(dayBands(sure, questions).cost).toEqual({ best: 0, band: { low: 0, high: 0 } });
  });

  it('solves each pad and speed once', () => {
    const { stateOf } = dayQuestions(day());
    expect(stateOf(sure.best, 0.6)).toBe(stateOf(sure.best, 0.6));
    expect(stateOf(sure.best, 0.6)).not.toBe(stateOf(sure.best, 0.7));
    expect(stateOf(sure.best, 0.7)).toEqual(padState(sure.best, 0.7));
    expect(stateOf(sure.pads[1] as SettledPad, 0.6)).toEqual(
      padState(sure.pads[1] as SettledPad, 0.6),
    );
  });

  it('refuses blocks that are no day', () => {
    const block = { id: 'a', start: 0, end: 600, ratio: 1 };
    expect(() => dayQuestions(day({ blocks: [block, { ...block, id: 'b' }] }))).toThrow(CoreError);
  });
});

describe('bands of a day', () => {
  it('hold what is drawn while stopped as certain, in energy and price', () => {
    // By hand: 1.728 kWh as below, and 16 h at 5 W are 0.08 kWh that are certain; 0.20 and 0.35.
    const questions = dayQuestions(day({ tariff: flatTariff(0.2, 0.35, ''), standbyPower: 5 }));
    const { energy, cost } = dayBands(sureOfFlat, questions);
    expect(energy.best / 3.6e6).toBeCloseTo(1.808, 6);
    expect(energy.band.low / 3.6e6).toBeCloseTo(0.08 + 1.728 * Math.exp(-0.196), 5);
    expect(cost.best).toBeCloseTo(0.35 + 0.016 + 0.3456, 6);
    expect(cost.band.high).toBeCloseTo(0.35 + 0.016 + 0.3456 * Math.exp(0.196), 6);
    const trial = dayTrial(day({ standbyPower: 5 }), questions)(sureOfFlat.best);
    expect(trial.energy / 3.6e6).toBeCloseTo(1.808, 6);
  });

  it('of energy are those of its power, of price those of its energy, the fixed charge apart', () => {
    // By hand: 1 kW x 0.216 (0.6 cubed) x 8 h = 1.728 kWh at 0.20, and 0.35 that is certain.
    const questions = dayQuestions(day({ tariff: flatTariff(0.2, 0.35, '') }));
    const { energy, cost } = dayBands(sureOfFlat, questions);
    expect(energy.best / 3.6e6).toBeCloseTo(1.728, 6);
    expect(energy.band.low / 3.6e6).toBeCloseTo(1.728 * Math.exp(-0.196), 5);
    expect(energy.band.high / 3.6e6).toBeCloseTo(1.728 * Math.exp(0.196), 5);
    expect(cost.best).toBeCloseTo(0.35 + 0.3456, 6);
    expect(cost.band.low).toBeCloseTo(0.35 + 0.3456 * Math.exp(-0.196), 6);
    expect(cost.band.high).toBeCloseTo(0.35 + 0.3456 * Math.exp(0.196), 6);
  });

  it('of water are those of the flow', () => {
    const { water } = dayBands(sure, dayQuestions(day()));
    const [flow] = sure.bandsOf((pad) => [padState(pad, 0.6).flow]);
    expect(water.band.low).toBeCloseTo((flow?.low ?? 0) * 8 * 3600, 6);
    expect(water.best).toBeCloseTo(padState(sure.best, 0.6).flow * 8 * 3600, 9);
  });

  it('of a price below nothing are even about it', () => {
    // 1.728 kWh at -0.05: paid for running; 1.96 deviations of 10 % to either side.
    const questions = dayQuestions(day({ tariff: flatTariff(-0.05, 0, '') }));
    const { cost } = dayBands(sureOfFlat, questions);
    expect(cost.best).toBeCloseTo(-0.0864, 6);
    expect(cost.band.low).toBeCloseTo(-0.0864 * 1.196, 6);
    expect(cost.band.high).toBeCloseTo(-0.0864 * 0.804, 6);
  });

  it('count the fixed charge once for each day', () => {
    const law = priceLaw(flatTariff(0.2, 0.5, ''), 365);
    // 182.5 of it is certain; the rest, 100 with a deviation of 10, has exp(+-0.196) about it.
    const { low, high } = law(282.5, 100);
    expect(low).toBeCloseTo(182.5 + 100 * Math.exp(-0.196), 9);
    expect(high).toBeCloseTo(182.5 + 100 * Math.exp(0.196), 9);
    // Energy that is free at all hours has a price of nothing, not one below it.
    expect(priceLaw(flatTariff(0, 0.5, ''), 1)(100.5, 100)).toEqual(
      priceLaw(flatTariff(0.2, 0.5, ''), 1)(100.5, 100),
    );
    // One hour below nothing is enough for the whole to be below it.
    const [season] = flatTariff(0.2, 0.5, '').seasons;
    const bands = [
      { start: 0, end: 60, price: -0.1 },
      { start: 60, end: 1440, price: 0.2 },
    ];
    const [dayType] = season?.dayTypes ?? [];
    if (season === undefined || dayType === undefined) throw new Error('no season');
    const mixed = {
      ...flatTariff(0.2, 0.5, ''),
      seasons: [{ ...season, dayTypes: [{ ...dayType, bands }] }],
    };
    expect(priceLaw(mixed, 1)(100.5, 100).low).toBeCloseTo(100.5 - 19.6, 9);
    // A trifle below the charge is rounding, and a charge below nothing is allowed.
    expect(law(182.5 - 1e-9, 0)).toEqual({ low: 182.5, high: 182.5 });
    expect(priceLaw(flatTariff(0.2, -0.5, ''), 2)(0, 0)).toEqual({ low: 0, high: 0 });
    expect(priceLaw(null, 365)(0, 0)).toEqual({ low: 0, high: 0 });
  });
});

describe('a trial day', () => {
  it('is the report of its own pad, with the limits that pad has', () => {
    fc.assert(
      fc.property(anyDay, fc.array(anyNeed, { maxLength: 2 }), (blocks, needs) => {
        const planned = blocks.map((one) => ({ ...one, ratio: one.ratio < 0.02 ? 0 : one.ratio }));
        const named = needs.map((one, at) => ({ ...one, id: String(at) }));
        const asked: number[] = [];
        const plan = day({
          blocks: planned,
          needs: named,
          limitsOf: (pad: SettledPad, greatestFlow: number) => {
            asked.push(greatestFlow);
            return [
              { id: 'high', greatestFlow: 0.003 * pad.dischargeFactor },
              { id: 'low', greatestFlow: 0.001 * pad.dischargeFactor },
            ];
          },
        } as Partial<UncertainDay<ServiceNeed, FlowLimit>>);
        const questions = dayQuestions(plan);
        for (const pad of trials(3)) {
          const trial = dayTrial(plan, questions)(pad);
          const flows = planned.map(({ ratio }) => (ratio > 0 ? padState(pad, ratio).flow : 0));
          const most = Math.max(0, ...flows);
          near(asked.at(-1) ?? 0, most);
          expect(trial.crossed).toEqual(
            [
              ['high', 0.003],
              ['low', 0.001],
            ]
              .filter(([, flow]) => most > (flow as number) * pad.dischargeFactor * (1 + 1e-6))
              .map(([id]) => id),
          );
          const report = dayReport({
            blocks: planned,
            pointAt: (ratio) => {
              const { flow, power } = padState(pad, ratio);
              return { kind: 'flowing', flow, power, suctionVelocity: 0, dischargeVelocity: 0 };
            },
            volume: 1,
            needs: named,
            limits: [],
            quiet: [],
          });
          expect(trial.short).toEqual(
            report.needs.filter(({ met }) => !met).map((one) => one.need.id),
          );
          near(trial.water, report.volumeMoved);
          near(trial.energy, report.energy);
          near(trial.cost, questions.answers.cost(pad));
        }
      }),
      { numRuns: 30 },
    );
  });

  it('takes a block at no speed for one at rest', () => {
    const asked: number[] = [];
    const plan = day({
      blocks: [{ id: 'a', start: 0, end: 600, ratio: 0 }],
      limitsOf: (_pad: SettledPad, greatestFlow: number) => {
        asked.push(greatestFlow);
        return [];
      },
    } as Partial<UncertainDay<ServiceNeed, FlowLimit>>);
    const trial = dayTrial(plan, dayQuestions(plan))(sure.best);
    expect(trial).toMatchObject({ water: 0, energy: 0, cost: inventedTariff.dailyCharge });
    expect(asked).toEqual([0]);
  });

  it('serves nothing while no water moves, not even a need of no flow', () => {
    const weak = fitPad(evidenceOf([], { circuit: { ...circuit, staticHead: 15 } }));
    const plan = day({ needs: [need({ leastFlow: 0 })] });
    const trial = dayTrial(plan, dayQuestions(plan))(uncertaintyOf(weak.spread).best);
    expect(trial).toMatchObject({ water: 0, short: ['need'], crossed: [] });
    expect(trial.energy).toBeGreaterThan(0);
  });
});

describe('how often a need is short and a limit crossed', () => {
  it('is 1 in 40 for a flow at the end of its own band', () => {
    // 2.5 % lie below and above a 95 % band, by its meaning. Scatter of a count: root of p(1 - p)/n;
    // five of these are allowed, and a hundredth for a flow that does not quite follow a normal law.
    const [flow] = sure.bandsOf((pad) => [padState(pad, 0.6).flow]);
    const plan = day({
      needs: [need({ leastFlow: flow?.low ?? 0 })],
      limitsOf: () => [{ id: 'limit', greatestFlow: flow?.high ?? 0 }],
    });
    const count = 2000;
    const run = dayTrial(plan, dayQuestions(plan));
    const { short, crossed, bands } = trialSummary(trials(count).map(run));
    const allowed = 5 * Math.sqrt((0.025 * 0.975) / count) + 0.01;
    expect(Math.abs((short.get('need') ?? 0) - 0.025)).toBeLessThan(allowed);
    expect(Math.abs((crossed.get('limit') ?? 0) - 0.025)).toBeLessThan(allowed);
    expect(short.get('need')).toBeGreaterThan(0);
    // A pad with no reading has the widest band there is; slopes hold over it to a tenth.
    expect(Math.abs(bands.water.low / ((flow?.low ?? 0) * 8 * 3600) - 1)).toBeLessThan(0.1);
  });

  it('is counted id by id', () => {
    const trial = (short: string[], crossed: string[], size: number): DayTrial => ({
      water: size,
      energy: 10 * size,
      cost: 100 * size,
      short,
      crossed,
    });
    const { short, crossed, bands } = trialSummary([
      trial(['a', 'b'], [], 0),
      trial(['a'], ['x'], 1),
      trial([], ['x'], 2),
      trial(['a'], ['x'], 4),
    ]);
    expect([...short]).toEqual([
      ['a', 0.75],
      ['b', 0.25],
    ]);
    expect([...crossed]).toEqual([['x', 0.75]]);
    // By hand: 0.025 of three steps above 0 and below 4.
    expect(bands.water.low).toBeCloseTo(0.075, 12);
    expect(bands.water.high).toBeCloseTo(4 - 0.15, 12);
    expect(bands.energy.high).toBeCloseTo(38.5, 12);
    expect(bands.cost.low).toBeCloseTo(7.5, 12);
    expect(() => trialSummary([])).toThrow(CoreError);
  });
});
