import { useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { emptyPad } from '#pad/parts.ts';
import { focusSoon } from './Entry.tsx';
import { useForm } from './form.ts';
import { stepElement } from './steps.ts';

/** An example to start from, as the page offers it. */
export interface StartChoice {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
}

/** Start from an example or from nothing. The examples are fetched when one is asked for. */
export function Start({ starts }: { starts: readonly StartChoice[] }): JSX.Element {
  const form = useForm();
  const { store } = form;
  const whose = useComputed(() => {
    const name = form.pad.value.name || 'A pad without a name';
    return store.isOwn.value ? `${name}: kept in this browser` : `${name}: an example to try out`;
  });
  const begin = async (id: string, title: string) => {
    const { demos } = await import('#pad/demos.ts');
    const demo = demos.find((each) => each.id === id);
    if (demo !== undefined) store.replace(demo.pad, `starting from “${title}”`);
  };
  const beginEmpty = () => {
    store.replace(emptyPad(form.units.peek().preset), 'starting from an empty pad');
    form.open.value = ['place'];
    focusSoon(`${stepElement('place')}-head`);
  };
  return (
    <section class="form-start" aria-labelledby="form-start-title">
      <h2 id="form-start-title">Start from</h2>
      <p class="form-whose">{whose}</p>
      <ul class="form-starts">
        <li>
          <button type="button" class="form-card" onClick={beginEmpty}>
            <strong>An empty pad</strong>
            <span>Yours, from nothing. Leave out what you do not know.</span>
          </button>
        </li>
        {starts.map(({ id, title, sentence }) => (
          <li key={id}>
            <button type="button" class="form-card" onClick={() => begin(id, title)}>
              <strong>{title}</strong>
              <span>{sentence}</span>
            </button>
          </li>
        ))}
      </ul>
      <p class="field-help">
        The examples are invented. What stands here now is replaced; Undo brings it back.
      </p>
    </section>
  );
}

/** What the reader should be told about the pad as a whole. */
export function NoticeBar(): JSX.Element | null {
  const { store } = useForm();
  const notice = store.notice.value;
  return (
    <div role="status">
      {notice !== null && (
        <div class={notice.kind === 'error' ? 'form-notice is-wrong' : 'form-notice'}>
          <p>{notice.sentence}</p>
          <button
            type="button"
            class="button button-quiet form-small"
            onClick={store.dismissNotice}
          >
            Close this note
          </button>
        </div>
      )}
    </div>
  );
}
