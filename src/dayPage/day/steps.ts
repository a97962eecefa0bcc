/** Values that hold for a stretch of the day, and the line they make. */

import { costPerHour } from '#core/day/needs.ts';
import type { Band } from '#core/tariff/tariff.ts';
import { type Axis, across, upward } from '#ui/charts/scale.ts';
import type { Report } from './figures.ts';

type Segment = Report['segments'][number];

export interface Step {
  readonly start: number;
  readonly end: number;
  readonly value: number;
}

/** One value of every stretch of the day. */
export const stepsOf =
  (value: (segment: Segment) => number) =>
  ({ segments }: Report): readonly Step[] =>
    segments.map((segment) => ({
      start: segment.start,
      end: segment.end,
      value: value(segment),
    }));

/** What running costs an hour: power times price, cut where either changes. */
export const costSteps =
  (bands: readonly Band[]) =>
  ({ segments }: Report): readonly Step[] =>
    bands.flatMap((band) =>
      segments
        .map((segment) => ({
          start: Math.max(band.start, segment.start),
          end: Math.min(band.end, segment.end),
          value: costPerHour(segment.power, band.price),
        }))
        .filter(({ start, end }) => start < end),
    );

/** Steps of one value that meet are one. */
export function merged(steps: readonly Step[]): readonly Step[] {
  const done: Step[] = [];
  for (const step of steps) {
    const last = done.at(-1);
    if (last?.value === step.value && last.end === step.start) {
      done[done.length - 1] = { ...last, end: step.end };
    } else done.push(step);
  }
  return done;
}

/** Path of the steps; straight up or down where the value changes, broken where the day has a hole. */
export function stepPath(steps: readonly Step[], x: Axis, y: Axis): string {
  let reached: number | undefined;
  const parts = merged(steps).map(({ start, end, value }) => {
    const [from, to, at] = [across(x, start), across(x, end), upward(y, value)].map((place) =>
      place.toFixed(1),
    );
    const joined = reached === start;
    reached = end;
    return joined ? `V${at}H${to}` : `M${from},${at}H${to}`;
  });
  return parts.join('');
}
