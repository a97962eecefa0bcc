/** What a three-block day is worked out on: the lesson's example, or the reader's own pad. */

import type { Block } from '#core/day/day.ts';
import type {
  DayReport,
  FlowLimit,
  QuietHours,
  RunningPoint,
  ServiceNeed,
} from '#core/day/dayReport.ts';
import type { Priming } from '#core/day/priming.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import type { CalendarDate } from '#core/time/calendar.ts';

export interface BenchNeed extends ServiceNeed {
  readonly name: string;
}

export interface BenchLimit extends FlowLimit {
  /** Never to be crossed, such as the flow marked on a suction cover. */
  readonly hard: boolean;
}

/** What the picture itself must know of a bench; plain data, so that it can be written into the page. */
export interface Setting {
  /** Speeds [rpm]. */
  readonly speeds: { readonly reference: number; readonly least: number; readonly top: number };
  readonly needs: readonly BenchNeed[];
  /** Sign or name of the currency. */
  readonly currency: string;
}

export interface Bench extends Setting {
  readonly pointAt: (ratio: number) => RunningPoint;
  /** Water in the pool [m3]. */
  readonly volume: number;
  readonly limits: readonly BenchLimit[];
  readonly quiet: readonly QuietHours[];
  readonly tariff: Tariff;
  /** The day that is priced. */
  readonly date: CalendarDate;
  /** Draw while the pump is stopped [W]; none when left out. */
  readonly standbyPower?: number | undefined;
  readonly priming?: Priming | undefined;
}

/** One block with what it does and takes. */
export interface WorkedBlock {
  readonly block: Block;
  /** [min] */
  readonly minutes: number;
  /** [rpm]; 0 is off. */
  readonly speed: number;
  /** [m3/s] */
  readonly flow: number;
  /** [W] */
  readonly power: number;
  /** Water moved [m3]. */
  readonly water: number;
  /** [J] */
  readonly energy: number;
  /** In the tariff's currency, without its daily charge. */
  readonly cost: number;
}

/** Hours that cost more than the cheapest, cut at midnight. */
export interface DearHours {
  readonly start: number;
  readonly end: number;
  /** [per kWh] */
  readonly price: number;
}

export interface WorkedDay {
  readonly parts: readonly WorkedBlock[];
  /** What the stopped pump draws [J], and its price. */
  readonly standby: { readonly energy: number; readonly cost: number };
  readonly report: DayReport<BenchNeed, BenchLimit>;
  /** In the tariff's currency, without its daily charge. */
  readonly cost: number;
  /** The part of it that falls in the dear hours. */
  readonly dearCost: number;
  readonly dear: readonly DearHours[];
  /** Flow [m3/s] and wire power [W] at top speed, for the axes. */
  readonly top: { readonly flow: number; readonly power: number };
}

/** Works a day of blocks out; the example's waits until the picture wakes. */
export type Worker = (blocks: readonly Block[]) => WorkedDay;
