import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { GaugeHeadModel, GaugeScene, GaugeState } from './model.ts';

/** Most readings that stand side by side to choose from. */
const most = 6;

/** The readings at which both gauges were read, or nothing where there are none. */
export function gaugesOf(pad: Pad): GaugeScene | undefined {
  const states = pad.readings.flatMap((reading, place): GaugeState[] => {
    const { filterPressure, suctionVacuum } = reading;
    if (filterPressure === null || suctionVacuum === null) return [];
    return [
      {
        id: reading.id,
        label: reading.speed === null ? `Reading ${place + 1}` : `${reading.speed} rpm`,
        filterPressure,
        suctionVacuum,
        gaugeHeight: reading.gaugeHeight ?? 0,
        flow: reading.flow,
      },
    ];
  });
  if (states.length === 0) return undefined;
  return { states: states.slice(0, most), density: padModel(pad).water.density };
}

/** Puts the reader's own gauges and units beside the example. */
export function takePad(model: GaugeHeadModel, pad: Pad): void {
  model.own.value = gaugesOf(pad);
  model.units.value = pad.units;
}
