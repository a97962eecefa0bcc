/** Both ends of a filter, also where the pad tells its clean end badly or not at all. */
import type { EquipmentSection } from '#pad/document/schema.ts';

/** Head a filter loses clean and due for cleaning, at one flow. */
export interface FilterEnd {
  readonly id: string;
  readonly cleanHead: number;
  readonly dirtyHead: number;
  /** Loading the pad stands at now [-], 0 to 1. */
  readonly now: number;
}

/**
 * Clean over dirty head at least [-]: a filter said to lose nothing clean, or of which nobody said
 * what it loses clean, still rises in a straight line to its dirty end.
 */
const leastClean = 1e-3;
/** A dirty head below this is none [m]. */
const leastDirty = 1e-2;

/** The ends of a filter; null for other equipment and where the dirty end is not known or not sound. */
export function filterEnd(section: EquipmentSection): FilterEnd | null {
  const { id, equipment, head, dirtyHead, loading } = section;
  if (equipment !== 'filter' || dirtyHead === null || dirtyHead < leastDirty) return null;
  if (head !== null && dirtyHead < head) return null;
  const cleanHead = Math.max(head ?? 0, leastClean * dirtyHead);
  // Without a clean end the dirty one is all that is known: it holds until a loading says less.
  return { id, cleanHead, dirtyHead, now: loading ?? (head === null ? 1 : 0) };
}
