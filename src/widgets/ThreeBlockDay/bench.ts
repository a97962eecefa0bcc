/** What a three-block day is worked out on: the lesson's example, or the reader's own pad. */
import type { CalendarDate } from '#core/calendar.ts';
import type { FlowLimit, QuietHours, RunningPoint, ServiceNeed } from '#core/dayReport.ts';
import type { Tariff } from '#core/tariff.ts';

export interface BenchNeed extends ServiceNeed {
  readonly name: string;
}

export interface BenchLimit extends FlowLimit {
  /** Never to be crossed, such as the flow marked on a suction cover. */
  readonly hard: boolean;
}

export interface Bench {
  /** Speeds [rpm]. */
  readonly speeds: { readonly reference: number; readonly least: number; readonly top: number };
  readonly pointAt: (ratio: number) => RunningPoint;
  /** Water in the pool [m3]. */
  readonly volume: number;
  readonly needs: readonly BenchNeed[];
  readonly limits: readonly BenchLimit[];
  readonly quiet: readonly QuietHours[];
  readonly tariff: Tariff;
  /** The day that is priced. */
  readonly date: CalendarDate;
}
