import type * as z from 'zod/mini';
import { type Path, pathKey } from '#pad/messages/path.ts';
import { quantityAt, rangeAt } from './check.ts';
import type { FieldRules } from './fieldRule.ts';
import { padSchema } from './schema.ts';

/** The paths of all numbers inside a definition; a list inside its own entries is walked once. */
function numbersIn(
  schema: z.core.$ZodType,
  path: Path,
  around: readonly z.core.$ZodType[] = [],
): readonly Path[] {
  if (around.includes(schema)) return [];
  const { def } = (schema as z.core.$ZodTypes)._zod;
  const inside = [...around, schema];
  switch (def.type) {
    case 'object':
      return Object.entries(def.shape).flatMap(([name, inner]) =>
        numbersIn(inner, [...path, name], inside),
      );
    case 'array':
      return numbersIn(def.element, [...path, 0], inside);
    case 'union':
      return def.options.flatMap((option) => numbersIn(option, path, inside));
    case 'default':
    case 'prefault':
    case 'nullable':
    case 'optional':
      return numbersIn(def.innerType, path, inside);
    case 'number':
      return [path];
    default:
      return [];
  }
}

/** Worked out from the definition while the site is built, so that a page need not carry it. */
export function fieldRules(): FieldRules {
  const rules = numbersIn(padSchema, []).map((path) => {
    const quantity = quantityAt(path);
    return [pathKey(path), { ...(quantity !== null && { quantity }), ...rangeAt(path) }] as const;
  });
  return Object.fromEntries(rules);
}
