import { machineOf } from '#explorables/example/padMachine.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { FlowPowerSpeedModel } from './model.ts';

/** Puts the reader's own pump and units beside the example. */
export function takePad(model: FlowPowerSpeedModel, pad: Pad): void {
  model.own.value = machineOf(pad);
  model.units.value = pad.units;
}
