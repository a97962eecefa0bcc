/**
 * The pads that this browser keeps: one entry each, so that two tabs with different pads never write
 * over one another. The pad last worked on stands under `padKey` as well, where lessons look for it.
 */
import { openKey, padKey } from './padKey.ts';
import type { KeepingPlace } from './storage.ts';

/** How the key of a pad on the shelf begins. */
export const shelfPrefix = 'cubelaw-shelf/';

/** The place of a pad from before there was a shelf; it sorts before all others. */
const firstId = '0';

/** A pad on the shelf. */
export interface Shelved {
  readonly id: string;
  /** What the reader calls it; may be empty. */
  readonly name: string;
}

/** What came of keeping a pad. */
export type Outcome = 'kept' | 'refused' | 'clash';

function quietly<Result>(work: () => Result, otherwise: Result): Result {
  try {
    return work();
  } catch {
    return otherwise;
  }
}

const textUnder = (place: KeepingPlace | null, key: string): string | null =>
  quietly(() => place?.getItem(key) ?? null, null);

function putUnder(place: KeepingPlace | null, key: string, text: string): boolean {
  return quietly(() => {
    place?.setItem(key, text);
    return place !== null;
  }, false);
}

function nameIn(text: string): string {
  return quietly(() => {
    const { name } = JSON.parse(text) as { name?: unknown };
    return typeof name === 'string' ? name : '';
  }, '');
}

/** Every pad on the shelf, the oldest first. */
export function padsOnShelf(place: KeepingPlace | null): readonly Shelved[] {
  const keys = quietly(
    () => Array.from({ length: place?.length ?? 0 }, (_, at) => place?.key(at) ?? ''),
    [],
  );
  return keys
    .filter((key) => key.startsWith(shelfPrefix))
    .sort()
    .map((key) => ({
      id: key.slice(shelfPrefix.length),
      name: nameIn(textUnder(place, key) ?? ''),
    }));
}

/** The text of a pad on the shelf, or null. */
export function textOnShelf(place: KeepingPlace | null, id: string): string | null {
  return textUnder(place, shelfPrefix + id);
}

/** Where one tab keeps its open pad, and what it knows of what is kept there. */
export interface Keeping {
  /** Text of the pad that was open last, or null; it is the one that is open now. */
  start(): string | null;
  /** Gives a pad that only stands on top, from before there was a shelf, its place there. */
  givePlace(): void;
  readonly openId: () => string | null;
  /** Opens another place on the shelf: one that holds a pad already, or a fresh one. */
  turnTo(id: string | null): string | null;
  /**
   * Keeps a text; `onTop` makes it the pad of the next visit. Where another tab has kept something
   * that this one has not seen, nothing is written and that is a clash.
   */
  keep(text: string, onTop: boolean): Outcome;
  /** Text that another tab keeps in this place and that this one has not seen; null where there is none. */
  unseen(): string | null;
  /** Takes a text as seen, such as one that another tab has kept. */
  see(text: string): void;
  /** Whether what this tab has read or kept is no longer there. */
  isGone(): boolean;
  /** The pad that was opened last, in this tab or else in another; null where none is there. */
  lastOpened(): string | null;
  /** Takes a pad off the shelf and gives its text; another comes on top in its place. */
  takeOff(id: string): string | null;
  /** Puts a text back on the shelf, beside whatever another tab has put in its place; gives its id, or null. */
  putBack(id: string, text: string): string | null;
  /** Whether a key of the storage is the one this tab keeps its pad under. */
  isOwnKey(key: string | null): boolean;
}

interface Places {
  readonly storage: () => KeepingPlace | null;
  /** Storage of this tab alone. */
  readonly session: () => KeepingPlace | null;
  readonly freshId: () => string;
}

export function createKeeping({ storage, session, freshId }: Places): Keeping {
  let id: string | null = null;
  let seen: string | null = null;
  const remove = (key: string) => quietly(() => storage()?.removeItem(key), undefined);
  const keyOf = () => (id === null ? padKey : shelfPrefix + id);

  function open(next: string | null): void {
    id = next;
    if (next !== null) putUnder(session(), openKey, next);
  }

  const isThere = (named: string | null) =>
    named !== null && textOnShelf(storage(), named) !== null;

  function lastOpened(): string | null {
    const named = [session(), storage()].map((place) => textUnder(place, openKey));
    return named.find(isThere) ?? null;
  }

  /** Shelves what an edition without a shelf has kept on top; gives its place, or null. */
  function shelveTop(): string | null {
    const [top, named] = [textUnder(storage(), padKey), textUnder(storage(), openKey)];
    if (top === null) return null;
    if (named !== null && textOnShelf(storage(), named) === top) return named;
    const found = padsOnShelf(storage()).find((each) => textOnShelf(storage(), each.id) === top);
    if (found !== undefined) return found.id;
    // Two tabs that come to life at once give it the same place.
    const place = isThere(firstId) ? freshId() : firstId;
    return putUnder(storage(), shelfPrefix + place, top) ? place : null;
  }

  return {
    start: () => {
      const named = lastOpened();
      if (named !== null) open(named);
      seen = textUnder(storage(), keyOf());
      return seen;
    },
    givePlace: () => {
      const place = shelveTop();
      if (id !== null || place === null) return;
      open(place);
      putUnder(storage(), openKey, place);
    },
    lastOpened,
    isGone: () => seen !== null && textUnder(storage(), keyOf()) === null,
    openId: () => id,
    turnTo: (next) => {
      open(next ?? freshId());
      seen = textUnder(storage(), keyOf());
      return seen;
    },
    keep: (text, onTop) => {
      const kept = textUnder(storage(), keyOf());
      if (kept !== null && kept !== seen && kept !== text) return 'clash';
      if (id === null) open(freshId());
      if (onTop) shelveTop();
      if (!putUnder(storage(), keyOf(), text)) return 'refused';
      seen = text;
      if (onTop) {
        putUnder(storage(), padKey, text);
        putUnder(storage(), openKey, id ?? '');
      }
      return 'kept';
    },
    unseen: () => {
      const kept = textUnder(storage(), keyOf());
      return kept === seen ? null : kept;
    },
    see: (text) => {
      // A pad from before there was a shelf: another tab has given it its place.
      if (id === null) open(textUnder(storage(), openKey));
      seen = text;
    },
    takeOff: (gone) => {
      const text = textOnShelf(storage(), gone);
      const wasOnTop = textUnder(storage(), openKey) === gone;
      remove(shelfPrefix + gone);
      const other = padsOnShelf(storage()).at(-1);
      if (wasOnTop && other !== undefined) {
        putUnder(storage(), padKey, textOnShelf(storage(), other.id) ?? '');
        putUnder(storage(), openKey, other.id);
      } else if (other === undefined) {
        remove(padKey);
        remove(openKey);
      }
      return text;
    },
    putBack: (back, text) => {
      const place = isThere(back) ? freshId() : back;
      return putUnder(storage(), shelfPrefix + place, text) ? place : null;
    },
    isOwnKey: (key) => key === keyOf(),
  };
}

type Fields = Readonly<Record<string, unknown>>;

const same = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other);

/**
 * Two changes of one pad made in two tabs, put together part by part: what only one of them changed
 * is taken from it. Null where both changed the same part.
 */
export function merged(base: string, mine: string, theirs: string): string | null {
  return quietly(() => {
    const [was, here, there] = [base, mine, theirs].map((text) => JSON.parse(text) as Fields) as [
      Fields,
      Fields,
      Fields,
    ];
    const names = [...new Set([...Object.keys(here), ...Object.keys(there)])];
    const clashes = names.some(
      (name) =>
        !same(here[name], there[name]) &&
        !same(here[name], was[name]) &&
        !same(there[name], was[name]),
    );
    if (clashes) return null;
    const taken = names.map((name) => [
      name,
      same(here[name], was[name]) ? there[name] : here[name],
    ]);
    return JSON.stringify(Object.fromEntries(taken));
  }, null);
}
