/** From the bench of a day, and what the reader wants to try, to what the core searches in. */
import type { CalendarDate } from '#core/calendar.ts';
import {
  type CheapestDayInputs,
  type SpeedRow,
  settableRatios,
  speedTable,
} from '#core/cheapestDayInputs.ts';
import { ruleOn } from '#core/tariff.ts';
import type { Bench } from '#widgets/DaySheet/figures.ts';

/** What may be tried without changing the pad. */
export interface Wishes {
  /** Minutes a day of a need, by its id; those left out stay as the pad has them. */
  readonly minutes: Readonly<Record<string, number>>;
  /** Turnovers wanted in a day [-]. */
  readonly turnovers: number;
  readonly mayStop: boolean;
  /** Most changes of speed in a day, or null for as many as it takes. */
  readonly mostChanges: number | null;
}

/** What each speed of the pump does; worked out once for a bench. */
export function rowsOf(bench: Bench): readonly SpeedRow[] {
  const { reference, least, top, step } = bench.speeds;
  const range = { least: least / reference, top: top / reference, step: step / reference };
  return speedTable(settableRatios(range), bench.pointAt);
}

/** The question as the core takes it, or null while price or volume is not known. */
export function askedOf(
  bench: Bench,
  rows: readonly SpeedRow[],
  date: CalendarDate,
  wishes: Wishes,
): CheapestDayInputs | null {
  const { tariff, volume } = bench;
  if (tariff === null || volume === null || rows.length === 0) return null;
  return {
    speeds: rows,
    mayStop: wishes.mayStop,
    leastVolume: wishes.turnovers * volume,
    needs: bench.needs.map((need) => ({
      ...need,
      minutes: wishes.minutes[need.id] ?? need.minutes,
    })),
    limits: bench.limits,
    quiet: bench.quiet,
    prices: ruleOn(tariff, date).dayType.bands,
    ...(wishes.mostChanges !== null && { mostChanges: wishes.mostChanges }),
  };
}

/** Nobody sets a pump for less than this [min]; common practice, no source. */
const shortestBlock = 10;

/** The question asked by someone who will set the pump to the answer. */
export function toBeSet(asked: CheapestDayInputs): CheapestDayInputs {
  return { ...asked, shortestBlock };
}
