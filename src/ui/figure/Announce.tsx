import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { type Live, read } from '#ui/charts/live.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { useSettled } from '#ui/controls/settle.ts';

/** Speaks the finding half a second after the last change, and nothing when the page opens. */
export function Announce({ sentence }: { sentence: Live<string> }): JSX.Element {
  const settled = useSettled(sentence, 500);
  const opening = useMemo(() => read(sentence), [sentence]);
  const spoken = useComputed(() => (settled.value === opening ? '' : settled.value));
  return (
    <p class="visually-hidden" role="status">
      {spoken}
    </p>
  );
}
