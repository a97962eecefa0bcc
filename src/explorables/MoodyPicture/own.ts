import { padPipes } from '#explorables/example/padPipes.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { MoodyModel } from './model.ts';

/** Puts the reader's own pipes, with their lengths and walls, beside the example. */
export function takePad(model: MoodyModel, pad: Pad): void {
  model.own.value = padPipes(pad);
  model.units.value = pad.units;
}
