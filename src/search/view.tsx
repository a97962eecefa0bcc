import type { JSX } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { useComputed } from '#ui/controls/failure.ts';
import { useSettled } from '#ui/controls/settle.ts';
import { guarded } from '#ui/loading/Guard.tsx';
import { type Finder, type Found, finderFrom } from './finder.ts';
import { createModel } from './model.ts';
import { indexPath } from './places.ts';
import { mostShown, outcome } from './text.ts';

async function fetchFinder(): Promise<Finder> {
  const answer = await fetch(indexPath);
  if (!answer.ok) throw new Error(`The index answered ${answer.status}.`);
  return finderFrom(await answer.text());
}

/** The words in the page's address, so that a search can be linked to and gone back to. */
function wordsInAddress(): string {
  return new URLSearchParams(location.search).get('q') ?? '';
}

function keepInAddress(words: string): void {
  const query = words.trim() === '' ? '' : `?q=${encodeURIComponent(words.trim())}`;
  if (query !== location.search) {
    history.replaceState(history.state, '', location.pathname + query);
  }
}

/** Moves along field and results with the arrow keys; Escape goes back to the field. */
function moveFocus(event: KeyboardEvent, section: HTMLElement | null): void {
  const stops = [...(section?.querySelectorAll<HTMLElement>('input, .search-found a') ?? [])];
  const here = stops.indexOf(document.activeElement as HTMLElement);
  const next = { ArrowDown: here + 1, ArrowUp: here - 1, Escape: 0 }[event.key];
  if (here === -1 || next === undefined || (here === 0 && event.key === 'Escape')) return;
  const stop = stops[next];
  if (stop === undefined) return;
  event.preventDefault();
  stop.focus();
}

/** A field, and the places that have its words. */
function Search(): JSX.Element {
  const model = useMemo(() => createModel(fetchFinder), []);
  const section = useRef<HTMLElement>(null);
  const shown = useComputed(() => model.found.value.slice(0, mostShown));
  const says = useComputed(() =>
    outcome(model.words.value, model.state.value, model.found.value.length),
  );
  const settled = useSettled(says, 400);
  useEffect(() => {
    model.words.value = wordsInAddress();
    void model.load();
  }, []);
  const type = (words: string) => {
    model.words.value = words;
    keepInAddress(words);
    void model.load();
  };
  return (
    <search
      class="search"
      ref={section}
      onKeyDown={(event: KeyboardEvent) => moveFocus(event, section.current)}
    >
      <form
        class="field needs-script"
        onSubmit={(event) => {
          event.preventDefault();
        }}
      >
        <label for="search-words">What are you looking for?</label>
        <input
          id="search-words"
          class="input search-words"
          type="search"
          autocomplete="off"
          spellcheck={false}
          aria-describedby="search-outcome"
          value={model.words}
          onInput={(event) => type(event.currentTarget.value)}
        />
      </form>
      <p class="search-outcome needs-script" id="search-outcome">
        {says}
      </p>
      <p class="visually-hidden" role="status">
        {settled}
      </p>
      <ol class="search-found">
        {shown.value.map((found) => (
          <Result key={found.at} found={found} />
        ))}
      </ol>
    </search>
  );
}

export default guarded(Search);

function Result({ found }: { readonly found: Found }): JSX.Element {
  const { at, page, heading, sentence } = found;
  return (
    <li>
      <a href={at}>{heading === '' ? page : heading}</a>
      {heading !== '' && <span class="search-page">{page}</span>}
      {sentence.length > 0 && (
        <p>
          {sentence.map(({ text, hit }, index) =>
            hit ? <mark key={`${index}-${text}`}>{text}</mark> : text,
          )}
        </p>
      )}
    </li>
  );
}
