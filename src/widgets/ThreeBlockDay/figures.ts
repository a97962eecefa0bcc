/** A day of blocks worked out on a bench: each block, the whole, the needs and the dear hours. */
import type { Block } from '#core/day.ts';
import { type DayReport, dayReport, type ReportedSegment } from '#core/dayReport.ts';
import { priceDay } from '#core/pricing.ts';
import { spanMinutes } from '#core/spans.ts';
import { type Band, ruleOn } from '#core/tariff.ts';
import type { Bench, BenchLimit, BenchNeed } from './bench.ts';

/** One block with what it does and takes. */
export interface WorkedBlock {
  readonly block: Block;
  /** [min] */
  readonly minutes: number;
  /** [rpm]; 0 is off. */
  readonly speed: number;
  /** [m3/s] */
  readonly flow: number;
  /** [W] */
  readonly power: number;
  /** Water moved [m3]. */
  readonly water: number;
  /** [J] */
  readonly energy: number;
  /** In the tariff's currency, without its daily charge. */
  readonly cost: number;
}

export interface WorkedDay {
  readonly parts: readonly WorkedBlock[];
  readonly report: DayReport<BenchNeed, BenchLimit>;
  /** In the tariff's currency, without its daily charge. */
  readonly cost: number;
  /** The part of it that falls in bands above the lowest price. */
  readonly dearCost: number;
  /** Kilowatt-hours in those bands [J]. */
  readonly dearEnergy: number;
}

/** The bands of the day that is priced. */
export function bandsOf({ tariff, date }: Bench): readonly Band[] {
  return ruleOn(tariff, date).dayType.bands;
}

/** Those that cost more than the cheapest. */
export function dearBandsOf(bench: Bench): readonly Band[] {
  const bands = bandsOf(bench);
  const least = Math.min(...bands.map(({ price }) => price));
  return bands.filter(({ price }) => price > least);
}

function workedBlock(
  block: Block,
  segments: readonly ReportedSegment[],
  bench: Bench,
): WorkedBlock {
  const own = segments.filter(({ blockId }) => blockId === block.id);
  const [first] = own;
  const minutes = spanMinutes(block);
  const { flow = 0, power = 0 } = first ?? {};
  const { energy, energyCost } = priceDay(bench.tariff, bench.date, own);
  return {
    block,
    minutes,
    speed: block.ratio * bench.speeds.reference,
    flow,
    power,
    water: flow * minutes * 60,
    energy,
    cost: energyCost,
  };
}

export function workOut(bench: Bench, blocks: readonly Block[]): WorkedDay {
  const report = dayReport({ ...bench, blocks });
  const price = priceDay(bench.tariff, bench.date, report.segments);
  const dear = new Set(dearBandsOf(bench));
  const inDear = price.byBand.filter(({ band }) => dear.has(band));
  return {
    parts: blocks.map((block) => workedBlock(block, report.segments, bench)),
    report,
    cost: price.energyCost,
    dearCost: inDear.reduce((sum, each) => sum + each.cost, 0),
    dearEnergy: inDear.reduce((sum, each) => sum + each.energy, 0),
  };
}
