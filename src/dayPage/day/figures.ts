/** A day worked out on a pad: what it moves, takes, serves, crosses and costs. */

import { type Block, oneSpeedDay, usualThreeBlockDay } from '#core/day/day.ts';
import {
  type DayReport,
  dayReport,
  type QuietHours,
  type RunningPoint,
} from '#core/day/dayReport.ts';
import type { Limit } from '#core/day/limits.ts';
import type { Priming } from '#core/day/priming.ts';
import {
  type DayPrice,
  type PeriodPrice,
  priceDay,
  priceMonth,
  priceSeason,
  priceYear,
} from '#core/tariff/pricing.ts';
import { type Band, ruleOn, type Tariff } from '#core/tariff/tariff.ts';
import type { CalendarDate } from '#core/time/calendar.ts';
import { piecesOf } from '#core/time/spans.ts';
import { filteredShare } from '#core/water/mixing.ts';
import type { PadBlock } from '#pad/document/schema.ts';
import { coreBlocks } from '#pad/model/assembleDay.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import type { PumpSpeeds } from '#pad/model/heldSpeed.ts';
import { lazy } from '#pad/model/memo.ts';

/** What a day is worked out on. */
export interface Bench {
  readonly speeds: PumpSpeeds;
  readonly pointAt: (ratio: number) => RunningPoint;
  /** Water in the pool [m3], or null while it is not known. */
  readonly volume: number | null;
  readonly needs: readonly NamedNeed[];
  readonly limits: readonly Limit[];
  readonly quiet: readonly QuietHours[];
  readonly tariff: Tariff | null;
  /** Draw while the pump is stopped [W]. */
  readonly standbyPower: number;
  /** How the pump primes at every start; not at all when left out. */
  readonly priming?: Priming | undefined;
}

/** The longer periods are worked out when they are asked for. */
export interface Prices {
  readonly day: DayPrice;
  readonly month: PeriodPrice;
  readonly season: PeriodPrice;
  readonly year: PeriodPrice;
}

export type Report = DayReport<NamedNeed, Limit>;

export interface WorkedDay {
  readonly blocks: readonly PadBlock[];
  readonly report: Report;
  /** Null while the volume of the pool is not known. */
  readonly turnovers: number | null;
  /** Share of the water that has passed the filter at least once, 1 − e⁻ⁿ. */
  readonly filtered: number | null;
  /** Null while there is no sound tariff. */
  readonly prices: Prices | null;
}

/** Works a day out to the minute. */
export function workOut(bench: Bench, blocks: readonly PadBlock[], date: CalendarDate): WorkedDay {
  const { volume, tariff, speeds } = bench;
  const report = dayReport({
    ...bench,
    blocks: coreBlocks(blocks, speeds),
    volume: volume ?? 1,
  });
  const turnovers = volume === null ? null : report.turnovers;
  return {
    blocks,
    report,
    turnovers,
    filtered: turnovers === null ? null : filteredShare(turnovers),
    prices: tariff === null ? null : pricesOf(tariff, date, report),
  };
}

function pricesOf(tariff: Tariff, date: CalendarDate, { segments }: Report): Prices {
  const { season } = ruleOn(tariff, date);
  const { month, day } = season.from;
  const begun = date.month > month || (date.month === month && date.day >= day);
  const firstYear = begun ? date.year : date.year - 1;
  const ofMonth = lazy(() => priceMonth(tariff, date.year, date.month, segments));
  const ofSeason = lazy(() => priceSeason(tariff, firstYear, season.id, segments));
  const ofYear = lazy(() => priceYear(tariff, date.year, segments));
  return {
    day: priceDay(tariff, date, segments),
    get month() {
      return ofMonth();
    },
    get season() {
      return ofSeason();
    },
    get year() {
      return ofYear();
    },
  };
}

/** What a block does in a worked day, once the pump has primed; undefined where the day has no such block. */
export function segmentOf({ segments }: Pick<Report, 'segments'>, blockId: string) {
  const own = segments.filter((segment) => segment.blockId === blockId);
  return own.find(({ isPriming }) => isPriming === undefined) ?? own[0];
}

/** The price bands of a date, in the order of the clock, cut at midnight. */
export function bandsOn(tariff: Tariff, date: CalendarDate): readonly Band[] {
  return ruleOn(tariff, date)
    .dayType.bands.flatMap((band) => piecesOf(band).map((piece) => ({ ...band, ...piece })))
    .sort((a, b) => a.start - b.start);
}

/** A speed the pump can be set to, nearest to a share of its top speed [rpm]. */
function shareOfTop({ top, least, step }: PumpSpeeds, share: number): number {
  const wish = share * top;
  const set = step > 0 ? Math.round(wish / step) * step : Math.round(wish);
  return Math.min(top, Math.max(least, set));
}

/** Shares of top speed in the usual day; common practice, no source. */
const usualShares = { high: 0.87, middle: 0.58, low: 0.35 };

/** The usual day of the trade on this pump: 3 h high, 6 h middle, the rest low. */
export function usualDay({ speeds }: Bench): readonly PadBlock[] {
  const at = (share: number) => shareOfTop(speeds, share);
  const plan = usualThreeBlockDay({
    high: at(usualShares.high) / speeds.reference,
    middle: at(usualShares.middle) / speeds.reference,
    low: at(usualShares.low) / speeds.reference,
  });
  const reasons: Record<string, string> = {
    high: 'Rule of thumb: 3 hours high',
    middle: 'Rule of thumb: 6 hours middle',
    low: 'Rule of thumb: low for the rest',
  };
  return plan.map((block) => fromCore(block, speeds, reasons[block.id] ?? ''));
}

/** Top speed from eight in the morning, for as long as it takes to move the same water. */
export function flatOutDay(bench: Bench, water: number): readonly PadBlock[] {
  const { speeds } = bench;
  const ratio = speeds.top / speeds.reference;
  const point = bench.pointAt(ratio);
  const flow = point.kind === 'flowing' ? point.flow : 0;
  const needed = flow > 0 && water > 0 ? Math.ceil(water / flow / 60) : 480;
  return oneSpeedDay({ ratio, minutes: Math.min(1440, needed) }).map((block) =>
    fromCore(block, speeds, 'Top speed until the same water is moved'),
  );
}

function fromCore(block: Block, speeds: PumpSpeeds, reason: string): PadBlock {
  const speed = Math.round(block.ratio * speeds.reference);
  return { id: block.id, start: block.start, end: block.end % 1440, speed, reason };
}
