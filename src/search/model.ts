import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Finder, Found } from './finder.ts';

export type IndexState = 'waiting' | 'ready' | 'unreachable';

export interface SearchModel {
  readonly words: Signal<string>;
  readonly state: ReadonlySignal<IndexState>;
  readonly found: ReadonlySignal<readonly Found[]>;
  /** Fetches the index, once; again when it could not be reached. */
  load(): Promise<void>;
}

/** Words looked for, and where they are, as soon as the index has come. */
export function createModel(fetchFinder: () => Promise<Finder>): SearchModel {
  const words = signal('');
  const state = signal<IndexState>('waiting');
  const finder = signal<Finder | undefined>(undefined);
  let loading: Promise<void> | undefined;
  const fetchOnce = async (): Promise<void> => {
    try {
      finder.value = await fetchFinder();
      state.value = 'ready';
    } catch {
      state.value = 'unreachable';
      loading = undefined;
    }
  };
  return {
    words,
    state,
    found: computed(() => finder.value?.(words.value) ?? []),
    load: () => {
      loading ??= fetchOnce();
      return loading;
    },
  };
}
