/** The day as a table: one row for each stretch from midnight to midnight. */

import type { ReportedSegment } from '#core/day/dayReport.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import type { CalendarDate } from '#core/time/calendar.ts';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI } from '#units/convert.ts';
import { symbolFor } from '#units/format.ts';
import type { Quantity } from '#units/quantities.ts';
import { formatTimeOfDay } from '#units/timeOfDay.ts';
import { type Cell, csvText } from './csvText.ts';

/** What the table of a day is made of. */
export interface DayTable {
  readonly segments: readonly ReportedSegment[];
  /** Speed that a ratio of 1 stands for [rpm]. */
  readonly reference: number;
  readonly date: CalendarDate;
  /** Null where there is no sound tariff: the column is left out. */
  readonly tariff: Tariff | null;
  readonly currency: string;
  /** Why a block runs, by its id. */
  readonly reasonOf: (blockId: string) => string;
  readonly units: UnitChoice;
}

/** "Flow (gpm)". */
export const heading = (name: string, unit: string): string =>
  unit === '' ? name : `${name} (${unit})`;

/** A stored value as the number the reader would read. */
export const shownIn = (units: UnitChoice, quantity: Quantity) => (si: number) =>
  fromSI(quantity, si, unitFor(units, quantity));

const clock = (minute: number) => (minute === 1440 ? '24:00' : formatTimeOfDay(minute));

/** Start, end, minutes, speed, flow, power, water, energy, price and reason of each stretch. */
export function dayCsv(day: DayTable): string {
  const { units, tariff } = day;
  const named = (name: string, quantity: Quantity) => heading(name, symbolFor(units, quantity));
  const columns = [
    'Start',
    'End',
    heading('Length', 'min'),
    named('Speed', 'speed'),
    named('Flow', 'flow'),
    named('Power', 'power'),
    named('Water moved', 'volume'),
    named('Energy', 'energy'),
    ...(tariff === null ? [] : [heading('Price of energy', day.currency)]),
    'Reason',
  ];
  return csvText(
    columns,
    day.segments.map((segment) => rowOf(segment, day)),
  );
}

function rowOf(segment: ReportedSegment, day: DayTable): readonly Cell[] {
  const { units, tariff } = day;
  const { start, end, flow, power, blockId, ratio } = segment;
  const seconds = 60 * (end - start);
  const shown = (quantity: Quantity, si: number) => shownIn(units, quantity)(si);
  return [
    clock(start),
    clock(end),
    end - start,
    shown('speed', ratio * day.reference),
    shown('flow', flow),
    shown('power', power),
    shown('volume', flow * seconds),
    shown('energy', power * seconds),
    ...(tariff === null ? [] : [priceDay(tariff, day.date, [{ start, end, power }]).energyCost]),
    blockId === null ? 'Off' : day.reasonOf(blockId),
  ];
}
