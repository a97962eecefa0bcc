import {
  type ReadonlySignal,
  useSignal,
  useComputed as useSignalComputed,
  useSignalEffect,
} from '@preact/signals';

/**
 * Fails the part of the page around this component: what is passed on is thrown as the component is
 * drawn, so that the nearest guard shows a sentence in the place of figures that no longer hold.
 */
export function useFailure(): (error: unknown) => void {
  const failure = useSignal<{ readonly error: unknown } | null>(null);
  if (failure.value !== null) throw failure.value.error;
  return (error) => {
    failure.value = { error };
  };
}

/**
 * A computed that a text or an attribute is bound to. Signals leave the old text where such a computed
 * throws; here the part of the page fails as a whole.
 */
export function useComputed<T>(work: () => T): ReadonlySignal<T> {
  const answer = useSignalComputed(work);
  const fail = useFailure();
  useSignalEffect(() => {
    try {
      answer.value;
    } catch (error) {
      fail(error);
    }
  });
  return answer;
}
