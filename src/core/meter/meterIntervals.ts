/** Intervals of a meter, cut and set beside the model: steps that `meter.ts` and `meterHouse.ts` share. */
import { minutesPerDay } from '#core/base/constants.ts';
import { CoreError, requireNotNegative } from '#core/base/errors.ts';
import type { PoweredSpan } from '#core/tariff/pricing.ts';
import { piecesOf, requireSpan } from '#core/time/spans.ts';

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

/** A day counts as whole from here on [min]: a day of a clock change has 23 hours. */
export const wholeDay = 1380;

/** Energy of the model between two minutes of a day [J]. */
export type Ladder = (from: number, to: number) => number;

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

/**
 * The ladder of each day, made once for each set of spans.
 *
 * @internal
 */
export function laddersOf(powerOn: PowerOn): (day: number) => Ladder {
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

/**
 * Throws a CoreError that names the number at fault, if any.
 *
 * @internal
 */
export function requireInterval(interval: MeterInterval, index: number): void {
  const { start, duration, energy } = interval;
  requireNotNegative(`intervals[${index}].start`, start, 'min');
  if (!(duration > 0 && duration <= 44_640)) {
    throw new CoreError(`intervals[${index}].duration`, duration, 'above 0, to 44640 min');
  }
  if (!Number.isFinite(energy)) {
    throw new CoreError(`intervals[${index}].energy`, energy, 'a finite number of joules');
  }
}

/**
 * Cuts an interval where a clock passes a multiple of `step` minutes; energy goes by time.
 *
 * @internal
 */
export function cut(interval: MeterInterval, step: number): readonly MeterInterval[] {
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

/** A sum on its way. */
export interface MeterSum {
  /** Minutes covered [min], 0 or more. */
  minutes: number;
  /** Energy counted [J], any finite amount. */
  metered: number;
  /** Energy by the model [J], 0 or more. */
  modelled: number;
}

/** A sum of nothing yet. */
export const nothing = (): MeterSum => ({ minutes: 0, metered: 0, modelled: 0 });

/**
 * Adds a piece and what the model draws in it.
 *
 * @internal
 */
export function add(sum: MeterSum, piece: MeterInterval, modelled: number): void {
  sum.minutes += piece.duration;
  sum.metered += piece.energy;
  sum.modelled += modelled;
}

/** Number of the day (see dayNumber) that a minute falls on. */
export const dayOf = (minute: number): number => Math.floor(minute / minutesPerDay) + 1;
