import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { NeedsLadderModel, Scene } from './model.ts';

/** Marks of the covers whose shares are known without their pipes: one alone, or a balanced tee. */
function sharing({ limits }: Pad): number[] {
  const marks = limits.suctionCovers.flatMap(({ markedFlow, branchId }) =>
    markedFlow && branchId === null ? [markedFlow] : [],
  );
  return limits.coversBalanced || marks.length === 1 ? marks : [];
}

/** The ladder of a pad, or nothing while pump or needs are not known. */
export function sceneOf(pad: Pad): Scene | undefined {
  const { running, speeds, needs, limits, ladder } = padModel(pad);
  if (running === null || speeds === null || ladder === null || needs.length === 0)
    return undefined;
  return {
    curve: running.curve,
    circuit: running.circuit,
    power: running.power,
    needs,
    limits,
    covers: sharing(pad),
    referenceSpeed: speeds.reference,
    leastSpeed: speeds.least,
    topSpeed: speeds.top,
    speedStep: Math.max(speeds.step, 1),
  };
}

/** Puts the reader's own ladder and units beside the example. */
export function takePad(model: NeedsLadderModel, pad: Pad): void {
  model.own.value = sceneOf(pad);
  model.units.value = pad.units;
}
