/** A meter on a whole house: how much of the pump shows in it, through the hours the house keeps itself. */
import { minutesPerDay } from '#core/base/constants.ts';
import { dailyRhythm } from '#core/numerics/dailyRhythm.ts';
import { type LinePoint, straightLine } from '#core/numerics/straightLine.ts';
import type { MeterStretch } from './meter.ts';
import {
  add,
  cut,
  dayOf,
  type Ladder,
  laddersOf,
  type MeterInterval,
  nothing,
  type PowerOn,
  requireInterval,
  wholeDay,
} from './meterIntervals.ts';

/** Beside the check, so that one import holds a meter against a model. */

/** Mean powers at one time of the day, all days together. */
export interface DaySlot {
  /** First minute of the day [min], 0 to 1425. */
  readonly start: number;
  /** Length [min], 15, 30 or 60. */
  readonly minutes: number;
  /** Power counted [W]; null where no interval lies. */
  readonly metered: number | null;
  /** Power of the model [W]; null where no interval lies. */
  readonly modelled: number | null;
}

/** A meter on the whole house: how much of the modelled pump shows in it. */
export interface HouseCheck {
  /** told: the share has a hold. The others say why nothing can be told. */
  readonly kind: 'told' | 'fewDays' | 'longIntervals' | 'steadyPump' | 'noHold';
  /** Jump of the meter for each watt that the model jumps [-]; 1 is as modelled; null when there is none. */
  readonly share: number | null;
  /** Standard error of the share [-], 0 or more. */
  readonly shareError: number | null;
  /** Mean power of everything else [W]. */
  readonly base: number | null;
  /** Power of everything else through the day, smoothed [W]; as many as there are slots, or none. */
  readonly rest: readonly number[];
  /** Days covered for at least 23 hours [d], 0 or more. */
  readonly wholeDays: number;
}

/** Below this many whole days nothing is said of a house [d]; common practice, no source. */
export const fewestDays = 3;

/** A share with a standard error above this could be anything from nothing to twice the pump [-]. */
export const loosestShare = 0.25;

/** Slots that a day is cut into [min], the finest first. */
const slotLengths = [15, 30, 60] as const;

/**
 * The mean day of a meter and of the model, in slots of a quarter, half or whole hour.
 *
 * Law: mean power = energy / time of all days at that time of day; an interval over the edge of a slot is
 * shared by time, its model with it.
 * @param intervals The intervals [see MeterInterval], any order, fields as there.
 * @param powerOn Power of the model on any day [W], 0 or more.
 * @returns The slots of the day in order [see DaySlot], as long as most intervals; none when these are longer than an hour.
 * @throws CoreError when an interval or a span of the model is out of range.
 * Accuracy: exact up to rounding of doubles, the power within an interval taken as even.
 * Source: definition of power (NIST SP 811, 2008).
 * @example dayProfile([{ start: 0, duration: 60, energy: 3.6e6 }], () => [{ start: 0, end: 30, power: 900 }])[0].modelled // 450.0
 */
export function dayProfile(
  intervals: readonly MeterInterval[],
  powerOn: PowerOn,
): readonly DaySlot[] {
  intervals.forEach(requireInterval);
  const usual = medianDuration(intervals);
  const length = slotLengths.find((each) => each >= usual - 1e-6);
  if (length === undefined) return [];
  const sums = Array.from({ length: minutesPerDay / length }, nothing);
  const ladderOn = laddersOf(powerOn);
  for (const interval of intervals) {
    const modelled = modelledIn(interval, ladderOn);
    for (const piece of cut(interval, length)) {
      const sum = sums[Math.floor((piece.start % minutesPerDay) / length)];
      if (sum) add(sum, piece, (modelled * piece.duration) / interval.duration);
    }
  }
  return sums.map(({ minutes, metered, modelled }, index) => ({
    start: length * index,
    minutes: length,
    metered: minutes > 0 ? metered / (60 * minutes) : null,
    modelled: minutes > 0 ? modelled / (60 * minutes) : null,
  }));
}

function medianDuration(intervals: readonly MeterInterval[]): number {
  const durations = intervals.map(({ duration }) => duration).sort((a, b) => a - b);
  return durations[Math.floor(durations.length / 2)] ?? Number.POSITIVE_INFINITY;
}

/** Energy of the model in an interval [J]. */
function modelledIn(interval: MeterInterval, ladderOn: (day: number) => Ladder): number {
  return cut(interval, minutesPerDay).reduce((sum, { start, duration }) => {
    const day = dayOf(start);
    const from = start - (day - 1) * minutesPerDay;
    return sum + ladderOn(day)(from, from + duration);
  }, 0);
}

/** A house is taken to go no faster than so many waves a day, and no faster than its slots show. */
const wavesIn = (slots: number) => Math.min(8, Math.floor(slots / 4));

/**
 * A meter on the whole house: how much of the modelled pump shows in it.
 *
 * Law: mean day of the meter = smooth daily rhythm + share x mean day of the model, by least squares, with
 * a rhythm of up to 8 waves a day taken out of both. A house has hours of its own and so has the pump; a
 * line through the bare powers would take the one for the other, but only the pump jumps at its minute.
 * @param stretch Counted and modelled energy [see MeterStretch], fields as there.
 * @param slots The mean day of the same intervals [see DaySlot], fields as there; none where these are longer than an hour.
 * @returns Share [-] with its standard error and the power of everything else [W], or why nothing can be told [see HouseCheck].
 * @throws CoreError when a power is not a finite number.
 * Accuracy: exact for a house whose mean day is such a rhythm. What always jumps in the same slot as the pump counts as pump. Whole days below 3, intervals above an hour, an even pump or a standard error above 0.25 tell nothing.
 * Source: linear least squares (NIST/SEMATECH e-Handbook of Statistical Methods, 4.4.3, from memory); taking the rhythm out of both (Frisch and Waugh, Econometrica 1, 1933, from memory); waves and limits common practice, no source.
 * @example ((hours, on) => houseCheck(meterStretch(hours, on), dayProfile(hours, on)))(Array.from({ length: 72 }, (_, hour) => ({ start: 60 * hour, duration: 60, energy: 3600 * (hour % 24 < 8 ? 1100 : 300) })), () => [{ start: 0, end: 480, power: 1000 }]).share // 0.8000
 */
export function houseCheck(stretch: MeterStretch, slots: readonly DaySlot[]): HouseCheck {
  const wholeDays = stretch.byDay.filter(({ minutes }) => minutes >= wholeDay).length;
  const untold = { share: null, shareError: null, base: null, rest: [], wholeDays };
  const [metered, modelled] = [
    slots.flatMap((slot) => slot.metered ?? []),
    slots.flatMap((slot) => slot.modelled ?? []),
  ];
  if (slots.length === 0 && stretch.minutes > 0) return { kind: 'longIntervals', ...untold };
  if (wholeDays < fewestDays || metered.length < slots.length) {
    return { kind: 'fewDays', ...untold };
  }
  const waves = wavesIn(slots.length);
  const line = straightLine(pointsOf(modelled, metered, waves));
  if (line === null) return { kind: 'steadyPump', ...untold };
  // The waves have been fitted too, and take two numbers each.
  const free = (slots.length - 2) / (slots.length - 2 - 2 * waves);
  const [share, shareError] = [line.slope, line.slopeError * Math.sqrt(free)];
  const rest = metered.map((power, index) => power - share * (modelled[index] ?? 0));
  return {
    kind: shareError > loosestShare ? 'noHold' : 'told',
    share,
    shareError,
    base: rest.reduce((sum, power) => sum + power, 0) / rest.length,
    rest: dailyRhythm(rest, waves),
    wholeDays,
  };
}

/** What jumps in both, with the rhythm taken out; what rounding alone leaves of an even pump is nothing. */
function pointsOf(
  modelled: readonly number[],
  metered: readonly number[],
  waves: number,
): readonly LinePoint[] {
  const [smoothX, smoothY] = [dailyRhythm(modelled, waves), dailyRhythm(metered, waves)];
  const least = 1e-9 * Math.max(...modelled);
  return modelled.map((power, index) => {
    const jump = power - (smoothX[index] ?? 0);
    return {
      x: Math.abs(jump) <= least ? 0 : jump,
      y: (metered[index] ?? 0) - (smoothY[index] ?? 0),
      weight: 1,
    };
  });
}
