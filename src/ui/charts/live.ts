import { computed, type ReadonlySignal, Signal } from '@preact/signals';

/** A value that may stand still or be followed: parts of a picture accept either. */
export type Live<T> = T | ReadonlySignal<T>;

/** The value now; inside a computed or a component it is also followed. */
export function read<T>(live: Live<T>): T {
  return live instanceof Signal ? live.value : (live as T);
}

/** Makes a still value readable the same way as one that is followed. */
export function asSignal<T>(live: Live<T>): ReadonlySignal<T> {
  return live instanceof Signal ? live : computed(() => live as T);
}
