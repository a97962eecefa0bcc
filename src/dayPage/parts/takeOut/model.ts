/** The files a reader can take along, made from the pad when they are asked for. */

import { yearReport } from '#core/year/year.ts';
import type { WorkedDay } from '#dayPage/day/figures.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { openFrost } from '#dayPage/day/openFrost.ts';
import type { PadBlock } from '#pad/document/schema.ts';
import { padFileName } from '#pad/document/written.ts';
import { dayCalendar } from '#pad/formats/dayCalendar.ts';
import { dayCsv } from '#pad/formats/dayCsv.ts';
import { isoDate, yearCsv } from '#pad/formats/yearCsv.ts';
import { padModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import type { UnitChoice } from '#units/choice.ts';

/** A file to hand to the browser. */
export interface OutFile {
  readonly name: string;
  readonly type: string;
  readonly text: string;
}

/** How a block is put into words for a calendar. */
export type BlockWords = (
  block: PadBlock,
  worked: WorkedDay,
  units: UnitChoice,
) => { readonly summary: string; readonly description: string };

/** Spreadsheets take a table for one of another alphabet without this mark at its head. */
const byteOrderMark = '\ufeff';

const csvFile = (name: string, text: string): OutFile => ({
  name,
  type: 'text/csv;charset=utf-8',
  text: byteOrderMark + text,
});

export type TakeOutModel = ReturnType<typeof createTakeOut>;

export function createTakeOut(day: DayModel) {
  const stem = () => padFileName(day.pad.peek()).replace(/\.pad\.json$/, '');

  function dayFile(): OutFile | null {
    const [worked, speeds] = [day.here.peek(), day.speeds.peek()];
    if (worked === null || speeds === null) return null;
    const reasons = new Map(day.blocks.peek().map(({ id, reason }) => [id, reason]));
    const date = day.date.peek();
    const text = dayCsv({
      segments: worked.report.segments,
      reference: speeds.reference,
      date,
      tariff: day.tariff.peek(),
      currency: day.currency.peek().sign,
      reasonOf: (id) => reasons.get(id) ?? '',
      units: day.units.peek(),
    });
    return csvFile(`${stem()}-day-${isoDate(date)}.csv`, text);
  }

  function yearFile(by: 'day' | 'month'): OutFile | null {
    const pad = day.pad.peek();
    const { year } = day.date.peek();
    // The very frost that the page shows, by the hour where a series is open.
    const plan = yearPlanOf(pad, padModel(pad), { year, frostOn: openFrost(day.store) });
    const report = plan === null ? null : unlessRefused(() => yearReport(plan));
    if (report === null) return null;
    const [currency, units] = [day.currency.peek().sign, day.units.peek()];
    const text = yearCsv({ year, report, by, currency, units });
    return csvFile(`${stem()}-year-${year}-by-${by}.csv`, text);
  }

  function calendarFile(words: BlockWords, stamp: number): OutFile | null {
    const worked = day.here.peek();
    const running = day.blocks.peek().filter(({ speed }) => (speed ?? 0) > 0);
    if (worked === null || running.length === 0) return null;
    const text = dayCalendar({
      padName: day.name.peek(),
      blocks: running.map((block) => ({ ...block, ...words(block, worked, day.units.peek()) })),
      date: day.date.peek(),
      planStarts: day.pad.peek().year.plans.map(({ from }) => from),
      stamp,
    });
    return { name: `${stem()}-day.ics`, type: 'text/calendar;charset=utf-8', text };
  }

  return { day, dayFile, yearFile, calendarFile };
}
