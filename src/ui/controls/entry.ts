import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { type Live, read } from '#ui/charts/live.ts';

/** What typed text turned out to mean, or a sentence saying what is wrong and what would be right. */
export type Parsed<T> = { ok: true; value: T } | { ok: false; problem: string };

/** How a value is written for the reader and read back. */
export interface Entry<T> {
  parse(text: string): Parsed<T>;
  format(value: T): string;
}

/** A text field's memory: what was typed stays as typed for as long as it makes no sense. */
export interface FieldState {
  readonly text: ReadonlySignal<string>;
  readonly problem: ReadonlySignal<string | undefined>;
  type(text: string): void;
  leave(): void;
  /** Forgets what was typed and shows the value again. */
  reset(): void;
}

interface FieldWish<T> {
  readonly value: Live<T | undefined>;
  readonly entry: Live<Entry<T>>;
  /** Called with every understood value, and with none when the field is emptied. */
  readonly apply: (value: T | undefined) => void;
  /** The sentence for an empty field; without it the field may stay empty. */
  readonly whenEmpty?: string | undefined;
  /** Changes whenever anyone sets the value, even to what it was; the value itself unless given. */
  readonly changes?: ReadonlySignal<unknown>;
}

/**
 * Joins a text field to a value. Understood text is applied at once; a problem is told only when
 * the reader leaves the field, and goes the moment the text makes sense. When the value is set from
 * elsewhere (undo, reset, a drag) the field shows that.
 */
export function createFieldState<T>(wish: FieldWish<T>): FieldState {
  const draft = signal<{ text: string; since: unknown } | undefined>(undefined);
  const left = signal(false);
  const mark = () => (wish.changes === undefined ? read(wish.value) : wish.changes.value);
  const typed = computed(() =>
    draft.value !== undefined && draft.value.since === mark() ? draft.value.text : undefined,
  );

  const understand = (text: string): Parsed<T | undefined> => {
    if (text.trim() !== '') return read(wish.entry).parse(text);
    if (wish.whenEmpty === undefined) return { ok: true, value: undefined };
    return { ok: false, problem: wish.whenEmpty };
  };
  const shown = () => {
    const value = read(wish.value);
    return value === undefined ? '' : read(wish.entry).format(value);
  };

  const text = computed(() => typed.value ?? shown());
  const problem = computed(() => {
    if (typed.value === undefined || !left.value) return undefined;
    const meaning = understand(typed.value);
    return meaning.ok ? undefined : meaning.problem;
  });

  const reset = () => {
    draft.value = undefined;
    left.value = false;
  };
  const type = (next: string) => {
    const meaning = understand(next);
    if (meaning.ok) {
      left.value = false;
      wish.apply(meaning.value);
    }
    draft.value = { text: next, since: mark() };
  };
  const leave = () => {
    if (typed.value === undefined) return reset();
    if (understand(typed.value).ok) reset();
    else left.value = true;
  };
  return { text, problem, type, leave, reset };
}
