import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate';
import { longestText, type ParsedPad, parsePad } from './file.ts';
import type { Pad } from './schema.ts';
import { serialisePad } from './written.ts';

/** How the fragment of a link that carries a pad begins; the number is the way it is packed. */
const anyPrefix = /^#?pad=(\d+)\.(.*)$/s;
const packing = '1';

/** A packed pad is never longer than this [characters]. */
const longestFragment = 200_000;

const damaged =
  'The pad in this link is damaged, perhaps because the link was cut short on its way. Ask for it ' +
  'again, or for the pad as a file. Your present pad is unchanged.';
const newer =
  'The pad in this link is packed in a way this page does not know yet. Reload the page to get its ' +
  'newest edition, then open the link again. Your present pad is unchanged.';

function toBase64Url(bytes: Uint8Array): string {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromBase64Url(text: string): Uint8Array {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}

/** The fragment of a link that carries the pad, with its "#". No server ever sees a fragment. */
export function padFragment(pad: Pad): string {
  const packed = deflateSync(strToU8(serialisePad(pad)), { level: 9 });
  return `#pad=${packing}.${toBase64Url(packed)}`;
}

function unpack(packed: string): string | null {
  try {
    // A full buffer means more was packed than a pad can hold: it is refused rather than unrolled.
    const room = new Uint8Array(longestText + 1);
    const bytes = inflateSync(fromBase64Url(packed), { out: room });
    return bytes.length > longestText ? null : strFromU8(bytes);
  } catch {
    return null;
  }
}

/** Reads the pad out of a link's fragment. */
export function parseFragment(fragment: string): ParsedPad {
  const [, version, packed] = anyPrefix.exec(fragment) ?? [];
  if (version === undefined || packed === undefined || packed.length > longestFragment) {
    return { ok: false, sentence: damaged, problems: [] };
  }
  if (version !== packing) return { ok: false, sentence: newer, problems: [] };
  const text = unpack(packed);
  if (text === null) return { ok: false, sentence: damaged, problems: [] };
  return parsePad(text);
}
