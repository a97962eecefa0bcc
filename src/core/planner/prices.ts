/** What each need costs: the cheapest day once more, with a little less of it and without it. */

import { horizonOf } from './horizon.ts';
import { type CheapestDayInputs, requireInputs } from './inputs.ts';
import { solveRelaxation } from './relaxation.ts';

/** What less of one thing asked for would save in a day. */
export interface NeedPrice {
  /** Id of the need, or null for the water to be moved. */
  readonly needId: string | null;
  /** Saved by asking for less [currency/day]: an hour of a need, a tenth of the water. */
  readonly savedByLess: number;
  /** Saved by not asking for it at all [currency/day]. */
  readonly savedWithout: number;
}

/** What is asked for is reduced by so much: minutes of a need, share of the water. */
const less = { minutes: 60, share: 0.1 };

/** Price of the relaxed day, its minutes whole or not, or null where there is none. */
function leastCost(inputs: CheapestDayInputs): number | null {
  const horizon = horizonOf(inputs);
  const relaxation = solveRelaxation(horizon);
  return relaxation === null ? null : relaxation.bound * horizon.scale;
}

/**
 * What an hour less of each need, or a tenth less of the water, would save, and each of them left out.
 *
 * Law: difference of the least costs of two linear programmes of minutes by class and speed; rounding to whole minutes is left out, so that a saving is never an accident of it.
 * @param inputs Speeds, needs, limits, quiet hours and prices [see CheapestDayInputs], fields as there; the limit on changes is not looked at.
 * @returns The water first, then each need of more than 0 minutes [see NeedPrice]; empty when no day keeps everything.
 * @throws CoreError when an input is outside its range.
 * Accuracy: 1e-7 of the cost; shortest runs count only where no window is long enough for one.
 * Source: Dantzig, Linear Programming and Extensions, 1963.
 * @example needPrices({ speeds: [{ ratio: 0.5, flow: 0.003, power: 200 }], mayStop: true, leastVolume: 108, needs: [], limits: [], quiet: [], prices: [{ start: 0, end: 1440, price: 0.3 }] })[0].savedWithout // 0.6000
 */
export function needPrices(inputs: CheapestDayInputs): readonly NeedPrice[] {
  requireInputs(inputs);
  const all = leastCost(inputs);
  if (all === null) return [];
  const saved = (changed: Partial<CheapestDayInputs>) =>
    Math.max(0, all - (leastCost({ ...inputs, ...changed }) ?? all));
  const needs = inputs.needs.filter(({ minutes }) => minutes > 0);
  const withMinutes = (id: string, minutes: number) => ({
    needs: needs.map((need) =>
      need.id === id ? { ...need, minutes: Math.max(0, minutes) } : need,
    ),
  });
  return [
    {
      needId: null,
      savedByLess: saved({ leastVolume: inputs.leastVolume * (1 - less.share) }),
      savedWithout: saved({ leastVolume: 0 }),
    },
    ...needs.map(({ id, minutes }) => ({
      needId: id,
      savedByLess: saved(withMinutes(id, minutes - less.minutes)),
      savedWithout: saved(withMinutes(id, 0)),
    })),
  ];
}
