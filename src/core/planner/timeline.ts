/** A day as speeds in the order of the clock, and how its runs serve the needs. */

import type { Block } from '#core/day/day.ts';
import type { Horizon } from './horizon.ts';

/** Slots in a row at one speed; a timeline of them covers the day from midnight. */
export interface Segment {
  /** Place of the speed [-], 0 or more. */
  readonly speed: number;
  /** How many [slots], 0 or more. */
  readonly slots: number;
}

/**
 * The timeline without empty segments and with equal neighbours joined, but not across midnight.
 *
 * @internal
 */
export function joined(segments: readonly Segment[]): readonly Segment[] {
  const whole: { speed: number; slots: number }[] = [];
  for (const { speed, slots } of segments) {
    if (slots === 0) continue;
    const last = whole.at(-1);
    if (last?.speed === speed) last.slots += slots;
    else whole.push({ speed, slots });
  }
  return whole;
}

/**
 * Changes of speed in a cyclic day [-].
 *
 * @internal
 */
export function changesIn(segments: readonly Segment[]): number {
  const whole = joined(segments);
  if (whole.length <= 1) return 0;
  return whole.length - (whole[0]?.speed === whole.at(-1)?.speed ? 1 : 0);
}

/** An unbroken run of service. */
export interface ServedRun {
  /** First slot [slots], 0 or more. */
  readonly start: number;
  /** How many [slots], 1 or more. */
  readonly slots: number;
}

/**
 * Runs of the horizon in which a need is served.
 *
 * @internal
 */
export function runsIn(
  horizon: Horizon,
  segments: readonly Segment[],
  place: number,
): readonly ServedRun[] {
  const runs: { start: number; slots: number }[] = [];
  let at = 0;
  let segment = 0;
  let left = segments[0]?.slots ?? 0;
  for (const { kind, slots } of horizon.intervals) {
    const open = ((horizon.classes[kind]?.open ?? 0) >> place) & 1;
    for (let rest = slots; rest > 0; ) {
      while (left === 0 && segment < segments.length) left = segments[++segment]?.slots ?? 0;
      const taken = segment < segments.length ? Math.min(rest, left) : rest;
      const serves = ((horizon.speeds[segments[segment]?.speed ?? -1]?.serves ?? 0) >> place) & 1;
      const last = runs.at(-1);
      if (open && serves) {
        if (last !== undefined && last.start + last.slots === at) last.slots += taken;
        else runs.push({ start: at, slots: taken });
      }
      at += taken;
      rest -= taken;
      left -= taken;
    }
  }
  const [first, last] = [runs[0], runs.at(-1)];
  // The run at midnight goes on into the one that the day began with.
  if (runs.length > 1 && first?.start === 0 && last && last.start + last.slots === horizon.slots)
    return [...runs.slice(1, -1), { start: last.start, slots: last.slots + first.slots }];
  return runs;
}

function runsOf(horizon: Horizon, segments: readonly Segment[], place: number): readonly number[] {
  return runsIn(horizon, segments, place).map(({ slots }) => slots);
}

/**
 * Slots of service that are missing because a run is too short to count [slots].
 *
 * @internal
 */
export function missingRuns(horizon: Horizon, segments: readonly Segment[]): number {
  return horizon.needs.reduce((sum, { run, slots }, place) => {
    if (run <= 1) return sum;
    const counted = runsOf(horizon, segments, place).filter((each) => each >= run);
    return sum + Math.max(0, slots - counted.reduce((all, each) => all + each, 0));
  }, 0);
}

/**
 * Everything a timeline gives beyond what is asked [slots]: volume, then each need; below 0 it falls short.
 *
 * @internal
 */
export function overOf(horizon: Horizon, segments: readonly Segment[]): readonly number[] {
  const volume = segments.reduce(
    (sum, { speed, slots }) => sum + (horizon.speeds[speed]?.flow ?? 0) * slots,
    0,
  );
  const needs = horizon.needs.map(({ run, slots }, place) => {
    const counted = runsOf(horizon, segments, place).filter((each) => each >= Math.max(1, run));
    return counted.reduce((sum, each) => sum + each, 0) - slots;
  });
  return [volume - horizon.volume, ...needs];
}

/**
 * Price of a timeline [currency].
 *
 * @internal
 */
export function costOf(horizon: Horizon, segments: readonly Segment[]): number {
  let cost = 0;
  let segment = 0;
  let left = segments[0]?.slots ?? 0;
  for (const { kind, slots } of horizon.intervals) {
    for (let rest = slots; rest > 0; ) {
      while (left === 0 && segment < segments.length) left = segments[++segment]?.slots ?? 0;
      if (segment >= segments.length) return cost;
      const taken = Math.min(rest, left);
      cost += taken * (horizon.cost[kind]?.[segments[segment]?.speed ?? 0] ?? 0);
      rest -= taken;
      left -= taken;
    }
  }
  return cost;
}

/**
 * The blocks of a timeline; standstill is in none.
 *
 * @internal
 */
export function blocksOf(horizon: Horizon, segments: readonly Segment[]): readonly Block[] {
  const whole = joined(segments);
  let at = 0;
  const spans = whole.map(({ speed, slots }) => {
    const start = at * horizon.minutes;
    at += slots;
    return {
      start,
      end: (at * horizon.minutes) % 1440,
      ratio: horizon.speeds[speed]?.row?.ratio ?? 0,
    };
  });
  const [first, last] = [spans[0], spans.at(-1)];
  if (spans.length > 1 && first && last && first.ratio === last.ratio) {
    spans.pop();
    spans[0] = { ...first, start: last.start };
  }
  return spans
    .filter(({ ratio }) => ratio > 0)
    .toSorted((one, other) => one.start - other.start)
    .map((span, place) => ({ id: `block ${place + 1}`, ...span }));
}
