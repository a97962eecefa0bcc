import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { documentProblemSentence } from '#pad/document/documentProblems.ts';
import { padFileName } from '#pad/document/written.ts';
import { pathKey } from '#pad/messages/path.ts';
import { useForm } from './form.ts';

/** Hands a text to the browser as a file. */
function saveText(text: string, name: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}

/** Where the pad is kept: here, in a file, in a link. */
export function StepKeep({ schemaHref }: { schemaHref: string }): JSX.Element {
  const form = useForm();
  const { store } = form;
  const link = useSignal('');
  const wrong = useSignal<readonly string[]>([]);
  const aside = store.aside();

  const copyLink = async () => {
    const { origin, pathname } = location;
    try {
      link.value = origin + pathname + (await store.fragment());
    } catch {
      form.said.value = 'The link could not be made: a part of this page is missing. Reload it.';
      return;
    }
    try {
      await navigator.clipboard.writeText(link.value);
      form.said.value = 'Link copied.';
    } catch {
      form.said.value = 'The link stands in the field below; copy it from there.';
    }
  };
  const open = async (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (file === undefined) return;
    const parsed = await store.open(await file.text());
    if (parsed === null) return;
    const units = form.units.peek();
    wrong.value = parsed.ok
      ? []
      : [
          parsed.sentence,
          ...parsed.problems.map(
            (each) => `${pathKey(each.path)}: ${documentProblemSentence(each, units)}`,
          ),
        ];
    form.said.value = parsed.ok ? `Opened ${file.name}.` : parsed.sentence;
    input.value = '';
  };
  return (
    <div class="form-fields">
      <p>
        {store.refuses.value
          ? 'This browser is not keeping your changes, because its storage is shut off or full. Save the pad as a file before you leave this page.'
          : 'Every change is kept in this browser, on this device. Nothing is sent anywhere. To have it elsewhere, take it with you as a file or a link.'}
      </p>
      <div class="form-adders">
        <button
          type="button"
          class="button"
          onClick={() => saveText(store.fileText(), padFileName(form.pad.peek()))}
        >
          Save as a file
        </button>
        <button type="button" class="button button-quiet" onClick={copyLink}>
          Copy a link
        </button>
      </div>
      {link.value !== '' && (
        <div class="field">
          <label class="field-label" for="form-link">
            The link, with the whole pad in it
          </label>
          <input
            id="form-link"
            class="input form-link"
            readOnly
            value={link}
            onFocus={(event) => event.currentTarget.select()}
          />
        </div>
      )}
      <div class="field">
        <label class="field-label" for="form-file">
          Open a pad file
        </label>
        <p class="field-help" id="form-file-hint">
          It opens beside this pad, which stays among “Your pads”. A broken file changes nothing.
        </p>
        <input
          id="form-file"
          class="file-field"
          type="file"
          accept=".json,application/json"
          aria-invalid={wrong.value.length > 0}
          aria-describedby={
            wrong.value.length > 0 ? 'form-file-wrong form-file-hint' : 'form-file-hint'
          }
          onChange={(event) => open(event.currentTarget)}
        />
      </div>
      <Refused sentences={wrong.value} />
      {aside !== null && (
        <div class="form-offer">
          <p>An earlier pad was put aside because it could not be read.</p>
          <button
            type="button"
            class="button button-quiet"
            onClick={() => saveText(aside, 'earlier-pad.json')}
          >
            Save it as a file
          </button>
        </div>
      )}
      <p class="field-help">
        The file is plain JSON. <a href={schemaHref}>Its JSON Schema</a> says what may stand in it.
      </p>
    </div>
  );
}

const mostShown = 8;

/** Why a file was refused, and everything else that is wrong in it. */
function Refused({ sentences }: { sentences: readonly string[] }): JSX.Element | null {
  const [first, ...others] = sentences;
  if (first === undefined) return null;
  const more = others.length - mostShown;
  return (
    <div class="form-faults">
      <p class="field-error" id="form-file-wrong">
        <span class="visually-hidden">Error: </span>
        {first}
      </p>
      {others.length > 1 && (
        <ul>
          {others.slice(0, mostShown).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
          {more > 0 && <li>and {more} more</li>}
        </ul>
      )}
    </div>
  );
}
