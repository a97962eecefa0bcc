/** The proven cheapest day on the hunt's own hours and speeds; fetched once a reader asks for it. */

import { blockAt } from '#core/day/day.ts';
import {
  type CheapestDay,
  cheapestDay,
  type FoundDay,
  type NoDay,
} from '#core/planner/cheapestDay.ts';
import { type CheapestDayInputs, speedTable } from '#core/planner/inputs.ts';
import { ruleOn } from '#core/tariff/tariff.ts';
import { formatMoney } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import {
  type DayKind,
  type HourHuntModel,
  type Hours,
  type HuntPlace,
  type Shown,
  type Worked,
  workHours,
} from './model.ts';

/** Minutes of a block on the hunt. */
const hour = 60;
/** Amounts closer than this are the same on the page [currency]. */
const sameCent = 0.005;
/** A gap that is rounding and nothing else [-]. */
const noGap = 1e-6;

/** Lays the cheapest day of the kind shown and says what it costs; what was said once stays said. */
export function showCheapest(model: HourHuntModel): void {
  const { place, kind, usual, best, shown } = model;
  model.show(shown.peek() ?? cheapestOf(place.peek(), kind.peek(), usual.peek(), best.peek()));
}

function cheapestOf(
  place: HuntPlace,
  kind: DayKind,
  usual: Worked,
  best: Worked | undefined,
): Shown {
  const asked = askedOf(place, kind);
  if (asked === null) return { place, hours: undefined, words: offTheHour };
  const found = asked.speeds.length === 0 ? nothingFlows : cheapestDay(asked);
  if (found.kind !== 'found') return { place, hours: undefined, words: noneText(place, found) };
  const hours = hoursOf(place, found);
  const worked = workHours(place, hours, kind.date);
  if (!worked.sound) return { place, hours: undefined, words: unsettled };
  return { place, hours, words: foundText(place, found, worked, usual, best) };
}

const nothingFlows: NoDay = { kind: 'none', collision: [], changesEnough: null };

/** The question as the core takes it, or null where something on the pad changes within an hour. */
export function askedOf(place: HuntPlace, { date }: DayKind): CheapestDayInputs | null {
  const { settings, needs, limits, quiet, volume, turnovers, tariff, standbyPower } = place;
  const { bands } = ruleOn(tariff, date).dayType;
  const spans = [...bands, ...quiet, ...needs.flatMap(({ windows }) => windows)];
  if (spans.some(({ start, end }) => start % hour !== 0 || end % hour !== 0)) return null;
  const points = new Map(settings.map(({ ratio, point }) => [ratio, point]));
  return {
    speeds: speedTable(
      [...points.keys()],
      (ratio) => points.get(ratio) ?? { kind: 'noFlow', power: 0 },
    ),
    mayStop: true,
    standbyPower,
    leastVolume: (turnovers ?? 0) * volume,
    needs,
    limits,
    quiet,
    prices: bands,
    minuteStep: hour,
  };
}

function hoursOf({ settings }: HuntPlace, { blocks }: FoundDay): Hours {
  return Array.from({ length: 24 }, (_, at) => {
    const running = blockAt(blocks, at * hour)?.ratio ?? 0;
    return 1 + settings.findIndex(({ ratio }) => Math.abs(ratio - running) < 1e-9);
  });
}

const offTheHour =
  'A price, a window or the quiet hours on your pad change within an hour, so the cheapest day does not lie on whole hours. The day sheet finds it to the minute.';
const unsettled = 'The cheapest day could not be settled here. The day sheet looks further.';

function foundText(
  { tariff }: HuntPlace,
  { gap }: FoundDay,
  worked: Worked,
  usual: Worked,
  best: Worked | undefined,
): string {
  const cost = worked.price.energyCost;
  const say = (amount: number) => formatMoney(amount, tariff.currency);
  const proven =
    gap <= noGap
      ? 'It is proven that no other day of whole hours at these speeds that keeps everything is cheaper.'
      : `It is proven that no other day of whole hours at these speeds that keeps everything is cheaper by more than ${percent(gap)}.`;
  return `The cheapest day costs ${say(cost)}. ${above(best, usual, cost, say)} ${proven}`;
}

/** Rounded up, so that the claim holds. */
const percent = (share: number) => `${Math.ceil(share * 1000) / 10}${hardSpace}%`;

function above(
  best: Worked | undefined,
  usual: Worked,
  cost: number,
  say: (amount: number) => string,
): string {
  if (best === undefined) return 'You had not found a day that keeps everything yet.';
  const had = best.price.energyCost;
  const more = had - cost;
  const isSame = more < sameCent;
  if (best === usual) {
    return isSame
      ? 'The usual day costs the same.'
      : `The best so far, the usual day, costs ${say(had)}, ${say(more)} above it.`;
  }
  return isSame
    ? 'Your own best costs the same: you had found it, or one as cheap.'
    : `Your own best costs ${say(had)}, ${say(more)} above it.`;
}

function noneText(place: HuntPlace, found: Exclude<CheapestDay, FoundDay>): string {
  if (found.kind === 'unsettled') return unsettled;
  const names = [...new Set(found.collision.map((member) => memberName(place, member)))];
  const lead = 'There is no cheapest day to show: at these speeds no day of whole hours';
  if (names.length === 0) return `${lead} was found that keeps everything.`;
  if (names.length === 1) return `${lead} can do what is asked by ${names.join('')}.`;
  return `${lead} can do what is asked together by ${names.slice(0, -1).join(', ')} and ${names.at(-1)}.`;
}

function memberName({ needs, limits }: HuntPlace, member: NoDay['collision'][number]): string {
  switch (member.kind) {
    case 'need':
      return needs.find(({ id }) => id === member.needId)?.name ?? 'a need';
    case 'volume':
      return 'the water through the filter';
    case 'limit':
      return `the limit “${limits.find(({ id }) => id === member.limitId)?.name ?? ''}”`;
    case 'quiet':
      return 'the quiet hours';
    case 'mustRun':
      return 'never standing still';
  }
}
