/** A meter held against the day: what was read, and what it says of the pump. */
import { computed, signal } from '@preact/signals';
import {
  type MeterInterval,
  type MeterStretch,
  meterStretch,
  type PowerOn,
  type PumpCheck,
  pumpCheck,
} from '#core/meter.ts';
import { type DaySlot, dayProfile, type HouseCheck, houseCheck } from '#core/meterHouse.ts';
import type { PoweredSpan } from '#core/pricing.ts';
import type { MeterFile } from '#pad/formats/meterFile.ts';
import type { DayModel } from '#widgets/DaySheet/model.ts';
import { createFileIn } from './fileIn.ts';
import { type SampleOf, sampleCsv } from './sample.ts';
import type { StartReading } from './startReading.ts';

export type Measures = SampleOf;

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
  return {
    stretch,
    pump: pumpCheck(stretch),
    house: houseCheck(intervals, powerOn),
    slots: dayProfile(intervals, powerOn),
  };
}

export function createMeterCheck(day: DayModel, start: StartReading) {
  const file = createFileIn<MeterFile>('meter', start);
  const measures = signal<Measures>('house');
  const spans = computed<readonly PoweredSpan[] | null>(() => {
    const segments = day.here.value?.report.segments;
    return segments?.filter(({ power }) => power > 0) ?? null;
  });
  const held = computed<Held | null>(() => {
    const [there, powered] = [file.loaded.value, spans.value];
    return there === null || powered === null
      ? null
      : heldOf(there.result.intervals, () => powered);
  });
  return {
    day,
    units: day.units,
    file,
    measures,
    held,
    hasDay: computed(() => spans.value !== null),
    /** An invented file for the pad on the page. */
    trySample: () => {
      const powered = spans.peek();
      if (powered === null) return;
      const of = measures.peek();
      file.take({
        name: `invented-${of}-meter.csv`,
        file: new Blob([sampleCsv(of, powered)], { type: 'text/csv' }),
        isInvented: true,
      });
    },
  };
}
