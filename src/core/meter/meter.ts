/** What a meter counted, held against what the model of a pump says it should have counted. */
import { minutesPerDay } from '#core/base/constants.ts';
import {
  add,
  cut,
  dayOf,
  laddersOf,
  type MeterInterval,
  type MeterSum,
  nothing,
  type PowerOn,
  requireInterval,
  wholeDay,
} from './meterIntervals.ts';

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
  const days = new Map<number, MeterSum>();
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
