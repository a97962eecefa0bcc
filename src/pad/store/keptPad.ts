import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { PadReader } from '#pad/document/reader.ts';
import type { Pad } from '#pad/document/schema.ts';
import { serialisePad } from '#pad/document/written.ts';
import * as say from '#pad/messages/storeSentences.ts';
import { change } from './change.ts';
import { type History, record, startHistory } from './history.ts';
import { createKeeping, merged, padsOnShelf, shelfPrefix } from './shelf.ts';
import { alreadyOnShelf, createShelf, mostPads, type Shelf } from './shelfActions.ts';
import { readKept } from './storage.ts';
import type { Surroundings } from './surroundings.ts';

const retryDelay = 5000;

/** What keeps the open pad needs of the store around it. */
interface Around {
  /** The example. */
  readonly first: Pad;
  readonly surroundings: Surroundings;
  readonly history: Signal<History<Pad>>;
  readonly isOwn: Signal<boolean>;
  readonly tell: (kind: say.Notice['kind'], sentence: string) => void;
  /** What reads pads, or null until it has been fetched. */
  readonly reader: () => PadReader | null;
  readonly withReader: (act: (reader: PadReader) => void) => void;
}

/** The open pad and the place on the shelf where this browser keeps it. */
export interface KeptPad {
  readonly shelf: Shelf;
  readonly isKept: ReadonlySignal<boolean>;
  readonly refuses: ReadonlySignal<boolean>;
  /** Text of the pad that was open last, or null. */
  start(): string | null;
  /** Shows the pad that was open last. */
  restore(text: string | null, reader: PadReader): void;
  /** Puts a changed pad in the place of the open one, as a step for undo. */
  put(next: Pad, label: string, field?: string): void;
  /** Opens another pad; the present one stays on the shelf, or a step back where none is kept. */
  openBeside(next: Pad, label: string, onTop?: boolean): boolean;
  save(): void;
  /** Another tab kept or removed something under a key. */
  adopt(key: string | null, text: string | null): void;
  /** Back from the browser's store of pages: what was opened and kept meanwhile comes first. */
  returned(): void;
  /** Looks again at what stands on the shelf, and whether the browser has one. */
  refresh(): void;
}

export function createKeptPad(around: Around): KeptPad {
  const { first, surroundings, history, isOwn, tell, reader, withReader } = around;
  const keeping = createKeeping(surroundings);
  /** The browser has refused to keep the last changes. */
  const isRefused = signal(false);
  /** The browser has no place to keep anything. */
  const isShutOff = signal(false);
  /** The pad was deleted in another tab and stands only here. */
  const isGone = signal(false);
  /** What this tab last kept or read: the pad that changes made elsewhere are measured against. */
  let keptText: string | null = null;
  /** Whether this is the pad of the next visit; one that only came with a link is not, until it is worked on. */
  let isOnTop = true;
  let stopRetry = (): void => {};

  const present = () => history.peek().present;
  const hasChanged = () => isOwn.peek() && serialisePad(present()) !== keptText;

  function put(next: Pad, label: string, field?: string): void {
    change(() => {
      history.value = record(history.peek(), next, { label, field, at: surroundings.now() });
      isOwn.value = true;
      isOnTop = true;
    });
  }

  function restore(restoring: string | null, { parse }: PadReader): void {
    const kept = readKept(surroundings.storage(), restoring, parse);
    if (kept.kind === 'spoiled') {
      tell('error', kept.sentence);
      // Nothing that is made here may take the place of what could not be read.
      keeping.turnTo(null);
    }
    if (kept.kind !== 'pad' || isOwn.peek()) return;
    keeping.givePlace();
    show(kept.pad, kept.text);
    shelf.refresh();
  }

  /** Shows a pad as it was opened: undo does not lead from one pad to another. */
  function show(next: Pad, kept: string | null, onTop = true): void {
    change(() => {
      history.value = startHistory(next);
      isOwn.value = true;
      isGone.value = false;
    });
    keptText = kept;
    isOnTop = onTop;
  }

  /** Keeps the open pad under a place of its own; false where the browser does not. */
  function stow(): boolean {
    if (!isOwn.peek()) return true;
    save();
    return !isRefused.peek() && !isShutOff.peek();
  }

  function openBeside(next: Pad, label: string, onTop = true): boolean {
    const isStowed = stow();
    const there = alreadyOnShelf(surroundings, next);
    if (there === null && padsOnShelf(surroundings.storage()).length >= mostPads) {
      tell('error', say.shelfIsFull);
      return false;
    }
    if (!isStowed) {
      // What is kept of the present pad stays where it is; what was typed since is a step back.
      keeping.turnTo(null);
      put(next, label);
      return true;
    }
    keeping.turnTo(there);
    show(next, there === null ? null : serialisePad(next), onTop);
    keepNow(serialisePad(next));
    shelf.refresh();
    return true;
  }

  function save(): void {
    if (hasChanged()) keepNow(serialisePad(present()));
  }

  function keepNow(text: string): void {
    const outcome = keeping.keep(text, isOnTop);
    if (outcome === 'clash') {
      reconcile(text);
      return;
    }
    stopRetry();
    const refused = outcome === 'refused';
    if (refused && !isRefused.peek()) tell('error', keptText === null ? say.notKept : say.noRoom);
    isRefused.value = refused;
    if (refused) stopRetry = surroundings.later(save, retryDelay);
    else {
      if (keptText === null) surroundings.askToKeep();
      keptText = text;
      isGone.value = false;
      shelf.refresh();
    }
  }

  /** Another tab has kept something else: both changes are put together, or both pads are kept. */
  function reconcile(mine: string): void {
    const theirs = keeping.unseen();
    const both = theirs === null || keptText === null ? null : merged(keptText, mine, theirs);
    const parsed = both === null ? undefined : reader()?.parse(both);
    if (theirs !== null && parsed?.ok === true) {
      keeping.see(theirs);
      put(parsed.pad, 'the change made in another tab');
      tell('note', say.joinedTabs);
      keepNow(serialisePad(parsed.pad));
      return;
    }
    keeping.turnTo(null);
    keptText = null;
    keepNow(mine);
    tell('error', say.keptBoth);
  }

  function adopt(key: string | null, text: string | null): void {
    if (key === null || key.startsWith(shelfPrefix)) shelf.refresh();
    if (key !== null && !keeping.isOwnKey(key)) return;
    if (text === null) noteGone();
    else take(text);
  }

  function noteGone(): void {
    if (!isOwn.peek() || isGone.peek() || !keeping.isGone()) return;
    isGone.value = true;
    tell('note', say.deletedElsewhere);
  }

  /** Another tab changed the pad: it stands here too, as a step for undo. */
  function take(text: string): void {
    if (text === keptText) isGone.value = false;
    else
      withReader(({ parse }) => {
        const parsed = parse(text);
        if (!parsed.ok) return;
        if (hasChanged()) {
          reconcile(serialisePad(present()));
          return;
        }
        keeping.see(text);
        keptText = serialisePad(parsed.pad);
        put(parsed.pad, 'the change made in another tab');
        // It may have had no place of its own until now.
        shelf.refresh();
      });
  }

  function returned(): void {
    shelf.refresh();
    const named = keeping.lastOpened();
    if (named !== null && named !== keeping.openId() && !hasChanged()) shelf.show(named);
    else adopt(null, keeping.unseen());
  }

  const shelf = createShelf({
    keeping,
    surroundings,
    tell,
    pad: present,
    withReader,
    stow,
    show: (next, kept) => {
      show(next, kept);
      keepNow(serialisePad(next));
    },
    showExample: () => {
      keeping.turnTo(null);
      keptText = null;
      change(() => {
        history.value = startHistory(first);
        isOwn.value = false;
      });
    },
    openBeside,
  });

  return {
    shelf,
    isKept: computed(() => isOwn.value && !isRefused.value && !isShutOff.value && !isGone.value),
    refuses: computed(() => isRefused.value || isShutOff.value),
    start: keeping.start,
    restore,
    put,
    openBeside,
    save,
    adopt,
    returned,
    refresh: () => {
      isShutOff.value = surroundings.storage() === null;
      shelf.refresh();
    },
  };
}
