import { type ReadonlySignal, type Signal, useSignal } from '@preact/signals';
import type { FunctionComponent, JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Guard } from './Guard.tsx';

interface LaterProps<Props extends object> {
  /** Fetches the part. */
  readonly load: () => Promise<FunctionComponent<Props>>;
  /** The part itself where the page is built, and null in a browser: see `builtWith`. */
  readonly built: FunctionComponent<Props> | null;
  readonly props: Props;
  /** Whatever the part shows: it is fetched as soon as this is no longer what the page was built with. */
  readonly wake: ReadonlySignal<unknown>;
}

/**
 * A part of a page that stands there as it was built until it has a reason to change: then what draws
 * it is fetched. So a page is complete at first sight and carries the less.
 */
export function Later<Props extends object>({
  load,
  built,
  props,
  wake,
}: LaterProps<Props>): JSX.Element {
  const part: Signal<FunctionComponent<Props> | null> = useSignal(built);
  const failed = useSignal(false);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const first = wake.peek();
    const fetch = () => {
      off();
      // What stands here is no longer so; a page that opens a pad waits for it (pad/surroundings.ts).
      place.current?.setAttribute('data-comes', '');
      load().then(
        (found) => {
          part.value = found;
        },
        () => {
          failed.value = true;
        },
      );
    };
    const stop = wake.subscribe((now) => {
      if (now !== first) fetch();
    });
    const paper = window.matchMedia('print');
    const off = () => {
      stop();
      paper.removeEventListener('change', fetch);
      window.removeEventListener('pointerdown', fetch);
      window.removeEventListener('keydown', fetch);
    };
    window.addEventListener('pointerdown', fetch);
    window.addEventListener('keydown', fetch);
    paper.addEventListener('change', fetch);
    return off;
  }, []);
  const Part = part.value;
  if (failed.value) {
    return (
      <div class="later" key="failed">
        <p class="field-error">
          This part of the page could not be fetched. Reload the page when there is a connection.
        </p>
      </div>
    );
  }
  // Hydration leaves what was built inside such an element as it stands.
  if (Part === null)
    return <div ref={place} class="later" dangerouslySetInnerHTML={{ __html: '' }} />;
  return (
    <div class="later" key="there">
      <Guard>
        <Part {...props} />
      </Guard>
    </div>
  );
}
