/** The words of the cheapest day: what it costs, what makes it dear, and what cannot be had together. */
import type { FoundDay, NoDay } from '#core/cheapestDay.ts';
import type { CollisionMember } from '#core/cheapestDayCollisions.ts';
import type { NeedPrice } from '#core/cheapestDayPrices.ts';
import type { NamedNeed } from '#pad/assembleNeeds.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import type { Bench, WorkedDay } from '#widgets/DaySheet/figures.ts';
import { lengthText, limitName, needName, rpmText, spanText } from '#widgets/DaySheet/text.ts';
import type { FinderModel } from './model.ts';

const joined = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;

/** "1 turnover", "3.96 turnovers". */
export function turnoversText(count: number): string {
  const number = String(Number(count.toFixed(2)));
  return `${number} ${number === '1' ? 'turnover' : 'turnovers'}`;
}

/** Sums smaller than this are as good as none [currency]. */
const nothing = 0.005;

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
  const currency = model.day.currency.value;
  const say = (amount: number) => formatMoney(amount, currency);
  const beside = [
    against(model.day.here.value, found.cost, 'the day on your sheet', say),
    against(model.usual.value, found.cost, 'the usual three-block day', say),
  ].filter((words) => words !== null);
  // A clause within one of the two is closed before the next begins.
  const hasClause = beside[0]?.includes(', which ') ?? false;
  const costs = `The cheapest day takes ${say(found.cost)} of energy${
    beside.length === 0 ? '' : `: ${beside.join(hasClause ? '; and ' : ' and ')}`
  }.`;
  return `${costs} ${proofText(found, say)}`;
}

/** How far the proof goes: in money where that is less than a cent, else as a share. */
function proofText({ cost, bound, gap }: FoundDay, say: (amount: number) => string): string {
  if (gap < 1e-9) return 'No day that keeps all you ask costs less.';
  return cost - bound < nothing
    ? `No day that keeps all you ask would be even ${say(0.01)} cheaper.`
    : `No day that keeps all you ask costs less by more than ${percent(gap)}.`;
}

function against(
  other: WorkedDay | null,
  cost: number,
  name: string,
  say: (amount: number) => string,
): string | null {
  if (other === null || other.prices === null) return null;
  const saved = other.prices.day.energyCost - cost;
  const flaws = flawsOf(other);
  const but = flaws === '' ? '' : `, which ${flaws}`;
  if (Math.abs(saved) < nothing) return `as much as ${name}${but}`;
  return saved > 0
    ? `${say(saved)} less than ${name}${but}`
    : `${say(-saved)} more than ${name}${but}`;
}

/** What the other day leaves undone, so that no price is compared without it. */
function flawsOf({ report }: WorkedDay): string {
  const short = report.needs.filter(({ met }) => !met).map(({ need }) => needName(need));
  const flaws = [
    ...(short.length > 0 ? [`leaves ${joined(short, 'and')} short`] : []),
    ...(report.crossings.length > 0 ? ['crosses a limit'] : []),
    ...(report.quietCrossings.length > 0 ? ['is too fast in quiet hours'] : []),
  ];
  return joined(flaws, 'and');
}

/** What a sentence about a collision has to know of the day that was looked for. */
export interface AskedInWords {
  readonly bench: Bench | null;
  /** The needs with the minutes that were asked for. */
  readonly needs: readonly NamedNeed[];
  readonly turnovers: number;
  readonly units: UnitChoice;
}

/** Why there is no day, and what would do. */
export function noneText(asked: AskedInWords, none: NoDay): string {
  if (none.changesEnough !== null) {
    return `No day with so few changes of speed keeps all you ask. ${none.changesEnough} are enough.`;
  }
  if (none.collision.length === 0) {
    return 'No day keeps all you ask with so few changes of speed. Allow more of them, or ask less.';
  }
  const names = none.collision.map((member) => memberName(asked, member));
  const ways = none.collision.map((member) => wayOut(asked, member)).filter((way) => way !== null);
  const lead =
    names.length === 1
      ? `${capital(names[0] ?? '')} cannot be had on this pad at all.`
      : `${capital(joined(names, 'and'))} cannot be had together.`;
  const longer = ways.map((way, at) => (at === 0 ? way : `to ${way}`));
  return `${lead} It would do to ${joined(longer, 'or')}.`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function memberName({ bench, needs, turnovers }: AskedInWords, member: CollisionMember): string {
  switch (member.kind) {
    case 'need': {
      const need = needs.find(({ id }) => id === member.needId);
      return need === undefined ? 'a need' : `${lengthText(need.minutes)} of ${needName(need)}`;
    }
    case 'volume':
      return turnoversText(turnovers);
    case 'limit': {
      const limit = bench?.limits.find(({ id }) => id === member.limitId);
      return limit === undefined ? 'a limit' : `the limit “${limitName(limit)}”`;
    }
    case 'quiet': {
      const quiet = bench?.quiet[member.place];
      return quiet === undefined ? 'the quiet hours' : `the quiet hours ${spanText(quiet)}`;
    }
    case 'mustRun':
      return 'never standing still';
  }
}

/** What giving way would come to; a hard limit never gives way. */
function wayOut({ bench, needs, units }: AskedInWords, member: CollisionMember): string | null {
  switch (member.kind) {
    case 'need': {
      const need = needs.find(({ id }) => id === member.needId);
      const name = need === undefined ? 'the need' : needName(need);
      return `ask ${lengthText(Math.ceil(member.shortMinutes))} less of ${name}`;
    }
    case 'volume':
      return `move ${format('volume', member.shortVolume, units)} less`;
    case 'limit': {
      const limit = bench?.limits.find(({ id }) => id === member.limitId);
      if (limit === undefined || limit.hard) return null;
      return `have equipment that bears ${format('flow', member.flowWanted, units)}`;
    }
    case 'quiet': {
      const reference = bench?.speeds.reference ?? 1;
      return `allow ${rpmText(Math.ceil(member.ceilingWanted * reference), units)} in the quiet hours`;
    }
    case 'mustRun':
      return 'let the pump stand still';
  }
}

/** What each thing asked for costs, the dearest first. */
export function worthTexts(model: FinderModel): readonly string[] {
  const currency = model.day.currency.value;
  const say = (amount: number) => formatMoney(amount, currency);
  return [...model.prices.value]
    .sort((one, other) => other.savedWithout - one.savedWithout)
    .map((price) => worthText(model, price, say));
}

function worthText(
  model: FinderModel,
  { needId, savedByLess, savedWithout }: NeedPrice,
  say: (amount: number) => string,
): string {
  const need = model.needs.value.find((each) => each.need.id === needId)?.need;
  const name =
    needId === null ? 'The water to be moved' : need === undefined ? 'A need' : needName(need);
  if (savedWithout < nothing) return `${name} costs nothing extra: the rest of the day gives it.`;
  const lessOf = needId === null ? 'a tenth less' : 'an hour less';
  const byLess = savedByLess < nothing ? 'nothing' : `${say(savedByLess)} a day`;
  return `${name}: ${lessOf} would save ${byLess}; without it the day would be ${say(savedWithout)} cheaper.`;
}
