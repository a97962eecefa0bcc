import type { Tariff } from '#core/tariff/tariff.ts';
import type { YearPlace } from './model.ts';

/** A place as plain data, so that a page can carry it. */
export interface CarriedYear {
  /** Speed [rpm], flow [m3/s] and wire power [W] at every speed that can be set. */
  readonly points: readonly (readonly [speed: number, flow: number, power: number])[];
  readonly tariff: Tariff;
  readonly year: number;
}

/** The place that a page carries. A speed between two of its points counts as the nearer one. */
export function placeFrom({ points, tariff, year }: CarriedYear): YearPlace {
  const speeds = points.map(([speed]) => speed);
  return {
    runningAt: (wish) => {
      const off = (speed: number) => Math.abs(speed - wish);
      const found = points.reduce((best, point) => (off(point[0]) < off(best[0]) ? point : best));
      const [speed, flow, power] = found;
      return { speed, flow, power };
    },
    leastSpeed: Math.min(...speeds),
    topSpeed: Math.max(...speeds),
    tariff,
    year,
  };
}
