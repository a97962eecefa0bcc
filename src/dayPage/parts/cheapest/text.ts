/** The words of the cheapest day: what it costs beside others, and how far the proof goes. */

import { gapBetween } from '#core/planner/branchAndBound.ts';
import type { FoundDay } from '#core/planner/cheapestDay.ts';
import type { WorkedDay } from '#dayPage/day/figures.ts';
import { type AskedInWords, joined, lackText, noneText } from '#dayPage/planning/collisionText.ts';
import { usualStep } from '#dayPage/planning/plannerInputs.ts';
import { coinOf, isNoSum } from '#units/coin.ts';
import { format } from '#units/format.ts';
import { formatMoney, type Money } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import { needName } from '#words/needsAndLimits.ts';
import type { FinderModel } from './model.ts';

/** The finding, in a few sentences. */
export function findingText(model: FinderModel): string {
  const found = model.found.value;
  if (model.asked.value === null) return lackText(model.day.bench.value);
  if (found === null) return searchingText(model);
  switch (found.kind) {
    case 'found':
      return foundText(model, found);
    case 'none':
      return noneText(askedInWords(model), found);
    case 'unsettled':
      return 'The search found no day within its limits, and no proof that there is none. Allow one change more, or ask a little less.';
  }
}

function askedInWords({ day, needs, turnovers }: FinderModel): AskedInWords {
  return {
    bench: day.bench.value,
    needs: needs.value.map(({ need, dial }) => ({ ...need, minutes: dial.value.value })),
    turnovers: turnovers.value.value,
    units: day.units.value,
  };
}

function searchingText({ searching }: FinderModel): string {
  const now = searching.value;
  switch (now.kind) {
    case 'searching': {
      const gap = now.progress?.gap ?? 1;
      if (now.progress === null || gap >= 1) return 'Looking for the cheapest day …';
      return `Looking: a day at hand lies at most ${percent(gap)} above the cheapest there can be …`;
    }
    case 'calledOff':
      return 'The search was called off. Change anything to start it anew.';
    case 'failed':
      return 'The search could not be run, because a part of this page is missing. Reload the page when there is a connection.';
    case 'idle':
      return 'Looking for the cheapest day …';
  }
}

const percent = (share: number) => `${(100 * share).toFixed(share < 0.001 ? 3 : 1)}${hardSpace}%`;

function foundText(model: FinderModel, found: FoundDay): string {
  const money = model.day.currency.value;
  // What the sheet makes of it counts: priming and standby are in its price.
  const cost = model.worked.value?.prices?.day.energyCost ?? found.cost;
  const beside = [
    against(model, model.day.here.value, cost, 'the day on your sheet'),
    against(model, model.usual.value, cost, 'the usual three-block day'),
  ].filter((words) => words !== null);
  // A clause within one of the two is closed before the next begins.
  const hasClause = beside[0]?.includes(', which ') ?? false;
  const costs = `The cheapest day takes ${formatMoney(cost, money)} of energy${
    beside.length === 0 ? '' : `: ${beside.join(hasClause ? '; and ' : ' and ')}`
  }.`;
  const gap = gapBetween(cost, found.bound);
  return `${costs} ${proofText({ cost, bound: found.bound, gap }, money)} ${triedText(model)}`;
}

/** How far the proof goes: in money where that is less than the least coin, else as a share. */
function proofText(
  { cost, bound, gap }: Pick<FoundDay, 'cost' | 'bound' | 'gap'>,
  money: Money,
): string {
  if (gap < 1e-9) return 'No day that keeps all you ask costs less.';
  return isNoSum(cost - bound, money)
    ? `No day that keeps all you ask would be even ${formatMoney(coinOf(money), money)} cheaper.`
    : `No day that keeps all you ask costs less by more than ${percent(gap)}.`;
}

/** What the proof is over: the speeds that were tried, and whole minutes. */
function triedText({ day, rows }: FinderModel): string {
  const speeds = day.speeds.value;
  const [slowest, fastest] = [rows.value[0], rows.value.at(-1)];
  if (speeds === null || slowest === undefined || fastest === undefined) return '';
  const units = day.units.value;
  const rpm = (ratio: number) => format('speed', ratio * speeds.reference, units, { places: 0 });
  const step = format('speed', speeds.step || usualStep, units);
  return `That is proven over ${rows.value.length} speeds, ${rpm(slowest.ratio)} to ${rpm(fastest.ratio)} in steps of ${step} with those of your sheet, and over whole minutes.`;
}

function against(
  model: FinderModel,
  other: WorkedDay | null,
  cost: number,
  name: string,
): string | null {
  // An empty sheet is no day to compare with.
  if (other === null || other.prices === null || other.report.runMinutes === 0) return null;
  const money = model.day.currency.value;
  const say = (amount: number) => formatMoney(amount, money);
  const saved = other.prices.day.energyCost - cost;
  const flaws = flawsOf(other, model.turnovers.value.value);
  const but = flaws === '' ? '' : `, which ${flaws}`;
  if (isNoSum(saved, money)) return `as much as ${name}${but}`;
  return saved > 0
    ? `${say(saved)} less than ${name}${but}`
    : `${say(-saved)} more than ${name}${but}`;
}

/** Needs that a clause names; more of them it counts. */
const mostNamed = 3;

/** What the other day leaves undone, so that no price is compared without it. */
function flawsOf({ report, turnovers }: WorkedDay, wanted: number): string {
  const short = report.needs.filter(({ met }) => !met).map(({ need }) => needName(need));
  const names = short.length > mostNamed ? `${short.length} needs` : joined(short, 'and');
  const flaws = [
    ...(turnovers !== null && turnovers < wanted * (1 - 1e-9) ? ['moves too little water'] : []),
    ...(short.length > 0 ? [`leaves ${names} short`] : []),
    ...(report.crossings.length > 0 ? ['crosses a limit'] : []),
    ...(report.quietCrossings.length > 0 ? ['is too fast in quiet hours'] : []),
  ];
  return joined(flaws, 'and');
}
