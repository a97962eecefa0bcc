import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { Machine } from './machine.ts';

/** The pump of a pad in its pipes, or nothing while the pad does not say enough. */
export function machineOf(pad: Pad): Machine | undefined {
  const { running, speeds } = padModel(pad);
  if (running === null || speeds === null) return undefined;
  return {
    curve: running.curve,
    circuit: compileCircuit(running.circuit),
    power: running.power,
    referenceSpeed: speeds.reference,
    leastSpeed: speeds.least,
    topSpeed: speeds.top,
  };
}
