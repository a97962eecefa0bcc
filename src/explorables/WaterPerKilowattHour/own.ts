import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { Setup } from './mileage.ts';
import type { WaterModel } from './model.ts';

/** Puts the reader's own pump and units beside the example. */
export function takePad(model: WaterModel, pad: Pad): void {
  model.own.value = setupOf(pad);
  model.units.value = pad.units;
}

/** The pad as a pump whose fixed draw and lift can be changed, or nothing while it does not say enough. */
export function setupOf(pad: Pad): Setup | undefined {
  const { running, speeds } = padModel(pad);
  if (running === null || speeds === null) return undefined;
  return {
    curve: running.curve,
    circuit: running.circuit,
    power: running.power,
    referenceSpeed: speeds.reference,
    leastSpeed: speeds.least,
    topSpeed: speeds.top,
  };
}
