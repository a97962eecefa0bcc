import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { DocumentProblem } from '#pad/document/documentProblems.ts';
import type { ParsedPad } from '#pad/document/file.ts';
import { carriesPad } from '#pad/document/fragment.ts';
import type { PadReader, ReaderSource } from '#pad/document/reader.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padFileText } from '#pad/document/written.ts';
import { type Path, pathKey, withValueAt } from '#pad/messages/path.ts';
import * as say from '#pad/messages/storeSentences.ts';
import type { UnitChoice } from '#units/choice.ts';
import { change } from './change.ts';
import { redo, startHistory, undo } from './history.ts';
import { createKeptPad } from './keptPad.ts';
import type { Shelf } from './shelfActions.ts';
import { readAside } from './storage.ts';
import type { Surroundings } from './surroundings.ts';

/**
 * The one pad of the page. Everything here is written by handlers and effects only: while pages are
 * built, and in the first render in a browser, it holds the example it was made with.
 */
export interface PadStore {
  readonly pad: ReadonlySignal<Pad>;
  readonly units: ReadonlySignal<UnitChoice>;
  /** Whether the pad is the reader's own, rather than the untouched example. */
  readonly isOwn: ReadonlySignal<boolean>;
  /** Whether the browser keeps the pad as it stands; false once it has refused to. */
  readonly isKept: ReadonlySignal<boolean>;
  /** Whether the browser is known to keep nothing, or not the last changes. */
  readonly refuses: ReadonlySignal<boolean>;
  /** The pads this browser keeps. */
  readonly shelf: Shelf;
  /** What undo would take back, or null when there is nothing. */
  readonly undoLabel: ReadonlySignal<string | null>;
  /** What redo would bring back, or null when there is nothing. */
  readonly redoLabel: ReadonlySignal<string | null>;
  readonly notice: ReadonlySignal<say.Notice | null>;
  /**
   * Puts what `update` makes of the pad in its place. A result that breaks the definition is refused:
   * the problems come back and nothing changes. Quick edits of the same `field` undo together. An
   * edit made before what checks it has been fetched is made at once and looked at afterwards; while
   * a kept pad is still being read it waits, in its turn.
   */
  edit(update: (pad: Pad) => Pad, label: string, field?: string): readonly DocumentProblem[];
  /** Puts one value at a path. */
  set(path: Path, value: unknown, label: string): readonly DocumentProblem[];
  undo(): void;
  redo(): void;
  /** Opens a whole other pad, such as an example or an empty one, beside the present one on the shelf. */
  replace(pad: Pad, label: string): void;
  /** Opens the text of a pad file beside the present pad. When it cannot be read that stays open; null says it never was. */
  open(text: string): Promise<ParsedPad | null>;
  /** The pad as the text of a file. */
  fileText(): string;
  /** The fragment of a link that carries the pad; what packs it is fetched when first asked for. */
  fragment(): Promise<string>;
  /** Text put aside because it could not be read, or null. */
  aside(): string | null;
  dismissNotice(): void;
  /** To be called in an effect after mount: reads link and storage, then keeps every change. */
  connect(): () => void;
}

const saveDelay = 250;

export function createPadStore(
  first: Pad,
  surroundings: Surroundings,
  source: ReaderSource,
): PadStore {
  const history = signal(startHistory(first));
  const isOwn = signal(false);
  const notice = signal<say.Notice | null>(null);
  const pad = computed(() => history.value.present);
  let connections = 0;
  /** Whether what the browser keeps has yet to be read; unknown until it is looked for. */
  let isRestoring: boolean | undefined;
  let restoring: string | null = null;
  let disconnect = (): void => {};

  /** Does at once what needs the reader, or as soon as it has been fetched; calls keep their order. */
  function withReader(act: (reader: PadReader) => void): void {
    const ready = (reader: PadReader) => {
      finishRestoring(reader);
      act(reader);
    };
    const reader = source.present();
    if (reader !== null) ready(reader);
    else source.fetch().then(ready, () => tell('error', say.notFetched));
  }

  /** Looked for at the first need: an edit may come before the page has connected the store. */
  function awaitsKept(): boolean {
    if (isRestoring === undefined) {
      restoring = kept.start();
      isRestoring = restoring !== null;
    }
    return isRestoring;
  }

  /** What the browser keeps comes before anything else that needs the reader, however late. */
  function finishRestoring(reader: PadReader): void {
    if (!awaitsKept()) return;
    isRestoring = false;
    change(() => kept.restore(restoring, reader));
    if (!carriesPad(surroundings.fragment())) surroundings.padIsThere();
  }

  /**
   * Before the reader is there an edit is made at once and looked at when it has come, so that a drag
   * follows the hand from its first moment; only what the browser keeps has to be read first.
   */
  function editUnchecked(update: (pad: Pad) => Pad, label: string, field?: string): void {
    const after = update(pad.peek());
    if (Object.is(pad.peek(), after)) return;
    kept.put(after, label, field);
    source.fetch().then(lookBack, () => {
      // Out of reach: what was typed stays, and is kept.
    });
  }

  function step(by: typeof undo): void {
    change(() => {
      history.value = by(history.peek());
    });
  }

  /** Takes back the steps that break the definition. */
  function lookBack({ check }: PadReader): void {
    let tookBack = false;
    while (history.peek().past.length > 0 && !check(pad.peek()).ok) {
      step(undo);
      tookBack = true;
    }
    if (tookBack) tell('error', say.notKeptStep);
  }

  function edit(
    update: (pad: Pad) => Pad,
    label: string,
    field?: string,
  ): readonly DocumentProblem[] {
    if (source.present() === null && !awaitsKept()) {
      editUnchecked(update, label, field);
      return [];
    }
    let problems: readonly DocumentProblem[] = [];
    withReader(({ check }) => {
      const before = pad.peek();
      const after = update(before);
      if (Object.is(before, after)) return;
      const checked = check(after);
      if (checked.ok) kept.put(after, label, field);
      else problems = checked.problems;
    });
    return problems;
  }

  function tell(kind: say.Notice['kind'], sentence: string): void {
    notice.value = { kind, sentence };
  }

  async function open(text: string): Promise<ParsedPad | null> {
    try {
      const reader = await source.fetch();
      finishRestoring(reader);
      const parsed = reader.parse(text);
      if (parsed.ok) {
        const opened = kept.openBeside(parsed.pad, 'opening a file');
        if (opened && parsed.from < parsed.pad.version) tell('note', say.upgraded);
      } else tell('error', parsed.sentence);
      return parsed;
    } catch {
      tell('error', say.notFetched);
      return null;
    }
  }

  function takeFrom(parsed: ParsedPad): void {
    if (!parsed.ok) {
      tell('error', parsed.sentence);
      return;
    }
    const isOpen = kept.openBeside(parsed.pad, 'opening a link', !isOwn.peek());
    // What is not kept is told already, and that matters more.
    if (isOpen && !kept.refuses.peek()) tell('note', say.fromLink);
  }

  async function openFragment(): Promise<void> {
    const fragment = surroundings.fragment();
    if (!carriesPad(fragment)) return;
    try {
      // What the browser keeps is read first, so that a link can put it aside.
      const [{ parseFragment }, reader] = await Promise.all([
        import('#pad/document/link.ts'),
        source.fetch(),
      ]);
      finishRestoring(reader);
      const parsed = parseFragment(fragment);
      change(() => takeFrom(parsed));
      surroundings.clearFragment();
    } catch {
      tell('error', say.notFetched);
    }
  }

  const kept = createKeptPad({
    first,
    surroundings,
    history,
    isOwn,
    tell,
    reader: source.present,
    withReader,
  });

  function attach(): () => void {
    if (awaitsKept()) withReader(() => {});
    kept.refresh();
    void openFragment().then(() => isRestoring || surroundings.padIsThere());
    let cancel = (): void => {};
    const offs = [
      effect(() => {
        pad.value;
        cancel();
        cancel = surroundings.later(kept.save, saveDelay);
      }),
      surroundings.onLeave(kept.save),
      surroundings.onKept(kept.adopt),
      surroundings.onReturn(kept.returned),
      surroundings.onFragment(() => void openFragment()),
      surroundings.onTouch(() => void source.fetch().catch(() => {})),
    ];
    return () => {
      cancel();
      kept.save();
      for (const off of offs) off();
    };
  }

  return {
    pad,
    units: computed(() => pad.value.units),
    isOwn,
    isKept: kept.isKept,
    refuses: kept.refuses,
    shelf: kept.shelf,
    notice,
    undoLabel: computed(() => history.value.past.at(-1)?.label ?? null),
    redoLabel: computed(() => history.value.future[0]?.label ?? null),
    edit,
    set: (path, value, label) =>
      edit((present) => withValueAt(present, path, value), label, pathKey(path)),
    undo: () => step(undo),
    redo: () => step(redo),
    replace: (next, label) => {
      const open = () => void kept.openBeside(next, label);
      if (awaitsKept()) withReader(open);
      else open();
    },
    open,
    fileText: () => padFileText(pad.peek()),
    fragment: async () => {
      const { padFragment } = await import('#pad/document/link.ts');
      return padFragment(pad.peek());
    },
    aside: () => readAside(surroundings.storage()),
    dismissNotice: () => {
      notice.value = null;
    },
    connect: () => {
      if (connections === 0) disconnect = attach();
      connections += 1;
      let connected = true;
      return () => {
        if (!connected) return;
        connected = false;
        connections -= 1;
        if (connections === 0) disconnect();
      };
    },
  };
}
