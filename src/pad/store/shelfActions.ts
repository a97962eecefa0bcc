/** What a reader does with the pads on the shelf. */
import { type ReadonlySignal, signal } from '@preact/signals';
import type { PadReader } from '#pad/document/reader.ts';
import type { Pad } from '#pad/document/schema.ts';
import { serialisePad } from '#pad/document/written.ts';
import * as say from '#pad/messages/storeSentences.ts';
import { type Keeping, padsOnShelf, type Shelved, textOnShelf } from './shelf.ts';
import type { Surroundings } from './surroundings.ts';

/** As many pads as the shelf holds. */
export const mostPads = 99;

export interface Shelf {
  /** Every pad this browser keeps; empty until the page has come to life. */
  readonly pads: ReadonlySignal<readonly Shelved[]>;
  /** Which of them is open, or null while the example is. */
  readonly openId: ReadonlySignal<string | null>;
  /** The pad that was deleted last and can be brought back, or null. */
  readonly deleted: ReadonlySignal<Shelved | null>;
  /** Opens a pad of the shelf; the one that is open now stays on it. */
  choose(id: string): void;
  /** Opens a copy of the open pad beside it. */
  copy(): void;
  /** Takes a pad off the shelf; it can be brought back until the page is left or another is deleted. */
  remove(id: string): void;
  bringBack(): void;
}

/** What the shelf needs of the store around it. */
export interface OpenPad {
  readonly keeping: Keeping;
  readonly surroundings: Pick<Surroundings, 'storage'>;
  readonly tell: (kind: say.Notice['kind'], sentence: string) => void;
  readonly pad: () => Pad;
  readonly withReader: (act: (reader: PadReader) => void) => void;
  /** Keeps the open pad as it is; false where the browser does not. */
  readonly stow: () => boolean;
  /** Shows a pad without a step for undo; `kept` is its text where it is on the shelf already. */
  readonly show: (pad: Pad, kept: string | null) => void;
  /** Shows the example again, as nobody's pad. */
  readonly showExample: () => void;
  readonly openBeside: (pad: Pad, label: string) => void;
}

/** The shelf as the store sees it. */
interface WholeShelf extends Shelf {
  /** Looks again at what stands on it. */
  readonly refresh: () => void;
  /** Shows a pad of the shelf in the place of one that is kept, or of none. */
  readonly show: (id: string) => void;
}

export function createShelf(open: OpenPad): WholeShelf {
  const { keeping, surroundings } = open;
  const pads = signal<readonly Shelved[]>([]);
  const openId = signal<string | null>(null);
  const deleted = signal<(Shelved & { readonly text: string }) | null>(null);

  function refresh(): void {
    const next = padsOnShelf(surroundings.storage());
    if (JSON.stringify(next) !== JSON.stringify(pads.peek())) pads.value = next;
    openId.value = keeping.openId();
  }

  function take(id: string): void {
    open.withReader(({ parse }) => {
      const text = textOnShelf(surroundings.storage(), id);
      const parsed = text === null ? null : parse(text);
      if (text === null || parsed === null) return;
      if (!parsed.ok) {
        open.tell('error', parsed.sentence);
        return;
      }
      keeping.turnTo(id);
      open.show(parsed.pad, text);
      refresh();
    });
  }

  return {
    pads,
    openId,
    deleted,
    refresh,
    show: take,
    choose: (id) => {
      if (id === keeping.openId()) return;
      if (open.stow()) take(id);
      else open.tell('error', say.saveFirst);
    },
    copy: () => {
      const pad = open.pad();
      const name = pad.name === '' ? 'Copy' : `${pad.name.slice(0, 110)}, copy`;
      open.openBeside({ ...pad, name }, 'a copy');
    },
    remove: (id) => {
      // What was typed a moment ago goes with it, so that it comes back with it.
      const isOpen = id === keeping.openId();
      if (isOpen) open.stow();
      const kept = keeping.takeOff(id);
      const text = isOpen ? serialisePad(open.pad()) : kept;
      const name = pads.peek().find((each) => each.id === id)?.name ?? '';
      if (text !== null) deleted.value = { id, name, text };
      if (isOpen) {
        const [other] = padsOnShelf(surroundings.storage());
        if (other === undefined) open.showExample();
        else take(other.id);
      }
      refresh();
    },
    bringBack: () => {
      const back = deleted.peek();
      if (back === null) return;
      // What was typed in the open pad comes first; where it cannot be kept it stays open.
      if (!open.stow()) {
        open.tell('error', say.saveFirst);
        return;
      }
      const place = keeping.putBack(back.id, back.text);
      if (place === null) {
        open.tell('error', say.noRoom);
        return;
      }
      deleted.value = null;
      take(place);
    },
  };
}

/** Whether a pad stands on the shelf already, word for word: then it need not stand there twice. */
export function alreadyOnShelf(
  surroundings: Pick<Surroundings, 'storage'>,
  pad: Pad,
): string | null {
  const text = serialisePad(pad);
  const place = surroundings.storage();
  return padsOnShelf(place).find(({ id }) => textOnShelf(place, id) === text)?.id ?? null;
}
