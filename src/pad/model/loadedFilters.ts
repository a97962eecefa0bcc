/** The filters of a pad, and the circuit with them loaded so far. */
import type { CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { filterFactor } from '#core/hydraulics/equipment.ts';
import type { Section } from '#pad/document/schema.ts';
import { type FilterEnd, filterEnd } from './filterEnds.ts';

/** The filters with both ends known, with branches and all. */
export function filtersIn(sections: readonly Section[]): readonly FilterEnd[] {
  return sections.flatMap((section): readonly FilterEnd[] => {
    if (section.kind === 'parallel') {
      return section.branches.flatMap((branch) => filtersIn(branch.sections));
    }
    const end = section.kind === 'equipment' ? filterEnd(section) : null;
    return end === null ? [] : [end];
  });
}

/** The same parts with each of these filters loaded so far [-], 0 to 1. */
export function withLoading(
  parts: readonly CircuitPart[],
  filters: readonly FilterEnd[],
  loading: number,
): readonly CircuitPart[] {
  return parts.map((part) => {
    if (part.kind === 'parallel') {
      const branches = part.branches.map((branch) => ({
        ...branch,
        parts: withLoading(branch.parts, filters, loading),
      }));
      return { ...part, branches };
    }
    const filter = filters.find(({ id }) => id === part.id);
    if (part.kind !== 'equipment' || filter === undefined) return part;
    // The factor may have been fitted to readings, so it is moved and not set.
    const moved = filterFactor(filter, loading) / filterFactor(filter, filter.now);
    return { ...part, factor: part.factor * moved };
  });
}
