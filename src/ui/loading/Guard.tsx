import { useSignalEffect } from '@preact/signals';
import type { ComponentChildren, FunctionComponent, JSX } from 'preact';
import { useErrorBoundary, useRef } from 'preact/hooks';
import type { PadStore } from '#pad/store/store.ts';

interface GuardProps {
  /** Where the part follows a pad: it is drawn again when the pad changes, and the change can be undone. */
  readonly store?: Pick<PadStore, 'pad' | 'undo' | 'undoLabel'> | undefined;
  readonly children: ComponentChildren;
}

/** A part of the page; where it fails, a sentence stands in its place and no figure of before. */
export function Guard({ store, children }: GuardProps): JSX.Element {
  const [error, reset] = useErrorBoundary((thrown) => reportError(thrown));
  if (error === undefined) return <>{children}</>;
  return <Failed store={store} again={reset} />;
}

type FailedProps = Pick<GuardProps, 'store'> & { readonly again: () => void };

function Failed({ store, again }: FailedProps): JSX.Element {
  const failedAt = useRef(store?.pad.peek());
  useSignalEffect(() => {
    if (store?.pad.value !== failedAt.current) again();
  });
  return (
    <div class="failed" role="alert">
      <p>
        This part of the page can’t be worked out with what it was given. That is a fault of ours,
        so the figures are taken away rather than left as they were. What you entered is kept.
      </p>
      <p>
        {store !== undefined && store.undoLabel.value !== null && (
          <button type="button" class="button" onClick={store.undo}>
            Undo the last change
          </button>
        )}{' '}
        <button type="button" class="button button-quiet" onClick={again}>
          Try again
        </button>
      </p>
    </div>
  );
}

/** An island that fails as a whole. */
export function guarded<Props extends object>(
  Part: FunctionComponent<Props>,
  store?: GuardProps['store'],
): FunctionComponent<Props> {
  return (props) => (
    <Guard store={store}>
      <Part {...props} />
    </Guard>
  );
}
