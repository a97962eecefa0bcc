/** What a meter counted, held against what the model of a pump says it should have counted. */
import { minutesPerDay } from './constants.ts';
import { CoreError, requireNotNegative } from './errors.ts';
import type { PoweredSpan } from './pricing.ts';
import { piecesOf, requireSpan } from './spans.ts';
import { type LinePoint, straightLine } from './straightLine.ts';

/** One interval of a meter. */
export interface MeterInterval {
  /** First minute on the local clock [min], 0 or more: 1440 x (day number - 1) + minute of the day. */
  readonly start: number;
  /** How long it lasts [min], above 0, to 44640. */
  readonly duration: number;
  /** Energy counted in it [J], any finite amount. */
  readonly energy: number;
}

/** Power that the model draws on a day [see PoweredSpan], by the number of the day (see dayNumber). */
export type PowerOn = (day: number) => readonly PoweredSpan[];

/** What was counted and what the model says, over the same minutes. */
export interface MeterTotals {
  /** Minutes that intervals cover [min], 0 or more. */
  readonly minutes: number;
  /** Energy counted [J]. */
  readonly metered: number;
  /** Energy by the model [J], 0 or more. */
  readonly modelled: number;
}

/** The same for one day. */
export interface MeterDay extends MeterTotals {
  /** Number of the day (see dayNumber) [d], 1 or more. */
  readonly day: number;
}

/** A stretch of intervals held against the model. */
export interface MeterStretch extends MeterTotals {
  /** Days in order; those without an interval are left out. */
  readonly byDay: readonly MeterDay[];
  /** The 24 hours of the clock, midnight first. */
  readonly byHour: readonly MeterTotals[];
}

/** A meter on the pump alone. */
export interface PumpCheck {
  /** Energy counted over energy of the model [-]; null when the model draws nothing. */
  readonly ratio: number | null;
  /** Standard deviation of that ratio from whole day to whole day [-]; null below two such days. */
  readonly spread: number | null;
  /** Days covered for at least 23 hours on which the model draws power [d], 0 or more. */
  readonly wholeDays: number;
}

/** A meter on the whole house: how much of the modelled pump shows in it. */
export interface HouseCheck {
  /** told: the share has a hold. The others say why nothing can be told. */
  readonly kind: 'told' | 'fewDays' | 'steadyPump' | 'noHold';
  /** Metered power for each watt of the model [-]; 1 is as modelled; null when there is no line. */
  readonly share: number | null;
  /** Standard error of the share [-], the greater of that by intervals and that by days. */
  readonly shareError: number | null;
  /** Power of everything else [W]. */
  readonly base: number | null;
  /** Standard error of that power [W], 0 or more. */
  readonly baseError: number | null;
  /** Days covered for at least 23 hours [d], 0 or more. */
  readonly wholeDays: number;
}

/** Below this many whole days nothing is said of a house [d]; common practice, no source. */
export const fewestDays = 3;

/** A share with a standard error above this could be anything from nothing to twice the pump [-]. */
export const loosestShare = 0.25;

/** A day counts as whole from here on [min]: a day of a clock change has 23 hours. */
const wholeDay = 1380;

/** Energy of the model from midnight to each minute of a day, and the mean power of a stretch. */
type Ladder = (from: number, to: number) => number;

function ladderOf(spans: readonly PoweredSpan[]): Ladder {
  const pieces = spans.flatMap((span, index) => {
    requireSpan(`spans[${index}]`, span);
    const power = requireNotNegative(`spans[${index}].power`, span.power, 'W');
    return piecesOf(span).map((piece) => ({ ...piece, power }));
  });
  return (from, to) => {
    let energy = 0;
    for (const { start, end, power } of pieces) {
      const shared = Math.min(to, end) - Math.max(from, start);
      if (shared > 0) energy += shared * 60 * power;
    }
    return energy;
  };
}

/** The ladder of each day, made once for each set of spans. */
function laddersOf(powerOn: PowerOn): (day: number) => Ladder {
  const byDay = new Map<number, Ladder>();
  const bySpans = new Map<readonly PoweredSpan[], Ladder>();
  return (day) => {
    const known = byDay.get(day);
    if (known !== undefined) return known;
    const spans = powerOn(day);
    const ladder = bySpans.get(spans) ?? ladderOf(spans);
    bySpans.set(spans, ladder);
    byDay.set(day, ladder);
    return ladder;
  };
}

function requireInterval(interval: MeterInterval, index: number): void {
  const { start, duration, energy } = interval;
  requireNotNegative(`intervals[${index}].start`, start, 'min');
  if (!(duration > 0 && duration <= 44_640)) {
    throw new CoreError(`intervals[${index}].duration`, duration, 'above 0, to 44640 min');
  }
  if (!Number.isFinite(energy)) {
    throw new CoreError(`intervals[${index}].energy`, energy, 'a finite number of joules');
  }
}

/** Cuts an interval where a clock passes a multiple of `step` minutes; energy goes by time. */
function cut(interval: MeterInterval, step: number): readonly MeterInterval[] {
  const { start, duration, energy } = interval;
  const end = start + duration;
  const pieces: MeterInterval[] = [];
  for (let from = start; from < end; ) {
    const to = Math.min(end, (Math.floor(from / step) + 1) * step);
    if (to <= from) break;
    pieces.push({ start: from, duration: to - from, energy: (energy * (to - from)) / duration });
    from = to;
  }
  return pieces;
}

interface Sum {
  minutes: number;
  metered: number;
  modelled: number;
}

const nothing = (): Sum => ({ minutes: 0, metered: 0, modelled: 0 });

function add(sum: Sum, piece: MeterInterval, modelled: number): void {
  sum.minutes += piece.duration;
  sum.metered += piece.energy;
  sum.modelled += modelled;
}

const dayOf = (minute: number): number => Math.floor(minute / minutesPerDay) + 1;

/**
 * Counted and modelled energy over the stretch that intervals cover, in all, by day and by hour of the day.
 *
 * Law: energy = sum of power x time over the minutes of each interval; an interval over the hour or
 * over midnight is shared by time.
 * @param intervals The intervals [see MeterInterval], any order, fields as there.
 * @param powerOn Power of the model on any day [W], 0 or more.
 * @returns Energy [J] and minutes [min] in all, by day and by hour [see MeterStretch].
 * @throws CoreError when an interval or a span of the model is out of range.
 * Accuracy: exact up to rounding of doubles, the power within an interval taken as even.
 * Source: definition of energy (NIST SP 811, 2008).
 * @example meterStretch([{ start: 0, duration: 60, energy: 3.6e6 }], () => [{ start: 0, end: 720, power: 900 }]).modelled // 3.240e6
 */
export function meterStretch(intervals: readonly MeterInterval[], powerOn: PowerOn): MeterStretch {
  intervals.forEach(requireInterval);
  const ladderOn = laddersOf(powerOn);
  const all = nothing();
  const days = new Map<number, Sum>();
  const hours = Array.from({ length: 24 }, nothing);
  for (const interval of intervals) {
    for (const piece of cut(interval, 60)) {
      const day = dayOf(piece.start);
      const from = piece.start - (day - 1) * minutesPerDay;
      const modelled = ladderOn(day)(from, from + piece.duration);
      const ofDay = days.get(day) ?? nothing();
      days.set(day, ofDay);
      for (const sum of [all, ofDay, hours[Math.floor(from / 60)] ?? all]) {
        add(sum, piece, modelled);
      }
    }
  }
  const byDay = [...days].sort(([a], [b]) => a - b).map(([day, sum]) => ({ day, ...sum }));
  return { ...all, byDay, byHour: hours };
}

/**
 * A meter on the pump alone: counted energy over modelled energy, and how it spreads from day to day.
 *
 * Law: ratio of the sums; spread is the sample standard deviation of the ratios of whole days.
 * @param stretch Counted and modelled energy [see MeterStretch], fields as there.
 * @returns The ratio and its spread [see PumpCheck].
 * @throws nothing; a model that draws no power gives null.
 * Accuracy: exact up to rounding of doubles.
 * Source: sample standard deviation (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.6, from memory).
 * @example pumpCheck(meterStretch([{ start: 0, duration: 1440, energy: 4.32e7 }], () => [{ start: 0, end: 1440, power: 400 }])).ratio // 1.250
 */
export function pumpCheck(stretch: MeterStretch): PumpCheck {
  const whole = stretch.byDay.filter(
    ({ minutes, modelled }) => minutes >= wholeDay && modelled > 0,
  );
  const ratios = whole.map(({ metered, modelled }) => metered / modelled);
  const mean = ratios.reduce((sum, each) => sum + each, 0) / ratios.length;
  const squares = ratios.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return {
    ratio: stretch.modelled > 0 ? stretch.metered / stretch.modelled : null,
    spread: ratios.length < 2 ? null : Math.sqrt(squares / (ratios.length - 1)),
    wholeDays: ratios.length,
  };
}

/**
 * A meter on the whole house: how much of the modelled pump shows in it, beside a steady base.
 *
 * Law: mean metered power of an interval = base + share x mean modelled power, by least squares, each
 * interval weighed by its length.
 * @param intervals The intervals [see MeterInterval], any order, fields as there.
 * @param powerOn Power of the model on any day [W], 0 or more.
 * @returns Share [-] and base [W] with standard errors, or why nothing can be told [see HouseCheck].
 * @throws CoreError when an interval or a span of the model is out of range.
 * Accuracy: exact for a house that draws the same all day; one whose own hours go with the pump's is counted as pump. Whole days below 3, an even pump or a standard error above 0.25 tell nothing.
 * Source: linear least squares (NIST/SEMATECH e-Handbook of Statistical Methods, 4.4.3, from memory); limits common practice, no source.
 * @example houseCheck([0, 720, 1440, 2160, 2880, 3600].map((start, index) => ({ start, duration: 720, energy: 43200 * (index % 2 ? 300 : 1100) })), () => [{ start: 0, end: 720, power: 1000 }]).share // 0.8000
 */
export function houseCheck(intervals: readonly MeterInterval[], powerOn: PowerOn): HouseCheck {
  const { byDay } = meterStretch(intervals, powerOn);
  const wholeDays = byDay.filter(({ minutes }) => minutes >= wholeDay).length;
  const untold = { share: null, shareError: null, base: null, baseError: null, wholeDays };
  if (wholeDays < fewestDays || intervals.length < 3) return { kind: 'fewDays', ...untold };
  const line = straightLine(pointsOf(intervals, powerOn));
  if (line === null) return { kind: 'steadyPump', ...untold };
  const shareError = Math.max(line.slopeError, line.slopeErrorByGroup ?? 0);
  return {
    kind: shareError > loosestShare ? 'noHold' : 'told',
    share: line.slope,
    shareError,
    base: line.intercept,
    baseError: line.interceptError,
    wholeDays,
  };
}

function pointsOf(intervals: readonly MeterInterval[], powerOn: PowerOn): readonly LinePoint[] {
  const ladderOn = laddersOf(powerOn);
  return intervals.map((interval) => {
    const { start, duration, energy } = interval;
    const modelled = cut(interval, minutesPerDay).reduce((sum, piece) => {
      const day = dayOf(piece.start);
      const from = piece.start - (day - 1) * minutesPerDay;
      return sum + ladderOn(day)(from, from + piece.duration);
    }, 0);
    const seconds = 60 * duration;
    return {
      x: modelled / seconds,
      y: energy / seconds,
      weight: duration,
      group: dayOf(start),
    };
  });
}

/**
 * The same meter in steps no shorter than a quarter of an hour: less to draw and to reckon with.
 *
 * Law: intervals that meet inside one quarter of an hour of the clock become one; energy adds up.
 * @param intervals The intervals [see MeterInterval], in the order of time, fields as there.
 * @returns The joined intervals [see MeterInterval]; those of a quarter of an hour or more as they were.
 * @throws CoreError when an interval is out of range.
 * Accuracy: exact up to rounding of doubles.
 * Source: definition of energy (NIST SP 811, 2008).
 * @example joinedIntervals([{ start: 0, duration: 5, energy: 10 }, { start: 5, duration: 5, energy: 20 }])[0].energy // 30.00
 */
export function joinedIntervals(intervals: readonly MeterInterval[]): readonly MeterInterval[] {
  intervals.forEach(requireInterval);
  const joined: MeterInterval[] = [];
  for (const interval of intervals) {
    const last = joined.at(-1);
    if (last !== undefined && meets(last, interval)) {
      joined[joined.length - 1] = {
        start: last.start,
        duration: last.duration + interval.duration,
        energy: last.energy + interval.energy,
      };
    } else joined.push(interval);
  }
  return joined;
}

function meets(before: MeterInterval, next: MeterInterval): boolean {
  const quarter = Math.floor(before.start / 15);
  const end = next.start + next.duration;
  return before.start + before.duration === next.start && end <= (quarter + 1) * 15;
}
