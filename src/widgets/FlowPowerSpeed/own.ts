/** The reader's own pump. Loaded apart, after the picture stands: most readers of a lesson have none. */
import { foldCircuit } from '#core/circuit.ts';
import { padModel } from '#pad/assemble.ts';
import { padStore } from '#pad/padStore.ts';
import type { Pad } from '#pad/schema.ts';
import type { Machine } from './machine.ts';
import type { FlowPowerSpeedModel } from './model.ts';

/** The pump of a pad in its pipes, or nothing while the pad does not say enough. */
export function machineOf(pad: Pad): Machine | undefined {
  const { running, speeds } = padModel(pad);
  if (running === null || speeds === null) return undefined;
  return {
    curve: running.curve,
    circuit: foldCircuit(running.circuit),
    power: running.power,
    referenceSpeed: speeds.reference,
    leastSpeed: speeds.least,
    topSpeed: speeds.top,
  };
}

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
