/**
 * Where a field of the pad stands. A step such as "@skim" names the entry of a list by its id, so
 * that a field stays with its entry when the list is put in another order.
 */
import { type Path, valueAt } from '#pad/messages/path.ts';

export type Spot = readonly (string | number)[];

function idOf(step: string | number): string | null {
  return typeof step === 'string' && step.startsWith('@') ? step.slice(1) : null;
}

function placeOf(list: unknown, id: string): number {
  if (!Array.isArray(list)) return -1;
  return (list as readonly { readonly id?: unknown }[]).findIndex((entry) => entry?.id === id);
}

/** The path of a spot in this document, or null when an entry it names is not there. */
export function pathTo(document: unknown, spot: Spot): Path | null {
  const path: (string | number)[] = [];
  let here = document;
  for (const step of spot) {
    const id = idOf(step);
    const place = id === null ? step : placeOf(here, id);
    if (place === -1) return null;
    path.push(place);
    here = valueAt(here, [place]);
  }
  return path;
}

/** The value at a spot; undefined where there is nothing. */
export function valueAtSpot(document: unknown, spot: Spot): unknown {
  const path = pathTo(document, spot);
  return path === null ? undefined : valueAt(document, path);
}

/** The spot as a path of the definition, in which every entry of a list is like the first. */
export function pattern(spot: Spot): Path {
  return spot.map((step) => (idOf(step) === null ? step : 0));
}

/** The id of a field's element; the same on every build and wherever its entry has moved. */
export function elementId(spot: Spot): string {
  return ['form', ...spot.map((step) => idOf(step) ?? step)].join('-');
}
