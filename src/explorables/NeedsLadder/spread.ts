/** Moves places apart until each stands at least `gap` from the next, near where it wished to be. */
export function spread(
  wishes: readonly number[],
  gap: number,
  least: number,
  most: number,
): number[] {
  const order = wishes.map((_, index) => index).sort((a, b) => (wishes[a] ?? 0) - (wishes[b] ?? 0));
  const places = order.map((index) => wishes[index] ?? 0);
  let floor = least;
  for (let at = 0; at < places.length; at += 1) {
    places[at] = Math.max(places[at] ?? 0, floor);
    floor = (places[at] ?? 0) + gap;
  }
  let roof = most;
  for (let at = places.length - 1; at >= 0; at -= 1) {
    places[at] = Math.min(places[at] ?? 0, roof);
    roof = (places[at] ?? 0) - gap;
  }
  const found: number[] = [];
  order.forEach((index, at) => {
    found[index] = places[at] ?? 0;
  });
  return found;
}
