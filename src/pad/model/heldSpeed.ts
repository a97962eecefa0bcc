/** Speeds as the pump can turn: what lies outside its range is computed at its limit, and flagged. */

import type { Path } from '#pad/messages/path.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';

/** The speeds of a pump [rpm], and as ratios of the one its curve is stated at. */
export interface PumpSpeeds {
  readonly reference: number;
  readonly least: number;
  readonly top: number;
  /** Smallest change of speed [rpm]; 0 when any speed can be set. */
  readonly step: number;
}

/** What the pump does when asked for a speed [rpm]: 0 is off, all else lies within its range. */
export function heldSpeed(speed: number | null, { least, top }: PumpSpeeds): number {
  return speed === null || speed <= 0 ? 0 : Math.min(Math.max(speed, least), top);
}

/** The same over the reference speed. */
export function heldRatio(speed: number | null, speeds: PumpSpeeds): number {
  return heldSpeed(speed, speeds) / speeds.reference;
}

const rpm = (value: number) => ({ quantity: 'speed' as const, value });

/** What is wrong with a speed that somebody asks of the pump. */
export function heldProblems(
  speed: number | null,
  path: Path,
  speeds: PumpSpeeds,
): readonly Problem[] {
  const held = heldSpeed(speed, speeds);
  if (speed === null || speed <= 0 || held === speed) return [];
  const code = speed > held ? 'speedTooFast' : 'speedTooSlow';
  return [problem(code, path, { found: rpm(speed), limit: rpm(held) })];
}
