import { ownerPad } from '#pad/demos/demos.ts';
import type { KeepingPlace } from '#pad/store/storage.ts';
import { createPadStore, type PadStore } from '#pad/store/store.ts';
import type { Surroundings } from '#pad/store/surroundings.ts';
import { atHand } from './storeFixtures.ts';

/** One page of one tab: a store, and what the browser does to it. */
export interface Tab {
  readonly store: PadStore;
  /** What was to be done a moment later is done. */
  settle(): void;
  /** The tab is told what others have kept since it was told last. */
  hear(): void;
  /** The page is put away, and may come back as it was. */
  leave(): void;
  /** The page comes back as it was left, without having heard of anything. */
  comeBack(): void;
  /** Another page is loaded in the same tab. */
  load(): Tab;
}

/** A browser with several tabs: one storage for all, one more for each tab. */
export function browser(kept: Readonly<Record<string, string>> = {}) {
  const entries = new Map(Object.entries(kept));
  let room = Number.POSITIVE_INFINITY;
  let ids = 0;
  const tellOthers = new Set<(from: object, key: string, text: string | null) => void>();

  function place(from: object): KeepingPlace {
    const changed = (key: string, text: string | null) => {
      for (const tell of tellOthers) tell(from, key, text);
    };
    return {
      getItem: (key) => entries.get(key) ?? null,
      setItem: (key, text) => {
        if (text.length > room) throw new DOMException('full', 'QuotaExceededError');
        if (entries.get(key) === text) return;
        entries.set(key, text);
        changed(key, text);
      },
      removeItem: (key) => {
        if (entries.delete(key)) changed(key, null);
      },
      key: (at) => [...entries.keys()][at] ?? null,
      get length() {
        return entries.size;
      },
    };
  }

  function page(session: Map<string, string>): Tab {
    const me = {};
    const mine = place(me);
    const waiting = new Set<() => void>();
    const on = {
      kept: new Set<(key: string | null, text: string | null) => void>(),
      leave: new Set<() => void>(),
      back: new Set<() => void>(),
    };
    let unheard: [key: string, text: string | null][] = [];
    tellOthers.add((from, key, text) => {
      if (from !== me) unheard.push([key, text]);
    });
    const listen = <Callback>(all: Set<Callback>) => {
      return (callback: Callback) => {
        all.add(callback);
        return () => all.delete(callback);
      };
    };
    const surroundings: Surroundings = {
      storage: () => mine,
      session: () => ({
        getItem: (key) => session.get(key) ?? null,
        setItem: (key, text) => void session.set(key, text),
        removeItem: (key) => void session.delete(key),
        key: () => null,
        length: session.size,
      }),
      freshId: () => {
        ids += 1;
        return `pad-${String(ids).padStart(4, '0')}`;
      },
      askToKeep: () => {},
      padIsThere: () => {},
      now: () => 0,
      later: listen(waiting),
      fragment: () => '',
      clearFragment: () => {},
      onFragment: () => () => {},
      onTouch: () => () => {},
      onKept: listen(on.kept),
      onReturn: listen(on.back),
      onLeave: listen(on.leave),
    };
    const store = createPadStore(ownerPad, surroundings, atHand);
    store.connect();
    const leave = () => {
      for (const callback of on.leave) callback();
    };
    return {
      store,
      settle: () => {
        const due = [...waiting];
        waiting.clear();
        for (const callback of due) callback();
      },
      hear: () => {
        const heard = unheard;
        unheard = [];
        for (const [key, text] of heard) for (const callback of on.kept) callback(key, text);
      },
      leave,
      comeBack: () => {
        unheard = [];
        for (const callback of on.back) callback();
      },
      load: () => {
        leave();
        return page(session);
      },
    };
  }

  return {
    entries,
    open: () => page(new Map()),
    /** Leaves room for texts of this length at most. */
    leaveRoom: (length: number) => {
      room = length;
    },
    /** Everything that is kept, as one text. */
    all: () => [...entries.values()].join('\n'),
  };
}

export const names = ({ store }: Tab) => store.shelf.pads.value.map(({ name }) => name);

/** Types the pad's name, and gives the browser a moment to keep it. */
export function call(tab: Tab, name: string): void {
  tab.store.set(['name'], name, 'the name');
  tab.settle();
}
