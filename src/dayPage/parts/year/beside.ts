/** The years that the reader's own is set beside: the same pump otherwise, and pumps of one speed. */
import type { Limit } from '#core/day/limits.ts';
import { priceMonth } from '#core/tariff/pricing.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import { type YearPlan, type YearReport, yearReport } from '#core/year/year.ts';
import { sameWaterYear } from '#core/year/yearBeside.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { usualDay } from '#dayPage/day/figures.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { coreBlocks } from '#pad/model/assembleDay.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';

export type Plan = YearPlan<NamedNeed, Limit>;
export type Report = YearReport<NamedNeed, Limit>;

/** What a month or a year comes to. */
export interface Amounts {
  readonly cost: number;
  /** [J] */
  readonly energy: number;
  /** [m3]; null for a pump of which only watts and hours are known. */
  readonly water: number | null;
  /** Minutes the pump turns [min]. */
  readonly minutes: number;
}

/** The same pump under another plan, the same pump at one speed, or the one-speed pump before. */
export type BesideKind = 'plan' | 'oneSpeed' | 'oldPump';

/** Which other plan: the usual three blocks, the old day, or the day on the sheet all year. */
export type OtherPlan = 'usual' | 'old' | 'sheet';

export interface YearSide extends Amounts {
  readonly months: readonly Amounts[];
}

/** A year set beside the reader's. */
export interface YearBeside extends YearSide {
  readonly kind: BesideKind;
  /** Days on which a need stays short [d]; null where that is not known. */
  readonly shortDays: number | null;
  /** Share by which one speed moves less, although it runs round the clock, or more, out in frost [-]. */
  readonly extra: number;
}

/** One speed and the pump before are taken to run from this minute on; common practice, no source. */
const runStart = 480;

/** What a report comes to. */
export function sideOf(report: Report): YearSide {
  const amounts = (of: Report['byMonth'][number]): Amounts => ({
    cost: of.cost,
    energy: of.energy,
    water: of.volumeMoved,
    minutes: of.runMinutes,
  });
  return { ...amounts(report), months: report.byMonth.map(amounts) };
}

/** The other plans there are for this pad. */
export function otherPlans({ day, year }: Pad): readonly OtherPlan[] {
  return [
    'usual',
    ...(day.oldBlocks.length > 0 ? (['old'] as const) : []),
    ...(year.plans.length > 0 ? (['sheet'] as const) : []),
  ];
}

/** The same pump, the same seasons, another day. */
export function planYear(pad: Pad, plan: Plan, which: OtherPlan): YearBeside | null {
  const { bench } = benchOf(pad);
  if (bench === null) return null;
  const blocks = {
    usual: () => usualDay(bench),
    old: () => pad.day.oldBlocks,
    sheet: () => pad.day.blocks,
  }[which]();
  const laid = coreBlocks(blocks, bench.speeds);
  const report = yearReport({
    ...plan,
    plans: plan.plans.map((each) => ({ ...each, blocks: laid })),
  });
  return { kind: 'plan', ...sideOf(report), shortDays: report.shortDays, extra: 0 };
}

/** The pump's top speed and nothing else, in each season for as long as the same water takes. */
export function oneSpeedYear(pad: Pad, plan: Plan, mine: Report): YearBeside | null {
  const { speeds } = padModel(pad);
  if (speeds === null) return null;
  const wish = { ratio: speeds.top / speeds.reference, start: runStart };
  const report = yearReport(sameWaterYear(plan, mine, wish));
  const extra = mine.volumeMoved > 0 ? report.volumeMoved / mine.volumeMoved - 1 : 0;
  return {
    kind: 'oneSpeed',
    ...sideOf(report),
    shortDays: report.shortDays,
    extra,
  };
}

/** A pump of one speed, known by its watts and hours alone. */
export function oldPumpYear(tariff: Tariff, year: number, { year: said }: Pad): YearBeside | null {
  const { oldPower: power, oldMinutes: minutes } = said;
  if (power === null || minutes === null || minutes <= 0) return null;
  const end = (runStart + minutes) % 1440;
  const spans = [{ start: runStart, end: end === 0 ? 1440 : end, power }];
  const months = Array.from({ length: 12 }, (_, index): Amounts => {
    const { cost, energy, days } = priceMonth(tariff, year, index + 1, spans);
    return { cost, energy, water: null, minutes: minutes * days };
  });
  const sum = (of: 'cost' | 'energy' | 'minutes') =>
    months.reduce((total, month) => total + month[of], 0);
  return {
    kind: 'oldPump',
    cost: sum('cost'),
    energy: sum('energy'),
    water: null,
    minutes: sum('minutes'),
    months,
    shortDays: null,
    extra: 0,
  };
}
