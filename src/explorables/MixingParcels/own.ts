import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { examplePool } from './example.ts';
import type { MixingModel, Settings } from './model.ts';

/**
 * Pool and flow of a pad: the flow of the first block of its day that runs, else that of the fastest
 * speed. Nothing while volume or flow is not known.
 */
export function poolOf(pad: Pad): Settings | undefined {
  const { volume, running, speeds, blocks } = padModel(pad);
  if (volume === null || running === null || speeds === null) return undefined;
  const planned = blocks?.find(({ ratio }) => ratio > 0)?.ratio;
  const point = running.pointAt(planned ?? speeds.top / speeds.reference);
  if (point.kind === 'noFlow' || volume <= 0) return undefined;
  return { volume, flow: point.flow, time: examplePool.time };
}

/** Puts the reader's own pool and units beside the example. */
export function takePad(model: MixingModel, pad: Pad): void {
  model.own.value = poolOf(pad);
  model.units.value = pad.units;
}
