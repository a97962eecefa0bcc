import { openKey, padKey } from '#pad/store/padKey.ts';

/**
 * Keeps what a reader does to a part of the page before its script has come, and does it again
 * once the part has come to life: fields and choices first, then buttons and forms in their order.
 *
 * A part that stands there with an example and is about to show the reader's own pad is left out:
 * what was meant for the one must not befall the other.
 *
 * Where such a pad is coming the page is marked, so that nothing of the example is taken for it, on
 * the screen or on paper, until it is there.
 *
 * Its text is put into the page, so it may use nothing from outside itself.
 */
function keepEarlyTouches(padKey: string, openKey: string): void {
  type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;
  const asleep = 'astro-island[ssr]';
  const fields = new Map<Field, () => void>();
  const acts: [part: Element, act: () => void][] = [];

  const ownPadComes = () => {
    try {
      const kept = localStorage.getItem(padKey) ?? sessionStorage.getItem(openKey);
      return kept !== null || location.hash.startsWith('#pad=');
    } catch {
      return false;
    }
  };

  if (ownPadComes()) document.documentElement.dataset['padComes'] = '';

  const keep = ({ target }: Event, found: (element: Element, island: Element) => void) => {
    const island = target instanceof Element ? target.closest(asleep) : null;
    if (!(target instanceof Element) || island === null) return;
    if (island.querySelector('[data-first-pad]') !== null && ownPadComes()) return;
    found(target, island);
  };

  addEventListener(
    'input',
    (event) =>
      keep(event, (element) => {
        const field = element as Field;
        const value = field.value;
        const isChecked = field instanceof HTMLInputElement && field.checked;
        const isFile = field instanceof HTMLInputElement && field.type === 'file';
        fields.set(field, () => {
          // What was kept from an earlier visit may have been put in its place meanwhile.
          if (!isFile) field.value = value;
          if (field instanceof HTMLInputElement) field.checked = isChecked;
          for (const type of ['input', 'change']) {
            field.dispatchEvent(new Event(type, { bubbles: true }));
          }
        });
      }),
    true,
  );

  addEventListener(
    'click',
    (event) =>
      keep(event, (element, island) => {
        const button = element.closest('button');
        if (button !== null && button.type !== 'submit') acts.push([island, () => button.click()]);
      }),
    true,
  );

  addEventListener(
    'submit',
    (event) =>
      keep(event, (element, island) => {
        event.preventDefault();
        acts.push([island, () => (element as HTMLFormElement).requestSubmit()]);
      }),
    true,
  );

  const replay = (island: Element) => {
    for (const [field, act] of fields) {
      if (!island.contains(field)) continue;
      fields.delete(field);
      act();
    }
    for (const [part, act] of acts) if (part === island) act();
  };

  addEventListener(
    'astro:hydrate',
    ({ target }) => {
      // The part reads what is stored after its first picture; what was touched comes after that.
      if (target instanceof Element) requestAnimationFrame(() => setTimeout(replay, 0, target));
    },
    true,
  );
}

/** The script for the head of every page that has parts which come to life. */
export const earlyTouchScript = `(${keepEarlyTouches.toString()})(${JSON.stringify(padKey)}, ${JSON.stringify(openKey)})`;
