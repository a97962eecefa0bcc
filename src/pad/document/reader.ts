import type { Checked } from './check.ts';
import type { ParsedPad } from './file.ts';

/** What checks a pad and reads one from text. It carries the schema library, which is large. */
export interface PadReader {
  readonly check: (document: unknown) => Checked;
  readonly parse: (text: string) => ParsedPad;
}

/** Where the reader comes from: at hand, or fetched when it is first needed. */
export interface ReaderSource {
  /** The reader, or null until it has been fetched. */
  readonly present: () => PadReader | null;
  /** Fetches it; a later call tries again when an earlier one failed. */
  readonly fetch: () => Promise<PadReader>;
}

/** A reader that is fetched by `load`, once. */
export function fetchedReader(load: () => Promise<PadReader>): ReaderSource {
  let reader: PadReader | null = null;
  let coming: Promise<PadReader> | null = null;
  return {
    present: () => reader,
    fetch: () => {
      coming ??= load().then(
        (found) => {
          reader = found;
          return found;
        },
        (cause: unknown) => {
          coming = null;
          throw cause;
        },
      );
      return coming;
    },
  };
}
