import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { FieldRules } from '#pad/document/fieldRule.ts';
import type { Pad } from '#pad/document/schema.ts';
import { pathKey, withValueAt } from '#pad/messages/path.ts';
import { isUnsaid, type Problem, problemSentence } from '#pad/messages/problems.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { PadStore } from '#pad/store/store.ts';
import type { UnitChoice } from '#units/choice.ts';
import { elementId, pathTo, type Spot, valueAtSpot } from './spot.ts';

/** One field of the pad, as the controls of the kit want it. */
export interface BoundField<T> {
  readonly id: string;
  readonly value: ReadonlySignal<T>;
  readonly problem: ReadonlySignal<string | undefined>;
}

/** What the parts of the form share. */
export interface Form {
  readonly store: PadStore;
  readonly pad: ReadonlySignal<Pad>;
  readonly units: ReadonlySignal<UnitChoice>;
  /** What each number measures, and its bounds. */
  readonly rules: FieldRules;
  /** What the last look at the pad found wrong or missing; nothing before the page has come to life. */
  readonly problems: ReadonlySignal<readonly Problem[]>;
  /** The id of an entry just added: it opens and takes the focus. */
  readonly fresh: Signal<string | null>;
  /** Steps that stand open. */
  readonly open: Signal<readonly string[]>;
  /** The last thing done, for those who cannot see it. */
  readonly said: Signal<string>;
  /** Sentences of what is wrong at a spot or inside it. */
  errorsIn(spot: Spot): readonly string[];
  /** Sentences of what is wrong with a spot as a whole, apart from the fields inside it. */
  errorsAt(spot: Spot): readonly string[];
  /** Sentences of what nobody has said yet at a spot or inside it. */
  notesIn(spot: Spot): readonly string[];
  bound<T>(spot: Spot, otherwise: T): BoundField<T>;
  set(spot: Spot, value: unknown, what: string): void;
  /** Puts what `update` makes of the value at a spot in its place, as a step of its own for undo. */
  change<T>(spot: Spot, update: (before: T) => T, what: string): void;
  /** Looks at the pad for problems; called when it has kept still for a moment. */
  judge(): void;
  undo(): void;
  redo(): void;
}

export function createForm(store: PadStore, rules: FieldRules, open: readonly string[] = []): Form {
  const judged = signal<{ pad: Pad; problems: readonly Problem[] } | null>(null);
  const problems = computed(() => judged.value?.problems ?? []);
  const said = signal('');

  const sentences = (
    spot: Spot,
    unsaid: boolean,
    belongs: (key: string, spotKey: string) => boolean,
  ): readonly string[] => {
    const path = judged.value === null ? null : pathTo(judged.value.pad, spot);
    if (path === null) return [];
    const found = problems.value.filter(
      (each) => isUnsaid(each) === unsaid && belongs(pathKey(each.path), pathKey(path)),
    );
    return [...new Set(found.map((each) => problemSentence(each, store.units.value)))];
  };
  const inside = (key: string, spotKey: string) => `${key}/`.startsWith(`${spotKey}/`);
  const just = (key: string, spotKey: string) => key === spotKey;

  const set = (spot: Spot, value: unknown, what: string): void => {
    const path = pathTo(store.pad.peek(), spot);
    if (path !== null) store.set(path, value, what);
  };

  function bound<T>(spot: Spot, otherwise: T): BoundField<T> {
    return {
      id: elementId(spot),
      value: computed(() => (valueAtSpot(store.pad.value, spot) as T | null) ?? otherwise),
      problem: computed(() => sentences(spot, false, just)[0]),
    };
  }

  return {
    store,
    pad: store.pad,
    units: store.units,
    rules,
    problems,
    fresh: signal(null),
    open: signal(open),
    said,
    errorsIn: (spot) => sentences(spot, false, inside),
    errorsAt: (spot) => sentences(spot, false, just),
    notesIn: (spot) => sentences(spot, true, inside),
    bound,
    set,
    change: (spot, update, what) => {
      const pad = store.pad.peek();
      const path = pathTo(pad, spot);
      const before = valueAtSpot(pad, spot);
      if (path === null || before === undefined) return;
      // Two parts added quickly are two steps for undo, unlike two figures typed in one field.
      store.edit((now) => withValueAt(now, path, update(before as never)), what);
    },
    judge: () => {
      const pad = store.pad.peek();
      if (judged.peek()?.pad !== pad) judged.value = { pad, problems: padModel(pad).problems };
    },
    undo: () => step('Took back', store.undoLabel.peek(), store.undo),
    redo: () => step('Brought back', store.redoLabel.peek(), store.redo),
  };

  function step(verb: string, label: string | null, go: () => void): void {
    if (label === null) return;
    batch(() => {
      go();
      said.value = `${verb}: ${label}.`;
    });
  }
}

const FormContext = createContext<Form | null>(null);
export const FormProvider = FormContext.Provider;

/** The form around this part. */
export function useForm(): Form {
  const form = useContext(FormContext);
  if (form === null) throw new Error('A part of the form stands outside it.');
  return form;
}
