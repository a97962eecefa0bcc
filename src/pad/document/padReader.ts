import { checkDocument } from './check.ts';
import { parsePad } from './file.ts';
import type { PadReader } from './reader.ts';

/** Reads and checks pads by their definition; imported only when a page first needs it. */
export const padReader: PadReader = { check: checkDocument, parse: parsePad };
