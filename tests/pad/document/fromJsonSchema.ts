import * as fc from 'fast-check';

/** As much of JSON Schema as the pad file's uses. */
export interface JsonSchema {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, JsonSchema>>;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly maxItems?: number;
  readonly items?: JsonSchema;
  readonly prefixItems?: readonly JsonSchema[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | JsonSchema;
  readonly propertyNames?: JsonSchema;
  readonly description?: string;
}

/** Lists stay short: it is the shapes that matter, and a pad nests. */
const longestList = 3;

function numbers({ type, minimum = -1e9, maximum = 1e9 }: JsonSchema): fc.Arbitrary<number> {
  if (type === 'integer') {
    const least = Math.max(minimum, -(2 ** 31));
    return fc.integer({ min: least, max: Math.min(maximum, 2 ** 31 - 1) });
  }
  // JSON has no minus zero: it would come back as 0.
  return fc
    .double({ min: minimum, max: maximum, noNaN: true, noDefaultInfinity: true })
    .map((value) => (value === 0 ? 0 : value));
}

function texts({ pattern, minLength = 0, maxLength = 30 }: JsonSchema): fc.Arbitrary<string> {
  // Words of the reader's own: any text within its length that the pattern does not refuse.
  if (pattern?.includes('p{Cc}')) {
    const allowed = new RegExp(pattern, 'u');
    return fc
      .string({ unit: 'grapheme', minLength, maxLength: Math.min(maxLength, 30) })
      .filter((text) => text.length <= maxLength && allowed.test(text));
  }
  if (pattern !== undefined) return fc.stringMatching(new RegExp(pattern));
  return fc
    .string({ minLength, maxLength: Math.min(maxLength, 30), unit: 'grapheme' })
    .filter((text) => text.length <= maxLength);
}

function objects(schema: JsonSchema, of: (inner: JsonSchema) => fc.Arbitrary<unknown>) {
  const { properties, required = [], additionalProperties } = schema;
  if (properties === undefined) {
    const values =
      typeof additionalProperties === 'object' ? of(additionalProperties) : fc.anything();
    return fc.dictionary(texts(schema.propertyNames ?? {}), values, {
      maxKeys: 3,
      noNullPrototype: true,
    });
  }
  const entries = Object.entries(properties).map(([name, inner]) => [name, of(inner)] as const);
  return fc.record(Object.fromEntries(entries), {
    requiredKeys: [...required],
    noNullPrototype: true,
  });
}

/** Documents that a JSON Schema allows. */
export function documents(root: JsonSchema): fc.Arbitrary<unknown> {
  const named = new Map<string, fc.Arbitrary<unknown>>();

  function shape(schema: JsonSchema, depth: number): fc.Arbitrary<unknown> {
    const of = (inner: JsonSchema) => shape(inner, depth);
    if (schema.$ref !== undefined) return reference(schema.$ref, depth);
    const choices = schema.anyOf ?? schema.oneOf;
    if (choices !== undefined) return fc.oneof(...choices.map(of));
    if (schema.const !== undefined) return fc.constant(schema.const);
    if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
    switch (schema.type) {
      case 'null':
        return fc.constant(null);
      case 'boolean':
        return fc.boolean();
      case 'number':
      case 'integer':
        return numbers(schema);
      case 'string':
        return texts(schema);
      case 'array':
        if (schema.prefixItems !== undefined) return fc.tuple(...schema.prefixItems.map(of));
        return fc.array(of(schema.items ?? {}), {
          maxLength: Math.min(schema.maxItems ?? longestList, longestList),
        });
      case 'object':
        return objects(schema, of);
      default:
        throw new Error(`no documents for ${JSON.stringify(schema).slice(0, 200)}`);
    }
  }

  /** Sections hold branches that hold sections: below the third level only plain ones are made. */
  function reference(ref: string, depth: number): fc.Arbitrary<unknown> {
    const key = `${ref} ${depth}`;
    const known = named.get(key);
    if (known !== undefined) return known;
    const target = root.$defs?.[ref.replace('#/$defs/', '')];
    if (target === undefined) throw new Error(`${ref} is not defined`);
    const choices = target.oneOf ?? target.anyOf ?? [target];
    const plain = choices.filter((each) => !JSON.stringify(each).includes('$ref'));
    const used = depth >= 2 ? plain : choices;
    const made = fc.oneof(...used.map((each) => shape(each, depth + 1)));
    named.set(key, made);
    return made;
  }

  return shape(root, 0);
}
