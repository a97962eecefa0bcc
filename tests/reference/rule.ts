/** A rule knows one kind of case: what it may be given, and how the core answers it. */
import type { JsonObject, ReferenceCase } from './caseFile.ts';
import { unconditioned } from './conditions.ts';
import { Given, NotUnderstood } from './given.ts';
import { fromCanonical, type Key, parseKey, toCanonical, type Value } from './keys.ts';
import { rootOf } from './root.ts';

/** Works out one expected value, in SI, by calling the core. */
export type Answer = (given: Given, key: Key) => Value;

export interface Rule {
  readonly what: string;
  /** Inputs that must be there, as ids; "bore|nominal" takes either. */
  readonly needs: readonly string[];
  /**
   * Further inputs that may be there. Listing one is a promise that the rule either uses it wherever
   * it bears on the answer or checks that it agrees with what is used instead.
   */
  readonly takes?: readonly string[];
  /** Answers by name, whatever the index. */
  readonly gives: Readonly<Record<string, Answer>>;
  /** For cases whose inputs would look ordinary in another family. */
  readonly ownFamilyOnly?: boolean;
  /** A further look at the case, where names alone do not tell kinds apart. */
  readonly when?: (given: Given) => boolean;
}

export interface Family {
  readonly name: string;
  /** Matches the `quantity` of the files the family is for. */
  readonly quantity: RegExp;
  readonly rules: readonly Rule[];
}

/** What the core says to a case: one value for each expected key. */
export interface Answers {
  readonly keys: readonly Key[];
  readonly values: readonly Value[];
}

const withoutIndex = (id: string): string => id.replace(/#\d+$/, '');

function isThere(given: Given, need: string): boolean {
  return need.split('|').some((id) => given.has(id));
}

/** Inputs of the case that a rule uses or checks, as ids. */
function taken(given: Given, { needs, takes = [] }: Rule): readonly string[] {
  const known = [...needs.flatMap((need) => need.split('|')), ...takes];
  return given.ids.filter((id) => known.includes(id) || known.includes(withoutIndex(id)));
}

function fits(rule: Rule, given: Given, keys: readonly Key[]): boolean {
  return taken(given, rule).length === given.ids.length && suits(rule, given, keys);
}

/** Fits, but for inputs that the rule does not know. */
function suits(rule: Rule, given: Given, keys: readonly Key[]): boolean {
  return (
    rule.needs.every((need) => isThere(given, need)) &&
    keys.every(({ name }) => Object.hasOwn(rule.gives, name)) &&
    (rule.when?.(given) ?? true)
  );
}

function expectedKeys(expected: JsonObject): readonly Key[] {
  return Object.keys(expected).map((raw) => {
    const key = parseKey(raw);
    if (key === undefined) throw new NotUnderstood(`the expected value ${raw} is not known`);
    return key;
  });
}

/** The rules to try: those of the file's own families first, then the rest that travel. */
function inOrder(families: readonly Family[], quantity: string): readonly Rule[] {
  const own = families.filter((family) => family.quantity.test(quantity));
  const others = families.filter((family) => !own.includes(family));
  return [
    ...own.flatMap(({ rules }) => rules),
    ...others.flatMap(({ rules }) => rules.filter(({ ownFamilyOnly }) => ownFamilyOnly !== true)),
  ];
}

/** The first rule that fits answers; one that finds the case odd after all hands it on. */
function direct(rules: readonly Rule[], given: Given, keys: readonly Key[]): readonly Value[] {
  let reason = 'no rule takes these inputs and gives these values';
  for (const rule of rules) {
    if (!fits(rule, given, keys)) continue;
    try {
      return keys.map((key) => rule.gives[key.name]?.(given, key) ?? null);
    } catch (error) {
      if (!(error instanceof NotUnderstood)) throw error;
      reason = `${rule.what}: ${error.message}`;
    }
  }
  throw new NotUnderstood(reason);
}

/** The first of several ways that understands the case; the first one's reason where none does. */
function firstOf<T>(...ways: readonly (() => T)[]): T {
  let reason: NotUnderstood | undefined;
  for (const way of ways)
    try {
      return way();
    } catch (error) {
      if (!(error instanceof NotUnderstood)) throw error;
      reason ??= error;
    }
  throw reason ?? new NotUnderstood('there is no way');
}

/**
 * Each value by the rule that uses most of the inputs; between them the rules must use them all, so
 * that none is overlooked.
 */
function together(rules: readonly Rule[], given: Given, keys: readonly Key[]): readonly Value[] {
  const used = new Set<string>();
  const values = keys.map((key) => {
    const suited = rules
      .filter((rule) => suits(rule, given, [key]))
      .map((rule) => ({ rule, ids: taken(given, rule) }))
      .toSorted((one, other) => other.ids.length - one.ids.length);
    return firstOf<Value>(
      ...suited.map(({ rule, ids }) => () => {
        const value = rule.gives[key.name]?.(given, key) ?? null;
        for (const id of ids) used.add(id);
        return value;
      }),
    );
  });
  const stray = given.ids.find((id) => !used.has(id));
  if (stray !== undefined) throw new NotUnderstood(`no rule uses the input ${stray}`);
  return values;
}

/** An input that a rule gives from the value asked for: the rule is asked the other way round. */
function backwards(rules: readonly Rule[], { inputs, what }: Asked, key: Key): Value {
  for (const [raw, target] of Object.entries(inputs)) {
    const traded = parseKey(raw);
    if (typeof target !== 'number' || traded === undefined) continue;
    const rest = Object.fromEntries(Object.entries(inputs).filter(([name]) => name !== raw));
    const at = (guess: number): number => {
      const shown = fromCanonical(guess, key.unit);
      const given = new Given({ ...rest, [key.raw]: shown }, [traded], what);
      const [value] = direct(rules, given, [traded]);
      return typeof value !== 'number' ? Number.NaN : value - toCanonical(target, traded.unit);
    };
    const found = rootOf(at);
    if (found !== undefined) return found;
  }
  throw new NotUnderstood('no rule takes these inputs and gives these values');
}

interface Asked {
  readonly inputs: JsonObject;
  readonly what: string;
}

/**
 * Finds the rules for a case and has them answer: one rule for all values, else one for each, else
 * a rule that gives one of the inputs from what is asked, else rules that share the inputs between
 * them, else with the conditions that keys spell as inputs. Throws NotUnderstood when none does.
 */
export function answer(
  families: readonly Family[],
  quantity: string,
  { what, inputs, expected }: Pick<ReferenceCase, 'what' | 'inputs' | 'expected'>,
): Answers {
  const keys = expectedKeys(expected);
  const given = new Given(inputs, keys, what);
  const rules = inOrder(families, quantity);
  const each = (key: Key): Value =>
    firstOf<Value>(
      () => direct(rules, given, [key])[0] ?? null,
      () => backwards(rules, { inputs, what }, key),
      () => {
        const plain = unconditioned(inputs, key);
        const [value] = answer(families, quantity, { what, ...plain }).values;
        return value ?? null;
      },
    );
  const values = firstOf<readonly Value[]>(
    () => direct(rules, given, keys),
    () => keys.map(each),
    () => together(keys.length > 1 ? rules : [], given, keys),
  );
  return { keys, values };
}
