/** A meter held against the day: what was read, and what it says of the pump. */
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { type MeterStretch, meterStretch, type PumpCheck, pumpCheck } from '#core/meter/meter.ts';
import { type DaySlot, dayProfile, type HouseCheck, houseCheck } from '#core/meter/meterHouse.ts';
import type { MeterInterval, PowerOn } from '#core/meter/meterIntervals.ts';
import type { PoweredSpan } from '#core/tariff/pricing.ts';
import { dayOfYear } from '#core/time/calendar.ts';
import { yearReport } from '#core/year/year.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { type FrostOn, openFrost } from '#dayPage/day/openFrost.ts';
import { createFileIn } from '#dayPage/fileInput/fileIn.ts';
import type { StartReading } from '#dayPage/fileInput/startReading.ts';
import type { Pad } from '#pad/document/schema.ts';
import { dayAt } from '#pad/formats/dateOfMinute.ts';
import type { MeterFile } from '#pad/formats/meterFile.ts';
import { padModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import { type SampleOf, sampleCsv } from './sample.ts';

export type Measures = SampleOf;

/** What the meter is held against: the day on the sheet, or each date's own day by the plans of the year. */
export type Against = 'day' | 'year';

/** What a meter says, worked out once for a file and a day. */
export interface Held {
  readonly stretch: MeterStretch;
  readonly pump: PumpCheck;
  readonly house: HouseCheck;
  /** The mean day; none where intervals are longer than an hour. */
  readonly slots: readonly DaySlot[];
}

export type MeterModel = ReturnType<typeof createMeterCheck>;

function heldOf(intervals: readonly MeterInterval[], powerOn: PowerOn): Held {
  const stretch = meterStretch(intervals, powerOn);
  const slots = dayProfile(intervals, powerOn);
  return { stretch, slots, pump: pumpCheck(stretch), house: houseCheck(stretch, slots) };
}

const someYear = 2027;

const yearPlan = (pad: Pad, year: number, frostOn?: FrostOn) =>
  yearPlanOf(pad, padModel(pad), { year, frostOn });

/** Power of each date by the plans of the year, its water, its filter and its frost; a year is worked out when a date asks. */
function yearPower(pad: Pad, frostOn: FrostOn | undefined): PowerOn {
  const years = new Map<number, readonly (readonly PoweredSpan[])[]>();
  const daysOf = (year: number) => {
    const plan = yearPlan(pad, year, frostOn);
    const report = plan === null ? null : unlessRefused(() => yearReport(plan));
    return (report?.byDay ?? []).map(({ report: { segments } }) =>
      segments.filter(({ power }) => power > 0),
    );
  };
  return (number) => {
    const date = dayAt((number - 1) * 1440);
    const days = years.get(date.year) ?? daysOf(date.year);
    years.set(date.year, days);
    return days[dayOfYear(date) - 1] ?? [];
  };
}

/** `pad` follows the reader's pad when it has kept still for a moment: plans of the year are 365 days of work. */
export function createMeterCheck(day: DayModel, pad: ReadonlySignal<Pad>, start: StartReading) {
  const file = createFileIn<MeterFile>('meter', start);
  const measures = signal<Measures>('house');
  const spans = computed<readonly PoweredSpan[] | null>(() => {
    const segments = day.here.value?.report.segments;
    return segments?.filter(({ power }) => power > 0) ?? null;
  });
  const wish = signal<Against>('year');
  const hasPlans = computed(
    () => pad.value.year.plans.length > 0 && yearPlan(pad.value, someYear) !== null,
  );
  const against = computed<Against>(() => (hasPlans.value ? wish.value : 'day'));
  const powerOn = computed<PowerOn | null>(() => {
    if (against.value === 'year') return yearPower(pad.value, openFrost(day.store));
    const powered = spans.value;
    return powered === null ? null : () => powered;
  });
  const held = computed<Held | null>(() => {
    const [there, power] = [file.loaded.value, powerOn.value];
    return there === null || power === null ? null : heldOf(there.result.intervals, power);
  });
  return {
    day,
    units: day.units,
    file,
    measures,
    hasPlans,
    against,
    holdAgainst: (choice: Against) => {
      wish.value = choice;
    },
    held,
    hasDay: computed(() => spans.value !== null),
    /** An invented file for the pad on the page. */
    trySample: () => {
      const power = powerOn.peek();
      if (power === null) return;
      const of = measures.peek();
      file.take({
        name: `invented-${of}-meter.csv`,
        file: new Blob([sampleCsv(of, power)], { type: 'text/csv' }),
        isInvented: true,
      });
    },
  };
}
