import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { type Block, oneSpeedDay, segmentsOf } from '#core/day/day.ts';
import { withFrost } from '#core/day/frost.ts';
import { freezeProtection } from '#core/pump/energyFactor.ts';
import { paybackYears } from '#core/tariff/payback.ts';
import { type PoweredSpan, priceDays } from '#core/tariff/pricing.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import { daysInMonth } from '#core/time/calendar.ts';
import type { Span } from '#core/time/spans.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';

/** Speeds are set in this step [rpm]. */
export const yearStep = 50;

/** What the pump gives at a speed. */
export interface Running {
  /** [rpm] */
  readonly speed: number;
  /** [m3/s]; 0 when no water moves. */
  readonly flow: number;
  /** Wire power [W]. */
  readonly power: number;
}

/** A pump in its pipes, the tariff it runs on and the year whose calendar counts. */
export interface YearPlace {
  readonly runningAt: (speed: number) => Running;
  /** Speeds [rpm]. */
  readonly leastSpeed: number;
  readonly topSpeed: number;
  readonly tariff: Tariff;
  readonly year: number;
  /** Draw while the pump is stopped [W]; none when left out. */
  readonly standbyPower?: number | undefined;
}

/** What one day of a part of the year looks like. */
export interface PlanDay {
  readonly at: Running;
  /** How long it runs [min], 0 to 1440. */
  readonly minutes: number;
  /** How long it would have to run for the water asked for [min]; Infinity where none moves. */
  readonly wanted: number;
}

/** One month of one plan. */
export interface MonthPrice {
  readonly month: number;
  /** [J] */
  readonly energy: number;
  /** Energy and daily charge [currency]. */
  readonly cost: number;
}

export interface PlanYear {
  readonly season: PlanDay;
  readonly rest: PlanDay;
  readonly months: readonly MonthPrice[];
  readonly energy: number;
  readonly cost: number;
}

/** Frost is counted by the night, from ten to eight; common practice, no source. */
export const frostNight: Span = { start: 22 * 60, end: 8 * 60 };
const frostMonths = 3;
const dayStart = 8 * 60;

export interface YearBarsModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  readonly own: Signal<YearPlace | undefined>;
  readonly place: ReadonlySignal<YearPlace>;
  /** First and last month of the season [-], 1 to 12; it may run over the new year. */
  readonly firstMonth: Signal<number>;
  readonly lastMonth: Signal<number>;
  readonly inSeason: ReadonlySignal<readonly boolean[]>;
  readonly inFrost: ReadonlySignal<readonly boolean[]>;
  /** Hours a day of the one-speed pump [s]. */
  readonly seasonHours: NumberControl;
  readonly restHours: NumberControl;
  /** Speeds of the variable-speed pump [rpm]. */
  readonly seasonSpeed: NumberControl;
  readonly restSpeed: NumberControl;
  readonly frostNights: NumberControl;
  /** What the variable-speed pump costs more [currency]. */
  readonly outlay: NumberControl;
  readonly oneSpeed: ReadonlySignal<PlanYear>;
  readonly variable: ReadonlySignal<PlanYear>;
  readonly saving: ReadonlySignal<number>;
  /** Years until it is paid back; null when it never is. */
  readonly payback: ReadonlySignal<number | null>;
  reset(): void;
}

const opening = {
  firstMonth: 5,
  lastMonth: 9,
  seasonHours: 8 * 3600,
  restHours: 4 * 3600,
  seasonSpeed: 1500,
  restSpeed: 1200,
  frostNights: 6,
  outlay: 700,
};

const monthsOfYear = Array.from({ length: 12 }, (_, index) => index + 1);
/** How many months after the first a month comes, 0 to 11. */
const monthsAfter = (first: number, month: number) => (month - first + 12) % 12;

/** The months of a season that may run over the new year, January first. */
export function seasonMonths(first: number, last: number): boolean[] {
  const length = monthsAfter(first, last);
  return monthsOfYear.map((month) => monthsAfter(first, month) <= length);
}

/** The three months that lie opposite the middle of the season, so that it holds south of the line too. */
export function coldMonths(first: number, last: number): boolean[] {
  const middle = first + Math.floor(monthsAfter(first, last) / 2);
  const begins = middle + 6 - Math.floor(frostMonths / 2);
  return monthsOfYear.map((month) => monthsAfter(begins % 12, month) < frostMonths);
}

/** How a year is put together, whichever pump it is for. */
interface PlanWish {
  readonly season: PlanDay;
  readonly rest: PlanDay;
  /** Speed that frost calls for [rpm]. */
  readonly frostSpeed: number;
}

/** A year priced month by month over the real calendar. */
export function planYear(
  { runningAt, topSpeed, tariff, year, standbyPower = 0 }: YearPlace,
  { season, rest, frostSpeed }: PlanWish,
  inSeason: readonly boolean[],
  frostNights: readonly number[],
): PlanYear {
  const ratioOf = (speed: number) => speed / topSpeed;
  const powerAt = (ratio: number) =>
    ratio === 0 ? standbyPower : runningAt(ratio * topSpeed).power;
  const powered = (blocks: readonly Block[]): PoweredSpan[] =>
    segmentsOf(blocks).map(({ start, end, ratio }) => ({ start, end, power: powerAt(ratio) }));
  const spansOf = ({ at, minutes }: PlanDay) => {
    const blocks = oneSpeedDay({ ratio: ratioOf(at.speed), minutes, start: dayStart });
    const cold = withFrost(blocks, [frostNight], ratioOf(frostSpeed));
    return { mild: powered(blocks), cold: powered(cold) };
  };
  const spans = { season: spansOf(season), rest: spansOf(rest) };
  const months = inSeason.map((inside, index): MonthPrice => {
    const month = index + 1;
    const { mild, cold } = inside ? spans.season : spans.rest;
    const days = daysInMonth(year, month);
    const nights = Math.min(frostNights[index] ?? 0, days);
    // The frosty days come first in the month: which they are only shifts a weekend or two.
    const frosty = priceDays(tariff, { year, month, day: 1 }, nights, cold);
    const others =
      nights === days
        ? { energy: 0, cost: 0 }
        : priceDays(tariff, { year, month, day: nights + 1 }, days - nights, mild);
    return {
      month,
      energy: frosty.energy + others.energy,
      cost: frosty.cost + others.cost,
    };
  });
  const sum = (value: (month: MonthPrice) => number) =>
    months.reduce((total, month) => total + value(month), 0);
  return {
    season,
    rest,
    months,
    energy: sum(({ energy }) => energy),
    cost: sum(({ cost }) => cost),
  };
}

/** A day at one speed that moves the water another day moved; 24 hours where that is too little. */
export function sameWater(at: Running, like: PlanDay): PlanDay {
  const wanted = at.flow > 0 ? (like.minutes * like.at.flow) / at.flow : Number.POSITIVE_INFINITY;
  const minutes = like.minutes === 0 ? 0 : Math.min(1440, Math.ceil(wanted - 1e-6));
  return { at, minutes, wanted: like.minutes === 0 ? 0 : wanted };
}

const dearest = ({ seasons }: Tariff): number =>
  Math.max(
    ...seasons.flatMap(({ dayTypes }) =>
      dayTypes.flatMap(({ bands }) => bands.map(({ price }) => price)),
    ),
  );

/** How many units of one tariff's currency go for one of the other's: a power of ten, by what energy costs. */
export function scaleOf(tariff: Tariff, other: Tariff): number {
  const ratio = dearest(tariff) / dearest(other);
  return ratio > 0 && Number.isFinite(ratio) ? 10 ** Math.round(Math.log10(ratio)) : 1;
}

/** Two pumps over the same year: one speed for some hours, or slow for as long as the water takes. */
export function createModel(example: YearPlace): YearBarsModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<YearPlace | undefined>(undefined);
  const place = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const firstMonth = signal(opening.firstMonth);
  const lastMonth = signal(opening.lastMonth);
  const dial = (value: number, max: number, step: number) =>
    createNumberControl({ value: signal(value), min: 0, max, step });
  const seasonHours = dial(opening.seasonHours, 24 * 3600, 1800);
  const restHours = dial(opening.restHours, 24 * 3600, 1800);
  const frostNights = dial(opening.frostNights, 28, 1);
  // A pump costs hundreds of dollars, but tens of thousands of yen.
  const scale = computed(() => scaleOf(place.value.tariff, example.tariff));
  const dollars = signal(opening.outlay);
  const outlay = createNumberControl({
    value: computed(() => dollars.value * scale.value),
    set: (sum) => {
      dollars.value = sum / scale.value;
    },
    min: 0,
    max: computed(() => 3000 * scale.value),
    step: computed(() => 50 * scale.value),
  });
  const asked = { season: signal(opening.seasonSpeed), rest: signal(opening.restSpeed) };
  const least = computed(() => place.value.leastSpeed);
  const top = computed(() => place.value.topSpeed);
  const speedDial = (value: Signal<number>) =>
    createNumberControl({ value, min: least, max: top, step: yearStep });
  const held = (speed: number) => Math.min(Math.max(speed, least.value), top.value);

  const inSeason = computed(() => seasonMonths(firstMonth.value, lastMonth.value));
  const inFrost = computed(() => coldMonths(firstMonth.value, lastMonth.value));
  const nights = computed(() => inFrost.value.map((cold) => (cold ? frostNights.value.value : 0)));
  const flatOut = (hours: NumberControl): PlanDay => {
    const minutes = Math.round(hours.value.value / 60);
    return { at: place.value.runningAt(top.value), minutes, wanted: minutes };
  };
  const year = (wish: PlanWish) => planYear(place.value, wish, inSeason.value, nights.value);
  const oneSpeed = computed(() =>
    year({ season: flatOut(seasonHours), rest: flatOut(restHours), frostSpeed: top.value }),
  );
  const variable = computed(() => {
    const at = (speed: Signal<number>) => place.value.runningAt(held(speed.value));
    return year({
      season: sameWater(at(asked.season), oneSpeed.value.season),
      rest: sameWater(at(asked.rest), oneSpeed.value.rest),
      frostSpeed: held(freezeProtection.speedRatio * top.value),
    });
  });
  const saving = computed(() => oneSpeed.value.cost - variable.value.cost);
  const dials = {
    seasonHours,
    restHours,
    seasonSpeed: speedDial(asked.season),
    restSpeed: speedDial(asked.rest),
    frostNights,
    outlay,
  };
  return {
    units,
    source,
    own,
    place,
    firstMonth,
    lastMonth,
    inSeason,
    inFrost,
    ...dials,
    oneSpeed,
    variable,
    saving,
    payback: computed(() =>
      paybackYears({ outlay: outlay.value.value, yearlySaving: saving.value }),
    ),
    reset: () =>
      batch(() => {
        source.value = 'example';
        firstMonth.value = opening.firstMonth;
        lastMonth.value = opening.lastMonth;
        for (const name of Object.keys(dials) as (keyof typeof dials)[]) {
          dials[name].apply(opening[name]);
        }
      }),
  };
}
