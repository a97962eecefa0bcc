import { browserStorage, type KeepingPlace } from './storage.ts';

type Off = () => void;

/** Everything of the browser that the pad's store touches, so that it runs without one. */
export interface Surroundings {
  readonly storage: () => KeepingPlace | null;
  /** Storage of this tab alone, or null where it is shut off. */
  readonly session: () => KeepingPlace | null;
  /** A name that no pad of this browser has yet; later ones sort after earlier ones. */
  readonly freshId: () => string;
  /** Asks the browser not to clear what it keeps when room runs short. */
  readonly askToKeep: () => void;
  /** The reader's own pad stands on the page, or none is coming. */
  readonly padIsThere: () => void;
  /** A steady clock [ms]. */
  readonly now: () => number;
  /** Calls back once, `delay` milliseconds from now, unless called off. */
  readonly later: (callback: () => void, delay: number) => Off;
  /** The fragment of the page's address, with its "#". */
  readonly fragment: () => string;
  /** Takes the fragment out of the address without a step in the browser's history. */
  readonly clearFragment: () => void;
  readonly onFragment: (callback: () => void) => Off;
  /** Another tab kept something under `key`. */
  readonly onKept: (callback: (key: string | null, text: string | null) => void) => Off;
  /** The page comes back as it was left, by the browser's back button. */
  readonly onReturn: (callback: () => void) => Off;
  /** The page is about to be put away, or out of sight: a phone may end it there without another word. */
  readonly onLeave: (callback: () => void) => Off;
  /** The reader touches the page for the first time, by pointer or by key. */
  readonly onTouch: (callback: () => void) => Off;
}

function listen<Name extends keyof WindowEventMap>(
  name: Name,
  callback: (event: WindowEventMap[Name]) => void,
): Off {
  window.addEventListener(name, callback);
  return () => window.removeEventListener(name, callback);
}

/** The surroundings in a browser. Nothing here is touched before a page has come to life. */
export const browserSurroundings: Surroundings = {
  storage: browserStorage,
  session: () => {
    try {
      return globalThis.sessionStorage ?? null;
    } catch {
      return null;
    }
  },
  freshId: () => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 10)}`,
  askToKeep: () => void globalThis.navigator.storage?.persist?.().catch(() => false),
  padIsThere: () => {
    const look = () => {
      // Parts that are still being fetched show the example until they are there.
      if (document.querySelector('.later[data-comes]') !== null) setTimeout(look, 100);
      else delete document.documentElement.dataset['padComes'];
    };
    // The parts that follow a pad at leisure have taken it over by then.
    setTimeout(look, 600);
  },
  now: () => performance.now(),
  later: (callback, delay) => {
    const timer = setTimeout(callback, delay);
    return () => clearTimeout(timer);
  },
  fragment: () => window.location.hash,
  clearFragment: () => {
    const { pathname, search } = window.location;
    window.history.replaceState(window.history.state, '', pathname + search);
  },
  onFragment: (callback) => listen('hashchange', callback),
  onKept: (callback) => listen('storage', (event) => callback(event.key, event.newValue)),
  onReturn: (callback) => listen('pageshow', (event) => event.persisted && callback()),
  onLeave: (callback) => {
    const hidden = () => document.visibilityState === 'hidden' && callback();
    document.addEventListener('visibilitychange', hidden);
    const off = listen('pagehide', callback);
    return () => {
      document.removeEventListener('visibilitychange', hidden);
      off();
    };
  },
  onTouch: (callback) => {
    const offs = [listen('pointerdown', callback), listen('focusin', callback)];
    return () => {
      for (const off of offs) off();
    };
  },
};
