import { useSignal } from '@preact/signals';
import type { FunctionComponent, JSX } from 'preact';

interface DoorProps<Props extends object> {
  /** What lies behind, in a sentence or two. */
  readonly lead: string;
  /** The word on the button. */
  readonly word: string;
  readonly load: () => Promise<FunctionComponent<Props>>;
  readonly props: Props;
}

type State<Props> = { readonly part: FunctionComponent<Props> } | 'shut' | 'coming' | 'failed';

/** A part of a page that is fetched when it is first asked for. */
export function Door<Props extends object>(door: DoorProps<Props>): JSX.Element {
  const state = useSignal<State<Props>>('shut');
  const open = async () => {
    state.value = 'coming';
    try {
      state.value = { part: await door.load() };
    } catch {
      state.value = 'failed';
    }
  };
  const now = state.value;
  if (typeof now === 'object') return <now.part {...door.props} />;
  return (
    <>
      <p>{door.lead}</p>
      <p class="needs-script">
        <button type="button" class="button" disabled={now === 'coming'} onClick={open}>
          {door.word}
        </button>
      </p>
      {now === 'failed' && (
        <p class="field-error">
          This part of the page could not be fetched. Reload the page when there is a connection.
        </p>
      )}
    </>
  );
}
