/** The year as a table, by the day or by the month. */

import type { FlowLimit, ServiceNeed } from '#core/day/dayReport.ts';
import { type CalendarDate, daysInMonth } from '#core/time/calendar.ts';
import { unionOf } from '#core/time/spans.ts';
import type { YearDay, YearReport } from '#core/year/year.ts';
import type { UnitChoice } from '#units/choice.ts';
import { symbolFor } from '#units/format.ts';
import type { Quantity } from '#units/quantities.ts';
import { type Cell, csvText } from './csvText.ts';
import { heading, shownIn } from './dayCsv.ts';

type Day = YearDay<ServiceNeed, FlowLimit>;

/** What the table of a year is made of. */
export interface YearTable {
  readonly year: number;
  readonly report: YearReport<ServiceNeed, FlowLimit>;
  readonly by: 'day' | 'month';
  readonly currency: string;
  readonly units: UnitChoice;
}

const two = (value: number) => String(value).padStart(2, '0');
/** As ISO 8601 writes a day. */
export const isoDate = ({ year, month, day }: CalendarDate): string =>
  `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;

const meanOf = (days: readonly Day[], value: (day: Day) => number) =>
  days.reduce((sum, day) => sum + value(day), 0) / days.length;

const frostMinutes = ({ conditions }: Day) =>
  unionOf(conditions.frost).reduce((sum, { start, end }) => sum + end - start, 0);

/** Date, water, filter, frost, water moved, energy, price, and whether a need stays short or a limit is crossed. */
export function yearCsv(table: YearTable): string {
  const { units, by, currency } = table;
  const named = (name: string, quantity: Quantity) => heading(name, symbolFor(units, quantity));
  const columns = [
    by === 'day' ? 'Date' : 'Month',
    named('Water temperature', 'temperature'),
    heading('Filter loading', '%'),
    heading('Frost', 'min'),
    named('Water moved', 'volume'),
    named('Energy', 'energy'),
    heading('Price', currency),
    by === 'day' ? 'A need is short (1 = yes)' : 'Days a need is short',
    by === 'day' ? 'A limit is crossed (1 = yes)' : 'Days a limit is crossed',
  ];
  return csvText(columns, by === 'day' ? dayRows(table) : monthRows(table));
}

function dayRows({ report, units }: YearTable): readonly (readonly Cell[])[] {
  return report.byDay.map((day) => [
    isoDate(day.date),
    shownIn(units, 'temperature')(day.conditions.waterTemperature),
    100 * day.conditions.loading,
    frostMinutes(day),
    shownIn(units, 'volume')(day.report.volumeMoved),
    shownIn(units, 'energy')(day.report.energy),
    day.cost,
    day.report.needs.every(({ met }) => met) ? 0 : 1,
    day.report.crossings.length > 0 ? 1 : 0,
  ]);
}

function monthRows({ year, report, units }: YearTable): readonly (readonly Cell[])[] {
  let before = 0;
  return report.byMonth.map((month, index) => {
    const days = report.byDay.slice(before, before + daysInMonth(year, index + 1));
    before += days.length;
    return [
      `${String(year).padStart(4, '0')}-${two(index + 1)}`,
      shownIn(units, 'temperature')(meanOf(days, (day) => day.conditions.waterTemperature)),
      100 * meanOf(days, (day) => day.conditions.loading),
      month.frostMinutes,
      shownIn(units, 'volume')(month.volumeMoved),
      shownIn(units, 'energy')(month.energy),
      month.cost,
      month.shortDays,
      month.crossedDays,
    ];
  });
}
