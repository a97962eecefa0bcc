/** Where a value stands in a document: names of fields and places in lists, outermost first. */
export type Path = readonly (string | number)[];

/** The path as one word, for keys and for tying a sentence to its field: "pump/knowledge/points/0". */
export function pathKey(path: Path): string {
  return path.join('/');
}

function child(value: unknown, step: string | number): unknown {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
  return (value as Record<string | number, unknown>)[step];
}

/** What stands at `path`, or undefined where there is nothing. */
export function valueAt(document: unknown, path: Path): unknown {
  return path.reduce(child, document);
}

/**
 * The document with `value` at `path`. Everything beside the path is the same object as before, so
 * that what was worked out from it need not be worked out again. An unchanged value gives back the
 * document itself.
 */
export function withValueAt<T>(document: T, path: Path, value: unknown): T {
  const [step, ...rest] = path;
  if (step === undefined) return value as T;
  if (typeof document !== 'object' || document === null) return document;
  const before = child(document, step);
  const after = withValueAt(before, rest, value);
  if (Object.is(before, after)) return document;
  if (Array.isArray(document)) {
    return document.map((item, place) => (place === step ? after : item)) as T;
  }
  return { ...document, [step]: after };
}
