/**
 * A day of blocks worked out on a bench: each block, the whole, the needs and the dear hours. Fetched
 * when the picture wakes.
 */
import type { Block } from '#core/day/day.ts';
import { dayReport, type ReportedSegment } from '#core/day/dayReport.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import { type Band, ruleOn } from '#core/tariff/tariff.ts';
import { piecesOf, spanMinutes } from '#core/time/spans.ts';
import type { Bench, WorkedBlock, WorkedDay } from './bench.ts';

/** The bands of the day that is priced, those that cost more than the cheapest. */
function dearBandsOf({ tariff, date }: Bench): readonly Band[] {
  const { bands } = ruleOn(tariff, date).dayType;
  const least = Math.min(...bands.map(({ price }) => price));
  return bands.filter(({ price }) => price > least);
}

function workedBlock(
  block: Block,
  segments: readonly ReportedSegment[],
  bench: Bench,
): WorkedBlock {
  const own = segments.filter(({ blockId }) => blockId === block.id);
  const minutes = spanMinutes(block);
  // What it settles at once it has primed.
  const { flow, power } = own.find(({ isPriming }) => !isPriming) ??
    own[0] ?? { flow: 0, power: 0 };
  const { energy, energyCost } = priceDay(bench.tariff, bench.date, own);
  return {
    block,
    minutes,
    speed: block.ratio * bench.speeds.reference,
    flow,
    power,
    water: own.reduce((sum, each) => sum + each.flow * spanMinutes(each) * 60, 0),
    energy,
    cost: energyCost,
  };
}

export function workOut(bench: Bench, blocks: readonly Block[]): WorkedDay {
  const report = dayReport({ ...bench, blocks });
  const price = priceDay(bench.tariff, bench.date, report.segments);
  const stopped = priceDay(
    bench.tariff,
    bench.date,
    report.segments.filter(({ kind }) => kind === 'off'),
  );
  const dear = dearBandsOf(bench);
  const inDear = price.byBand.filter(({ band }) => dear.includes(band));
  const fastest = bench.pointAt(bench.speeds.top / bench.speeds.reference);
  return {
    parts: blocks.map((block) => workedBlock(block, report.segments, bench)),
    standby: { energy: stopped.energy, cost: stopped.energyCost },
    report,
    cost: price.energyCost,
    dearCost: inDear.reduce((sum, each) => sum + each.cost, 0),
    dear: dear.flatMap((band) =>
      piecesOf(band).map(({ start, end }) => ({ start, end, price: band.price })),
    ),
    top: { flow: fastest.kind === 'flowing' ? fastest.flow : 0, power: fastest.power },
  };
}
