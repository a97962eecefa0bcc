import { padStore } from '#pad/padStore.ts';
import type { TakePad } from './ownPad.ts';

/** Hands over the reader's own pad now and at every change, until called off. */
export function followPad(take: TakePad): () => void {
  const disconnect = padStore.connect();
  const stop = padStore.pad.subscribe((pad) => {
    if (padStore.isOwn.peek()) take(pad);
  });
  return () => {
    stop();
    disconnect();
  };
}
