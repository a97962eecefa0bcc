/** The season a printed sheet is for, when the year has plans. */
import { type CalendarDate, daysInMonth, type MonthDay, monthDayKey } from '#core/time/calendar.ts';
import type { Pad, PadBlock, SeasonPlan } from '#pad/document/schema.ts';
import { monthNames } from '#units/monthNames.ts';

const dayText = ({ month, day }: MonthDay) => `${day} ${monthNames[month - 1]}`;

function dayBefore({ month, day }: MonthDay, year: number): MonthDay {
  if (day > 1) return { month, day: Math.min(day - 1, daysInMonth(year, month)) };
  const before = month === 1 ? 12 : month - 1;
  return { month: before, day: daysInMonth(year, before) };
}

/** Whether two days run the pump alike, whatever the reasons written beside. */
function alike(one: readonly PadBlock[], other: readonly PadBlock[]): boolean {
  const told = (blocks: readonly PadBlock[]) =>
    blocks.map(({ start, end, speed }) => `${start}-${end}-${speed}`).sort();
  return told(one).join() === told(other).join();
}

/** "Season “House shut”, 1 October to 14 May."; empty while the year has no plans. */
export function seasonOfSheet(
  { year: { plans } }: Pick<Pad, 'year'>,
  blocks: readonly PadBlock[],
  date: CalendarDate,
): string {
  const ordered = [...plans].sort((one, two) => monthDayKey(one.from) - monthDayKey(two.from));
  const key = monthDayKey(date);
  const holds = ordered.findLast(({ from }) => monthDayKey(from) <= key) ?? ordered.at(-1);
  if (holds === undefined) return '';
  const nameOf = ({ name }: SeasonPlan) => (name === '' ? '' : ` “${name}”`);
  const spanOf = (plan: SeasonPlan) => {
    const next = ordered[(ordered.indexOf(plan) + 1) % ordered.length] ?? plan;
    const all = ordered.length === 1;
    return all
      ? 'all year'
      : `${dayText(plan.from)} to ${dayText(dayBefore(next.from, date.year))}`;
  };
  if (alike(holds.blocks, blocks)) return `Season${nameOf(holds)}, ${spanOf(holds)}.`;
  const other = ordered.find((plan) => alike(plan.blocks, blocks));
  if (other !== undefined) return `Season${nameOf(other)}, ${spanOf(other)}: not on this date.`;
  return `Not one of the days of the year: on this date the plan${nameOf(holds)} holds, ${spanOf(holds)}.`;
}
