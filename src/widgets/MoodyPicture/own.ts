import type { Pad } from '#pad/schema.ts';
import { padPipes } from '#widgets/BoreVelocity/padPipes.ts';
import type { MoodyModel } from './model.ts';

/** Puts the reader's own pipes, with their lengths and walls, beside the example. */
export function takePad(model: MoodyModel, pad: Pad): void {
  model.own.value = padPipes(pad);
  model.units.value = pad.units;
}
