import type { Options, SearchOptions } from 'minisearch';

/** One place that can be found: a section of a lesson or of a page of the shelf, a term, a source. */
export interface Place {
  readonly id: number;
  /** Address with the place's name in the page. */
  readonly at: string;
  readonly page: string;
  /** The heading it stands under; empty at the head of a page. */
  readonly heading: string;
  /** Its prose, one block a line. */
  readonly text: string;
}

/** Where the index lies that is made when the site is built. */
export const indexPath = '/search-index.json';

/** How words are found; the index is made and read with the same options. */
export const indexOptions: Options<Place> = {
  fields: ['heading', 'page', 'text'],
  storeFields: ['at', 'page', 'heading', 'text'],
};

/** Every word must be there, as typed so far, and a long one may be mistyped by a letter. */
export const findOptions: SearchOptions = {
  combineWith: 'AND',
  prefix: true,
  fuzzy: (term) => (term.length > 4 ? 1 : false),
  boost: { heading: 4, page: 2 },
  weights: { fuzzy: 0.2, prefix: 0.6 },
};
