/** Minutes round the ring: one turn is one day, midnight on top, time runs clockwise. */
const day = 1440;
const turn = 2 * Math.PI;

/** Brings any minute count into one day, 0 up to but not including 1440. */
export function wrapMinute(minute: number): number {
  return ((minute % day) + day) % day;
}

/** Angle of a minute [rad], clockwise from the top. */
export function minuteAngle(minute: number): number {
  return (minute / day) * turn;
}

/** Place of a minute on a circle about (0, 0), y downward as on screen. */
export function ringPoint(minute: number, radius: number): { x: number; y: number } {
  const angle = minuteAngle(minute);
  return { x: radius * Math.sin(angle), y: -radius * Math.cos(angle) };
}

/** The nearest minute on a grid of `step` minutes that starts at midnight. */
export function snapMinute(minute: number, step: number): number {
  return wrapMinute(Math.round(minute / step) * step);
}

/** How long a block lasts [min]; equal ends mean the whole day. */
export function blockMinutes(start: number, end: number): number {
  return wrapMinute(end - start) || day;
}

/** Pieces of a block on a strip from midnight to midnight, as fractions; two when it crosses midnight. */
export function stripPieces(start: number, end: number): { from: number; to: number }[] {
  if (start === end) return [{ from: 0, to: 1 }];
  if (end > start) return [{ from: start / day, to: end / day }];
  const late = { from: start / day, to: 1 };
  return end === 0 ? [late] : [late, { from: 0, to: end / day }];
}

const place = (point: { x: number; y: number }) => `${point.x.toFixed(2)},${point.y.toFixed(2)}`;

/** Path of a ring piece from `start` to `end` between two radii, about (0, 0). */
export function ringPiece(start: number, end: number, inner: number, outer: number): string {
  const minutes = blockMinutes(start, end);
  if (minutes === day) return wholeRing(inner, outer);
  const large = minutes > day / 2 ? 1 : 0;
  return [
    `M${place(ringPoint(start, outer))}`,
    `A${outer},${outer} 0 ${large} 1 ${place(ringPoint(end, outer))}`,
    `L${place(ringPoint(end, inner))}`,
    `A${inner},${inner} 0 ${large} 0 ${place(ringPoint(start, inner))}Z`,
  ].join('');
}

/** An arc whose two ends meet is drawn as two halves: a single one would vanish. */
function wholeRing(inner: number, outer: number): string {
  const circle = (radius: number, sweep: 0 | 1) =>
    `M0,${-radius}A${radius},${radius} 0 1 ${sweep} 0,${radius}A${radius},${radius} 0 1 ${sweep} 0,${-radius}Z`;
  return circle(outer, 1) + circle(inner, 0);
}
