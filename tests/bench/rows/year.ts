import type { Block } from '#core/day/day.ts';
import { dayReport } from '#core/day/dayReport.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { filterFactor } from '#core/hydraulics/equipment.ts';
import { cubePower } from '#core/pump/power.ts';
import { pumpFromThreePoints } from '#core/pump/pump.ts';
import { priceDay, priceDays } from '#core/tariff/pricing.ts';
import { type CalendarDate, nextDay } from '#core/time/calendar.ts';
import { runningPad } from '#pad/model/runningPad.ts';
import { inventedTariff } from '../../core/day/dayFixtures.ts';
import { equipment, pipe, pumpPoints, series } from '../../oracle/circuits.ts';
import type { Row, RowMaker } from '../row.ts';

const newYear: CalendarDate = { year: 2027, month: 1, day: 1 };
const year = 365;
const blocks: readonly Block[] = [
  { id: 'night', start: 22 * 60, end: 6 * 60, ratio: 0.4 },
  { id: 'morning', start: 8 * 60, end: 11 * 60, ratio: 0.7 },
  { id: 'noon', start: 11 * 60, end: 14 * 60, ratio: 1 },
];
const spans = blocks.map((block) => ({ ...block, power: 60 + 1500 * block.ratio ** 3 }));

/** The same day over the real calendar, with seasons, day types and a holiday. */
async function pricedYear(): Promise<Row> {
  const over = (days: number) => priceDays(inventedTariff, newYear, days, spans).cost;
  return {
    name: 'the year priced over the calendar',
    unit: 'days',
    within: { units: year, millis: 100 },
    ways: [
      { name: 'one year', units: year, run: () => over(year) },
      { name: 'ten years', units: 10 * year, run: () => over(10 * year) },
    ],
  };
}

/** Every day worked out by itself, because the filter is a little fuller than the day before. */
async function loadingYear(): Promise<Row> {
  const curve = pumpFromThreePoints(pumpPoints);
  const ends = { cleanHead: 1.2, dirtyHead: 6 };
  const daysBetweenCleanings = 28;
  const filterAt = (day: number): CircuitPart =>
    equipment(4, 60, filterFactor(ends, (day % daysBetweenCleanings) / daysBetweenCleanings));
  const rest = [equipment(6, 60), pipe('sch40-2', 100)];
  const power = cubePower({ fixed: 60, cube: 1500 });
  const through = (days: number): number => {
    let date = newYear;
    let cost = 0;
    for (let day = 0; day < days; day += 1) {
      const circuit: Circuit = { ...series, discharge: [filterAt(day), ...rest] };
      const running = runningPad(circuit, curve, power);
      const report = dayReport({
        blocks,
        pointAt: running.runningAt,
        volume: 60,
        needs: [],
        limits: [],
        quiet: [],
      });
      cost += priceDay(inventedTariff, date, report.segments).cost;
      date = nextDay(date);
    }
    return cost;
  };
  return {
    name: 'the year, day by day, with a loading filter: flows, report and price',
    unit: 'days',
    within: { units: year, millis: 100 },
    ways: [
      { name: 'one year', units: year, run: () => through(year) },
      { name: 'two years', units: 2 * year, run: () => through(2 * year) },
    ],
  };
}

export const rows: readonly RowMaker[] = [pricedYear, loadingYear];
