import { useSignal } from '@preact/signals';
import type { FunctionComponent, JSX } from 'preact';
import { Guard } from './Guard.tsx';

interface DoorProps<Props extends object> {
  /** What lies behind, in a sentence or two. */
  readonly lead: string;
  /** The word on the button. */
  readonly word: string;
  readonly load: () => Promise<FunctionComponent<Props>>;
  readonly props: Props;
}

/** Puts the focus where otherwise only reading leads. */
function focusOn(place: HTMLElement): void {
  place.tabIndex = -1;
  place.focus({ preventScroll: true });
}

const isLost = () => document.activeElement === document.body;

/** A control that goes away when it is used leaves the focus in what was around it, not at the top of the page. */
function keepFocus(event: Event): void {
  const around = event.composedPath().filter((each) => each instanceof HTMLElement);
  setTimeout(() => {
    const left = around.find(({ isConnected }) => isConnected);
    if (left !== undefined && left !== around[0] && isLost()) focusOn(left);
  });
}

type State<Props> = { readonly part: FunctionComponent<Props> } | 'shut' | 'coming' | 'failed';

/** A part of a page that is fetched when it is first asked for; the focus goes to the head of its section. */
export function LazySection<Props extends object>(door: DoorProps<Props>): JSX.Element {
  const state = useSignal<State<Props>>('shut');
  const open = async (event: JSX.TargetedEvent<HTMLElement>) => {
    if (state.peek() === 'coming') return;
    const section = event.currentTarget.closest('section');
    state.value = 'coming';
    try {
      state.value = { part: await door.load() };
      section?.addEventListener('click', keepFocus);
      setTimeout(() => {
        const head = section?.querySelector('h2');
        if (head && isLost()) focusOn(head);
      });
    } catch {
      state.value = 'failed';
    }
  };
  const now = state.value;
  if (typeof now === 'object')
    return (
      <Guard>
        <now.part {...door.props} />
      </Guard>
    );
  return (
    <>
      <p>{door.lead}</p>
      <p class="needs-script">
        <button type="button" class="button" aria-disabled={now === 'coming'} onClick={open}>
          {door.word}
        </button>
      </p>
      {now === 'failed' && (
        <p class="field-error" role="alert">
          This part of the page could not be fetched. Reload the page when there is a connection.
        </p>
      )}
    </>
  );
}
