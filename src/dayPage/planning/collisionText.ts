/** Why there is no day, in words, and what would do. */

import type { Limit } from '#core/day/limits.ts';
import type { NoDay } from '#core/planner/cheapestDay.ts';
import type { CollisionMember } from '#core/planner/collisions.ts';
import type { Bench } from '#dayPage/day/figures.ts';
import { lengthText, rpmText, spanText } from '#dayPage/day/text.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';
import { magnitude } from '#units/numerals.ts';
import { limitName, needName } from '#words/needsAndLimits.ts';

export const joined = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** "1 turnover", "3.96 turnovers". */
export function turnoversText(count: number): string {
  const number = String(Number(count.toFixed(2)));
  return `${number} ${number === '1' ? 'turnover' : 'turnovers'}`;
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
  const ways = none.collision.map((member) => wayOut(asked, member)).filter((way) => way !== null);
  const longer = ways.map((way, at) => (at === 0 ? way : `to ${way}`));
  const wayOuts = ways.length === 0 ? '' : ` It would do to ${joined(longer, 'or')}.`;
  return `${leadText(asked, none.collision)}${wayOuts}`;
}

function leadText(asked: AskedInWords, collision: readonly CollisionMember[]): string {
  const limit = impassable(asked, collision);
  if (limit !== undefined) {
    const lead = `No speed of this pump keeps the limit “${limitName(limit)}”, so no water can be moved.`;
    return limit.hard ? `${lead} Do not run it: nothing may cross this limit.` : lead;
  }
  const names = collision.map((member) => memberName(asked, member));
  return names.length === 1
    ? `${capital(names[0] ?? '')} cannot be had on this pad at all.`
    : `${capital(joined(names, 'and'))} cannot be had together.`;
}

/** The limit that every speed crosses, where there is one: then all the water is missing. */
function impassable(asked: AskedInWords, collision: readonly CollisionMember[]): Limit | undefined {
  const [limit, more] = collision.filter(({ kind }) => kind === 'limit');
  const isAlone = more === undefined && collision.length === 2;
  const isAll = collision.some((each) => each.kind === 'volume' && isWhole(asked, each));
  return isAlone && isAll && limit?.kind === 'limit' ? limitOf(asked, limit.limitId) : undefined;
}

type Volume = Extract<CollisionMember, { kind: 'volume' }>;

const volumeAsked = ({ bench, turnovers }: AskedInWords) => turnovers * (bench?.volume ?? 0);

const isWhole = (asked: AskedInWords, { shortVolume }: Volume): boolean =>
  shortVolume >= volumeAsked(asked) * (1 - 1e-6);

const limitOf = ({ bench }: AskedInWords, limitId: string): Limit | undefined =>
  bench?.limits.find(({ id }) => id === limitId);

function memberName(asked: AskedInWords, member: CollisionMember): string {
  const { bench, needs, turnovers } = asked;
  switch (member.kind) {
    case 'need': {
      const need = needs.find(({ id }) => id === member.needId);
      return need === undefined ? 'a need' : `${lengthText(need.minutes)} of ${needName(need)}`;
    }
    case 'volume':
      return turnoversText(turnovers);
    case 'limit': {
      const limit = limitOf(asked, member.limitId);
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

/** Figures of what would do; more of them nobody can set or buy. */
const figures = 3;
const mostPlaces = 2;

/** A quantity rounded up, so that what is told is enough. */
function enough(quantity: 'volume' | 'flow', value: number, units: UnitChoice): string {
  const unit = unitFor(units, quantity);
  const shown = fromSI(quantity, value, unit);
  const places = Math.min(mostPlaces, figures - 1 - magnitude(shown));
  const step = 10 ** -places;
  const up = Math.ceil(shown / step - 1e-6) * step;
  return format(quantity, toSI(quantity, up, unit), units, { places: Math.max(0, places) });
}

/** What would have to be there for a flow that a limit forbids. */
const bearers: Readonly<Record<Limit['kind'], string>> = {
  suctionVelocity: 'suction pipe wide enough for',
  dischargeVelocity: 'return pipe wide enough for',
  filterRate: 'a filter that bears',
  heaterFlow: 'a heater that bears',
  suctionCover: 'covers that bear',
  npsh: 'a suction side through which the pump can draw',
};

/** What giving way would come to; a hard limit never gives way, and moving nothing is no way. */
function wayOut(asked: AskedInWords, member: CollisionMember): string | null {
  const { bench, needs, turnovers, units } = asked;
  switch (member.kind) {
    case 'need': {
      const need = needs.find(({ id }) => id === member.needId);
      const name = need === undefined ? 'the need' : needName(need);
      const short = Math.ceil(member.shortMinutes - 1e-6);
      return short >= (need?.minutes ?? Number.POSITIVE_INFINITY)
        ? `do without ${name}`
        : `ask ${lengthText(short)} less of ${name}`;
    }
    case 'volume': {
      if (isWhole(asked, member)) return null;
      const left = turnovers - member.shortVolume / (bench?.volume ?? Number.POSITIVE_INFINITY);
      const told = Math.floor(100 * left + 1e-6) / 100;
      const ask = told > 0 ? ` (${turnoversText(told)})` : '';
      return `move ${enough('volume', member.shortVolume, units)} less${ask}`;
    }
    case 'limit': {
      const limit = limitOf(asked, member.limitId);
      if (limit === undefined || limit.hard) return null;
      return `have ${bearers[limit.kind]} ${enough('flow', member.flowWanted, units)}`;
    }
    case 'quiet': {
      const reference = bench?.speeds.reference ?? 1;
      return `allow ${rpmText(Math.ceil(member.ceilingWanted * reference), units)} in the quiet hours`;
    }
    case 'mustRun':
      return 'let the pump stand still';
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
