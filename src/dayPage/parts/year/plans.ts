/** Every way to change the plans of the year; each step can be undone. */
import { type ReadonlySignal, signal, untracked } from '@preact/signals';
import { isMonthDay, type MonthDay, monthDayKey } from '#core/time/calendar.ts';
import { yearReport } from '#core/year/year.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { openFrost } from '#dayPage/day/openFrost.ts';
import { freshId } from '#pad/document/ids.ts';
import type { Pad, SeasonPlan } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import { cheapestForSeason, type SeasonDay } from './seasons.ts';

/** What came of the last step on a plan. */
export interface PlanSaid {
  readonly id: string;
  readonly said: SeasonDay | { readonly kind: 'taken'; readonly from: MonthDay };
}

/** How the cheapest day of a season is called where it can be undone. */
export const cheapestStep = 'the cheapest day for a season';

/** Turnovers a day looked for where the pad names no target [-]; common practice, no source. */
const usualTurnovers = 1;

/** A month's last day at most, so that 31 April never gets into a pad. */
function asMonthDay(month: number, day: number): MonthDay {
  let last = day;
  while (last > 1 && !isMonthDay({ month, day: last })) last -= 1;
  return { month, day: last };
}

const inOrder = (plans: readonly SeasonPlan[]) =>
  [...plans].sort((one, two) => monthDayKey(one.from) - monthDayKey(two.from));

export function createPlans(day: DayModel, number: ReadonlySignal<number>) {
  const said = signal<PlanSaid | null>(null);

  function editPlans(
    update: (plans: readonly SeasonPlan[], now: Pad) => readonly SeasonPlan[],
    label: string,
    field?: string,
  ): void {
    said.value = null;
    day.store.edit(
      (now) => ({ ...now, year: { ...now.year, plans: inOrder(update(now.year.plans, now)) } }),
      label,
      field,
    );
  }

  function change(id: string, change: Partial<SeasonPlan>, label: string, field?: string): void {
    editPlans(
      (plans) => plans.map((each) => (each.id === id ? { ...each, ...change } : each)),
      label,
      field,
    );
  }

  const found = (id: string) => day.pad.peek().year.plans.find((each) => each.id === id);
  const turnoversOf = (id: string) => {
    const { year, turnoverTarget } = day.pad.value;
    const own = year.plans.find((each) => each.id === id)?.turnovers;
    return own ?? turnoverTarget ?? usualTurnovers;
  };

  return {
    said,
    /** The day on the sheet becomes the plan that holds from this date on. */
    addPlan: (month: number, dayOfMonth: number) => {
      const from = asMonthDay(month, dayOfMonth);
      editPlans((plans, now) => {
        const same = plans.find((each) => monthDayKey(each.from) === monthDayKey(from));
        const added: SeasonPlan = {
          id: same?.id ?? freshId('plan-', plans),
          name: same?.name ?? '',
          from,
          blocks: now.day.blocks,
          withoutNeeds: same?.withoutNeeds ?? [],
          turnovers: same?.turnovers ?? null,
        };
        return [...plans.filter((each) => each !== same), added];
      }, 'a plan of the year');
    },
    removePlan: (id: string) =>
      editPlans((plans) => plans.filter((each) => each.id !== id), 'removing a plan of the year'),
    renamePlan: (id: string, name: string) =>
      change(id, { name }, 'the name of a plan', `year/plan/${id}/name`),
    /** Moves the first day; two plans cannot begin on one. */
    movePlan: (id: string, month: number, dayOfMonth: number) => {
      const from = asMonthDay(month, dayOfMonth);
      const isTaken = day.pad
        .peek()
        .year.plans.some((each) => each.id !== id && monthDayKey(each.from) === monthDayKey(from));
      if (isTaken) said.value = { id, said: { kind: 'taken', from } };
      else change(id, { from }, 'the first day of a plan', `year/plan/${id}/from`);
    },
    /** Says whether a need holds in the season of a plan. */
    holdNeed: (id: string, needId: string, holds: boolean) => {
      const others = (found(id)?.withoutNeeds ?? []).filter((each) => each !== needId);
      const withoutNeeds = holds ? others : [...others, needId];
      change(id, { withoutNeeds }, 'the needs of a season');
    },
    turnoversOf,
    /** What a day of a season is to move; the cheapest day of the season goes by it. */
    wishTurnovers: (id: string, turnovers: number) =>
      change(id, { turnovers }, 'the turnovers of a season', `year/plan/${id}/turnovers`),
    /** Puts the cheapest day for its season in the place of a plan's. */
    layCheapest: (id: string) => {
      // The pad as it stands, which the year on the screen may still be catching up with.
      const now = day.pad.peek();
      const plan = yearPlanOf(now, padModel(now), {
        year: number.peek(),
        frostOn: untracked(() => openFrost(day.store)),
      });
      const place = now.year.plans.findIndex((each) => each.id === id);
      if (place < 0 || plan === null) return;
      const cheapest = unlessRefused(() =>
        cheapestForSeason(now, plan, yearReport(plan), place, turnoversOf(id)),
      );
      if (cheapest?.kind === 'found') change(id, { blocks: cheapest.blocks }, cheapestStep);
      said.value = cheapest === null ? null : { id, said: cheapest };
    },
    /** Shows a plan on the sheet, on a day of this year on which it holds. */
    layOnSheet: (id: string) => {
      const of = found(id);
      if (of === undefined) return;
      said.value = null;
      day.store.edit((now) => {
        const year = number.peek();
        // A season may begin on 29 February, which this year may not have.
        const first = of.from.month === 2 && of.from.day === 29 ? { month: 3, day: 1 } : of.from;
        return { ...now, day: { ...now.day, blocks: of.blocks, date: { year, ...first } } };
      }, 'a plan on the sheet');
    },
  };
}
