/** The words of the plans of the year. */

import type { CollisionMember } from '#core/planner/collisions.ts';
import type { MonthDay } from '#core/time/calendar.ts';
import { lengthText, spanText } from '#dayPage/day/text.ts';
import type { SeasonPlan } from '#pad/document/schema.ts';
import { isNoSum } from '#units/coin.ts';
import { formatMoney } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import { limitName, needName } from '#words/needsAndLimits.ts';
import type { YearModel } from './model.ts';
import type { PlanSaid } from './plans.ts';
import { needsOfSeason, type SeasonDay, type SeasonFacts } from './seasons.ts';
import { capital, days, joined, shortText } from './text.ts';

/** "15 May". */
export const dayText = ({ month, day }: MonthDay): string => `${day} ${monthNames[month - 1]}`;

/** "2 blocks, 24 h a day". */
export function blocksText({ blocks }: Pick<SeasonPlan, 'blocks'>): string {
  const minutes = blocks.reduce(
    (sum, { start, end }) => sum + (((end - start + 1439) % 1440) + 1),
    0,
  );
  return blocks.length === 0
    ? 'the pump rests'
    : `${blocks.length} ${blocks.length === 1 ? 'block' : 'blocks'}, ${lengthText(minutes)} a day`;
}

/** "From 15 May to 30 September, 139 days: 4 blocks, 24 h a day, $1.52 a day." */
export function seasonText(model: YearModel, facts: SeasonFacts): string {
  const { plan, until, days: count, cost } = facts;
  const all = model.given.value.plans.length < 2;
  const when = all ? 'All year' : `${capital(dayText(plan.from))} to ${dayText(until)}`;
  const price =
    count === 0 ? '' : `, ${formatMoney(cost / count, model.currency.value)} a day on average`;
  return `${when}, ${days(count)}: ${blocksText(plan)}${price}.`;
}

/** Which needs stay short in a season; that all are met, where they are. */
export function seasonShortText(
  { short, crossedDays, plan }: SeasonFacts,
  holding: number,
): string {
  const served =
    short.length > 0
      ? `Short: ${shortText(short)}.`
      : holding === 0
        ? 'No need holds in this season.'
        : `Every need that holds has its hours on every day.`;
  const crossed = crossedDays > 0 ? ` A limit is crossed on ${days(crossedDays)}.` : '';
  return plan.blocks.length === 0 && holding > 0 && short.length === 0 ? crossed : served + crossed;
}

/** The seasons for paper: which day holds when, and for what. */
export function seasonLines(model: YearModel): readonly string[] {
  return model.seasons.value.map((facts) => {
    const { plan } = facts;
    const holding = needsOfSeason(model.pad.value, plan).filter(({ holds }) => holds);
    const name = plan.name === '' ? '' : `${plan.name}. `;
    const needs = joined(holding.map(({ need }) => needName(need)));
    const of = needs === '' ? '' : ` Needs: ${needs}.`;
    return `${name}${seasonText(model, facts)}${of} ${seasonShortText(facts, holding.length)}`;
  });
}

/** What came of the last step on a plan. */
export function saidText(model: YearModel, { said }: PlanSaid): string {
  switch (said.kind) {
    case 'taken':
      return `Another plan begins on ${dayText(said.from)} already. Choose another day.`;
    case 'found':
      return cheapestText(model, said);
    case 'none':
      return noneText(said);
    case 'unsettled':
      return 'The search found no day within its limits. Ask a little less and try again.';
  }
}

function cheapestText(model: YearModel, found: SeasonDay & { kind: 'found' }): string {
  const money = (amount: number) => formatMoney(amount, model.currency.value);
  const { season, dayType } = found.rule;
  const names = [dayType.name, season.name].filter((name) => name !== '');
  const priced = names.length === 0 ? '' : `, priced as “${names.join(', ')}”`;
  const saved = found.before - found.cost;
  const beside = isNoSum(saved, model.currency.value)
    ? 'as much as before'
    : `${money(Math.abs(saved))} ${saved > 0 ? 'less' : 'more'} than before${found.wasShort ? ', when a need stayed short' : ''}`;
  const coldest = found.isForColdest
    ? ' It is set for the coldest water of the season, since a need would stay short on cold days otherwise.'
    : '';
  return `The cheapest day for this season is in its place: ${money(found.cost)} of energy a day${priced}, ${beside}.${coldest}`;
}

function noneText({ collision, bench }: SeasonDay & { kind: 'none' }): string {
  const name = (member: CollisionMember): string => {
    switch (member.kind) {
      case 'need': {
        const need = bench.needs.find(({ id }) => id === member.needId);
        return need === undefined ? 'a need' : `${lengthText(need.minutes)} of ${needName(need)}`;
      }
      case 'volume':
        return 'the turnovers asked for';
      case 'limit': {
        const limit = bench.limits.find(({ id }) => id === member.limitId);
        return limit === undefined ? 'a limit' : `the limit “${limitName(limit)}”`;
      }
      case 'quiet': {
        const quiet = bench.quiet[member.place];
        return quiet === undefined ? 'the quiet hours' : `the quiet hours ${spanText(quiet)}`;
      }
      case 'mustRun':
        return 'never standing still';
    }
  };
  const names = collision.map(name);
  const what = names.length === 0 ? 'What is asked' : capital(joined(names));
  const lead = names.length < 2 ? `${what} cannot be had` : `${what} cannot be had together`;
  return `${lead} in this season. Untick a need, or ask for fewer turnovers.`;
}
