/** How sure a day is: water, energy and price of a plan as far as the fit of the pad lets them be known. */

import type { Block } from '#core/day/day.ts';
import { dayReport, type FlowLimit, type ServiceNeed } from '#core/day/dayReport.ts';
import { type Priming, primedSegments } from '#core/day/priming.ts';
import type { PadAnswers } from '#core/fit/linearisedFit.ts';
import type { SettledPad } from '#core/fit/padEvidence.ts';
import { type PadState, padState } from '#core/fit/padModel.ts';
import { type Band, bandAbout } from '#core/numerics/band.ts';
import { dayEnergy, priceDay } from '#core/tariff/pricing.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import type { CalendarDate } from '#core/time/calendar.ts';
import { type BandLaw, evenBandAbout, sampleBand, type Uncertainty } from './uncertainty.ts';

/** A plan of a pad that is not known for certain. */
export interface UncertainDay<N extends ServiceNeed, L extends FlowLimit> {
  /** The blocks [see Block], none overlapping. */
  readonly blocks: readonly Block[];
  readonly needs: readonly N[];
  /** Limits of a pad, some of which rest on how its water divides; those that no flow [m3/s] up to the one given could cross may be left rough. */
  readonly limitsOf: (pad: SettledPad, greatestFlow: number) => readonly L[];
  /** Prices, taken as exact; null leaves the cost out. */
  readonly tariff: Tariff | null;
  /** The day that is priced [see CalendarDate], fields as there. */
  readonly date: CalendarDate;
  /** Draw while the pump is stopped [W], 0 or more, taken as exact; 0 when left out. */
  readonly standbyPower?: number | undefined;
  /** How the pump primes at every start [see Priming]; not at all when left out. */
  readonly priming?: Priming | undefined;
}

/** What a day can be asked. */
export type DayAnswer = 'water' | 'energy' | 'cost';

/** One trial pad's day. */
export interface DayTrial {
  /** Water moved [m3], 0 or more. */
  readonly water: number;
  /** Energy taken [J], 0 or more. */
  readonly energy: number;
  /** Price of energy and fixed charge [currency], any finite number; 0 without a tariff. */
  readonly cost: number;
  /** Ids of the needs that stay short. */
  readonly short: readonly string[];
  /** Ids of the limits that are crossed. */
  readonly crossed: readonly string[];
}

/** What can be asked of a day, each by the slope of its own law. */
export interface DayQuestions {
  /** Water moved [m3], energy taken [J], price [currency] of a pad's day; the price is 0 without a tariff. */
  readonly answers: Readonly<Record<DayAnswer, (pad: SettledPad) => number>>;
  readonly laws: Readonly<Record<DayAnswer, BandLaw>>;
  /** What a pad does at a speed ratio; each pad and speed is solved once. */
  readonly stateOf: (pad: SettledPad, ratio: number) => PadState;
}

/** What trials say of a day. */
export interface TrialSummary {
  readonly bands: Readonly<Record<DayAnswer, Band>>;
  /** Share of the trials in which each need stays short [-], by its id. */
  readonly short: ReadonlyMap<string, number>;
  /** Share of the trials in which each limit is crossed [-], by its id; none that never is. */
  readonly crossed: ReadonlyMap<string, number>;
}

/**
 * Water, energy and price of a plan as questions to any pad, with the law of each band.
 *
 * Law: volume = sum of Q t, energy = sum of P t, price = sum of P t x price in force + fixed charge; the fixed charge and what is drawn while stopped are certain and have no width.
 * @param day The plan [see UncertainDay], fields as there.
 * @returns The three questions and how each becomes a band [m3, J, currency]; an even band for a price that may fall below nothing.
 * @throws CoreError when the blocks are not a day or the tariff has a problem.
 * Accuracy: exact for a given pad.
 * Source: definitions of flow and energy (NIST SP 811, 2008).
 * @example dayQuestions({ blocks: [], needs: [], limitsOf: () => [], tariff: { currency: '', dailyCharge: 0.35, seasons: [{ id: 's', name: '', from: { month: 1, day: 1 }, dayTypes: [{ id: 'd', name: '', weekdays: [0, 1, 2, 3, 4, 5, 6], bands: [{ start: 0, end: 1440, price: 0.2 }] }] }] }, date: { year: 2027, month: 6, day: 1 } }).answers.cost({}) // 0.3500
 */
export function dayQuestions<N extends ServiceNeed, L extends FlowLimit>(
  day: UncertainDay<N, L>,
): DayQuestions {
  const { tariff, date, standbyPower = 0 } = day;
  const segments = primedSegments(day.blocks, day.priming);
  const running = segments.filter(({ ratio }) => ratio > 0);
  const stopped = segments
    .filter(({ ratio }) => ratio === 0)
    .map((each) => ({ ...each, power: standbyPower }));
  const certain = {
    energy: dayEnergy(stopped),
    cost: tariff === null ? 0 : priceDay(tariff, date, stopped).cost,
  };
  const speeds = [...new Set(running.map(({ ratio }) => ratio))].map((ratio) => {
    const own = running.filter((each) => each.ratio === ratio);
    // Energy and its price are proportional to power, so one watt tells all.
    const watt = own.map((each) => ({ ...each, power: 1 }));
    return {
      ratio,
      seconds: own.reduce((sum, { start, end }) => sum + (end - start) * 60, 0),
      price: tariff === null ? 0 : priceDay(tariff, date, watt).energyCost,
    };
  });
  const stateOf = rememberedStates();
  const total = (amount: (speed: (typeof speeds)[number]) => number) =>
    speeds.reduce((sum, speed) => sum + amount(speed), 0);
  return {
    answers: {
      water: (pad) => total(({ ratio, seconds }) => stateOf(pad, ratio).flow * seconds),
      energy: (pad) =>
        certain.energy + total(({ ratio, seconds }) => stateOf(pad, ratio).power * seconds),
      cost: (pad) => certain.cost + total(({ ratio, price }) => stateOf(pad, ratio).power * price),
    },
    laws: {
      water: bandAbout,
      energy: aboveCertain(certain.energy),
      cost: hasNegativePrice(tariff) ? evenBandAbout : aboveCertain(certain.cost),
    },
    stateOf,
  };
}

function rememberedStates(): DayQuestions['stateOf'] {
  const known = new WeakMap<SettledPad, Map<number, PadState>>();
  return (pad, ratio) => {
    const states = known.get(pad) ?? new Map<number, PadState>();
    known.set(pad, states);
    const state = states.get(ratio) ?? padState(pad, ratio);
    states.set(ratio, state);
    return state;
  };
}

/**
 * How the price of a run of days becomes a band: what is charged in any case is certain and adds no width.
 *
 * Law: fixed charges + bandAbout(price - fixed charges); an even band where a price is below nothing, since the whole may be.
 * @param tariff The tariff [see Tariff], or null for none.
 * @param days How many days are charged [d], 0 or more.
 * @returns The law of such a band [currency].
 * @throws as bandAbout.
 * Accuracy: as bandAbout and evenBandAbout.
 * Source: JCGM 100:2008 (GUM), equation 13: what is exact adds no variance.
 * @example priceLaw({ currency: '', dailyCharge: 0.5, seasons: [] }, 20)(110, 25).high // 120.30
 */
export function priceLaw(tariff: Tariff | null, days: number): BandLaw {
  if (hasNegativePrice(tariff)) return evenBandAbout;
  return aboveCertain((tariff?.dailyCharge ?? 0) * days);
}

function hasNegativePrice(tariff: Tariff | null): boolean {
  return (tariff?.seasons ?? []).some(({ dayTypes }) =>
    dayTypes.some(({ bands }) => bands.some(({ price }) => price < 0)),
  );
}

/** A band above a part that is certain and adds no width. */
function aboveCertain(certain: number): BandLaw {
  return (value, variance) => {
    // Rounding of charge and sum may leave a trifle below nothing.
    const { low, high } = bandAbout(Math.max(0, value - certain), variance);
    return { low: certain + low, high: certain + high };
  };
}

/**
 * A plan run on one trial pad.
 *
 * Law: as dayReport, with the flow and power of that pad and the limits it would have.
 * @param day The plan [see UncertainDay], fields as there.
 * @param questions What dayQuestions made of the same plan.
 * @returns A function from a pad to its day [see DayTrial].
 * @throws CoreError when the plan breaks the contract of dayReport.
 * Accuracy: exact for a given pad.
 * Source: definitions of flow and energy (NIST SP 811, 2008); common practice for the needs.
 * @example dayTrial({ blocks: [], needs: [{ id: 'a', leastFlow: 0.001, minutes: 60, windows: [], shortestRun: 0 }], limitsOf: () => [], tariff: null, date: { year: 2027, month: 6, day: 1 } }, dayQuestions({ blocks: [], needs: [], limitsOf: () => [], tariff: null, date: { year: 2027, month: 6, day: 1 } }))({}).short.length // 1.000
 */
export function dayTrial<N extends ServiceNeed, L extends FlowLimit>(
  day: UncertainDay<N, L>,
  { answers, stateOf }: DayQuestions,
): (pad: SettledPad) => DayTrial {
  return (pad) => {
    const flows = day.blocks.map(({ ratio }) => (ratio > 0 ? stateOf(pad, ratio).flow : 0));
    const report = dayReport({
      blocks: day.blocks,
      pointAt: (ratio) => {
        const { flow, power } = stateOf(pad, ratio);
        if (flow === 0) return { kind: 'noFlow', power };
        // Velocities are not asked for: limits of velocity come as flows.
        return { kind: 'flowing', flow, power, suctionVelocity: 0, dischargeVelocity: 0 };
      },
      volume: 1,
      needs: day.needs,
      limits: day.limitsOf(pad, Math.max(0, ...flows)),
      quiet: [],
      standbyPower: day.standbyPower,
      priming: day.priming,
    });
    return {
      water: report.volumeMoved,
      energy: report.energy,
      cost: answers.cost(pad),
      short: report.needs.filter(({ met }) => !met).map(({ need }) => need.id),
      crossed: [...new Set(report.crossings.map(({ limit }) => limit.id))],
    };
  };
}

/**
 * What trial days say together.
 *
 * Law: 2.5 and 97.5 % points of water, energy and price; counts of needs left short and limits crossed.
 * @param trials The days [see DayTrial], at least one.
 * @returns Bands [m3, J, currency] and shares [-].
 * @throws CoreError when there is no trial.
 * Accuracy: a share s of n trials scatters by the root of s (1 - s)/n.
 * Source: JCGM 101:2008, 7.7, from memory; binomial law for the shares.
 * @example trialSummary([{ water: 1, energy: 1, cost: 1, short: ['a'], crossed: [] }, { water: 1, energy: 1, cost: 1, short: [], crossed: [] }]).short.get('a') // 0.5000
 */
export function trialSummary(trials: readonly DayTrial[]): TrialSummary {
  const band = (of: DayAnswer) => sampleBand(trials.map((trial) => trial[of]));
  return {
    bands: { water: band('water'), energy: band('energy'), cost: band('cost') },
    short: sharesOf(trials, ({ short }) => short),
    crossed: sharesOf(trials, ({ crossed }) => crossed),
  };
}

function sharesOf(
  trials: readonly DayTrial[],
  idsIn: (trial: DayTrial) => readonly string[],
): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  for (const id of trials.flatMap(idsIn)) shares.set(id, (shares.get(id) ?? 0) + 1 / trials.length);
  return shares;
}

/** One answer of a day with its band by slopes. */
export interface AnswerBand {
  /** Most likely value [m3, J or currency], any finite number. */
  readonly best: number;
  readonly band: Band;
}

/**
 * Water, energy and price of a day with their bands by slopes.
 *
 * Law: as uncertaintyOf, each answer by its own law.
 * @param uncertainty What the fit says [see Uncertainty].
 * @param questions What dayQuestions made of the plan.
 * @returns Most likely values and 95 % bands [m3, J, currency].
 * @throws whatever the questions throw.
 * Accuracy: first order about the best fit.
 * Source: JCGM 100:2008 (GUM), equation 13.
 * @example dayBands({ best: {}, bandsOf: (answers, law) => [law(answers({})[0], 25)] }, { answers: { water: () => 100, energy: () => 1, cost: () => 1 }, laws: { water: (value, variance) => ({ low: value - variance, high: value + variance }), energy: () => ({ low: 1, high: 1 }), cost: () => ({ low: 1, high: 1 }) } }).water.band.high // 125.0
 */
export function dayBands(
  uncertainty: Pick<Uncertainty, 'best' | 'bandsOf'>,
  { answers, laws }: Pick<DayQuestions, 'answers' | 'laws'>,
): Readonly<Record<DayAnswer, AnswerBand>> {
  const one = (of: DayAnswer): AnswerBand => {
    const ask: PadAnswers = (pad) => [answers[of](pad)];
    const [band] = uncertainty.bandsOf(ask, laws[of]);
    return { best: answers[of](uncertainty.best), band: band as Band };
  };
  return { water: one('water'), energy: one('energy'), cost: one('cost') };
}
