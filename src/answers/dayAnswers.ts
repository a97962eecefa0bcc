/** The day on the sheet and the year of it: water, energy, service and money. */

import {
  type DayReport,
  dayReport,
  type FlowLimit,
  type ServiceNeed,
} from '#core/day/dayReport.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import type { CalendarDate } from '#core/time/calendar.ts';
import { type Span, spanMinutes, unionOf } from '#core/time/spans.ts';
import { yearReport } from '#core/year/year.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { type WorkedDay, workOut } from '#dayPage/day/figures.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { PadModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { pricedDate } from '#pad/model/someDay.ts';
import { fromSI } from '#units/convert.ts';

/** The year that is asked for. */
const year = 2027;

const kilowattHours = (energy: number): number => fromSI('energy', energy, 'kWh');

/** The date of the pad, else one that stays the same, so that the same file gives the same answer. */
export function dateOf(pad: Pad): CalendarDate {
  return pricedDate(pad.day.date);
}

/** The day as the sheet works it out; null while the pad says too little. */
export function sheetOf(pad: Pad): WorkedDay | null {
  const { bench } = benchOf(pad);
  return bench === null ? null : workOut(bench, pad.day.blocks, dateOf(pad));
}

function minutesOf(runs: readonly { readonly from: number; readonly to: number }[]): number {
  const spans = runs.map(({ from, to }): Span => ({ start: from, end: to }));
  return unionOf(spans).reduce((sum, piece) => sum + spanMinutes(piece), 0);
}

function needsAnswer({ needs }: DayReport<ServiceNeed, FlowLimit>) {
  return Object.fromEntries(
    needs.map(({ need, servedMinutes, shortMinutes, longestRun }) => [
      need.id,
      { wantedMinutes: need.minutes, servedMinutes, shortMinutes, longestRun },
    ]),
  );
}

/** The day on the sheet; null while there is no day or too little is known of the pad. */
export function dayAnswer(pad: Pad, { planOf, blocks, tariff }: PadModel) {
  const plan = blocks === null || pad.day.blocks.length === 0 ? null : planOf(blocks);
  const sheet = sheetOf(pad);
  if (plan === null || sheet === null) return null;
  const report = dayReport(plan);
  const price = tariff === null ? null : priceDay(tariff, dateOf(pad), report.segments);
  const { prices } = sheet;
  return {
    volumeM3: report.volumeMoved,
    turnovers: report.turnovers,
    filteredShare: sheet.filtered,
    energyKwh: kilowattHours(report.energy),
    runMinutes: report.runMinutes,
    money: price?.cost ?? null,
    energyMoney: price?.energyCost ?? null,
    sheetMoney: prices?.day.cost ?? null,
    monthMoney: prices?.month.cost ?? null,
    seasonMoney: prices?.season.cost ?? null,
    needs: needsAnswer(report),
    crossedMinutes: minutesOf(report.crossings),
    quietMinutes: minutesOf(report.quietCrossings),
  };
}

/** The year, day by day; null while pump, pool or price is not known. */
export function yearAnswer(pad: Pad, model: PadModel) {
  const plan = yearPlanOf(pad, model, { year });
  if (plan === null) return null;
  const report = yearReport(plan);
  const { bench } = benchOf(pad);
  const sheet = bench === null ? null : workOut(bench, pad.day.blocks, { ...dateOf(pad), year });
  return {
    year,
    energyKwh: kilowattHours(report.energy),
    money: report.cost,
    volumeM3: report.volumeMoved,
    shortDays: report.shortDays,
    crossedDays: report.crossedDays,
    moneyByMonth: report.byMonth.map(({ cost }) => cost),
    priceYearMoney: sheet?.prices?.year.cost ?? null,
  };
}
