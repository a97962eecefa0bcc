/** A year under a filter, day by day; fetched when the page stands. */

import { type Block, oneSpeedDay } from '#core/day/day.ts';
import type { RunningPoint } from '#core/day/dayReport.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { type CompiledCircuit, compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { filterFactor } from '#core/hydraulics/equipment.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { type PumpPower, wirePower } from '#core/pump/power.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import { cleaningsIn, loadingOn } from '#core/year/conditions.ts';
import { fasterDay, longerDay } from '#core/year/sameWater.ts';
import { type DayConditions, type YearReport, yearReport } from '#core/year/year.ts';
import {
  type Ask,
  type CycleDay,
  daysOfYear,
  type FilterSetup,
  type FilterYear,
  type Solve,
  type YearSum,
  year,
} from './ask.ts';

/** A pump in pipes with one filter in them. */
export interface FilterPlace {
  readonly curve: PumpCurve;
  readonly power: PumpPower;
  readonly circuit: Circuit;
  readonly filterId: string;
  /** Speeds [rpm]. */
  readonly reference: number;
  readonly top: number;
  readonly tariff: Tariff;
}

/** Both pumps start at eight; common practice, no source. */
const start = 480;
/** Room for rounding when water is compared [-]. */
const rounding = 1e-6;

type Report = YearReport<never, never>;

/** The part with the head of a filter at its reference flow put in [m]. */
function withHead(part: CircuitPart, id: string, head: number): CircuitPart {
  if (part.kind === 'parallel') {
    const branches = part.branches.map((branch) => ({
      ...branch,
      parts: branch.parts.map((inner) => withHead(inner, id, head)),
    }));
    return { ...part, branches };
  }
  return part.kind === 'equipment' && part.id === id
    ? { ...part, referenceHead: head, factor: 1 }
    : part;
}

/** The pipes with this filter so far from clean [-], 0 to 1. */
function loaded({ circuit, filterId }: FilterPlace, filter: FilterSetup, loading: number) {
  const head = filter.cleanHead * filterFactor(filter, loading);
  const put = (part: CircuitPart) => withHead(part, filterId, head);
  return compileCircuit({
    ...circuit,
    suction: circuit.suction.map(put),
    discharge: circuit.discharge.map(put),
  });
}

/** The pipes with a filter at every loading that is asked for, each folded once. */
function pipesWith(place: FilterPlace, filter: FilterSetup) {
  const known = new Map<number, CompiledCircuit>();
  return (loading: number): CompiledCircuit => {
    const folded = known.get(loading) ?? loaded(place, filter, loading);
    known.set(loading, folded);
    return folded;
  };
}

function running(
  { curve, power }: FilterPlace,
  pipes: CompiledCircuit,
  ratio: number,
): RunningPoint {
  const point = operatingPoint(curve, pipes, ratio);
  const flow = point.kind === 'flowing' ? point.flow : 0;
  const drawn = wirePower(power, flow, ratio);
  return point.kind === 'flowing'
    ? { kind: 'flowing', flow, power: drawn, suctionVelocity: 0, dischargeVelocity: 0 }
    : { kind: 'noFlow', power: drawn };
}

interface Wish {
  readonly place: FilterPlace;
  readonly ask: Ask;
  readonly filter: FilterSetup;
  readonly pipes: (loading: number) => CompiledCircuit;
  /** Water of a day [m3]. */
  readonly asked: number;
}

/** The blocks of a day on which the filter stands so: as set, longer, or faster. */
function blocksOf(
  { place, ask, pipes, asked }: Wish,
  { loading }: DayConditions,
): readonly Block[] {
  const set = { ratio: ask.speed / place.reference, minutes: ask.minutes, start };
  if (ask.way === 'left' || asked === 0) return oneSpeedDay(set);
  const same = { curve: place.curve, circuit: pipes(loading), water: asked };
  return ask.way === 'hours'
    ? longerDay(same, set)
    : fasterDay(same, set, place.top / place.reference);
}

function reportOf(wish: Wish, interval: number): Report {
  const { place, filter, pipes, ask } = wish;
  const days = new Map<number, DayConditions>();
  return yearReport({
    year,
    plans: [
      {
        from: { month: 1, day: 1 },
        blocks: oneSpeedDay({ ratio: 1, minutes: ask.minutes, start }),
        needs: [],
      },
    ],
    tariff: { ...place.tariff, dailyCharge: 0 },
    conditionsOn: (date) => {
      const loading = (loadingOn(date, interval) * interval) / filter.due;
      const known = days.get(loading);
      const conditions = known ?? {
        waterTemperature: place.circuit.water.temperature,
        loading,
        frost: [],
      };
      days.set(loading, conditions);
      return conditions;
    },
    pointAt: (ratio, { loading }) => running(place, pipes(loading), ratio),
    volume: 1,
    limits: [],
    quiet: [],
    frostRatio: 0,
    blocksOn: (_, conditions) => blocksOf(wish, conditions),
  });
}

function sumOf(report: Report, interval: number): YearSum {
  const { energy, cost, volumeMoved, runMinutes } = report;
  const cleanings = cleaningsIn(daysOfYear, interval);
  return { energy, cost, water: volumeMoved, minutes: runMinutes, cleanings };
}

function cycleDay({ reference }: FilterPlace, { report }: Report['byDay'][number]): CycleDay {
  const seconds = 60 * report.runMinutes;
  const over = (amount: number) => (seconds > 0 ? amount / seconds : 0);
  return {
    flow: over(report.volumeMoved),
    power: over(report.energy),
    energy: report.energy,
    speed: reference * Math.max(...report.segments.map(({ ratio }) => ratio)),
    minutes: report.runMinutes,
  };
}

function yearOf(wish: Wish): FilterYear {
  const { interval } = wish.filter;
  const report = reportOf(wish, interval);
  const isShort = ({ report: day }: Report['byDay'][number]) =>
    day.volumeMoved < wish.asked * (1 - rounding);
  return {
    ...sumOf(report, interval),
    cycle: report.byDay.slice(0, interval).map((day) => cycleDay(wish.place, day)),
    lackDays: wish.ask.way === 'left' ? 0 : report.byDay.filter(isShort).length,
  };
}

/** Works years out on one pump in its pipes. */
export function createSolver(place: FilterPlace): Solve {
  return (ask) => {
    const ratio = ask.speed / place.reference;
    const pumps = ask.filters.map((filter) => ({ filter, pipes: pipesWith(place, filter) }));
    const clean = pumps.map(({ pipes }) => running(place, pipes(0), ratio));
    const flows = clean.map((point) => (point.kind === 'flowing' ? point.flow : 0));
    const asked = 60 * ask.minutes * Math.max(...flows);
    const [first, second] = pumps.map((pump): Wish => ({ place, ask, asked, ...pump }));
    if (first === undefined || second === undefined)
      throw new RangeError('Two filters are asked for.');
    const half = Math.max(1, Math.round(first.filter.interval / 2));
    return {
      filters: [yearOf(first), yearOf(second)],
      asked,
      oftener: { ...sumOf(reportOf(first, half), half), interval: half },
    };
  };
}
