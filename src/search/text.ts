import type { IndexState } from './model.ts';

/** Places shown at once; more than that nobody reads. */
export const mostShown = 20;

/** What became of the search, in a sentence. */
export function outcome(words: string, state: IndexState, count: number): string {
  if (words.trim() === '') return 'Type a word, or a few: all of them must be there.';
  if (state === 'waiting') return 'Fetching the index.';
  if (state === 'unreachable') {
    return 'The index could not be fetched. Check the connection and type again.';
  }
  if (count === 0) return `Nothing has “${words.trim()}”. Try fewer words, or other ones.`;
  if (count === 1) return 'One place found.';
  if (count <= mostShown) return `${count} places found, the nearest first.`;
  return `${count} places found; the nearest ${mostShown} are shown. Add a word to narrow them.`;
}
