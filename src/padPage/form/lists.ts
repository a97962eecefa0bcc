import type { Section } from '#pad/document/schema.ts';
/** Changes of a list that give back a new one. */

export function inserted<T>(list: readonly T[], at: number, item: T): readonly T[] {
  return [...list.slice(0, at), item, ...list.slice(at)];
}

export function without<T>(list: readonly T[], at: number): readonly T[] {
  return list.filter((_, place) => place !== at);
}

export function replaced<T>(list: readonly T[], at: number, item: T): readonly T[] {
  return list.map((old, place) => (place === at ? item : old));
}

/** The entry at `from` moved by some places; the same list where it would leave it. */
export function moved<T>(list: readonly T[], from: number, by: number): readonly T[] {
  const item = list[from];
  const to = from + by;
  if (item === undefined || to < 0 || to >= list.length) return list;
  return inserted(without(list, from), to, item);
}

/** The ways the water can take in a part of the plumbing, by id, for saying where a thing stands. */
export function waysIn(sections: readonly Section[]): readonly { id: string; label: string }[] {
  return sections.flatMap((section) =>
    section.kind === 'parallel'
      ? section.branches.flatMap((branch, place) => [
          { id: branch.id, label: branch.name || `Way ${place + 1}` },
          ...waysIn(branch.sections),
        ])
      : [],
  );
}
