/** A point of a drawn line as fractions of the picture, x rightward and y downward. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Where a direct label stands: its anchor on the line, and on which side of it the words lie. */
export interface Placement extends Spot {
  readonly above: boolean;
  /** Words end at the anchor instead of starting there. */
  readonly ends: boolean;
}

/** A line that wants a label, and how large the words are as fractions of the picture. */
export interface LabelWish {
  readonly line: readonly Spot[];
  readonly width: number;
  readonly height: number;
  /** Where along the picture the label would best stand, 0 to 1. */
  readonly wish?: number;
}

/** A part of the picture, as fractions of it. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const gap = 0.02;

function boxOf(spot: Placement, width: number, height: number): Box {
  const left = spot.ends ? spot.x - width : spot.x;
  const top = spot.above ? spot.y - height - gap : spot.y + gap;
  return { left, right: left + width, top, bottom: top + height };
}

/** How far a box sticks out of the picture. */
function outside(box: Box): number {
  return (
    Math.max(0, -box.left) +
    Math.max(0, box.right - 1) +
    Math.max(0, -box.top) +
    Math.max(0, box.bottom - 1)
  );
}

function overlap(a: Box, b: Box): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > 0 && high > 0 ? wide * high : 0;
}

const inside = (box: Box, spot: Spot) =>
  spot.x >= box.left && spot.x <= box.right && spot.y >= box.top && spot.y <= box.bottom;

/** Counts the places where lines run through the words. */
function crossings(box: Box, lines: readonly (readonly Spot[])[]): number {
  return lines.reduce((sum, line) => sum + line.filter((spot) => inside(box, spot)).length, 0);
}

function candidates(wish: LabelWish): Placement[] {
  return wish.line.flatMap((spot) =>
    [true, false].flatMap((above) => [true, false].map((ends) => ({ ...spot, above, ends }))),
  );
}

function cost(box: Box, spot: Placement, wish: LabelWish, taken: Box[], lines: Spot[][]): number {
  const apart = Math.abs(spot.x - (wish.wish ?? 0.6));
  const hits = taken.reduce((sum, other) => sum + overlap(box, other), 0);
  // Words on words are never worth it, however small the part that is covered.
  const covered = hits > 0 ? 100 + hits * 1000 : 0;
  return outside(box) * 100 + covered + crossings(box, lines) * 2 + apart;
}

/**
 * Finds a place on its line for each label, in order of importance: inside the frame first, then
 * clear of what stands there and of labels already placed, then clear of every line, then near where
 * it was wished.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  standing: readonly Box[] = [],
): (Placement | undefined)[] {
  const lines = wishes.map((wish) => [...wish.line]);
  const taken = [...standing];
  return wishes.map((wish) => {
    let best: { spot: Placement; box: Box; cost: number } | undefined;
    for (const spot of candidates(wish)) {
      const box = boxOf(spot, wish.width, wish.height);
      const price = cost(box, spot, wish, taken, lines);
      if (best === undefined || price < best.cost) best = { spot, box, cost: price };
    }
    if (best !== undefined) taken.push(best.box);
    return best?.spot;
  });
}
