/** The year of the reader's pad: what it takes and costs, beside another, and what a pump earns back. */
import { computed, type ReadonlySignal } from '@preact/signals';
import type { Limit } from '#core/limits.ts';
import { netPresentValue, paybackYears } from '#core/payback.ts';
import { priceMonth } from '#core/pricing.ts';
import { emission, type YearReport, type YearTotals, yearReport } from '#core/year.ts';
import { padModel } from '#pad/assemble.ts';
import type { NamedNeed } from '#pad/assembleNeeds.ts';
import { yearPlanOf } from '#pad/assembleYear.ts';
import { freshId } from '#pad/ids.ts';
import { unlessRefused } from '#pad/memo.ts';
import type { Path } from '#pad/path.ts';
import type { Pad, SeasonPlan } from '#pad/schema.ts';
import { flatOutDay, usualDay } from '#widgets/DaySheet/figures.ts';
import type { DayModel } from '#widgets/DaySheet/model.ts';

export type Report = YearReport<NamedNeed, Limit>;

/** What the year is set beside: twelve months of cost and energy. */
export interface OtherYear {
  readonly kind: 'oldPump' | 'usual' | 'oneSpeed' | 'old';
  readonly cost: number;
  /** [J] */
  readonly energy: number;
  readonly months: readonly Pick<YearTotals, 'cost' | 'energy'>[];
}

/** A pump that costs money now and saves it later. */
export interface Worth {
  readonly outlay: number;
  readonly saving: number;
  /** [a]; null when it never pays. */
  readonly payback: number | null;
  /** Net present value over the lifetime; null while interest or lifetime is not said. */
  readonly present: number | null;
  readonly lifetime: number | null;
}

export type YearModel = ReturnType<typeof createYear>;

/** An old pump is taken to have run from this minute on. */
const oldStart = 480;

/** `pad` follows the reader's pad when it has kept still for a moment: a year is 365 days of work. */
export function createYear(day: DayModel, pad: ReadonlySignal<Pad>) {
  const number = computed(() => pad.value.day.date?.year ?? day.date.value.year);
  const mine = computed<Report | null>(() => {
    const plan = yearPlanOf(pad.value, padModel(pad.value), { year: number.value });
    return plan === null ? null : unlessRefused(() => yearReport(plan));
  });
  const other = computed<OtherYear | null>(() => {
    const { oldPower, oldMinutes } = pad.value.year;
    if (oldPower !== null && oldMinutes !== null && oldMinutes > 0) {
      return oldPumpYear(pad.value, number.value, oldPower, oldMinutes);
    }
    return otherPlanYear(pad.value);
  });

  function otherPlanYear(now: Pad): OtherYear | null {
    const kind = now.day.compareWith;
    const bench = day.bench.value;
    if (bench === null) return null;
    const blocks =
      kind === 'old'
        ? now.day.oldBlocks
        : kind === 'usual'
          ? usualDay(bench)
          : flatOutDay(bench, (mine.value?.volumeMoved ?? 0) / 365);
    if (blocks.length === 0) return null;
    const plan = yearPlanOf(now, padModel(now), { year: number.value, blocks });
    const report = plan === null ? null : unlessRefused(() => yearReport(plan));
    return report === null
      ? null
      : { kind, cost: report.cost, energy: report.energy, months: report.byMonth };
  }

  const worth = computed<Worth | null>(() => {
    const { price, interest, lifetime } = pad.value.year;
    if (price === null || mine.value === null || other.value === null) return null;
    const investment = { outlay: price, yearlySaving: other.value.cost - mine.value.cost };
    return {
      outlay: price,
      saving: investment.yearlySaving,
      payback: paybackYears(investment),
      present:
        interest === null || lifetime === null
          ? null
          : netPresentValue(investment, interest, Math.round(lifetime)),
      lifetime,
    };
  });

  function set(path: Path, value: unknown, label: string): void {
    day.store.set(['year', ...path], value, label);
  }

  return {
    day,
    pad,
    units: day.units,
    currency: day.currency,
    number,
    mine,
    other,
    worth,
    gas: computed(() => {
      const factor = pad.value.year.emission;
      return factor === null || mine.value === null ? null : emission(mine.value.energy, factor);
    }),
    given: computed(() => day.pad.value.year),
    set,
    /** The day on the sheet becomes the plan that holds from this date on. */
    addPlan: (month: number, dayOfMonth: number) => {
      day.store.edit((now) => {
        const { plans } = now.year;
        const same = plans.find(({ from }) => from.month === month && from.day === dayOfMonth);
        const plan: SeasonPlan = {
          id: same?.id ?? freshId('plan-', plans),
          name: same?.name ?? '',
          from: { month, day: dayOfMonth },
          blocks: now.day.blocks,
          withoutNeeds: same?.withoutNeeds ?? [],
        };
        const others = plans.filter((each) => each !== same);
        const sorted = [...others, plan].sort(
          (one, two) => one.from.month - two.from.month || one.from.day - two.from.day,
        );
        return { ...now, year: { ...now.year, plans: sorted } };
      }, 'a plan of the year');
    },
    removePlan: (id: string) =>
      void day.store.edit(
        (now) => ({
          ...now,
          year: { ...now.year, plans: now.year.plans.filter((plan) => plan.id !== id) },
        }),
        'removing a plan of the year',
      ),
  };
}

/** A pump of one speed, known by its watts and hours alone. */
function oldPumpYear(pad: Pad, year: number, power: number, minutes: number): OtherYear | null {
  const { tariff } = padModel(pad);
  if (tariff === null) return null;
  const end = (oldStart + minutes) % 1440;
  const spans = [{ start: oldStart, end: end === 0 ? 1440 : end, power }];
  const months = Array.from({ length: 12 }, (_, index) =>
    priceMonth(tariff, year, index + 1, spans),
  );
  const sum = (of: 'cost' | 'energy') => months.reduce((total, month) => total + month[of], 0);
  return { kind: 'oldPump', cost: sum('cost'), energy: sum('energy'), months };
}
