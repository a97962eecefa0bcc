/** The year of the reader's pad: what it takes and costs, beside others, and what a pump earns back. */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { netPresentValue, paybackYears } from '#core/tariff/payback.ts';
import { emission, yearReport } from '#core/year/year.ts';
import { shortNeeds } from '#core/year/yearBeside.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { startReading } from '#dayPage/fileInput/startReading.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { padModel } from '#pad/model/assemble.ts';
import { isTakenInstead } from '#pad/model/assembleDay.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import {
  type Amounts,
  type BesideKind,
  type OtherPlan,
  oldPumpYear,
  oneSpeedYear,
  otherPlans,
  planYear,
  type Report,
  sideOf,
  type YearBeside,
} from './beside.ts';
import { createFrost } from './frost.ts';
import { createPlans } from './plans.ts';
import { crossedLimits, seasonFacts } from './seasons.ts';

/** What can be followed month by month. */
export const measures = ['money', 'energy', 'water', 'hours', 'gas'] as const;
export type Measure = (typeof measures)[number];

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

/** `pad` follows the reader's pad when it has kept still for a moment: a year is 365 days of work. */
export function createYear(day: DayModel, pad: ReadonlySignal<Pad>) {
  const number = computed(() => pad.value.day.date?.year ?? day.date.value.year);
  const frost = createFrost(day, number, startReading);
  const plan = computed(() =>
    yearPlanOf(pad.value, padModel(pad.value), {
      year: number.value,
      frostOn: frost.frostOn.value,
    }),
  );
  const mine = computed<Report | null>(() => {
    const now = plan.value;
    return now === null ? null : unlessRefused(() => yearReport(now));
  });
  const seasons = computed(() =>
    plan.value === null || mine.value === null
      ? []
      : seasonFacts(pad.value, plan.value, mine.value),
  );

  const planWish = signal<OtherPlan | null>(null);
  const plans = computed(() => otherPlans(pad.value));
  const otherPlan = computed<OtherPlan>(() => {
    const wish = planWish.value ?? pad.value.day.compareWith;
    return plans.value.find((each) => each === wish) ?? 'usual';
  });
  const besides = computed<readonly YearBeside[]>(() => {
    const [asked, report, now] = [plan.value, mine.value, pad.value];
    if (asked === null || report === null) return [];
    const years = [
      unlessRefused(() => planYear(now, asked, otherPlan.value)),
      unlessRefused(() => oneSpeedYear(now, asked, report)),
      unlessRefused(() => oldPumpYear(asked.tariff, number.value, now)),
    ];
    return years.filter((each) => each !== null);
  });
  const besideWish = signal<BesideKind | null>(null);
  /** The one that the picture shows and the finding speaks of. */
  const shown = computed<YearBeside | null>(() => {
    const oneSpeedFirst = pad.value.day.compareWith === 'oneSpeed';
    const order = [besideWish.value, 'oldPump', oneSpeedFirst ? 'oneSpeed' : 'plan'];
    const found = order.map((kind) => besides.value.find((each) => each.kind === kind));
    return found.find((each) => each !== undefined) ?? besides.value[0] ?? null;
  });

  function worthBeside(other: YearBeside): Worth | null {
    const { price, interest, lifetime } = pad.value.year;
    if (price === null || mine.value === null) return null;
    const investment = { outlay: price, yearlySaving: other.cost - mine.value.cost };
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
  }

  const factor = computed(() => pad.value.year.emission);
  const gasOf = ({ energy }: Pick<Amounts, 'energy'>): number | null =>
    factor.value === null ? null : emission(energy, factor.value);
  const measure = signal<Measure>('money');
  const canShow = (each: Measure) => each !== 'gas' || factor.value !== null;

  return {
    day,
    pad,
    frost,
    units: day.units,
    currency: day.currency,
    number,
    plan,
    mine,
    /** The reader's year as it is set beside others. */
    side: computed(() => (mine.value === null ? null : sideOf(mine.value))),
    seasons,
    /** Speeds and blocks of the year that something else is taken for. */
    held: computed(() => {
      const now = pad.value;
      const days = now.year.plans.length === 0 ? 'day' : 'year';
      return padModel(now).problems.filter(
        (found) =>
          isTakenInstead(found) &&
          ((found.path[0] === days && found.path[1] !== 'oldBlocks') ||
            found.path[1] === 'frostSpeed'),
      );
    }),
    short: computed(() => (mine.value === null ? [] : shortNeeds(mine.value.byDay))),
    /** Whether the pump turns at all in this year. */
    runs: computed(() => mine.value === null || mine.value.runMinutes > 0),
    /** Limits that are crossed, each with the days on which it is, those that nothing may cross first. */
    crossed: computed(() => (mine.value === null ? [] : crossedLimits(mine.value))),
    besides,
    shown,
    show: (kind: BesideKind) => {
      besideWish.value = kind;
    },
    plans,
    otherPlan,
    setOtherPlan: (which: OtherPlan) => {
      planWish.value = which;
    },
    measures: computed(() => measures.filter(canShow)),
    measure: computed(() => (canShow(measure.value) ? measure.value : 'money')),
    setMeasure: (which: Measure) => {
      measure.value = which;
    },
    worthBeside,
    worth: computed(() => (shown.value === null ? null : worthBeside(shown.value))),
    gasOf,
    gas: computed(() => (mine.value === null ? null : gasOf(mine.value))),
    given: computed(() => day.pad.value.year),
    set: (path: Path, value: unknown, label: string): void => {
      day.store.set(['year', ...path], value, label);
    },
    ...createPlans(day, number),
  };
}
