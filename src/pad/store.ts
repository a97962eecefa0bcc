import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { UnitChoice } from '#units/choice.ts';
import type { DocumentProblem } from './documentProblems.ts';
import type { ParsedPad } from './file.ts';
import { carriesPad } from './fragment.ts';
import { record, redo, startHistory, undo } from './history.ts';
import { type Path, pathKey, withValueAt } from './path.ts';
import type { PadReader, ReaderSource } from './reader.ts';
import type { Pad } from './schema.ts';
import { keep, keepsSomething, padKey, putAside, readAside, readKept } from './storage.ts';
import type { Surroundings } from './surroundings.ts';
import { padFileText, serialisePad } from './written.ts';

/** Something the reader should be told about the pad as a whole. */
export interface Notice {
  readonly kind: 'error' | 'note';
  readonly sentence: string;
}

/**
 * The one pad of the page. Everything here is written by handlers and effects only: while pages are
 * built, and in the first render in a browser, it holds the example it was made with.
 */
export interface PadStore {
  readonly pad: ReadonlySignal<Pad>;
  readonly units: ReadonlySignal<UnitChoice>;
  /** Whether the pad is the reader's own, rather than the untouched example. */
  readonly isOwn: ReadonlySignal<boolean>;
  /** What undo would take back, or null when there is nothing. */
  readonly undoLabel: ReadonlySignal<string | null>;
  /** What redo would bring back, or null when there is nothing. */
  readonly redoLabel: ReadonlySignal<string | null>;
  readonly notice: ReadonlySignal<Notice | null>;
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
  /** Puts a whole other pad in place, such as an example or an empty one. */
  replace(pad: Pad, label: string): void;
  /** Opens the text of a pad file. When it cannot be read the present pad stays; null says it never was. */
  open(text: string): Promise<ParsedPad | null>;
  /** The pad as the text of a file. */
  fileText(): string;
  /** The fragment of a link that carries the pad; what packs it is fetched when first asked for. */
  fragment(): Promise<string>;
  /** Text put aside: one that could not be read, or the pad that a link replaced; or null. */
  aside(): string | null;
  dismissNotice(): void;
  /** To be called in an effect after mount: reads link and storage, then keeps every change. */
  connect(): () => void;
}

const saveDelay = 250;
const notKept = 'This browser does not keep the pad. Save it as a file before you leave this page.';
const notKeptStep =
  'A change made while this page was still coming could not be kept. Please make it again.';
const fromLink = 'This pad came with the link. Undo brings back the one before it.';
const notFetched =
  'That could not be done, because a part of this page could not be fetched. Reload the page when ' +
  'there is a connection, then try again. Your present pad is unchanged.';
const upgraded =
  'This pad was written by an older edition of the site and has been brought up to date.';

export function createPadStore(
  first: Pad,
  surroundings: Surroundings,
  source: ReaderSource,
): PadStore {
  const history = signal(startHistory(first));
  const isOwn = signal(false);
  const notice = signal<Notice | null>(null);
  const pad = computed(() => history.value.present);
  let keptText: string | null = null;
  let connections = 0;
  /** Whether what the browser keeps has yet to be read; unknown until it is looked for. */
  let isRestoring: boolean | undefined;
  let disconnect = (): void => {};

  function put(next: Pad, label: string, field?: string): void {
    batch(() => {
      history.value = record(history.peek(), next, { label, field, at: surroundings.now() });
      isOwn.value = true;
    });
  }

  /** Does at once what needs the reader, or as soon as it has been fetched; calls keep their order. */
  function withReader(act: (reader: PadReader) => void): void {
    const ready = (reader: PadReader) => {
      finishRestoring(reader);
      act(reader);
    };
    const reader = source.present();
    if (reader !== null) ready(reader);
    else source.fetch().then(ready, () => tell('error', notFetched));
  }

  /** Looked for at the first need: an edit may come before the page has connected the store. */
  function awaitsKept(): boolean {
    isRestoring ??= keepsSomething(surroundings.storage());
    return isRestoring;
  }

  /** What the browser keeps comes before anything else that needs the reader, however late. */
  function finishRestoring(reader: PadReader): void {
    if (!awaitsKept()) return;
    isRestoring = false;
    batch(() => restore(reader));
  }

  /**
   * Before the reader is there an edit is made at once and looked at when it has come, so that a drag
   * follows the hand from its first moment; only what the browser keeps has to be read first.
   */
  function editUnchecked(update: (pad: Pad) => Pad, label: string, field?: string): void {
    const after = update(pad.peek());
    if (Object.is(pad.peek(), after)) return;
    put(after, label, field);
    source.fetch().then(lookBack, () => {
      // Out of reach: what was typed stays, and is kept.
    });
  }

  /** Takes back the steps that break the definition. */
  function lookBack({ check }: PadReader): void {
    let tookBack = false;
    while (history.peek().past.length > 0 && !check(pad.peek()).ok) {
      history.value = undo(history.peek());
      tookBack = true;
    }
    if (tookBack) tell('error', notKeptStep);
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
      if (checked.ok) put(after, label, field);
      else problems = checked.problems;
    });
    return problems;
  }

  function tell(kind: Notice['kind'], sentence: string): void {
    notice.value = { kind, sentence };
  }

  async function open(text: string): Promise<ParsedPad | null> {
    try {
      const reader = await source.fetch();
      finishRestoring(reader);
      const parsed = reader.parse(text);
      if (parsed.ok) {
        put(parsed.pad, 'opening a file');
        if (parsed.from < parsed.pad.version) tell('note', upgraded);
      } else tell('error', parsed.sentence);
      return parsed;
    } catch {
      tell('error', notFetched);
      return null;
    }
  }

  function takeFrom(parsed: ParsedPad): void {
    if (!parsed.ok) {
      tell('error', parsed.sentence);
      return;
    }
    // Undo does not outlive the page: the reader's own pad is put aside as well.
    if (isOwn.peek()) putAside(surroundings.storage(), serialisePad(pad.peek()));
    put(parsed.pad, 'opening a link');
    tell('note', fromLink);
  }

  async function openFragment(): Promise<void> {
    const fragment = surroundings.fragment();
    if (!carriesPad(fragment)) return;
    try {
      // What the browser keeps is read first, so that a link can put it aside.
      const [{ parseFragment }, reader] = await Promise.all([import('./link.ts'), source.fetch()]);
      finishRestoring(reader);
      batch(() => takeFrom(parseFragment(fragment)));
      surroundings.clearFragment();
    } catch {
      tell('error', notFetched);
    }
  }

  function restore({ parse }: PadReader): void {
    const kept = readKept(surroundings.storage(), parse);
    if (kept.kind === 'spoiled') tell('error', kept.sentence);
    if (kept.kind !== 'pad' || isOwn.peek()) return;
    keptText = kept.text;
    history.value = startHistory(kept.pad);
    isOwn.value = true;
  }

  function save(): void {
    if (!isOwn.peek()) return;
    const text = serialisePad(pad.peek());
    if (text === keptText) return;
    const couldKeep = keep(surroundings.storage(), text);
    if (!couldKeep && keptText === null) tell('note', notKept);
    keptText = text;
  }

  /** Another tab changed the pad: it stands here too, as a step that can be undone. */
  function adopt(key: string | null, text: string | null): void {
    if (key !== padKey || text === null || text === keptText) return;
    withReader(({ parse }) => {
      const parsed = parse(text);
      if (!parsed.ok) return;
      keptText = serialisePad(parsed.pad);
      put(parsed.pad, 'the change made in another tab');
    });
  }

  function attach(): () => void {
    if (awaitsKept()) withReader(() => {});
    void openFragment();
    let cancel = (): void => {};
    const offs = [
      effect(() => {
        pad.value;
        cancel();
        cancel = surroundings.later(save, saveDelay);
      }),
      surroundings.onLeave(save),
      surroundings.onKept(adopt),
      surroundings.onFragment(() => void openFragment()),
      surroundings.onTouch(() => void source.fetch().catch(() => {})),
    ];
    return () => {
      cancel();
      save();
      for (const off of offs) off();
    };
  }

  return {
    pad,
    units: computed(() => pad.value.units),
    isOwn,
    notice,
    undoLabel: computed(() => history.value.past.at(-1)?.label ?? null),
    redoLabel: computed(() => history.value.future[0]?.label ?? null),
    edit,
    set: (path, value, label) =>
      edit((present) => withValueAt(present, path, value), label, pathKey(path)),
    undo: () => {
      history.value = undo(history.peek());
    },
    redo: () => {
      history.value = redo(history.peek());
    },
    replace: (next, label) =>
      awaitsKept() ? withReader(() => put(next, label)) : put(next, label),
    open,
    fileText: () => padFileText(pad.peek()),
    fragment: async () => {
      const { padFragment } = await import('./link.ts');
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
