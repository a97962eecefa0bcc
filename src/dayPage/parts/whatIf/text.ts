/** What a sweep says: the finding, the changes of plan, the plan at one value, the table. */

import type { CheapestDay } from '#core/planner/cheapestDay.ts';
import type { SweptDay } from '#core/planner/sweep.ts';
import { rpmText, spanText } from '#dayPage/day/text.ts';
import { joined, lackText, noneText } from '#dayPage/planning/collisionText.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { coinOf } from '#units/coin.ts';
import { formatMoney, type Money } from '#units/money.ts';
import { noValue } from '#units/numerals.ts';
import { changesIn, inputWords } from './changes.ts';
import type { Looked, OwnDay, WhatIfModel } from './model.ts';
import { type InputWords, wordsOf } from './words.ts';

/** Sums smaller than this are as good as none [currency]. */
const nothing = (money: Money): number => coinOf(money) / 20;

/** A sum with as many places as a small one needs. */
export function sum(amount: number, money: Money): string {
  const size = Math.abs(amount);
  const isSmall = size >= nothing(money) && size < 9.95 * coinOf(money);
  return formatMoney(amount, money, { places: money.places + (isSmall ? 1 : 0) });
}

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

const costOf = (day: CheapestDay | null | undefined): number | null =>
  day?.kind === 'found' ? day.cost : null;

/** The finding: what more of it costs, where the plan changes, and where there is no day. */
export function findingText(model: WhatIfModel): string {
  const words = inputWords(model);
  if (words === null) return lackText(model.day.bench.value);
  if (!model.isDone.value) return 'Working out the days …';
  if (model.sweep.value === null) return 'The figures of this pad make no sense together here.';
  if (model.isBarren.value) return barrenText(model);
  return [moreText(model, words), changeText(model), noDayText(model)]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** Why there is nothing to draw, and what to change instead. */
function barrenText(model: WhatIfModel): string {
  const { present, chosen, offers, units, currency } = model;
  const lead =
    'As the pad is, there is no day that keeps all you ask, and changing this alone brings none.';
  const why = present.value === null ? null : gapText(model, present.value);
  const day = present.value?.day;
  const asked = day?.kind === 'none' ? day.collision : [];
  const instead = offers.value.filter(
    ({ id, of }) =>
      id !== chosen.value?.id &&
      asked.some((each) =>
        each.kind === 'need'
          ? of.kind === 'need' && of.need.id === each.needId
          : each.kind === 'volume' && of.kind === 'turnovers',
      ),
  );
  const manner = { units: units.value, currency: currency.value };
  const names = instead.map((input) => wordsOf(input, manner).name);
  const hint = names.length === 0 ? '' : `Try above instead: ${joined(names, 'or')}.`;
  return [lead, why ?? '', hint].filter((sentence) => sentence !== '').join(' ');
}

function moreText(model: WhatIfModel, words: InputWords): string {
  const now = costOf(model.present.value?.day);
  const then = costOf(model.more.value);
  if (now === null) return 'As the pad is, there is no day that keeps all you ask.';
  const { currency } = model;
  const costs = `As the pad is, the cheapest day takes ${sum(now, currency.value)}.`;
  if (then === null) return costs;
  const extra = then - now;
  if (Math.abs(extra) < nothing(currency.value)) return `${costs} ${words.more} changes nothing.`;
  const verb = extra > 0 ? 'costs' : 'saves';
  return `${costs} ${words.more} ${verb} ${sum(Math.abs(extra), currency.value)} a day.`;
}

/** The two changes that matter most: of equal rank those nearest to the pad as it is. */
function changeText(model: WhatIfModel): string {
  const input = model.chosen.value;
  if (input === null) return '';
  if (input.of.kind === 'prices') return 'The best plan stays the same whatever they are.';
  const nearness = (at: number) => Math.abs(at - input.present);
  const told = changesIn(model)
    .filter(({ rank }) => rank > 0 && rank <= 3)
    .sort((one, other) => one.rank - other.rank || nearness(one.at) - nearness(other.at))
    .slice(0, 2)
    .sort((one, other) => one.at - other.at)
    .map(({ sentence }) => sentence);
  return told.length > 0 ? told.join(' ') : rangeText(model);
}

/** What the whole range comes to, where the plan does not change in a way worth a word. */
function rangeText(model: WhatIfModel): string {
  const costs = (model.sweep.value?.days ?? []).flatMap(({ day }) => costOf(day) ?? []);
  if (costs.length < 2) return '';
  const [least, most] = [Math.min(...costs), Math.max(...costs)];
  const { currency } = model;
  if (most - least < nothing(currency.value))
    return 'Nowhere in the range does it change the price.';
  return `Over the whole range the cheapest day takes from ${sum(least, currency.value)} to ${sum(most, currency.value)}.`;
}

function noDayText(model: WhatIfModel): string {
  return changesIn(model)
    .filter(({ rank }) => rank === 0)
    .map(({ sentence }) => sentence)
    .join(' ');
}

/** Why there is no day at a value, or null where there is one. */
export function gapText(model: WhatIfModel, { changed, day }: Looked): string | null {
  if (day === null) return 'On this pad no day can be worked out here.';
  if (day.kind === 'found') return null;
  if (day.kind === 'unsettled') {
    return 'The search found no day within its limits, and no proof that there is none.';
  }
  const { bench, turnovers } = changed;
  return noneText({ bench, needs: bench.needs, turnovers, units: model.units.value }, day);
}

/** The nearest value to the pad as it is at which there is no day, for the sentence that says why. */
export function gapsText(model: WhatIfModel): readonly string[] {
  const changes = (model.sweep.value?.changes ?? []).filter(({ differences }) =>
    differences.some(({ kind }) => kind === 'day'),
  );
  return changes.flatMap(({ before, after }) => {
    const without = before.character === null ? before : after;
    const looked = model.lookAt(without.value);
    const words = inputWords(model);
    const why = looked === null ? null : gapText(model, looked);
    if (why === null || words === null) return [];
    const at = capital(words.value(without.value));
    return [why.startsWith(at) ? why : `${at}: ${why}`];
  });
}

/** Remarks on the lines, where one looks odd without a word. */
export function lineNotes(model: WhatIfModel): readonly string[] {
  const own = model.own.value;
  const kind = model.chosen.value?.of.kind;
  const isFlow = kind === 'pipes' || kind === 'loading' || kind === 'temperature';
  const costs = own.map(({ cost }) => cost);
  const isLevel = Math.max(...costs) - Math.min(...costs) < nothing(model.currency.value);
  return [
    ...(own.some(({ keeps }) => !keeps)
      ? ['Dotted: there the day on your sheet does not keep all that is asked.']
      : []),
    ...(isFlow && own.length > 0 && isLevel
      ? [
          'The day on your sheet keeps its price: at the same speed this pump is taken to draw the same power, and only the water that it moves changes.',
        ]
      : []),
  ];
}

/** What the value of the handle comes to. */
export function planText(model: WhatIfModel): string {
  const here = model.here.value;
  const words = inputWords(model);
  if (here === null || words === null) return '';
  const at = capital(words.value(here.value));
  const own = here.own === null ? '' : ` ${ownText(here.own, model.currency.value)}`;
  if (here.day?.kind !== 'found') return `${at}: no day. ${gapText(model, here) ?? ''}${own}`;
  return `${at}: ${sum(here.day.cost, model.currency.value)} a day.${own}`;
}

function ownText({ cost, keeps }: OwnDay, currency: Money): string {
  const flaw = keeps ? '' : ', but does not keep all that is asked';
  return `The day on your sheet would take ${sum(cost, currency)}${flaw}.`;
}

/** Hours and speeds of the plan at the value of the handle; empty where there is no day. */
export function blocksText(model: WhatIfModel): string {
  const day = model.here.value?.day;
  if (day?.kind !== 'found') return '';
  const reference = model.day.speeds.value?.reference ?? 1;
  if (day.blocks.length === 0) return 'The pump stands still all day.';
  const each = day.blocks.map(
    (block) => `${spanText(block)} at ${rpmText(block.ratio * reference, model.units.value)}`,
  );
  return `The pump runs ${each.join(', ')}.`;
}

/** Spoken by the handle. */
export function spokenValue(model: WhatIfModel): string {
  const here = model.here.value;
  const words = inputWords(model);
  if (here === null || words === null) return '';
  const cost = costOf(here.day);
  const price = cost === null ? 'no day' : `${sum(cost, model.currency.value)} a day`;
  return `${words.value(here.value)}, ${price}`;
}

export function tableOf(model: WhatIfModel): TableData {
  const words = inputWords(model);
  const currency = model.currency.value;
  const own = new Map(model.own.value.map((each) => [each.value, each]));
  const more = model.chosen.value?.more ?? 1;
  const changes = changesIn(model);
  return {
    caption: `Price of the cheapest day: ${words?.name ?? ''}`,
    columns: [
      words?.name ?? 'Value',
      'Cheapest day',
      `${words?.more ?? 'More'}, at this rate`,
      'Speeds',
      'The day on your sheet',
      'From here on',
    ],
    rows: (model.sweep.value?.days ?? []).map((each, place, all) => {
      const mine = own.get(each.value);
      const next = all[place + 1]?.value ?? Number.POSITIVE_INFINITY;
      const said = changes
        .filter(({ at }) => at >= each.value && at < next)
        .map(({ sentence }) => sentence);
      return [
        words?.value(each.value) ?? '',
        priceText(each, currency),
        each.slope === null ? noValue : sum(each.slope * more, currency),
        each.character === null ? noValue : String(each.character.speeds.length),
        mine === undefined
          ? noValue
          : `${sum(mine.cost, currency)}${mine.keeps ? '' : ', not all kept'}`,
        // Two changes nearer to one another than the words tell are one.
        [...new Set(said)].join(' '),
      ];
    }),
  };
}

function priceText({ day }: SweptDay, currency: Money): string {
  const cost = costOf(day);
  return cost === null ? 'no day' : sum(cost, currency);
}
