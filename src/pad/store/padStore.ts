import { ownerPad } from '#pad/demos/demoOwner.ts';
import { fetchedReader } from '#pad/document/reader.ts';
import { createPadStore } from './store.ts';
import { browserSurroundings } from './surroundings.ts';

const reader = fetchedReader(async () => (await import('#pad/document/padReader.ts')).padReader);

/**
 * The pad that every part of a page shares. It holds the example until a part that has come to life
 * calls `connect` in an effect; building a page never writes to it.
 */
export const padStore = createPadStore(ownerPad, browserSurroundings, reader);
