import type { PadReader } from '#pad/document/reader.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padKey } from './padKey.ts';

export { padKey };
/** Where text is kept aside that could not be read, or that a link took the place of. */
export const asideKey = 'cubelaw-pad-aside';

/** As much of the browser's storage as is used here. */
export type KeepingPlace = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

export type Kept =
  | { readonly kind: 'pad'; readonly pad: Pad; readonly text: string }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'spoiled'; readonly sentence: string };

const spoiled =
  'The pad kept in this browser could not be read, so the example stands here instead. Its text is ' +
  'kept aside and can be saved as a file.';

/** The browser's storage, or null where it is shut off. */
export function browserStorage(): KeepingPlace | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}

function read(place: KeepingPlace | null, key: string): string | null {
  try {
    return place?.getItem(key) ?? null;
  } catch {
    return null;
  }
}

function write(place: KeepingPlace | null, key: string, text: string): boolean {
  try {
    place?.setItem(key, text);
    return place !== null;
  } catch {
    return false;
  }
}

/** A kept text as a pad. Text that is no pad is put aside, and the sentence says so. */
export function readKept(
  place: KeepingPlace | null,
  text: string | null,
  parse: PadReader['parse'],
): Kept {
  if (text === null) return { kind: 'nothing' };
  const parsed = parse(text);
  if (parsed.ok) return { kind: 'pad', pad: parsed.pad, text };
  if (putAside(place, text) && read(place, padKey) === text) place?.removeItem(padKey);
  return { kind: 'spoiled', sentence: spoiled };
}

/** Puts text aside, in the place of any that was there. */
export function putAside(place: KeepingPlace | null, text: string): boolean {
  return write(place, asideKey, text);
}

/** Text that was put aside, or null. */
export function readAside(place: KeepingPlace | null): string | null {
  return read(place, asideKey);
}
