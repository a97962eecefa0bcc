/**
 * The day as the search sees it: a horizon of intervals within which nothing changes, the intervals
 * that are alike gathered into classes, and for each class the speeds that may run in it.
 */

import { minutesPerDay } from '#core/base/constants.ts';
import { flowSlack, passesLimit, type ServiceNeed } from '#core/day/dayReport.ts';
import { type Span, spanHolds, spanMinutes } from '#core/time/spans.ts';
import type { CheapestDayInputs, SpeedRow } from './inputs.ts';

/** A speed of the search, standstill among them. */
export interface HorizonSpeed {
  /** The row it comes from, or null for standstill. */
  readonly row: SpeedRow | null;
  /** Flow over the greatest flow [-], 0 to 1. */
  readonly flow: number;
  /** Wire power above that at standstill [W]. */
  readonly power: number;
  /** Needs that its flow serves, one bit each [-]. */
  readonly serves: number;
}

/** Slots in a row with one price, one ceiling and the same windows open. */
export interface Interval {
  /** First slot [slots], counted from midnight. */
  readonly start: number;
  /** How many [slots]. */
  readonly slots: number;
  /** Its class, a place in the list of them [-]. */
  readonly kind: number;
}

/** Stretches that are alike. */
export interface IntervalClass {
  /** Price of energy [currency/kWh]. */
  readonly price: number;
  /** Needs whose windows are open, one bit each [-]. */
  readonly open: number;
  /** All its slots [slots]. */
  readonly slots: number;
  /** Speeds allowed, places in the list of speeds, rising [-]. */
  readonly speeds: readonly number[];
}

/** A need as the search counts it. */
export interface HorizonNeed {
  readonly need: ServiceNeed;
  /** Slots it must be served [slots]. */
  readonly slots: number;
  /** Shortest run that counts [slots]. */
  readonly run: number;
}

/** The whole problem, counted in slots of one or more minutes. */
export interface Horizon {
  /** Length of a slot [min], 1 to 1440. */
  readonly minutes: number;
  /** Slots in the day [slots], 1 to 1440. */
  readonly slots: number;
  readonly speeds: readonly HorizonSpeed[];
  readonly intervals: readonly Interval[];
  readonly classes: readonly IntervalClass[];
  readonly needs: readonly HorizonNeed[];
  /** Water to be moved, in slots at the greatest flow [slots], 0 or more. */
  readonly volume: number;
  /** Water that one slot at the greatest flow moves [m3], above 0. */
  readonly slotVolume: number;
  /** Price of a slot in a class at a speed, above that at standstill [currency]. */
  readonly cost: readonly Float64Array[];
  /** The greatest of them, above 0, as the measure of small differences [currency]. */
  readonly scale: number;
}

/** Volume is summed in doubles: a day may fall short by this share of it, and no more. */
export const volumeSlack = 1e-10;

/** A interval in which a need must be served, whatever it costs. */
export interface Forced extends Span {
  /** Place of the need in the list of the horizon [-], 0 or more. */
  readonly place: number;
}

/**
 * Price of a day on which the pump stands still [currency]: what every day costs at least in the
 * search, which counts the power of a speed from there.
 *
 * @internal
 */
export function standbyCost({ prices, standbyPower = 0 }: CheapestDayInputs): number {
  return prices.reduce(
    (sum, span) => sum + (span.price * standbyPower * spanMinutes(span)) / 60_000,
    0,
  );
}

/**
 * The horizon of a set of inputs that have been found sound, with some service fixed in time if wanted.
 *
 * @internal
 */
export function horizonOf(inputs: CheapestDayInputs, forced: readonly Forced[] = []): Horizon {
  const { minuteStep: minutes = 1 } = inputs;
  const needs = inputs.needs.filter((need) => need.minutes > 0).map((n) => ringNeed(n, minutes));
  const rows = inputs.speeds
    .filter((row) => !inputs.limits.some((limit) => passesLimit(limit, row)))
    .toSorted((one, other) => one.ratio - other.ratio);
  const greatest = Math.max(1e-12, ...rows.map(({ flow }) => flow));
  const { standbyPower = 0 } = inputs;
  const moving = rows.map((row) => ringSpeed(row, greatest, needs, standbyPower));
  const still: HorizonSpeed = { row: null, flow: 0, power: 0, serves: 0 };
  const speeds = inputs.mayStop ? [still, ...moving] : moving;
  const slotVolume = greatest * 60 * minutes;
  const found = intervalsOf(inputs, speeds, needs, forced);
  const cost = found.classes.map(
    ({ price }) => new Float64Array(speeds.map(({ power }) => (price * power * minutes) / 60_000)),
  );
  const sizes = cost.flatMap((each, kind) =>
    (found.classes[kind]?.speeds ?? []).map((speed) => Math.abs(each[speed] ?? 0)),
  );
  return {
    minutes,
    slots: minutesPerDay / minutes,
    speeds,
    ...found,
    needs,
    volume: inputs.leastVolume / slotVolume,
    slotVolume,
    cost,
    scale: Math.max(...sizes, 0) || 1,
  };
}

/** A run that counts is never shorter than the shortest, so neither is the service of a day. */
function ringNeed(need: ServiceNeed, minutes: number): HorizonNeed {
  const run = Math.ceil(need.shortestRun / minutes - 1e-9);
  return { need, run, slots: Math.max(run, Math.ceil(need.minutes / minutes - 1e-9)) };
}

function ringSpeed(
  row: SpeedRow,
  greatest: number,
  needs: readonly HorizonNeed[],
  standbyPower: number,
): HorizonSpeed {
  const serves = needs.reduce((bits, { need }, place) => {
    const enough = row.flow >= need.leastFlow * (1 - flowSlack);
    const bearable =
      need.greatestFlow === undefined || row.flow <= need.greatestFlow * (1 + flowSlack);
    return enough && bearable ? bits | (1 << place) : bits;
  }, 0);
  return { row, flow: row.flow / greatest, power: row.power - standbyPower, serves };
}

/** A interval before those that are alike are gathered. */
interface Piece {
  readonly start: number;
  readonly slots: number;
  readonly price: number;
  readonly speeds: readonly number[];
  /** Needs that must be served here, one bit each. */
  readonly must: number;
  open: number;
}

function intervalsOf(
  inputs: CheapestDayInputs,
  speeds: readonly HorizonSpeed[],
  needs: readonly HorizonNeed[],
  forced: readonly Forced[],
): Pick<Horizon, 'intervals' | 'classes'> {
  const { minuteStep: minutes = 1 } = inputs;
  const windows = needs.flatMap(({ need }) => need.windows);
  const spans = [...inputs.prices, ...inputs.quiet, ...windows, ...forced];
  const ends = spans.flatMap(({ start, end }) => [start, end % minutesPerDay]);
  const cuts = [...new Set([0, ...ends])].sort((a, b) => a - b);
  const pieces = cuts.map((start, place): Piece => {
    const end = cuts[place + 1] ?? minutesPerDay;
    const held = pieceAt(inputs, speeds, needs, forced, start);
    return { start: start / minutes, slots: (end - start) / minutes, ...held };
  });
  for (const [place, { run }] of needs.entries()) closeShortWindows(pieces, 1 << place, run);
  return gathered(pieces);
}

/** What holds at a minute; a window only opens for a need that some allowed speed there serves. */
function pieceAt(
  inputs: CheapestDayInputs,
  speeds: readonly HorizonSpeed[],
  needs: readonly HorizonNeed[],
  forced: readonly Forced[],
  minute: number,
): Omit<Piece, 'start' | 'slots'> {
  const price = inputs.prices.find((span) => spanHolds(span, minute))?.price ?? 0;
  const ceilings = inputs.quiet.filter((span) => spanHolds(span, minute));
  const ceiling = Math.min(...ceilings.map((each) => each.ceiling)) * (1 + flowSlack);
  const allowed = speeds.flatMap(({ row }, place) => ((row?.ratio ?? 0) <= ceiling ? [place] : []));
  const served = allowed.reduce((bits, place) => bits | (speeds[place]?.serves ?? 0), 0);
  const open = needs.reduce((bits, { need: { windows } }, place) => {
    const isOpen = windows.length === 0 || windows.some((window) => spanHolds(window, minute));
    return isOpen ? bits | (1 << place) : bits;
  }, 0);
  const must = forced.reduce(
    (bits, each) => (spanHolds(each, minute) ? bits | (1 << each.place) : bits),
    0,
  );
  const able = allowed.filter((place) => (must & ~((speeds[place]?.serves ?? 0) & open)) === 0);
  return { price, open: open & served, must, speeds: must === 0 ? allowed : able };
}

/** No run that counts fits where a need is open for less than its shortest run. */
function closeShortWindows(pieces: readonly Piece[], bit: number, run: number): void {
  const shut = pieces.findIndex(({ open }) => (open & bit) === 0);
  if (shut < 0) return;
  let group: Piece[] = [];
  for (let step = 1; step <= pieces.length; step += 1) {
    const piece = pieces[(shut + step) % pieces.length] as Piece;
    if (piece.open & bit) group.push(piece);
    else {
      const length = group.reduce((sum, { slots }) => sum + slots, 0);
      if (length < run) for (const each of group) each.open &= ~bit;
      group = [];
    }
  }
}

function gathered(pieces: readonly Piece[]): Pick<Horizon, 'intervals' | 'classes'> {
  const kinds = new Map<string, number>();
  const classes: (Omit<IntervalClass, 'slots'> & { slots: number })[] = [];
  const intervals: { start: number; slots: number; kind: number }[] = [];
  for (const { start, slots, price, open, must, speeds } of pieces) {
    const key = `${price} ${open} ${must} ${speeds.length}`;
    const kind = kinds.get(key) ?? classes.length;
    kinds.set(key, kind);
    const held = classes[kind];
    if (held) held.slots += slots;
    else classes.push({ price, open, speeds, slots });
    const last = intervals.at(-1);
    if (last?.kind === kind) last.slots += slots;
    else intervals.push({ start, slots, kind });
  }
  return { intervals: intervals, classes };
}
