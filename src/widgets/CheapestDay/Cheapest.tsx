import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { DayModel } from '#widgets/DaySheet/model.ts';
import type * as Fetched from './Finder.tsx';

type State = typeof Fetched | 'not asked' | 'coming' | 'failed';

/** The door to the cheapest day; what finds it is fetched when it is first asked for. */
export function Cheapest({
  id,
  day,
}: {
  readonly id: string;
  readonly day: DayModel;
}): JSX.Element {
  const state = useSignal<State>('not asked');
  const ask = async () => {
    state.value = 'coming';
    try {
      state.value = await import('./Finder.tsx');
    } catch {
      state.value = 'failed';
    }
  };
  if (typeof state.value === 'object') return <state.value.Finder id={id} day={day} />;
  return (
    <>
      <p>
        Of all days that move the water, serve every need and keep every limit, one is the cheapest.
        It can be worked out, with the proof.
      </p>
      <p class="needs-script">
        <button type="button" class="button" disabled={state.value === 'coming'} onClick={ask}>
          Find the cheapest day
        </button>
      </p>
      {state.value === 'failed' && (
        <p class="field-error">
          This part of the page could not be fetched. Reload the page when there is a connection.
        </p>
      )}
    </>
  );
}
