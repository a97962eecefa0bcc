import { cheapestDay } from '#core/planner/cheapestDay.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import { ordinaryCase } from '../../core/planner/cases.ts';
import { openHighs, oracleSlots } from '../../oracle/cheapestDay.ts';
import type { RowMaker } from '../row.ts';

/**
 * Invented days of two or three prices and three needs, each of a greater flow than the one before,
 * that cost the slot programme between half a second and a few.
 */
const hardSeeds = [15, 30, 34, 59];
/** Invented days with one to three needs. */
const seeds = [3, 5, 8, 9];
const allowed = [4, 6, 8];

const costOf = (inputs: CheapestDayInputs): number => {
  const result = cheapestDay(inputs);
  return result.kind === 'found' ? result.cost : Number.NaN;
};

const total = (days: readonly CheapestDayInputs[], cost: (inputs: CheapestDayInputs) => number) =>
  days.reduce((sum, inputs) => sum + cost(inputs), 0);

const free: RowMaker = async () => {
  const highs = await openHighs();
  const fine = hardSeeds.map((seed) => ordinaryCase(seed, 58));
  const coarse = hardSeeds.map((seed) => ordinaryCase(seed, 12));
  return {
    name: 'cheapest day to the minute with 58 speeds, against 48 slots of 12 speeds',
    unit: 'days',
    reach: 1000,
    ways: [
      { name: 'core', units: hardSeeds.length, run: () => total(fine, costOf) },
      {
        name: 'slot programme in HiGHS',
        units: hardSeeds.length,
        run: () => total(coarse, (inputs) => oracleSlots(highs, inputs, 30)?.cost ?? Number.NaN),
      },
    ],
  };
};

const few: RowMaker = async () => {
  const days = seeds.flatMap((seed) =>
    allowed.map((mostChanges) => ({ ...ordinaryCase(seed, 58), mostChanges })),
  );
  return {
    name: 'cheapest day with at most 4, 6 and 8 changes, 58 speeds, gap proven to 0.1 %',
    unit: 'days',
    ways: [{ name: 'core', units: days.length, run: () => total(days, costOf) }],
  };
};

export const rows: readonly RowMaker[] = [free, few];
