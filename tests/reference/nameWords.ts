/** Names of keys in whatever words and order. */

/** Words that say the same in every name. */
const sameWord: Readonly<Record<string, string>> = {
  maximum: 'max',
  greatest: 'max',
  highest: 'max',
  most: 'max',
  minimum: 'min',
  least: 'min',
  lowest: 'min',
  shortest: 'min',
  vapor: 'vapour',
  temp: 'temperature',
  dia: 'diameter',
  inner: 'inside',
  internal: 'inside',
  outer: 'outside',
  external: 'outside',
  prices: 'price',
  thickness: 'wall',
  coefficient: 'k',
  coefficients: 'k',
  rated: 'reference',
  full: 'reference',
  wire: 'electrical',
  input: 'electrical',
  liquid: 'water',
};

/** A name as a set of words, so that `flow_low` and `low_flow` are one. */
export function wordsOf(spelling: string): string {
  const words = spelling.split('_').filter((word) => word !== 'of' && word !== 'the');
  return words
    .map((word) => (Object.hasOwn(sameWord, word) ? (sameWord[word] as string) : word))
    .sort()
    .join('_');
}
