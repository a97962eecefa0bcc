import type { JSX } from 'preact';
import { emptyPad } from '#pad/document/parts.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { focusSoon } from './Entry.tsx';
import { useForm } from './form.ts';
import { elementId } from './spot.ts';
import { stepElement } from './steps.ts';

/** An example to start from, as the page offers it. */
export interface StartChoice {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
}

/** The reader's pads, and what a new one can start from. The examples are fetched when one is asked for. */
export function Start({ starts }: { starts: readonly StartChoice[] }): JSX.Element {
  const form = useForm();
  const { store } = form;
  const begin = async (id: string, title: string) => {
    const { demos } = await import('#pad/demos/demos.ts');
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
      <h2 id="form-start-title">Your pads</h2>
      <YourPads />
      <h3>Start another</h3>
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
        The examples are invented. Whatever you open here stands beside your pads and takes the
        place of none.
      </p>
    </section>
  );
}

const nameOf = (name: string) => (name === '' ? 'A pad without a name' : name);

// A button that goes away when it is pressed hands the focus on.
const whoseId = 'form-whose';
const bringBackId = 'form-bring-back';

/** Every pad this browser keeps: which one is open, and what can be done with each. */
function YourPads(): JSX.Element {
  const { pad, store, said, open } = useForm();
  const { shelf } = store;
  const rename = () => {
    open.value = ['place'];
    focusSoon(elementId(['name']));
  };
  const whose = useComputed(() => {
    const name = nameOf(pad.value.name);
    if (!store.isOwn.value)
      return `${name}: an example to try out. Change anything to make it yours.`;
    return store.isKept.value
      ? `Open: ${name}. It is kept in this browser.`
      : `Open: ${name}. This browser is not keeping it: save it as a file.`;
  });
  const pads = shelf.pads.value;
  const deleted = shelf.deleted.value;
  return (
    <>
      <p class="form-whose" id={whoseId} tabIndex={-1}>
        {whose}
      </p>
      {store.isOwn.value && (
        <div class="form-shelf-own">
          <button type="button" class="button button-quiet" onClick={rename}>
            Rename
          </button>
          <button type="button" class="button button-quiet" onClick={shelf.copy}>
            Make a copy
          </button>
        </div>
      )}
      {pads.length > 0 && (
        <ul class="form-shelf" aria-label="Pads in this browser">
          {pads.map(({ id, name }) => (
            <li key={id}>
              <span class="form-shelf-name">
                {id === shelf.openId.value ? nameOf(pad.value.name) : nameOf(name)}
              </span>
              {id === shelf.openId.value && store.isOwn.value ? (
                <span class="form-shelf-open">open</span>
              ) : (
                <button
                  type="button"
                  class="button button-quiet form-small"
                  aria-label={`Open ${nameOf(name)}`}
                  onClick={() => {
                    shelf.choose(id);
                    focusSoon(whoseId);
                  }}
                >
                  Open
                </button>
              )}
              <button
                type="button"
                class="button button-quiet form-small"
                aria-label={`Delete ${nameOf(name)}`}
                onClick={() => {
                  shelf.remove(id);
                  said.value = `${nameOf(name)} is deleted. “Bring it back” undoes that.`;
                  focusSoon(bringBackId);
                }}
              >
                Delete
              </button>
            </li>
          ))}
        </ul>
      )}
      {deleted !== null && (
        <p class="form-notice">
          {nameOf(deleted.name)} is deleted.{' '}
          <button
            type="button"
            id={bringBackId}
            class="button button-quiet form-small"
            onClick={() => {
              shelf.bringBack();
              focusSoon(whoseId);
            }}
          >
            Bring it back
          </button>
        </p>
      )}
    </>
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
