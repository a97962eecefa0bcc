import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Source } from './Figure.tsx';

interface Memory {
  readonly value: ReadonlySignal<number>;
  set(value: number): void;
  /** Goes back to what both opened with. */
  forget(): void;
}

/** A number that the example and the reader's own pad each keep for themselves. */
export function twoMemories(
  source: ReadonlySignal<Source>,
  opening: Readonly<Record<Source, ReadonlySignal<number>>>,
): Memory {
  const set = {
    example: signal<number | undefined>(undefined),
    mine: signal<number | undefined>(undefined),
  };
  return {
    value: computed(() => set[source.value].value ?? opening[source.value].value),
    set: (value) => {
      set[source.peek()].value = value;
    },
    forget: () => {
      set.example.value = undefined;
      set.mine.value = undefined;
    },
  };
}
