import { useEffect } from 'preact/hooks';
import { carriesPad } from '#pad/document/fragment.ts';
import { openKey, padKey } from '#pad/store/padKey.ts';
import { useFailure } from '#ui/controls/failure.ts';
import type { TakePad } from './padFollower.ts';

/**
 * Follows the reader's own pad beside a lesson's example. Most readers of a lesson have none, so what
 * reads pads, and what `load` brings to understand one, is fetched only where a pad is kept.
 */
export function useOwnPad(load: () => Promise<TakePad>): void {
  const fail = useFailure();
  useEffect(() => {
    if (!mayHavePad()) return;
    let leave = (): void => {};
    let gone = false;
    void Promise.all([load(), import('./padFollower.ts')]).then(
      ([take, { followPad }]) => {
        if (!gone) leave = followPad(take, fail);
      },
      () => {
        // Out of reach: the example stands, and the switch to the own pad stays away.
      },
    );
    return () => {
      gone = true;
      leave();
    };
  }, []);
}

/** Once a picture has taken the pad out of the link, it is kept only a moment later. */
let cameWithLink = false;

/** Whether this browser keeps a pad, or the link brings one. */
function mayHavePad(): boolean {
  cameWithLink ||= carriesPad(location.hash);
  try {
    // One that came with a link stands in this tab before it is the pad of the next visit.
    const kept = localStorage.getItem(padKey) ?? sessionStorage.getItem(openKey);
    return cameWithLink || kept !== null;
  } catch {
    return cameWithLink;
  }
}
