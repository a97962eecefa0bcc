/** A series of values in time as files give it, and what is looked over before it is used. */

/** One value of a series. */
export interface TimedValue {
  /** First minute on the local clock [min], counted from midnight before 1 January of year 1. */
  readonly local: number;
  /** The same on a clock that is never put forward or back [min]. */
  readonly running: number;
  /** How long it lasts [min], where the file says so. */
  readonly duration?: number | undefined;
  readonly value: number;
  /** Line of the file it stands in. */
  readonly line: number;
}

/** A value whose length is known. */
export interface LastingValue extends TimedValue {
  readonly duration: number;
}

/** What makes a file useless: one of these, and nothing is taken from it. */
export type FileProblem =
  | { readonly code: 'empty' | 'packed' | 'notText' | 'unreadable' | 'failed' }
  | { readonly code: 'tooLarge'; readonly bytes: number }
  | { readonly code: 'notXml'; readonly line: number }
  | { readonly code: 'cutShort'; readonly line: number }
  | { readonly code: 'noGreenButton' }
  | { readonly code: 'otherMeter'; readonly unit: string }
  | { readonly code: 'noReadings' }
  | { readonly code: 'allNegative'; readonly count: number; readonly line: number }
  | { readonly code: 'noTable' }
  | { readonly code: 'openQuote'; readonly line: number }
  | {
      readonly code: 'mostlyBad';
      readonly count: number;
      readonly of: number;
      readonly row: RowProblem;
    }
  | {
      readonly code: 'mostlyAbsurd';
      readonly count: number;
      readonly of: number;
      readonly line: number;
    };

/** What makes a row useless: it is left out, counted and told. */
export type RowProblem =
  | {
      readonly code: 'fewColumns';
      readonly line: number;
      readonly found: number;
      readonly wanted: number;
    }
  | { readonly code: 'badTime'; readonly line: number; readonly text: string }
  | { readonly code: 'badValue'; readonly line: number; readonly text: string };

/** What the reader should know of a file that was taken. */
export type FileNote =
  | { readonly code: 'leftOut'; readonly count: number; readonly row: RowProblem }
  | { readonly code: 'negative' | 'absurd'; readonly count: number; readonly line: number }
  | {
      readonly code: 'gaps';
      readonly count: number;
      readonly minutes: number;
      readonly local: number;
    }
  | { readonly code: 'overlaps'; readonly count: number; readonly line: number }
  | { readonly code: 'clockForward' | 'clockBack'; readonly local: number }
  | { readonly code: 'ownZone' | 'noReadingType' }
  | { readonly code: 'otherSeries'; readonly count: number };

/** From minutes since 1 January 1970 in UTC to minutes of the local clock since year 1. */
export type ToLocal = (utcMinute: number) => number;

/** Minutes from the beginning of year 1 to 1 January 1970, day number 719163 (ISO 8601). */
export const minutesTo1970 = 719_162 * 1440;

export interface LookedOver {
  /** In the order of time, none overlapping. */
  readonly values: readonly LastingValue[];
  readonly notes: readonly FileNote[];
}

const hour = 60;
/** Values this close meet [min]: a meter's clock is allowed a second. */
const close = 1 / 60 + 1e-9;

/** Whether most steps go back: the newest value stands first. */
function isBackward(values: readonly TimedValue[]): boolean {
  let back = 0;
  values.forEach(({ local }, index) => {
    const before = values[index - 1];
    if (before !== undefined) back += Math.sign(before.local - local);
  });
  return back > 0;
}

/** The step found most often between neighbours [min]; null when there is none. */
export function usualStep(values: readonly TimedValue[]): number | null {
  const counts = new Map<number, number>();
  values.forEach(({ local }, index) => {
    const before = values[index - 1];
    const step = before === undefined ? 0 : Math.round((local - before.local) * 60) / 60;
    if (step > 0) counts.set(step, (counts.get(step) ?? 0) + 1);
  });
  let [best, most] = [null as number | null, 0];
  for (const [step, count] of counts) if (count > most) [best, most] = [step, count];
  return best;
}

/**
 * Gives values without a zone the clock that never changes. In autumn an hour comes twice, so the
 * local clock goes back by one; in spring an hour after midnight is jumped. Anything else is a gap or
 * an overlap and stays one.
 */
export function withRunningClock(values: readonly TimedValue[]): readonly TimedValue[] {
  const ordered = isBackward(values) ? [...values].reverse() : values;
  const step = usualStep(ordered);
  if (step === null || step > hour) return ordered;
  let shift = 0;
  return ordered.map((value, index) => {
    const before = ordered[index - 1];
    if (before !== undefined) {
      const due = before.local + step;
      const jump = value.local - due;
      if (Math.abs(jump + hour) < close && mayChange(value.local)) shift += hour;
      // The clock is put forward on the whole hour.
      if (Math.abs(jump - hour) < close && mayChange(due) && due % hour === 0) shift -= hour;
    }
    return { ...value, running: value.local + shift };
  });
}

/** Clocks are changed before four on a Sunday of spring or autumn; common practice, no source. */
function mayChange(local: number): boolean {
  const date = new Date((local - minutesTo1970) * 60_000);
  const isSeason = [2, 3, 8, 9, 10].includes(date.getUTCMonth());
  return local % 1440 < 4 * hour && date.getUTCDay() === 0 && isSeason;
}

/** Puts values in order, drops what overlaps, and counts gaps and changes of the clock. */
export function lookOver(values: readonly TimedValue[], step: number): LookedOver {
  const sorted = values
    .map((value): LastingValue => ({ ...value, duration: value.duration ?? step }))
    .sort((a, b) => a.running - b.running || a.line - b.line);
  const kept: LastingValue[] = [];
  const notes: FileNote[] = [];
  const gaps = { count: 0, minutes: 0, local: 0 };
  const overlaps = { count: 0, line: 0 };
  for (const value of sorted) {
    const last = kept.at(-1);
    if (last !== undefined) {
      const apart = value.running - (last.running + last.duration);
      if (apart < -close) {
        overlaps.count += 1;
        overlaps.line ||= value.line;
        continue;
      }
      if (apart > close) {
        gaps.count += 1;
        gaps.minutes += apart;
        gaps.local ||= last.local + last.duration;
      }
      notes.push(...clockChange(last, value));
    }
    kept.push(value);
  }
  return {
    values: kept,
    notes: [
      ...(gaps.count > 0 ? [{ code: 'gaps', ...gaps } as const] : []),
      ...(overlaps.count > 0 ? [{ code: 'overlaps', ...overlaps } as const] : []),
      ...notes,
    ],
  };
}

function clockChange(before: TimedValue, next: TimedValue): readonly FileNote[] {
  const moved = next.local - next.running - (before.local - before.running);
  if (Math.abs(moved) < close) return [];
  return [{ code: moved > 0 ? 'clockForward' : 'clockBack', local: next.local }];
}
