import { padPipes } from '#explorables/example/padPipes.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { BoreVelocityModel } from './model.ts';

/** Puts the reader's own suction and return pipes, and what their pump can give, beside the example. */
export function takePad(model: BoreVelocityModel, pad: Pad): void {
  model.own.value = padPipes(pad);
  model.units.value = pad.units;
}
