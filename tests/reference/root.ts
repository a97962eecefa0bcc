/** A rule asked the other way round: the one value above 0 at which it gives what is stated. */
import { NotUnderstood } from './given.ts';

/** Steps from 1e-12 to 1e12, eight to a power of ten; every quantity in SI lies between. */
const ends = Array.from({ length: 193 }, (_, step) => 10 ** (step / 8 - 12));

/** A value outside what the core allows is no place to look for the root. */
function quietly(at: (x: number) => number): (x: number) => number | undefined {
  return (x) => {
    try {
      const value = at(x);
      return Number.isFinite(value) ? value : undefined;
    } catch (error) {
      if (error instanceof NotUnderstood) throw error;
      return undefined;
    }
  };
}

/** Halves a bracket, in logarithms, until nothing lies between its ends. */
function halved(at: (x: number) => number | undefined, low: number, high: number): number {
  let [from, to] = [low, high];
  const sign = Math.sign(at(from) ?? 0);
  for (let step = 0; step < 200; step += 1) {
    const middle = Math.sqrt(from * to);
    if (middle <= from || middle >= to) break;
    const value = at(middle);
    if (value === undefined || value === 0) return middle;
    if (Math.sign(value) === sign) from = middle;
    else to = middle;
  }
  return Math.sqrt(from * to);
}

/** The root of a rule, where there is just one; undefined where the rule does not fit or has several. */
export function rootOf(rule: (x: number) => number): number | undefined {
  const at = quietly(rule);
  try {
    at(1);
  } catch {
    return undefined;
  }
  const values = ends.map((x) => at(x));
  const brackets = ends.slice(1).flatMap((high, step) => {
    const [below, above] = [values[step], values[step + 1]];
    if (below === undefined || above === undefined) return [];
    return Math.sign(below) !== Math.sign(above) && below !== 0
      ? [[ends[step] ?? 0, high] as const]
      : [];
  });
  const [bracket] = brackets;
  return bracket === undefined || brackets.length > 1 ? undefined : halved(at, ...bracket);
}
