/** The cheapest day over a whole range of one input: its price, its slope, and where the best plan changes. */

import { CoreError, requirePositive } from '#core/base/errors.ts';
import { type CheapestDay, cheapestDay } from './cheapestDay.ts';
import type { CheapestDayInputs } from './inputs.ts';
import {
  type PlanCharacter,
  type PlanDifference,
  placesAlike,
  planCharacter,
  planDifferences,
  samePlan,
} from './sweepPlan.ts';

/** What is swept, and how finely. */
export interface SweepWish {
  /** Values of the input [its own unit], any finite numbers, rising. */
  readonly values: readonly number[];
  /** What the cheapest day is looked for in at a value, or null where too little is known; as many prices at every value. */
  readonly inputsAt: (value: number) => CheapestDayInputs | null;
  /** Width to which the place of a change is narrowed [unit of the value], above 0; left out where nothing lies between two values. */
  readonly narrowTo?: number | undefined;
}

/** The cheapest day at one value. */
export interface SweptDay {
  /** The value [unit of the value], any finite number. */
  readonly value: number;
  /** The day, or why there is none; null where the inputs were. */
  readonly day: CheapestDay | null;
  /** Marks of the plan; null where no day was found. */
  readonly character: PlanCharacter | null;
  /** Price of one unit more [currency per unit of the value], any finite number: to the next value, at the last one from the one before; null beside a value without a day. */
  readonly slope: number | null;
}

/** A place where the best plan changes. */
export interface SweepChange {
  /** Last value with the plan before. */
  readonly before: SweptDay;
  /** First value with the plan after. */
  readonly after: SweptDay;
  readonly differences: readonly PlanDifference[];
}

/** A swept input. */
export interface Sweep {
  /** One entry per value wished, in their order. */
  readonly days: readonly SweptDay[];
  /** The changes from the least value to the greatest. */
  readonly changes: readonly SweepChange[];
}

type Bare = Omit<SweptDay, 'slope'>;

/** A value before it is known which prices are alike. */
interface Tried extends Omit<Bare, 'character'> {
  readonly inputs: CheapestDayInputs | null;
}

/** Days worked out at most to narrow the changes down; beyond it they stay as wide as they are. */
const mostNarrowing = 100;

/**
 * The cheapest day over a range of one input, and where the best plan changes.
 *
 * Law: cheapestDay at every value; between two neighbours whose plans differ the interval is halved, and each half that still differs again, down to the width wished. A drift of speeds that no longer shows at that width is no change.
 * @param wish Values, inputs at a value and the width wished [see SweepWish], fields as there.
 * @returns Days and changes [see Sweep], prices in [currency]; a value without inputs has no day.
 * @throws CoreError when the values are not rising finite numbers, the width is not above 0, or the inputs at a value break the contract of cheapestDay.
 * Accuracy: prices as cheapestDay; places of changes to the width wished, while no more than 100 days are needed for them. Two changes that undo one another between neighbouring values are not seen.
 * Source: bisection; common practice, no source.
 * @example sweepCheapestDay({ values: [54, 108], inputsAt: (leastVolume) => ({ speeds: [{ ratio: 0.5, flow: 0.003, power: 200 }], mayStop: true, leastVolume, needs: [], limits: [], quiet: [], prices: [{ start: 0, end: 1440, price: 0.3 }] }) }).days[1].day.cost // 0.6000
 */
export function sweepCheapestDay(wish: SweepWish): Sweep {
  const steps = sweepSteps(wish);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * The same sweep in steps, for a page that must not stand still meanwhile.
 *
 * Law: as sweepCheapestDay; it pauses after each day.
 * @param wish Values, inputs at a value and the width wished [see SweepWish], fields as there.
 * @returns A generator of the number of days worked out so far [-] that ends with the sweep [see Sweep].
 * @throws CoreError as sweepCheapestDay, the values at its first step.
 * Accuracy: as sweepCheapestDay.
 * Source: as sweepCheapestDay.
 * @example sweepSteps({ values: [54, 108], inputsAt: () => null }).next().value // 1.000
 */
export function* sweepSteps(wish: SweepWish): Generator<number, Sweep> {
  requireWish(wish);
  const { values, narrowTo } = wish;
  const tried: Tried[] = [];
  for (const value of values) {
    tried.push(tryAt(wish, value));
    yield tried.length;
  }
  const alike = placesAlike(
    tried.flatMap(({ inputs }) => (inputs === null ? [] : [inputs.prices])),
  );
  const days = tried.map((each) => marked(each, alike));
  const changes: SweepChange[] = [];
  let narrowing = 0;
  // The nearest interval lies on top, so that changes come out from the least value on.
  const waiting = days.slice(1).map((after, place) => [days[place] as Bare, after] as const);
  waiting.reverse();
  for (let pair = waiting.pop(); pair !== undefined; pair = waiting.pop()) {
    const [before, after] = pair;
    const differences = planDifferences(before.character, after.character, samePlan.ratio);
    if (differences.length === 0) continue;
    const width = after.value - before.value;
    if (narrowTo === undefined || width <= narrowTo || narrowing >= mostNarrowing) {
      changes.push({ before: sloped(before, after), after: sloped(after, before), differences });
      continue;
    }
    narrowing += 1;
    const middle = marked(tryAt(wish, (before.value + after.value) / 2), alike);
    yield days.length + narrowing;
    waiting.push([middle, after], [before, middle]);
  }
  return {
    days: days.map((day, place) => sloped(day, days[place + 1] ?? days[place - 1])),
    changes,
  };
}

function requireWish({ values, narrowTo }: SweepWish): void {
  for (const [place, value] of values.entries()) {
    const least = values[place - 1] ?? Number.NEGATIVE_INFINITY;
    if (!Number.isFinite(value) || value <= least)
      throw new CoreError(`values[${place}]`, value, 'finite numbers, rising');
  }
  if (narrowTo !== undefined) requirePositive('narrowTo', narrowTo, '');
}

function tryAt({ inputsAt }: SweepWish, value: number): Tried {
  const inputs = inputsAt(value);
  return { value, inputs, day: inputs === null ? null : cheapestDay(inputs) };
}

function marked({ value, inputs, day }: Tried, alike: readonly number[]): Bare {
  const isFound = inputs !== null && day?.kind === 'found';
  return { value, day, character: isFound ? planCharacter(day, inputs.prices, alike) : null };
}

function sloped(here: Bare, beside: Bare | undefined): SweptDay {
  if (here.day?.kind !== 'found' || beside?.day?.kind !== 'found') return { ...here, slope: null };
  const slope = (beside.day.cost - here.day.cost) / (beside.value - here.value);
  return { ...here, slope };
}
