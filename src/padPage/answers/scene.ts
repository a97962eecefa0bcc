/** Everything the answers need of a pad, worked out once for it and not again for each speed. */

import type { Limit } from '#core/day/limits.ts';
import type { PadBand, PadFit } from '#core/fit/padEvidence.ts';
import { bestMileageSpeed } from '#core/pump/power.ts';
import { type Machine, operatingStateAt } from '#explorables/example/machine.ts';
import { machineOf } from '#explorables/example/padMachine.ts';
import type { Pad } from '#pad/document/schema.ts';
import { type PadModel, padModel } from '#pad/model/assemble.ts';
import type { PumpSpeeds } from '#pad/model/heldSpeed.ts';
import { memoize, unlessRefused } from '#pad/model/memo.ts';
import type { RunningPad } from '#pad/model/runningPad.ts';
import { evenly } from '#ui/charts/path.ts';

/** A pad that is known well enough to answer. */
export interface Scene {
  readonly pad: Pad;
  readonly known: PadModel;
  readonly running: RunningPad;
  readonly fit: PadFit;
  readonly machine: Machine;
  readonly speeds: PumpSpeeds;
  /** Smallest change of speed offered [rpm]. */
  readonly step: number;
  readonly limits: readonly Limit[];
  /** The whole range of speeds, slow to fast. */
  readonly notches: readonly Notch[];
}

/** One of the speeds at which the band was worked out. */
export interface Notch {
  readonly ratio: number;
  readonly flow: number;
  readonly head: number;
  readonly power: number;
  readonly band: PadBand;
}

/** Step to offer where any speed can be set, or nobody said [rpm]. */
const usualStep = 10;
const notchCount = 25;

/** All that follows from a pad but for the speed; null while the pad says too little. */
export const sceneOf: (pad: Pad) => Scene | null = memoize((pad) =>
  unlessRefused(() => {
    const known = padModel(pad);
    const { running, fit, speeds, limits } = known;
    const machine = machineOf(pad);
    if (running === null || fit === null || speeds === null || machine === undefined) return null;
    const step = speeds.step > 0 ? speeds.step : usualStep;
    const notches = notchesOf(machine, fit);
    return { pad, known, running, fit, machine, speeds, step, limits, notches };
  }),
);

function notchesOf(machine: Machine, fit: PadFit): readonly Notch[] {
  return evenly(machine.leastSpeed, machine.topSpeed, notchCount).map((speed) => {
    const { flow, head, power } = operatingStateAt(machine, speed);
    const ratio = speed / machine.referenceSpeed;
    return { ratio, flow, head, power, band: fit.bandAt(ratio) };
  });
}

interface Between {
  readonly before: Notch;
  readonly after: Notch;
  /** How far from the first to the second, 0 to 1. */
  readonly part: number;
}

function between(notches: readonly Notch[], ratio: number): Between {
  const [first, last] = [notches[0] as Notch, notches.at(-1) as Notch];
  const width = last.ratio - first.ratio;
  const place = width > 0 ? ((ratio - first.ratio) / width) * (notches.length - 1) : 0;
  const at = Math.min(Math.max(Math.floor(place), 0), notches.length - 2);
  const before = notches[at] ?? first;
  return { before, after: notches[at + 1] ?? last, part: Math.min(Math.max(place - at, 0), 1) };
}

/**
 * The band at a speed, from the two notches beside it. Where there is a value, what is carried over
 * is how many times less or more it may be: that hardly changes from notch to notch.
 */
export function bandNear(
  { notches }: Pick<Scene, 'notches'>,
  ratio: number,
  value: Readonly<Record<keyof PadBand, number>>,
): PadBand {
  const { before, after, part } = between(notches, ratio);
  const mix = (one: number, other: number) => one + (other - one) * part;
  const of = (name: keyof PadBand) => {
    const here = value[name];
    const scaled = here > 0 && before[name] > 0 && after[name] > 0;
    const end = (side: 'low' | 'high') =>
      scaled
        ? here * mix(before.band[name][side] / before[name], after.band[name][side] / after[name])
        : mix(before.band[name][side], after.band[name][side]);
    return { low: Math.min(end('low'), here), high: Math.max(end('high'), here) };
  };
  return { flow: of('flow'), head: of('head'), power: of('power') };
}

/** The slowest ratio at which something that rises with speed reaches a level; null when none does. */
export function ratioWhere(
  { notches }: Pick<Scene, 'notches'>,
  rising: (notch: Notch) => number,
  level: number,
): number | null {
  const at = notches.findIndex((notch) => rising(notch) > level);
  const [before, after] = [notches[at - 1], notches[at]];
  if (after === undefined) return null;
  if (before === undefined) return after.ratio;
  const rise = rising(after) - rising(before);
  const part = rise > 0 ? (level - rising(before)) / rise : 0;
  return before.ratio + part * (after.ratio - before.ratio);
}

/** A speed that can be set and is at least this one. */
export function settable({ speeds, step }: Scene, speed: number): number {
  const up = Math.ceil(speed / step - 1e-7) * step;
  return Number(Math.min(Math.max(up, speeds.least), speeds.top).toPrecision(12));
}

/** A speed that can be set and is at most this one. */
export function settableBelow({ speeds, step }: Scene, speed: number): number {
  const down = Math.floor(speed / step + 1e-7) * step;
  return Number(Math.min(Math.max(down, speeds.least), speeds.top).toPrecision(12));
}

/** The speed with the most water for the energy, as it can be set [rpm]; null where none moves. */
export function leastSpecificEnergySpeed(scene: Scene): number | null {
  const { machine, speeds } = scene;
  const costAt = (ratio: number) => {
    const { flow, power } = operatingStateAt(machine, ratio * speeds.reference);
    return flow > 0 ? power / flow : Number.POSITIVE_INFINITY;
  };
  const [least, top] = [speeds.least / speeds.reference, speeds.top / speeds.reference];
  const best = unlessRefused(() => bestMileageSpeed(costAt, least, top));
  if (best === null || !Number.isFinite(costAt(best))) return null;
  return settable(scene, best * speeds.reference - scene.step / 2);
}
