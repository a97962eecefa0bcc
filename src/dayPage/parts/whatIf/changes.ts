/** Where the best plan changes, in words: the flag in the picture and the sentence. */
import type { SweepChange } from '#core/planner/sweep.ts';
import type { PlanDifference } from '#core/planner/sweepPlan.ts';
import { spanText } from '#dayPage/day/text.ts';
import { needName } from '#words/needsAndLimits.ts';
import type { WhatIfModel } from './model.ts';
import { type InputWords, wordsOf } from './words.ts';

export function inputWords(model: WhatIfModel): InputWords | null {
  const input = model.chosen.value;
  const manner = { units: model.units.value, currency: model.currency.value };
  return input === null ? null : wordsOf(input, manner);
}

/** A change of the best plan, as its flag in the picture and as a sentence. */
export interface ChangeWords {
  readonly change: SweepChange;
  /** Where it is. */
  readonly at: number;
  readonly label: string;
  readonly sentence: string;
  /** What a reader would want to know first has the lowest number. */
  readonly rank: number;
}

/** Changes of this rank and above are only told in the table. */
export const minorRank = 5;
/** No change that a reader would call one. */
const unsaid = 9;

/** Every change in words, from the least value to the greatest. */
export function changesIn(model: WhatIfModel): readonly ChangeWords[] {
  const words = inputWords(model);
  if (words === null) return [];
  return (model.sweep.value?.changes ?? []).flatMap((change) => {
    const edge = edgeOf(model, change);
    const [first] = change.differences
      .map((difference) => ({ difference, rank: rankOf(model, difference, edge) }))
      .filter(({ rank }) => rank < unsaid)
      .sort((one, other) => one.rank - other.rank);
    if (first === undefined) return [];
    const told = tell(model, first.difference, change, words);
    return [{ change, at: edge, rank: first.rank, ...told }];
  });
}

const isStepped = (model: WhatIfModel) => model.chosen.value?.narrowTo === undefined;

/** Where the change is: with steps the first value after it. */
function edgeOf(model: WhatIfModel, { before, after }: SweepChange): number {
  return isStepped(model) ? after.value : (before.value + after.value) / 2;
}

/** Whether it is what is swept itself that begins to cost, or ceases to. */
function isOwn(model: WhatIfModel, needId: string | null): boolean {
  const input = model.chosen.value?.of;
  return input?.kind === 'need'
    ? needId === input.need.id
    : input?.kind === 'turnovers' && needId === null;
}

function rankOf(model: WhatIfModel, difference: PlanDifference, edge: number): number {
  switch (difference.kind) {
    case 'day':
      return 0;
    case 'price': {
      // With one price there are no hours to tell from others.
      const prices = new Set(model.bandsOfDay.value.map(({ price }) => price));
      return prices.size > 1 ? 1 : unsaid;
    }
    case 'stops':
      return 2;
    case 'binds': {
      const own = isOwn(model, difference.needId);
      // The first minute of anything costs something, and changes all the rest; that is no news.
      const [first = 0, second = first] = model.chosen.value?.values ?? [];
      if (edge <= second && (own || model.chosen.value?.of.kind === 'need')) return unsaid;
      if (own) return 1.5;
      return isStepped(model) ? minorRank : 4;
    }
    case 'speeds': {
      const [before, after] = [difference.from.length, difference.to.length];
      // From one size of pipe to the next every speed moves, and that is no change of plan.
      if (before === after) return isStepped(model) ? unsaid : 6;
      return Math.min(before, after) <= 2 ? 3 : minorRank;
    }
  }
}

type Told = Pick<ChangeWords, 'label' | 'sentence'>;

function tell(
  model: WhatIfModel,
  difference: PlanDifference,
  change: SweepChange,
  words: InputWords,
): Told {
  const { before, after } = change;
  const edge = edgeOf(model, change);
  const from = isStepped(model)
    ? `With ${words.value(edge)}, and from there on,`
    : `From ${words.value(edge)} on`;
  switch (difference.kind) {
    case 'day':
      return difference.exists
        ? {
            label: 'no day before here',
            sentence: `Below ${words.value(after.value)} no day keeps all you ask.`,
          }
        : {
            label: 'no day from here on',
            sentence: `Above ${words.value(before.value)} no day keeps all you ask.`,
          };
    case 'price': {
      const hours = hoursAt(model, difference.place);
      return difference.runs
        ? { label: `also in ${hours}`, sentence: `${from} the pump must also run in ${hours}.` }
        : { label: `not in ${hours}`, sentence: `${from} it no longer runs in ${hours}.` };
    }
    case 'stops':
      return difference.stops
        ? {
            label: 'from here it may rest',
            sentence: `${from} it pays to rest for a part of the day.`,
          }
        : { label: 'from here it runs all day', sentence: `${from} the pump runs all day.` };
    case 'speeds':
      return speedsTold(difference.from.length, difference.to.length, from);
    case 'binds':
      return bindsTold(model, difference, edge, words, from);
  }
}

const ordinals = ['', 'a first', 'a second', 'a third', 'a fourth', 'a fifth', 'a sixth'];
const countOf = (speeds: number) => (speeds === 1 ? 'one speed' : `${speeds} speeds`);

function speedsTold(before: number, after: number, from: string): Told {
  if (after === before) {
    return { label: 'from here other speeds', sentence: `${from} it runs at other speeds.` };
  }
  const next = after === before + 1 ? ordinals[after] : undefined;
  if (next !== undefined) {
    return {
      label: `from here ${next} speed`,
      sentence: `${from} it takes ${next} speed.`,
    };
  }
  const are = after === 1 ? 'is' : 'are';
  return {
    label: after < before ? `${countOf(after)} ${are} enough` : `from here ${countOf(after)}`,
    sentence:
      after < before
        ? `${from} ${countOf(after)} ${are} enough.`
        : `${from} it takes ${countOf(after)}.`,
  };
}

function bindsTold(
  model: WhatIfModel,
  { needId, binds }: Extract<PlanDifference, { kind: 'binds' }>,
  edge: number,
  words: InputWords,
  from: string,
): Told {
  const need = needId === null ? undefined : needsOf(model).find(({ id }) => id === needId);
  const name =
    needId === null ? 'the water' : need === undefined ? 'a need' : `“${needName(need)}”`;
  if (isOwn(model, needId) && binds) {
    return {
      label: 'up to here it comes free',
      sentence: `Up to ${words.value(edge)} ${name} costs nothing extra: the rest of the day gives it.`,
    };
  }
  return binds
    ? { label: `${name} makes it cost more`, sentence: `${from} ${name} makes the day cost more.` }
    : {
        label: `${name} costs nothing extra`,
        sentence: `${from} ${name} costs nothing extra: the rest of the day gives it.`,
      };
}

const needsOf = (model: WhatIfModel) => model.present.value?.changed.bench.needs ?? [];

/** The hours of a price, by its place in the list: dear, cheap, or by the reader's name for them. */
function hoursAt(model: WhatIfModel, place: number): string {
  const bands = model.bandsOfDay.value;
  const prices = bands.map(({ price }) => price);
  const band = bands[place];
  if (band === undefined) return 'other hours';
  if (band.price === Math.max(...prices)) return 'the dear hours';
  if (band.price === Math.min(...prices)) return 'the cheap hours';
  return band.name ? `the hours “${band.name}”` : `the hours from ${spanText(band)}`;
}
