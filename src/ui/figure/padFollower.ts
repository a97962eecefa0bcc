import type { Pad } from '#pad/document/schema.ts';
import { padStore } from '#pad/store/padStore.ts';

/** Takes over the reader's own pad each time it has changed. */
export type TakePad = (pad: Pad) => void;

/** Hands over the reader's own pad now and at every change, until called off; `fail` hears what that throws. */
export function followPad(take: TakePad, fail: (error: unknown) => void): () => void {
  const disconnect = padStore.connect();
  let isShown = false;
  const stop = padStore.pad.subscribe((pad) => {
    if (!padStore.isOwn.peek()) return;
    try {
      take(pad);
      isShown = true;
    } catch (error) {
      // A pad that was never on the picture leaves the example in peace.
      if (isShown) fail(error);
      else reportError(error);
    }
  });
  return () => {
    stop();
    disconnect();
  };
}
