import type { Path } from '#pad/messages/path.ts';

/** What of a pad has ids. */
interface WithIds {
  readonly plumbing: Readonly<Record<'suction' | 'discharge', readonly SectionIds[]>>;
  readonly readings: readonly Id[];
  readonly needs: readonly Id[];
  readonly limits: { readonly suctionCovers: readonly Id[] };
  readonly quiet: readonly Id[];
  readonly day: Readonly<Record<'blocks' | 'oldBlocks', readonly Id[]>>;
  readonly year: { readonly plans: readonly (Id & { readonly blocks: readonly Id[] })[] };
  readonly tariff: { readonly seasons: readonly (Id & { readonly dayTypes: readonly Id[] })[] };
}

interface Id {
  readonly id: string;
}

interface SectionIds extends Id {
  readonly branches?: readonly (Id & { readonly sections: readonly SectionIds[] })[];
}

interface Named {
  readonly id: string;
  readonly path: Path;
}

function own(items: readonly Id[], path: Path): readonly Named[] {
  return items.map((item, place) => ({ id: item.id, path: [...path, place, 'id'] }));
}

function ofSections(sections: readonly SectionIds[], path: Path): readonly Named[] {
  const within = sections.flatMap((section, place) => {
    if (section.branches === undefined) return [];
    const branches: Path = [...path, place, 'branches'];
    return [
      ...own(section.branches, branches),
      ...section.branches.flatMap((branch, at) =>
        ofSections(branch.sections, [...branches, at, 'sections']),
      ),
    ];
  });
  return [...own(sections, path), ...within];
}

/** Every group of things that must be told apart by their ids. */
function groupsOf(pad: WithIds): readonly (readonly Named[])[] {
  const { plumbing, tariff } = pad;
  return [
    [
      ...ofSections(plumbing.suction, ['plumbing', 'suction']),
      ...ofSections(plumbing.discharge, ['plumbing', 'discharge']),
    ],
    own(pad.readings, ['readings']),
    own(pad.needs, ['needs']),
    own(pad.limits.suctionCovers, ['limits', 'suctionCovers']),
    own(pad.quiet, ['quiet']),
    own(pad.day.blocks, ['day', 'blocks']),
    own(pad.day.oldBlocks, ['day', 'oldBlocks']),
    own(pad.year.plans, ['year', 'plans']),
    ...pad.year.plans.map((plan, place) => own(plan.blocks, ['year', 'plans', place, 'blocks'])),
    own(tariff.seasons, ['tariff', 'seasons']),
    // The same kind of day may come back in each season: a holiday names it once for all of them.
    ...tariff.seasons.map((season, place) =>
      own(season.dayTypes, ['tariff', 'seasons', place, 'dayTypes']),
    ),
  ];
}

/** Where an id stands that its group already has. */
export function repeatedIds(pad: WithIds): readonly Path[] {
  return groupsOf(pad).flatMap((group) => {
    const seen = new Set<string>();
    return group.filter(({ id }) => seen.size === seen.add(id).size).map(({ path }) => path);
  });
}

/** An id that none of `taken` has: the prefix and the next free number. */
export function freshId(prefix: string, taken: Iterable<{ readonly id: string }>): string {
  const ids = new Set(Array.from(taken, ({ id }) => id));
  let number = ids.size + 1;
  while (ids.has(`${prefix}${number}`)) number += 1;
  return `${prefix}${number}`;
}

/** Every part and branch of the plumbing, at any depth, for giving a new one a fresh id. */
export function plumbingIds(plumbing: WithIds['plumbing']): readonly { readonly id: string }[] {
  return [...ofSections(plumbing.suction, []), ...ofSections(plumbing.discharge, [])];
}
