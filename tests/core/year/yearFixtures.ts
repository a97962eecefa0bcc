import type { Block } from '#core/day/day.ts';
import type { DayConditions, YearPlan } from '#core/year/year.ts';
import { inventedPump, inventedTariff } from '../day/dayFixtures.ts';

/** A day like any other. */
export const mild: DayConditions = { waterTemperature: 25, loading: 0, frost: [] };

/** A year of one plan on the invented pump and tariff. */
export function inventedYear(
  blocks: readonly Block[],
  change: Partial<YearPlan<never, never>> = {},
): YearPlan<never, never> {
  return {
    year: 2027,
    plans: [{ from: { month: 1, day: 1 }, blocks, needs: [] }],
    tariff: inventedTariff,
    conditionsOn: () => mild,
    pointAt: inventedPump,
    volume: 60,
    limits: [],
    quiet: [],
    frostRatio: 0,
    ...change,
  };
}
