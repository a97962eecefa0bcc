import MiniSearch, { type SearchResult } from 'minisearch';
import { findOptions, indexOptions, type Place } from './places.ts';

/** A piece of a sentence; a hit is what was looked for. */
export interface Piece {
  readonly text: string;
  readonly hit: boolean;
}

export interface Found {
  readonly at: string;
  readonly page: string;
  readonly heading: string;
  /** The sentence with most of the words in it, or the first; empty where there is only a title. */
  readonly sentence: readonly Piece[];
}

/** Finds places by words. */
export type Finder = (words: string) => readonly Found[];

/** Sentences of a place, a block at a time. */
export function sentencesOf(text: string): string[] {
  return text
    .split('\n')
    .flatMap((block) => block.split(/(?<=[.!?:])\s+(?=[\p{Lu}\d“])/u))
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== '');
}

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

function patternOf(terms: readonly string[]): RegExp {
  const longestFirst = [...terms].sort((a, b) => b.length - a.length).map(escaped);
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${longestFirst.join('|')})(?![\\p{L}\\p{N}])`, 'giu');
}

/** A sentence cut at the words looked for. */
export function piecesOf(sentence: string, terms: readonly string[]): Piece[] {
  const pieces: Piece[] = [];
  let done = 0;
  for (const { 0: hit, index } of sentence.matchAll(patternOf(terms))) {
    if (index > done) pieces.push({ text: sentence.slice(done, index), hit: false });
    pieces.push({ text: hit, hit: true });
    done = index + hit.length;
  }
  if (done < sentence.length) pieces.push({ text: sentence.slice(done), hit: false });
  return pieces;
}

/**
 * The sentence that has the most different words of those found, the earliest of equals; the first
 * where none has any.
 */
function bestSentence(text: string, terms: readonly string[]): readonly Piece[] {
  const pattern = patternOf(terms);
  const sentences = sentencesOf(text);
  let best = sentences[0] ?? '';
  let most = 0;
  for (const sentence of sentences) {
    const hits = new Set(sentence.match(pattern)?.map((hit) => hit.toLowerCase())).size;
    if (hits > most) [best, most] = [sentence, hits];
  }
  return best === '' ? [] : piecesOf(best, terms);
}

function found(result: SearchResult): Found {
  const { at, page, heading, text } = result as unknown as Place;
  return { at, page, heading, sentence: bestSentence(text, result.terms) };
}

/** The finder over an index as it was made when the site was built. */
export function finderFrom(index: string): Finder {
  const places = MiniSearch.loadJSON<Place>(index, indexOptions);
  return (words) => (words.trim() === '' ? [] : places.search(words, findOptions).map(found));
}
