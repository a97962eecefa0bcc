import { expect } from 'vitest';
import { type Block, segmentsOf } from '#core/day/day.ts';
import type { RunningPoint } from '#core/day/dayReport.ts';
import { cheapestDay, type FoundDay } from '#core/planner/cheapestDay.ts';
import type { CheapestDayInputs, SpeedRow } from '#core/planner/inputs.ts';
import { priceDay } from '#core/tariff/pricing.ts';

/** What the pump does at a speed of a table. */
export function pointFrom(speeds: readonly SpeedRow[]): (ratio: number) => RunningPoint {
  return (ratio) => {
    const row = speeds.find((each) => each.ratio === ratio);
    if (row === undefined) throw new Error(`${ratio} is no speed of the table`);
    const { flow, power } = row;
    return { kind: 'flowing', flow, power, suctionVelocity: 1, dischargeVelocity: 1 };
  };
}

/** Price of a day by the tariff of the core, which has its own checks. */
export function costOfDay(inputs: CheapestDayInputs, blocks: readonly Block[]): number {
  const point = pointFrom(inputs.speeds);
  const dayType = { id: 'all', name: 'all', weekdays: [0, 1, 2, 3, 4, 5, 6], bands: inputs.prices };
  const season = { id: 'all', name: 'all', from: { month: 1, day: 1 }, dayTypes: [dayType] };
  const tariff = { currency: '', dailyCharge: 0, seasons: [season] };
  const spans = blocks
    .filter(({ ratio }) => ratio > 0)
    .map(({ start, end, ratio }) => ({ start, end, power: point(ratio).power }));
  return priceDay(tariff, { year: 2027, month: 6, day: 1 }, spans).cost;
}

/** Changes of speed around the horizon, counted from the segments of the day. */
export function changesOf(blocks: readonly Block[]): number {
  const segments = segmentsOf(blocks);
  return segments.filter(
    ({ ratio }, place) => ratio !== segments[(place + 1) % segments.length]?.ratio,
  ).length;
}

/** The cheapest day where there must be one. */
export function found(inputs: CheapestDayInputs): FoundDay {
  const result = cheapestDay(inputs);
  if (result.kind !== 'found') return expect.fail(`no day was found: ${result.kind}`);
  return result;
}
