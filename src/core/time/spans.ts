import { minutesPerDay } from '#core/base/constants.ts';
import { CoreError } from '#core/base/errors.ts';

/**
 * A stretch of the daily clock, end excluded. The clock is a ring: an end before the start crosses
 * midnight, and an end equal to the start means all 24 hours.
 */
export interface Span {
  /** First minute inside [min], whole, 0 to 1439. */
  readonly start: number;
  /** First minute after it [min], whole, 0 to 1440; 1440 is midnight, the same as 0. */
  readonly end: number;
}

/** A stretch that does not cross midnight: 0 <= start < end <= 1440. */
export interface Piece {
  /** First minute inside [min], whole, 0 to 1439. */
  readonly start: number;
  /** First minute after it [min], whole, 1 to 1440. */
  readonly end: number;
}

/** Whether both ends of a span are whole minutes on the clock. */
export function isSpan(span: Span): boolean {
  return (
    isWholeBetween(span.start, 0, minutesPerDay - 1) && isWholeBetween(span.end, 0, minutesPerDay)
  );
}

function isWholeBetween(value: number, min: number, max: number): boolean {
  return Number.isInteger(value) && value >= min && value <= max;
}

/**
 * Gives back the span when both its ends are whole minutes on the clock.
 * @throws CoreError that names the end at fault.
 */
export function requireSpan(field: string, span: Span): Span {
  if (!isWholeBetween(span.start, 0, minutesPerDay - 1)) {
    throw new CoreError(`${field}.start`, span.start, 'a whole minute from 0 to 1439');
  }
  if (!isWholeBetween(span.end, 0, minutesPerDay)) {
    throw new CoreError(`${field}.end`, span.end, 'a whole minute from 0 to 1440');
  }
  return span;
}

/**
 * How long a span lasts [min]; all 1440 where start and end are the same.
 * @throws CoreError when an end is not a whole minute on the clock.
 */
export function spanMinutes(span: Span): number {
  requireSpan('span', span);
  const length = (span.end - span.start + minutesPerDay) % minutesPerDay;
  return length === 0 ? minutesPerDay : length;
}

/**
 * Whether a minute of the clock lies inside a span.
 * @throws CoreError when the span or the minute is not on the clock.
 */
export function spanHolds(span: Span, minute: number): boolean {
  if (!isWholeBetween(minute, 0, minutesPerDay - 1)) {
    throw new CoreError('minute', minute, 'a whole minute from 0 to 1439');
  }
  return (minute - span.start + minutesPerDay) % minutesPerDay < spanMinutes(span);
}

/**
 * The straight pieces of a span, in the order of the clock.
 * @throws CoreError when an end is not a whole minute on the clock.
 */
export function piecesOf(span: Span): readonly Piece[] {
  const end = span.start + spanMinutes(span);
  if (end <= minutesPerDay) return [{ start: span.start, end }];
  return [
    { start: 0, end: end - minutesPerDay },
    { start: span.start, end: minutesPerDay },
  ];
}

/**
 * The minutes that lie in any of the spans.
 * @throws CoreError when an end is not a whole minute on the clock.
 */
export function unionOf(spans: readonly Span[]): readonly Piece[] {
  const sorted = spans.flatMap(piecesOf).sort((a, b) => a.start - b.start);
  const merged: { start: number; end: number }[] = [];
  for (const piece of sorted) {
    const last = merged.at(-1);
    if (last && piece.start <= last.end) last.end = Math.max(last.end, piece.end);
    else merged.push({ ...piece });
  }
  return merged;
}

/** The minutes that lie in both lists. */
export function intersectionOf(
  first: readonly Piece[],
  second: readonly Piece[],
): readonly Piece[] {
  return first.flatMap((a) =>
    second.flatMap((b) => {
      const start = Math.max(a.start, b.start);
      const end = Math.min(a.end, b.end);
      return start < end ? [{ start, end }] : [];
    }),
  );
}

/** The minutes of the day in none of the pieces. */
export function complementOf(pieces: readonly Piece[]): readonly Piece[] {
  const gaps: Piece[] = [];
  let reached = 0;
  for (const piece of pieces) {
    if (piece.start > reached) gaps.push({ start: reached, end: piece.start });
    reached = piece.end;
  }
  if (reached < minutesPerDay) gaps.push({ start: reached, end: minutesPerDay });
  return gaps;
}

/**
 * The unbroken runs of the ring that pieces make up.
 * @throws CoreError when an end is not a whole minute on the clock.
 */
export function ringRuns(pieces: readonly Piece[]): readonly Span[] {
  const runs = [...unionOf(pieces)];
  const first = runs[0];
  const last = runs.at(-1);
  if (runs.length > 1 && first?.start === 0 && last?.end === minutesPerDay) {
    return [...runs.slice(1, -1), { start: last.start, end: first.end }];
  }
  return runs;
}
