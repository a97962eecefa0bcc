/** From the values of a file to the intervals of a meter, looked over. */
import { joinedIntervals } from '#core/meter/meter.ts';
import type { MeterInterval } from '#core/meter/meterIntervals.ts';
import { type FileNote, type FileProblem, lookOver, type TimedValue } from './series.ts';

/** What was read from a meter file. */
export interface MeterFile {
  /** In the order of time, joined to quarters of an hour where they are shorter. */
  readonly intervals: readonly MeterInterval[];
  /** Length that most intervals of the file have [min]. */
  readonly step: number;
  /** How many intervals the file held. */
  readonly count: number;
  readonly notes: readonly FileNote[];
}

/** More than any house and its pool can draw [W]; beyond it the unit is wrong. Common practice, no source. */
const mostPower = 200_000;

/** Longest interval that still says something of a day [min]: a month of bills does not. */
const longest = 1440 * 31;

interface Count {
  count: number;
  line: number;
}

function counted(count: Count, line: number): void {
  count.count += 1;
  count.line ||= line;
}

/** `energyOf` turns a value and its length [min] into joules. */
export function meterFile(
  values: readonly TimedValue[],
  step: number,
  energyOf: (value: number, minutes: number) => number,
  notes: readonly FileNote[],
): MeterFile | FileProblem {
  const looked = lookOver(values, step);
  const negative: Count = { count: 0, line: 0 };
  const absurd: Count = { count: 0, line: 0 };
  const intervals = looked.values.flatMap(({ local, duration, value, line }): MeterInterval[] => {
    const energy = energyOf(value, duration);
    if (energy < 0) counted(negative, line);
    else if (energy / duration / 60 > mostPower || duration > longest) counted(absurd, line);
    else return [{ start: local, duration, energy }];
    return [];
  });
  if (absurd.count > intervals.length) {
    return { code: 'mostlyAbsurd', ...absurd, of: looked.values.length };
  }
  if (intervals.length === 0) {
    return negative.count > 0 ? { code: 'allNegative', ...negative } : { code: 'noReadings' };
  }
  return {
    intervals: joinedIntervals(intervals),
    step,
    count: intervals.length,
    notes: [
      ...notes,
      ...looked.notes,
      ...(negative.count > 0 ? [{ code: 'negative', ...negative } as const] : []),
      ...(absurd.count > 0 ? [{ code: 'absurd', ...absurd } as const] : []),
    ],
  };
}
