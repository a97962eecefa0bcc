import { effect } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { NumberControl } from '#ui/controls/numberControl.ts';

/** One setting of a picture that travels in the page's address. */
export interface LinkField {
  /** Short text, letters, digits, dot and minus; empty when the setting is as it came. */
  read(): string;
  /** Takes what a link says; whatever makes no sense is ignored. */
  write(text: string): void;
}

/** Settings of one picture by name; names are letters only. */
export type LinkFields = Readonly<Record<string, LinkField>>;

/** A dial as a link field, left out while it stands at its opening value. */
export function dialInLink(dial: NumberControl): LinkField {
  const opening = dial.value.peek();
  return {
    read: () => (dial.value.value === opening ? '' : String(dial.value.value)),
    write: (text) => {
      const value = Number(text);
      if (text !== '' && Number.isFinite(value)) dial.apply(value);
    },
  };
}

/** Reads one picture's settings out of an address's query: `?cubelaw=speed-1750_price-0.3`. */
export function readLink(search: string, name: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const part of (new URLSearchParams(search).get(name) ?? '').split('_')) {
    const match = /^([a-zA-Z]+)-([a-zA-Z0-9.+-]+)$/.exec(part);
    if (match?.[1] !== undefined && match[2] !== undefined) found.set(match[1], match[2]);
  }
  return found;
}

/** Writes one picture's settings into a query and leaves everything else in it alone. */
export function writeLink(search: string, name: string, fields: LinkFields): string {
  const query = new URLSearchParams(search);
  const parts = Object.entries(fields)
    .map(([key, field]) => [key, field.read()] as const)
    .filter(([, text]) => text !== '')
    .map(([key, text]) => `${key}-${text}`);
  if (parts.length === 0) query.delete(name);
  else query.set(name, parts.join('_'));
  const text = query.toString();
  return text === '' ? '' : `?${text}`;
}

/**
 * Keeps a picture's settings in the page's address, so that a link shows the same picture. Reads
 * it after mounting only; the fragment, which carries the pad, is left as it is.
 */
export function useLinkState(name: string, fields: LinkFields): void {
  useEffect(() => {
    const given = readLink(location.search, name);
    for (const [key, field] of Object.entries(fields)) {
      const text = given.get(key);
      if (text !== undefined) field.write(text);
    }
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = effect(() => {
      for (const field of Object.values(fields)) field.read();
      clearTimeout(timer);
      timer = setTimeout(() => {
        const search = writeLink(location.search, name, fields);
        if (search === location.search) return;
        history.replaceState(history.state, '', location.pathname + search + location.hash);
      }, 400);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [name, fields]);
}
