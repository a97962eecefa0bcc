/** From the bench of a day, and what the reader wants to try, to what the core searches in. */

import { flowSlack } from '#core/day/dayReport.ts';
import { type CheapestDay, cheapestDay, type FoundDay } from '#core/planner/cheapestDay.ts';
import {
  type CheapestDayInputs,
  type SpeedRow,
  settableRatios,
  speedTable,
} from '#core/planner/inputs.ts';
import { ruleOn } from '#core/tariff/tariff.ts';
import type { CalendarDate } from '#core/time/calendar.ts';
import { type Bench, type WorkedDay, workOut } from '#dayPage/day/figures.ts';
import type { PadBlock } from '#pad/document/schema.ts';
import { heldRatio } from '#pad/model/heldSpeed.ts';
import { needName } from '#words/needsAndLimits.ts';

/** What may be tried without changing the pad. */
export interface PlannerRequest {
  /** Minutes a day of a need, by its id; those left out stay as the pad has them. */
  readonly minutes: Readonly<Record<string, number>>;
  /** Turnovers wanted in a day [-]. */
  readonly turnovers: number;
  readonly mayStop: boolean;
  /** Most changes of speed in a day, or null for as many as it takes. */
  readonly mostChanges: number | null;
}

/** Smallest change of speed where the pad does not say [rpm]; common practice, no source. */
export const usualStep = 10;

/**
 * What each speed does that the pump can be set to; worked out once for a bench. Every step of its
 * range is among them, the slowest speed for each need, and the speeds of a day laid by hand [rpm].
 */
export function rowsOf(bench: Bench, laid: readonly (number | null)[] = []): readonly SpeedRow[] {
  const { reference, least, top, step } = bench.speeds;
  const range = {
    least: least / reference,
    top: top / reference,
    step: Math.min(step || usualStep, reference) / reference,
  };
  const speeds = [...laid, ...(step > 0 ? [] : slowestSpeeds(bench))];
  const also = speeds.flatMap((speed) => (speed ? [heldRatio(speed, bench.speeds)] : []));
  const { priming } = bench;
  const primes = priming === undefined ? [] : [priming.ratio];
  return speedTable(settableRatios(range, [...also, ...primes]), bench.pointAt);
}

/** The slowest whole speed that serves each need [rpm], where there is one. */
function slowestSpeeds({ speeds, needs, pointAt }: Bench): readonly number[] {
  const flowAt = (speed: number) => {
    const point = pointAt(speed / speeds.reference);
    return point.kind === 'flowing' ? point.flow : 0;
  };
  return needs.flatMap(({ leastFlow }) => {
    const enough = (speed: number) => flowAt(speed) >= leastFlow * (1 - flowSlack);
    let [low, high] = [Math.floor(speeds.least), Math.floor(speeds.top)];
    if (!enough(high)) return [];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (enough(middle)) high = middle;
      else low = middle;
    }
    return [high];
  });
}

/** The question as the core takes it, or null while price or volume is not known. */
export function plannerInputsOf(
  bench: Bench,
  rows: readonly SpeedRow[],
  date: CalendarDate,
  wishes: PlannerRequest,
): CheapestDayInputs | null {
  const { tariff, volume } = bench;
  if (tariff === null || volume === null || rows.length === 0) return null;
  return {
    speeds: rows,
    mayStop: wishes.mayStop,
    standbyPower: bench.standbyPower,
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

/** Nobody sets a pump for less than this [min], as on the sheet; common practice, no source. */
const shortestBlock = 15;

/** The question asked by someone who will set the pump to the answer. */
export function toBeSet(asked: CheapestDayInputs): CheapestDayInputs {
  return { ...asked, shortestBlock };
}

/** The cheapest day, and how it was asked for. */
export interface Cheapest {
  readonly asked: CheapestDayInputs;
  readonly found: CheapestDay;
}

/**
 * The cheapest day that someone can set. Where the pump primes, a start may pass a limit or wake the
 * quiet hours that the day itself keeps: then only a day without a stop is safe to give. The bound
 * stays that of all days, since priming turns each of them into one of those searched.
 */
export function cheapestOn(bench: Bench, date: CalendarDate, asked: CheapestDayInputs): Cheapest {
  const found = cheapestDay(toBeSet(asked));
  if (!breaksAtStart(bench, date, found)) return { asked, found };
  const running = { ...asked, mayStop: false };
  const through = cheapestDay(toBeSet(running));
  if (through.kind !== 'found' || found.kind !== 'found') return { asked: running, found: through };
  return { asked: running, found: { ...through, bound: Math.min(through.bound, found.bound) } };
}

/** Whether priming makes a found day pass a limit or wake the quiet hours. */
function breaksAtStart(bench: Bench, date: CalendarDate, found: CheapestDay): boolean {
  if (bench.priming === undefined || found.kind !== 'found') return false;
  const { report } = workOut(bench, padBlocks(found, bench.speeds.reference), date);
  return report.crossings.length + report.quietCrossings.length > 0;
}

/** The found day as blocks of a pad. */
export function padBlocks({ blocks }: FoundDay, reference: number): readonly PadBlock[] {
  return blocks.map(({ start, end, ratio }, place) => ({
    id: `cheapest-${place + 1}`,
    start,
    end: end % 1440,
    speed: Math.round(ratio * reference * 1e6) / 1e6,
    reason: '',
  }));
}

/** The blocks with what each serves as its reason. */
export function reasoned(
  blocks: readonly PadBlock[],
  worked: WorkedDay | null,
): readonly PadBlock[] {
  const services = worked?.report.needs ?? [];
  const segments = worked?.report.segments ?? [];
  return blocks.map((block) => {
    const own = segments.filter(({ blockId }) => blockId === block.id);
    const served = services.filter(({ runs }) =>
      runs.some(
        (run) =>
          run.counted &&
          own.some(({ start, end }) =>
            run.start < run.end
              ? start < run.end && end > run.start
              : end > run.start || start < run.end,
          ),
      ),
    );
    const names = served.map(({ need }) => needName(need));
    return { ...block, reason: names.length === 0 ? 'Moving the water' : names.join(', ') };
  });
}
