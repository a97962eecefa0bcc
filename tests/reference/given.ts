/** The inputs of a case as rules read them: by name, in SI. */
import { isObject, type Json, type JsonObject } from './caseFile.ts';
import { type Key, parseKey, type Value, valueInSI } from './keys.ts';
import type { KeyUnit } from './keyUnits.ts';

/** The case asks for something no rule can answer. It is reported as skipped, never as a miss. */
export class NotUnderstood extends Error {
  override readonly name = 'NotUnderstood';
}

interface Entry {
  readonly key: Key;
  readonly value: Value;
}

function entriesOf(inputs: JsonObject): readonly Entry[] {
  // An input of null says that there is none.
  const stated = Object.entries(inputs).filter(([, value]) => value !== null);
  return stated.map(([raw, value]) => {
    const key = parseKey(raw);
    if (key === undefined) throw new NotUnderstood(`the input ${raw} is not known`);
    return { key, value: valueInSI(value, key.unit) };
  });
}

export class Given {
  readonly ids: readonly string[];
  /** The keys of the expected values; some inputs are "in the units of the case". */
  readonly expected: readonly Key[];
  /** What the case says it is, where one input alone cannot tell two standards apart. */
  readonly what: string;
  readonly #entries: ReadonlyMap<string, Entry>;
  readonly #inputs: JsonObject;

  constructor(inputs: JsonObject, expected: readonly Key[] = [], what = '') {
    this.#inputs = inputs;
    const entries = entriesOf(inputs);
    // Days beside hours are how often, not how long.
    const isBoth = entries.filter(({ key }) => key.id === 'time').length > 1;
    this.#entries = new Map(
      entries.map((entry) => [
        isBoth && ['days', 'weeks'].includes(entry.key.raw) ? 'days' : entry.key.id,
        entry,
      ]),
    );
    if (this.#entries.size < entries.length) {
      throw new NotUnderstood('two inputs mean the same thing');
    }
    this.ids = [...this.#entries.keys()];
    this.expected = expected;
    this.what = what;
  }

  has(id: string): boolean {
    return this.#entries.has(id);
  }

  value(id: string): Value {
    const entry = this.#entries.get(id);
    if (entry === undefined) throw new NotUnderstood(`the input ${id} is missing`);
    return entry.value;
  }

  key(id: string): Key | undefined {
    return this.#entries.get(id)?.key;
  }

  number(id: string): number {
    const value = this.value(id);
    if (typeof value !== 'number') throw new NotUnderstood(`the input ${id} is not a number`);
    return value;
  }

  maybe(id: string): number | undefined {
    return this.has(id) ? this.number(id) : undefined;
  }

  /** Words, or a number written out: an edition may be 2009 or "2009". */
  text(id: string): string {
    const value = this.value(id);
    if (typeof value !== 'string' && typeof value !== 'number') {
      throw new NotUnderstood(`the input ${id} is not text`);
    }
    return String(value).trim().toLowerCase();
  }

  list(id: string): readonly Value[] {
    const value = this.value(id);
    if (!Array.isArray(value)) throw new NotUnderstood(`the input ${id} is not a list`);
    return value as readonly Value[];
  }

  numbers(id: string): readonly number[] {
    return this.list(id).map((each) => {
      if (typeof each !== 'number') throw new NotUnderstood(`${id} is not a list of numbers`);
      return each;
    });
  }

  /** A list of pairs of numbers. */
  pairs(id: string): readonly (readonly [number, number])[] {
    return this.list(id).map((pair) => {
      const [first, second] = Array.isArray(pair) ? (pair as readonly Json[]) : [];
      if (
        typeof first !== 'number' ||
        typeof second !== 'number' ||
        (pair as Json[]).length !== 2
      ) {
        throw new NotUnderstood(`${id} is not a list of pairs`);
      }
      return [first, second] as const;
    });
  }

  /** Some of the inputs as they stand in the file, to be read again beside others. */
  rawOf(ids: readonly string[]): JsonObject {
    const there = [...this.#entries].filter(([id]) => ids.includes(id));
    return Object.fromEntries(there.map(([, { key }]) => [key.raw, this.#inputs[key.raw] ?? null]));
  }

  /** An object inside the inputs, which may hold nothing but the names listed. */
  inside(value: Value, allowed: readonly string[]): Given {
    if (!isObject(value)) throw new NotUnderstood('an object was wanted');
    const inner = new Given(value);
    const stray = inner.ids.find((id) => !allowed.includes(id));
    if (stray !== undefined) throw new NotUnderstood(`${stray} is not known here`);
    return inner;
  }

  /** The unit in which the case expects a quantity. */
  expectedUnit(...names: readonly string[]): KeyUnit | undefined {
    return this.expected.find(({ name }) => names.includes(name))?.unit;
  }
}
