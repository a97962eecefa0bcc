import { type ReadonlySignal, signal, useSignalEffect } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type Live, read } from '#ui/charts/live.ts';
import { useComputed } from './failure.ts';

/** Follows a value after it has kept still for a while; the first reading is there at once. */
export function useSettled<T>(source: Live<T>, quiet = 500): ReadonlySignal<T> {
  const settled = useMemo(() => signal(read(source)), [source]);
  const now = useComputed(() => read(source));
  useSignalEffect(() => {
    const next = now.value;
    if (next === settled.peek()) return;
    const timer = setTimeout(() => {
      settled.value = next;
    }, quiet);
    return () => clearTimeout(timer);
  });
  return settled;
}
