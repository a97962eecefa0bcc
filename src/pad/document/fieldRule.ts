import { type Path, pathKey } from '#pad/messages/path.ts';
import type { Quantity } from '#units/quantities.ts';

/** What a form must know of one number of the pad: what it measures, and its bounds, ends included. */
export interface FieldRule {
  readonly quantity?: Quantity;
  readonly least?: number;
  readonly greatest?: number;
}

/** The rules of every number, by its path with 0 for the place in any list. */
export type FieldRules = Readonly<Record<string, FieldRule>>;

/** A branch holds parts that may branch again; a part has the same rules however deep it stands. */
const nested = /(\/0\/branches\/0\/sections)+(?=\/0\/)/;

/** The rule of the number at a path; an empty one for words and for what is no field. */
export function ruleAt(rules: FieldRules, path: Path): FieldRule {
  const alike = path.map((step) => (typeof step === 'number' ? 0 : step));
  return rules[pathKey(alike).replace(nested, '')] ?? {};
}
