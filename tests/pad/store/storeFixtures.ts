import { padReader } from '#pad/document/padReader.ts';
import { emptyPad } from '#pad/document/parts.ts';
import type { ReaderSource } from '#pad/document/reader.ts';
import { type KeepingPlace, padKey } from '#pad/store/storage.ts';
import type { Surroundings } from '#pad/store/surroundings.ts';

type Listener = (key: string | null, text: string | null) => void;

/** A browser in which nothing happens by itself. */
export function surroundings(kept: Readonly<Record<string, string>> = {}, fragment = '') {
  const entries = new Map(Object.entries(kept));
  const listeners = { kept: new Set<Listener>(), leave: new Set<() => void>() };
  const waiting = new Set<() => void>();
  let writes = 0;
  let now = 0;
  let place: KeepingPlace | null = {
    getItem: (key) => entries.get(key) ?? null,
    setItem: (key, text) => {
      writes += 1;
      entries.set(key, text);
    },
    removeItem: (key) => entries.delete(key),
    key: (at) => [...entries.keys()][at] ?? null,
    get length() {
      return entries.size;
    },
  };
  const own = new Map<string, string>();
  const returns = new Set<() => void>();
  let asks = 0;
  let names = 0;
  const page: Surroundings = {
    storage: () => place,
    session: () => ({
      getItem: (key) => own.get(key) ?? null,
      setItem: (key, text) => void own.set(key, text),
      removeItem: (key) => void own.delete(key),
      key: () => null,
      length: own.size,
    }),
    freshId: () => {
      names += 1;
      return `pad-${names}`;
    },
    padIsThere: () => {},
    askToKeep: () => {
      asks += 1;
    },
    onReturn: (callback) => {
      returns.add(callback);
      return () => returns.delete(callback);
    },
    now: () => now,
    later: (callback) => {
      waiting.add(callback);
      return () => waiting.delete(callback);
    },
    fragment: () => fragment,
    clearFragment: () => {
      fragment = '';
    },
    onFragment: () => () => {},
    onTouch: () => () => {},
    onKept: (callback) => {
      listeners.kept.add(callback);
      return () => listeners.kept.delete(callback);
    },
    onLeave: (callback) => {
      listeners.leave.add(callback);
      return () => listeners.leave.delete(callback);
    },
  };
  return {
    page,
    entries,
    listeners,
    writes: () => writes,
    fragment: () => fragment,
    wait: (milliseconds: number) => {
      now += milliseconds;
    },
    settle: () => {
      for (const callback of [...waiting]) callback();
      waiting.clear();
    },
    elsewhere: (text: string, key = padKey) => {
      for (const listener of listeners.kept) listener(key, text);
    },
    returned: () => {
      for (const callback of returns) callback();
    },
    asks: () => asks,
    full: () => {
      const before = place;
      if (before === null) return () => {};
      place = {
        ...before,
        length: entries.size,
        setItem: () => {
          throw new Error('full');
        },
      };
      return () => {
        place = before;
      };
    },
    withoutStorage: () => {
      place = null;
    },
  };
}

export const atHand: ReaderSource = { present: () => padReader, fetch: async () => padReader };

export const named = (name: string) => ({ ...emptyPad(), name });
