/** The words of the day sheet: spans, what was done to a block, and the finding. */

import type { Limit } from '#core/day/limits.ts';
import { ruleOn, type Tariff } from '#core/tariff/tariff.ts';
import { type CalendarDate, dayOfWeek } from '#core/time/calendar.ts';
import type { Pad, PadBlock, PadDay } from '#pad/document/schema.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format, speak } from '#units/format.ts';
import { formatMoney, type Money } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import { limitShortNames, needName } from '#words/needsAndLimits.ts';
import { mostBlocks, type Said, type Stretch, shortestBlock } from './edit.ts';
import { type Report, segmentOf, type WorkedDay } from './figures.ts';

/** "09:00–12:00", or "all day" where start and end meet. */
export function spanText({ start, end }: Stretch): string {
  return start === end % 1440 ? 'all day' : `${clock(start)}–${clock(end)}`;
}

/** The same inside a sentence: "from 09:00 to 12:00". */
export function fromTo({ start, end }: Stretch): string {
  return start === end % 1440 ? 'all day' : `from ${clock(start)} to ${clock(end)}`;
}

/** "3 h", "2 h 30 min", "45 min". */
export function lengthText(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), Math.round(minutes % 60)];
  if (hours === 0) return `${rest}${hardSpace}min`;
  return rest === 0 ? `${hours}${hardSpace}h` : `${hours}${hardSpace}h ${rest}${hardSpace}min`;
}

export const rpmText = (speed: number | null, units: UnitChoice): string =>
  speed === null ? 'no speed yet' : format('speed', speed, units, { places: 0 });
export const kilowattHours = (joules: number, units: UnitChoice): string =>
  format('energy', joules, units, { digits: 3 });
export const percentText = (share: number): string => `${Math.round(share * 100)}${hardSpace}%`;
export const turnoversText = (turnovers: number): string => turnovers.toFixed(2);

const edgeWord = { start: 'starts', end: 'ends', body: 'starts' } as const;
const edgeNoun = { start: 'start', end: 'end', body: 'start' } as const;

/** What came of the last change, in a sentence; nothing when it simply went as wished. */
export function saidText(said: Said): string {
  switch (said.kind) {
    case 'gaveWay':
      return `The block ${spanText(said.block)} gave way and now ${edgeWord[said.edge]} at ${clock(said.minute)}.`;
    case 'neighbourShort':
      return `This is as far as it goes, ${clock(said.minute)}: the block ${spanText(said.neighbour)} keeps at least ${lengthText(shortestBlock)}. To have its time as well, remove it.`;
    case 'selfShort':
      return `This is as far as it goes, ${clock(said.minute)}: a block lasts at least ${lengthText(shortestBlock)}. To be rid of it, remove it.`;
    case 'wouldCover':
      return `With its ${edgeNoun[said.grip]} at ${clock(said.wish)} this block would run over the whole of ${spanText(said.neighbour)}, so it stays at ${clock(said.stays)}. It can go as far as ${clock(said.minute)}.`;
    case 'tooShort':
      return `With its ${edgeNoun[said.grip]} at ${clock(said.wish)} this block would be too short, so it stays at ${clock(said.stays)}. A block lasts at least ${lengthText(shortestBlock)}: give ${clock(said.minute)} or ${said.grip === 'start' ? 'earlier' : 'later'}.`;
    case 'splitOff':
      return `The day was full, so the block ${spanText(said.block)} gave up ${spanText(said.taken)} to the new one.`;
    case 'tooMany':
      return `A day holds at most ${mostBlocks} blocks. Remove one first.`;
    case 'noRoom':
      return 'There is no room for another block. Make one shorter, or remove one.';
  }
}

/** The day beside this one, in a sentence. */
export const otherInSentence: Readonly<Record<PadDay['compareWith'], string>> = {
  usual: 'the usual three-block day',
  oneSpeed: 'top speed alone',
  old: 'your old day',
};

/** A limit with every time of day at which it is passed. */
export interface LimitRuns {
  readonly limit: Limit;
  readonly runs: readonly Stretch[];
  /** Greatest flow in them [m3/s]. */
  readonly flow: number;
  /** Greatest speed ratio in them [-]. */
  readonly ratio: number;
}

/** The crossings limit by limit, hard ones first. */
export function crossingsByLimit({ crossings }: Report): readonly LimitRuns[] {
  const limits = [...new Set(crossings.map(({ limit }) => limit))];
  return limits
    .map((limit) => {
      const own = crossings.filter((crossing) => crossing.limit === limit);
      const runs = own.map(({ from, to }) => ({ start: from, end: to }));
      const greatest = (of: (one: (typeof own)[number]) => number) => Math.max(...own.map(of));
      return {
        limit,
        runs,
        flow: greatest(({ flow }) => flow),
        ratio: greatest(({ ratio }) => ratio),
      };
    })
    .sort((one, other) => Number(other.limit.hard) - Number(one.limit.hard));
}

/** As many times of day as a line holds; the strip shows the rest. */
const mostRuns = 4;

export function timesText(runs: readonly Stretch[]): string {
  const more = runs.length - mostRuns;
  const shown = runs.slice(0, more > 0 ? mostRuns : undefined).map(fromTo);
  return joined(more > 0 ? [...shown, `${more} more times`] : shown);
}

const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const sumText = (amount: number, currency: string | Money) => formatMoney(amount, currency);

function stopText(report: Report): string {
  const hard = crossingsByLimit(report).find(({ limit }) => limit.hard);
  if (hard === undefined) return '';
  return `Stop: ${timesText(hard.runs)} the flow is above what is marked on the suction covers. Do not run this day. `;
}

function moves(day: WorkedDay, units: UnitChoice, currency: string | Money): string {
  const { report, turnovers, filtered, prices } = day;
  const water = format('volume', report.volumeMoved, units);
  const times =
    turnovers === null || filtered === null
      ? ''
      : `, ${turnoversText(turnovers)} turnovers (${percentText(filtered)} of the water filtered)`;
  const takes = `for ${kilowattHours(report.energy, units)}`;
  const price = prices === null ? '' : ` and ${sumText(prices.day.cost, currency)}`;
  return `This day moves ${water}${times}, ${takes}${price}.`;
}

function serves({ report }: WorkedDay): string {
  const short = report.needs.filter(({ met }) => !met);
  if (report.needs.length === 0) return '';
  if (short.length === 0) return ' Every need is met.';
  const each = short.map(
    ({ need, shortMinutes }) => `${needName(need)} is short by ${lengthText(shortMinutes)}`,
  );
  return ` ${joined(each)}.`;
}

function crosses({ report }: WorkedDay): string {
  const soft = new Set(
    report.crossings.filter(({ limit }) => !limit.hard).map(({ limit }) => limit.kind),
  );
  const limits = [...soft].map((kind) => limitShortNames[kind]);
  const noise = report.quietCrossings.length > 0 ? ' It is too fast in the quiet hours.' : '';
  if (limits.length > 0) {
    const noun = limits.length === 1 ? 'the limit' : 'limits';
    return ` It crosses ${noun} on ${joined(limits)}.${noise}`;
  }
  return noise === '' && report.crossings.length === 0 ? ' No limit is crossed.' : noise;
}

/** The finding in a few sentences: the caption, the spoken text and the first thing to read. */
export function findingText(day: WorkedDay, units: UnitChoice, currency: string | Money): string {
  if (day.report.runMinutes === 0) {
    return 'Nothing runs on this day yet. Add a block and give it a speed.';
  }
  return `${stopText(day.report)}${moves(day, units, currency)}${serves(day)}${crosses(day)}`;
}

/** A block as a slider speaks it. */
export function blockSpoken(block: PadBlock, day: WorkedDay | null, units: UnitChoice): string {
  const at = day && segmentOf(day.report, block.id);
  const speed = block.speed === null ? 'no speed yet' : speak('speed', block.speed, units);
  const water =
    at?.kind === 'flowing'
      ? `, ${speak('flow', at.flow, units)}, ${speak('power', at.power, units)}`
      : at?.kind === 'noFlow'
        ? ', no flow'
        : '';
  return `${clock(block.start)} to ${clock(block.end)}, ${speed}${water}`;
}

export const weekdays = [
  'Sunday',
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
];
/** "priced as “Weekday” in “Summer”", by the reader's own names; empty where there are none. */
export function priceKindText(date: CalendarDate, tariff: Tariff | null): string {
  if (tariff === null) return '';
  const { season, dayType } = ruleOn(tariff, date);
  const kind = dayType.name === '' ? '' : ` as “${dayType.name}”`;
  const when = season.name === '' ? '' : ` in “${season.name}”`;
  return kind === '' && when === '' ? '' : `priced${kind}${when}`;
}

/** "Wednesday, priced as “Weekday” in “Summer”". */
export function dayKindText(date: CalendarDate, tariff: Tariff | null): string {
  return [weekdays[dayOfWeek(date)], priceKindText(date, tariff)].filter(Boolean).join(', ');
}

/** Whether the pad says of itself that it is made up, as the examples do. */
export function isInvented({ name, notes }: Pick<Pad, 'name' | 'notes'>): boolean {
  return /\binvented\b/i.test(`${name} ${notes}`);
}
