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

/**
 * Whether both ends of a span are whole minutes on the clock.
 *
 * Law: start in 0..1439, end in 0..1440, both integers.
 * @param span The stretch [see Span], any numbers.
 * @returns true when the span can be used [-].
 * @throws nothing; anything else than whole minutes on the clock gives false.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example Number(isSpan({ start: 1380, end: 1440 })) // 1.000
 */
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
 *
 * Law: start in 0..1439, end in 0..1440, both integers.
 * @param field Name of the input, for the error [-], any text.
 * @param span The stretch [see Span], any numbers.
 * @returns The same span [see Span].
 * @throws CoreError that names the end at fault.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example requireSpan('block', { start: 60, end: 120 }).end // 120.0
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
 * How long a span lasts.
 *
 * Law: (end - start) modulo 1440, and 1440 when that is 0.
 * @param span The stretch [see Span], fields as there.
 * @returns Length [min], 1 to 1440.
 * @throws CoreError when an end is not a whole minute on the clock.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example spanMinutes({ start: 1397, end: 343 }) // 386.0
 */
export function spanMinutes(span: Span): number {
  requireSpan('span', span);
  const length = (span.end - span.start + minutesPerDay) % minutesPerDay;
  return length === 0 ? minutesPerDay : length;
}

/**
 * Whether a minute of the clock lies inside a span.
 *
 * Law: (minute - start) modulo 1440 < length.
 * @param span The stretch [see Span], fields as there.
 * @param minute Minute of the day [min], 0 to 1439.
 * @returns true inside [-].
 * @throws CoreError when the span or the minute is not on the clock.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example Number(spanHolds({ start: 1320, end: 360 }, 10)) // 1.000
 */
export function spanHolds(span: Span, minute: number): boolean {
  if (!isWholeBetween(minute, 0, minutesPerDay - 1)) {
    throw new CoreError('minute', minute, 'a whole minute from 0 to 1439');
  }
  return (minute - span.start + minutesPerDay) % minutesPerDay < spanMinutes(span);
}

/**
 * The straight pieces of a span, in the order of the clock.
 *
 * Law: cut at midnight when the span crosses it.
 * @param span The stretch [see Span], fields as there.
 * @returns One or two pieces [see Piece].
 * @throws CoreError when an end is not a whole minute on the clock.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example piecesOf({ start: 1320, end: 360 }).length // 2.000
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
 *
 * Law: set union, cut at midnight.
 * @param spans The stretches [see Span], any order, may overlap.
 * @returns Sorted pieces [see Piece] that neither touch nor overlap.
 * @throws CoreError when an end is not a whole minute on the clock.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example unionOf([{ start: 0, end: 60 }, { start: 60, end: 90 }])[0].end // 90.00
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

/**
 * The minutes that lie in both lists.
 *
 * Law: set intersection, piece by piece.
 * @param first Pieces [see Piece], any number, sorted, none overlapping.
 * @param second Pieces [see Piece], any number, sorted, none overlapping.
 * @returns Sorted pieces [see Piece], none overlapping; those that touch stay apart.
 * @throws nothing; lists that share no minute give an empty one.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example intersectionOf([{ start: 0, end: 60 }], [{ start: 30, end: 90 }])[0].start // 30.00
 */
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

/**
 * The minutes of the day in none of the pieces.
 *
 * Law: set complement in 0..1440.
 * @param pieces Pieces [see Piece], any number, sorted, none overlapping.
 * @returns Sorted pieces [see Piece].
 * @throws nothing; a full day gives an empty list.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example complementOf([{ start: 60, end: 1440 }])[0].end // 60.00
 */
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
 *
 * Law: pieces that touch join, and a run that ends at midnight goes on into one that starts there.
 * @param pieces Pieces [see Piece], any order, may overlap.
 * @returns Runs [see Span]; the whole day is start 0, end 1440.
 * @throws CoreError when an end is not a whole minute on the clock.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example ringRuns([{ start: 0, end: 60 }, { start: 1380, end: 1440 }])[0].start // 1380
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
