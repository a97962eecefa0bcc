import type { Pad } from './schema.ts';

function isEmpty(value: unknown): boolean {
  if (value === null || value === '' || value === false) return true;
  return typeof value === 'object' && Object.keys(value).length === 0;
}

/** Fields whose entries are the reader's own, so that an empty one means something. */
const keptWhole: readonly string[] = ['sources'];

/** The document without the fields that reading fills in again: null, false, "", [] and {}. */
function withoutEmpty(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutEmpty);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value)
    .map(([name, inner]) => [name, keptWhole.includes(name) ? inner : withoutEmpty(inner)] as const)
    .filter(([, inner]) => !isEmpty(inner));
  return Object.fromEntries(entries);
}

/** The pad as text on as few characters as it takes, for links and for keeping in the browser. */
export function serialisePad(pad: Pad): string {
  return JSON.stringify(withoutEmpty(pad));
}

/** The pad as the text of a file that a person can read. */
export function padFileText(pad: Pad): string {
  return `${JSON.stringify(withoutEmpty(pad), null, 2)}\n`;
}

/** A name for the file: "garden-pool.pad.json". */
export function padFileName(pad: Pad): string {
  const plain = pad.name
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${plain === '' ? 'pad' : plain}.pad.json`;
}
