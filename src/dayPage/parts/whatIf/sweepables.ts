/**
 * What of the pad can be swept: one short entry each. Another one is a maker in the list below, and
 * its words in words.ts.
 */

import type { PadFit } from '#core/fit/padEvidence.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { type Band, ruleOn, type Tariff } from '#core/tariff/tariff.ts';
import type { CalendarDate } from '#core/time/calendar.ts';
import { unionOf } from '#core/time/spans.ts';
import type { Bench } from '#dayPage/day/figures.ts';
import type { Pad } from '#pad/document/schema.ts';
import { assembleLimits } from '#pad/model/assembleLimits.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import {
  circuitWithLoading,
  circuitWithSizes,
  circuitWithWater,
  loadingNow,
  type Side,
  type SizeRange,
  sizeRange,
} from '#pad/model/changedCircuit.ts';
import { type RunningPad, runningPad } from '#pad/model/runningPad.ts';
import { greatestFlowAt, withStops } from '#pad/model/worstState.ts';

/** What a sweep stands on: the pad as it is. */
export interface Ground {
  readonly bench: Bench;
  readonly running: RunningPad;
  readonly fit: PadFit;
  readonly pad: Pick<Pad, 'plumbing' | 'limits' | 'site'>;
  readonly date: CalendarDate;
  /** Turnovers asked for in a day [-]. */
  readonly turnovers: number;
}

/** The pad at another value of the input that is swept. */
export interface Changed {
  readonly bench: Bench;
  readonly turnovers: number;
}

/** Which input it is, with what its words need. */
export type Swept =
  | { readonly kind: 'turnovers' | 'prices' | 'loading' | 'temperature' }
  | { readonly kind: 'dearPrice'; readonly price: number }
  | { readonly kind: 'need'; readonly need: NamedNeed }
  | { readonly kind: 'pipes'; readonly side: Side; readonly range: SizeRange };

export interface Sweepable {
  readonly id: string;
  readonly of: Swept;
  /** Values looked at, rising; the present one is among them. */
  readonly values: readonly number[];
  readonly present: number;
  /** Step of the handle. */
  readonly step: number;
  /** Width to which a change of plan is narrowed; left out where nothing lies between two values. */
  readonly narrowTo?: number;
  /** So much more of it is priced in the finding. */
  readonly more: number;
  readonly at: (value: number) => Changed;
}

type Maker = (ground: Ground) => Sweepable | readonly Sweepable[] | null;

/** Evenly spaced, both ends and the present value among them. */
function evenly(from: number, to: number, step: number, present: number): readonly number[] {
  const count = Math.round((to - from) / step);
  const even = Array.from({ length: count + 1 }, (_, place) => from + place * step);
  const clean = even.map((value) => Number(value.toPrecision(12)));
  return [...new Set([...clean, present])].sort((one, other) => one - other);
}

/** The pad with water going round in a changed circuit: its limits follow. */
function inCircuit(ground: Ground, changed: (circuit: Circuit) => Circuit): Changed {
  const { bench, running, fit, pad, turnovers } = ground;
  const circuit = changed(running.circuit);
  const { runningAt } = runningPad(circuit, running.curve, running.power);
  const { limits } = assembleLimits(pad.limits, pad.site, pad.plumbing, circuit);
  const stopped = withStops(limits, greatestFlowAt(fit, pad.plumbing, changed), bench.speeds);
  return { bench: { ...bench, pointAt: runningAt, limits: stopped }, turnovers };
}

/** The pad with its filters loaded so far: the stop holds with them clean, so it stays. */
function inLoaded({ bench, running, pad, turnovers }: Ground, loading: number): Changed {
  const circuit = circuitWithLoading(running.circuit, pad.plumbing, loading);
  const { runningAt } = runningPad(circuit, running.curve, running.power);
  const { limits } = assembleLimits(pad.limits, pad.site, pad.plumbing, circuit);
  const stops = new Map(bench.limits.map(({ kind, greatestRatio }) => [kind, greatestRatio]));
  const stopped = limits.map((limit) => {
    const greatestRatio = stops.get(limit.kind);
    return greatestRatio === undefined ? limit : { ...limit, greatestRatio };
  });
  return { bench: { ...bench, pointAt: runningAt, limits: stopped }, turnovers };
}

/** The tariff with each price of energy changed. */
function priced(tariff: Tariff, change: (band: Band) => number): Tariff {
  const seasons = tariff.seasons.map((season) => ({
    ...season,
    dayTypes: season.dayTypes.map((type) => ({
      ...type,
      bands: type.bands.map((band) => ({ ...band, price: change(band) })),
    })),
  }));
  return { ...tariff, seasons };
}

const turnovers: Maker = ({ bench, turnovers: present }) => {
  const most = Math.max(4, Math.ceil(2 * present));
  const step = most / 40;
  return {
    id: 'turnovers',
    of: { kind: 'turnovers' },
    values: evenly(0, most, step, present),
    present,
    step: most > 8 ? 0.5 : 0.1,
    narrowTo: most / 400,
    more: 0.5,
    at: (value) => ({ bench, turnovers: value }),
  };
};

const needHours: Maker = ({ bench, turnovers: asked }) =>
  bench.needs.map((need): Sweepable => {
    const open = unionOf(need.windows).reduce((sum, { start, end }) => sum + end - start, 0);
    const most = need.windows.length === 0 ? 1440 : Math.max(open, need.minutes);
    return {
      id: `need-${need.id}`,
      of: { kind: 'need', need },
      values: evenly(0, most, most > 720 ? 30 : 15, need.minutes),
      present: need.minutes,
      step: 15,
      narrowTo: 2,
      more: 60,
      at: (value) => {
        const minutes = Math.round(value);
        const needs = bench.needs.map((each) =>
          each.id === need.id ? { ...each, minutes } : each,
        );
        return { bench: { ...bench, needs }, turnovers: asked };
      },
    };
  });

const allPrices: Maker = ({ bench, turnovers: asked }) => {
  const { tariff } = bench;
  if (tariff === null) return null;
  return {
    id: 'prices',
    of: { kind: 'prices' },
    values: evenly(0.5, 2, 0.1, 1),
    present: 1,
    step: 0.05,
    narrowTo: 0.005,
    more: 0.1,
    at: (factor) => ({
      bench: { ...bench, tariff: priced(tariff, ({ price }) => price * factor) },
      turnovers: asked,
    }),
  };
};

/** The dearest price of the day alone; a day of one price has none. */
const dearPrice: Maker = ({ bench, date, turnovers: asked }) => {
  const { tariff } = bench;
  if (tariff === null) return null;
  const { bands } = ruleOn(tariff, date).dayType;
  const present = Math.max(...bands.map(({ price }) => price));
  if (!(present > 0) || bands.every(({ price }) => price === present)) return null;
  const dear = new Set(bands.filter(({ price }) => price === present));
  return {
    id: 'dear-price',
    of: { kind: 'dearPrice', price: present },
    values: evenly(present / 4, 3 * present, present / 10, present),
    present,
    step: present / 20,
    narrowTo: present / 200,
    more: present / 10,
    at: (price) => ({
      bench: { ...bench, tariff: priced(tariff, (band) => (dear.has(band) ? price : band.price)) },
      turnovers: asked,
    }),
  };
};

const pipes =
  (side: Side): Maker =>
  (ground) => {
    const { plumbing } = ground.pad;
    const range = sizeRange(plumbing, side);
    if (range === null || range.least === range.most) return null;
    // Beyond two sizes down there is hardly a pump, beyond three up hardly a gain.
    const [from, to] = [Math.max(range.least, -2), Math.min(range.most, 3)];
    return {
      id: `pipes-${side}`,
      of: { kind: 'pipes', side, range },
      values: evenly(from, to, 1, 0),
      present: 0,
      step: 1,
      more: range.most > 0 ? 1 : -1,
      at: (steps) =>
        inCircuit(ground, (circuit) => circuitWithSizes(circuit, plumbing, side, steps)),
    };
  };

const loading: Maker = (ground) => {
  const { plumbing } = ground.pad;
  const present = loadingNow(plumbing);
  if (present === null) return null;
  return {
    id: 'loading',
    of: { kind: 'loading' },
    values: evenly(0, 1, 0.04, present),
    present,
    step: 0.05,
    narrowTo: 0.005,
    more: 0.1,
    at: (value) => inLoaded(ground, value),
  };
};

const temperature: Maker = (ground) => {
  const present = Math.min(45, Math.max(0, ground.running.circuit.water.temperature));
  return {
    id: 'temperature',
    of: { kind: 'temperature' },
    values: evenly(0, 45, 2.5, present),
    present,
    step: 1,
    narrowTo: 0.25,
    more: -5,
    at: (value) => inCircuit(ground, (circuit) => circuitWithWater(circuit, value)),
  };
};

const makers: readonly Maker[] = [
  turnovers,
  needHours,
  allPrices,
  dearPrice,
  pipes('suction'),
  pipes('discharge'),
  loading,
  temperature,
];

/** Everything that can be swept on a pad. */
export function sweepablesOf(ground: Ground): readonly Sweepable[] {
  return makers.flatMap((make) => make(ground) ?? []);
}
