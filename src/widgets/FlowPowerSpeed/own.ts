import type { Pad } from '#pad/schema.ts';
import { machineOf } from '#widgets/kit/padMachine.ts';
import type { FlowPowerSpeedModel } from './model.ts';

/** Puts the reader's own pump and units beside the example. */
export function takePad(model: FlowPowerSpeedModel, pad: Pad): void {
  model.own.value = machineOf(pad);
  model.units.value = pad.units;
}
