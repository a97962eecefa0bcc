/** One word of the trade, in one plain sentence. */
export interface Term {
  /** As it heads its entry. */
  readonly term: string;
  /** What it means. */
  readonly says: string;
  /**
   * Spellings that lessons link to the entry, written small but for names and signs; the term itself
   * when left out, none when the word has too many other meanings.
   */
  readonly forms?: readonly string[];
}
