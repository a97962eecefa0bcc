import { CoreError } from '#core/base/errors.ts';

interface Kept<Arguments, Result> {
  readonly given: Arguments;
  readonly result: Result;
}

/** How many results each function keeps: the reader's pad, and the examples beside it. */
const keptResults = 6;

/**
 * The same function, but called with the very same objects it gives the very same result, without
 * working it out again. A pad is never changed in place, so a part of it that an edit did not touch
 * is the same object as before, and so is everything that follows from it.
 */
export function memoize<Arguments extends readonly unknown[], Result>(
  work: (...given: Arguments) => Result,
): (...given: Arguments) => Result {
  let kept: readonly Kept<Arguments, Result>[] = [];
  return (...given) => {
    const found = kept.find((entry) => entry.given.every((one, at) => Object.is(one, given[at])));
    if (found !== undefined) return found.result;
    const entry = { given, result: work(...given) };
    kept = [entry, ...kept].slice(0, keptResults);
    return entry.result;
  };
}

/** Works something out when it is first asked for, and only then. */
export function lazy<Result>(work: () => Result): () => Result {
  let kept: { readonly result: Result } | undefined;
  return () => {
    kept ??= { result: work() };
    return kept.result;
  };
}

/**
 * What the core makes of figures that each are allowed but together make no sense, such as a pump
 * of a millionth of a watt: null, where it would refuse.
 */
export function unlessRefused<Result>(work: () => Result): Result | null {
  try {
    return work();
  } catch (error) {
    if (error instanceof CoreError) return null;
    throw error;
  }
}
