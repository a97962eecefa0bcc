/** The reader's own pump. Loaded apart, after the picture stands: most readers of a lesson have none. */
import { padStore } from '#pad/padStore.ts';
import { machineOf } from '#widgets/kit/padMachine.ts';
import type { FlowPowerSpeedModel } from './model.ts';

/** Keeps the reader's own pump and units beside the example, until called off. */
export function followPad(model: FlowPowerSpeedModel): () => void {
  const disconnect = padStore.connect();
  const stop = padStore.pad.subscribe((pad) => {
    if (!padStore.isOwn.peek()) return;
    model.own.value = machineOf(pad);
    model.units.value = pad.units;
  });
  return () => {
    stop();
    disconnect();
  };
}
