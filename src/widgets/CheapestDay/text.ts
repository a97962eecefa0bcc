/** The words of the cheapest day: what it costs beside others, and how far the proof goes. */
import type { FoundDay } from '#core/cheapestDay.ts';
import { coinOf, isNoSum } from '#units/coin.ts';
import { formatMoney, type Money } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import type { Bench, WorkedDay } from '#widgets/DaySheet/figures.ts';
import { needName } from '#widgets/DaySheet/text.ts';
import { type AskedInWords, joined, noneText } from './collisionText.ts';
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

/** Why no day can be looked for. */
export function lackText(bench: Bench | null): string {
  const lead = 'The pad does not say enough yet to look for a day: it needs';
  if (bench === null) return `${lead} pump, pool and prices.`;
  const lacks = [
    ...(bench.volume === null ? ['the volume of the pool'] : []),
    ...(bench.tariff === null ? ['prices'] : []),
  ];
  return lacks.length > 0
    ? `${lead} ${joined(lacks, 'and')}.`
    : 'No speed of this pump moves water on this pad, so there is no day to look for.';
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
  const beside = [
    against(model, model.day.here.value, found.cost, 'the day on your sheet'),
    against(model, model.usual.value, found.cost, 'the usual three-block day'),
  ].filter((words) => words !== null);
  // A clause within one of the two is closed before the next begins.
  const hasClause = beside[0]?.includes(', which ') ?? false;
  const costs = `The cheapest day takes ${formatMoney(found.cost, money)} of energy${
    beside.length === 0 ? '' : `: ${beside.join(hasClause ? '; and ' : ' and ')}`
  }.`;
  return `${costs} ${proofText(found, money)}`;
}

/** How far the proof goes: in money where that is less than the least coin, else as a share. */
function proofText({ cost, bound, gap }: FoundDay, money: Money): string {
  if (gap < 1e-9) return 'No day that keeps all you ask costs less.';
  return isNoSum(cost - bound, money)
    ? `No day that keeps all you ask would be even ${formatMoney(coinOf(money), money)} cheaper.`
    : `No day that keeps all you ask costs less by more than ${percent(gap)}.`;
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
