import { CoreError, requireNotNegative, requirePositive } from '#core/base/errors.ts';
import {
  intersectionOf,
  type Piece,
  requireSpan,
  ringRuns,
  type Span,
  spanMinutes,
  unionOf,
} from '#core/time/spans.ts';
import type { Block } from './day.ts';
import { type PrimedSegment, type Priming, primedSegments } from './priming.ts';

/** What the pump does at one speed. At no flow it turns and draws power but moves no water. */
export type RunningPoint =
  | {
      readonly kind: 'flowing';
      /** Flow [m3/s], 0 or more. */
      readonly flow: number;
      /** Wire power [W], 0 or more. */
      readonly power: number;
      /** Greatest velocity on the suction side [m/s], 0 or more. */
      readonly suctionVelocity: number;
      /** Greatest velocity on the discharge side [m/s], 0 or more. */
      readonly dischargeVelocity: number;
    }
  | {
      readonly kind: 'noFlow';
      /** Wire power [W], 0 or more. */
      readonly power: number;
    };

/** What a report must know of a need; a longer description is handed through untouched. */
export interface ServiceNeed {
  readonly id: string;
  /** Flow it takes at least [m3/s], 0 or more. */
  readonly leastFlow: number;
  /** Flow it bears at most [m3/s], the least flow or more; no end when left out. */
  readonly greatestFlow?: number;
  /** Service it wants [min/day], 0 to 1440. */
  readonly minutes: number;
  /** When it may be served [see Span]; empty is any time. */
  readonly windows: readonly Span[];
  /** Runs shorter than this do not count [min], 0 to 1440. */
  readonly shortestRun: number;
}

/** What a report must know of a limit; a longer description is handed through untouched. */
export interface FlowLimit {
  readonly id: string;
  /** Flow not to be passed [m3/s], 0 or more. */
  readonly greatestFlow: number;
  /** Speed over reference speed not to be passed, whatever the flow is today [-], 0 or more; none when left out. */
  readonly greatestRatio?: number;
}

/** Hours of the day in which the pump must not turn faster than a ceiling. */
export interface QuietHours extends Span {
  /** Greatest allowed speed over reference speed [-], 0 or more. */
  readonly ceiling: number;
}

/** A plan and all that is needed to work it out. */
export interface DayPlan<N extends ServiceNeed, L extends FlowLimit> {
  /** The blocks [see Block], none overlapping. */
  readonly blocks: readonly Block[];
  /** What the pump does at a speed ratio [-] above 0; asked once for each speed of the plan. */
  readonly pointAt: (ratio: number) => RunningPoint;
  /** Water in the pool [m3], more than 0. */
  readonly volume: number;
  readonly needs: readonly N[];
  readonly limits: readonly L[];
  readonly quiet: readonly QuietHours[];
  /** How the pump primes at every start [see Priming]; not at all when left out. */
  readonly priming?: Priming | undefined;
  /** Draw while the pump is stopped [W], 0 or more; 0 when left out. */
  readonly standbyPower?: number | undefined;
}

/** A segment with what the pump does in it. */
export interface ReportedSegment extends PrimedSegment {
  /** off: not turning; noFlow: turning, but too slow to move water. */
  readonly kind: 'flowing' | 'noFlow' | 'off';
  /** Flow [m3/s], 0 or more. */
  readonly flow: number;
  /** Wire power [W], 0 or more. */
  readonly power: number;
  /** Greatest velocity on the suction side [m/s], 0 or more. */
  readonly suctionVelocity: number;
  /** Greatest velocity on the discharge side [m/s], 0 or more. */
  readonly dischargeVelocity: number;
}

/** An unbroken run in which a need's flow is right and its window open. */
export interface ServiceRun extends Span {
  /** Its length [min], 1 to 1440. */
  readonly minutes: number;
  /** Whether it is long enough to count. */
  readonly counted: boolean;
}

/** How a need fares in a day. */
export interface NeedService<N extends ServiceNeed> {
  readonly need: N;
  /** Minutes of all runs that count [min], 0 to 1440. */
  readonly servedMinutes: number;
  /** Minutes that are missing [min], 0 or more. */
  readonly shortMinutes: number;
  /** Longest run, counted or not [min], 0 to 1440. */
  readonly longestRun: number;
  readonly met: boolean;
  readonly runs: readonly ServiceRun[];
}

/** An unbroken run in which the flow or the speed passes a limit. */
export interface LimitCrossing<L extends FlowLimit> {
  readonly limit: L;
  /** First minute of the run [min], 0 to 1439. */
  readonly from: number;
  /** First minute after it [min], 0 to 1440. */
  readonly to: number;
  /** Its length [min], 1 to 1440. */
  readonly minutes: number;
  /** Greatest flow in it [m3/s]. */
  readonly flow: number;
  /** Greatest speed ratio in it [-]. */
  readonly ratio: number;
}

/** An unbroken run in which the pump is faster than quiet hours allow. */
export interface QuietCrossing {
  readonly quiet: QuietHours;
  /** First minute of the run [min], 0 to 1439. */
  readonly from: number;
  /** First minute after it [min], 0 to 1440. */
  readonly to: number;
  /** Its length [min], 1 to 1440. */
  readonly minutes: number;
  /** Greatest speed ratio in it [-]. */
  readonly ratio: number;
}

/** A day worked out to the minute. */
export interface DayReport<N extends ServiceNeed, L extends FlowLimit> {
  readonly segments: readonly ReportedSegment[];
  /** Water moved [m3], 0 or more. */
  readonly volumeMoved: number;
  /** Water moved over water in the pool [-], 0 or more. */
  readonly turnovers: number;
  /** Energy taken [J], 0 or more. */
  readonly energy: number;
  /** Minutes in which the pump turns [min], 0 to 1440. */
  readonly runMinutes: number;
  readonly needs: readonly NeedService<N>[];
  readonly crossings: readonly LimitCrossing<L>[];
  readonly quietCrossings: readonly QuietCrossing[];
}

/**
 * Relative slack in comparing a flow or a speed with its bound [-]. A speed solved for a flow gives
 * that flow back only to the solver's tolerance; without slack such a block would miss its own need.
 */
export const flowSlack = 1e-6;

/**
 * A day worked out to the minute: water, energy, every need, every limit and the quiet hours.
 *
 * Law: volume = sum of flow x time; energy = sum of power x time, the standby power while stopped; a need is served in unbroken runs
 * (midnight does not break one) of at least its shortest run, with the flow between its bounds and
 * inside its windows; each start primes as primedSegments; a limit is crossed while the flow, or the speed, is above it.
 * @param plan Blocks, pump, pool, needs, limits and quiet hours [see DayPlan], fields as there.
 * @returns The report [see DayReport]: volume [m3], energy [J], minutes [min].
 * @throws CoreError when the blocks are not a day, the volume is not positive, pointAt gives a number that is negative or not finite, or a need, limit or quiet span is unsound. Bounds are compared with a relative slack of 1e-6.
 * Accuracy: exact up to rounding of doubles; reference file electricity for the energy.
 * Source: definitions of flow, turnover and energy (NIST SP 811, 2008); common practice for the needs.
 * @example dayReport({ blocks: [{ id: 'a', start: 1320, end: 360, ratio: 0.5 }], pointAt: () => ({ kind: 'flowing', flow: 0.002, power: 150, suctionVelocity: 1, dischargeVelocity: 1 }), volume: 60, needs: [], limits: [], quiet: [] }).volumeMoved // 57.60
 */
export function dayReport<N extends ServiceNeed, L extends FlowLimit>(
  plan: DayPlan<N, L>,
): DayReport<N, L> {
  const segments = reportedSegments(plan);
  const perSecond = (value: (segment: ReportedSegment) => number) =>
    segments.reduce((sum, each) => sum + value(each) * (each.end - each.start) * 60, 0);
  const volumeMoved = perSecond((segment) => segment.flow);
  return {
    segments,
    volumeMoved,
    turnovers: volumeMoved / requirePositive('volume', plan.volume, 'm3'),
    energy: perSecond((segment) => segment.power),
    runMinutes: perSecond((segment) => (segment.kind === 'off' ? 0 : 1)) / 60,
    needs: plan.needs.map((need) => serviceOf(need, segments)),
    crossings: plan.limits.flatMap((limit) => crossingsOf(limit, segments)),
    quietCrossings: plan.quiet.flatMap((quiet) => quietCrossingsOf(quiet, segments)),
  };
}

const offPoint = {
  kind: 'off',
  flow: 0,
  power: 0,
  suctionVelocity: 0,
  dischargeVelocity: 0,
} as const;

type SegmentPoint = Pick<
  ReportedSegment,
  'kind' | 'flow' | 'power' | 'suctionVelocity' | 'dischargeVelocity'
>;

function reportedSegments({
  blocks,
  pointAt,
  priming,
  standbyPower = 0,
}: Pick<
  DayPlan<never, never>,
  'blocks' | 'pointAt' | 'priming' | 'standbyPower'
>): readonly ReportedSegment[] {
  const power = requireNotNegative('standby power', standbyPower, 'W');
  const known = new Map<number, SegmentPoint>([[0, { ...offPoint, power }]]);
  return primedSegments(blocks, priming).map((segment) => {
    const point = known.get(segment.ratio) ?? segmentPoint(pointAt(segment.ratio));
    known.set(segment.ratio, point);
    return { ...segment, ...point };
  });
}

function segmentPoint(point: RunningPoint): SegmentPoint {
  const power = requireNotNegative('power', point.power, 'W');
  if (point.kind === 'noFlow') return { ...offPoint, kind: 'noFlow', power };
  return {
    kind: 'flowing',
    flow: requireNotNegative('flow', point.flow, 'm3/s'),
    power,
    suctionVelocity: requireNotNegative('suctionVelocity', point.suctionVelocity, 'm/s'),
    dischargeVelocity: requireNotNegative('dischargeVelocity', point.dischargeVelocity, 'm/s'),
  };
}

function serviceOf<N extends ServiceNeed>(
  need: N,
  segments: readonly ReportedSegment[],
): NeedService<N> {
  requireNeed(need);
  const right = segments.filter((segment) => servesFlow(need, segment));
  const open = need.windows.length === 0 ? right : intersectionOf(right, unionOf(need.windows));
  const runs = ringRuns(open).map((run) => {
    const minutes = spanMinutes(run);
    return { ...run, minutes, counted: minutes >= need.shortestRun };
  });
  const servedMinutes = runs.reduce((sum, run) => sum + (run.counted ? run.minutes : 0), 0);
  const shortMinutes = Math.max(0, need.minutes - servedMinutes);
  const longestRun = runs.reduce((longest, run) => Math.max(longest, run.minutes), 0);
  return { need, servedMinutes, shortMinutes, longestRun, met: shortMinutes === 0, runs };
}

function requireNeed(need: ServiceNeed): void {
  const field = `need ${need.id}`;
  requireNotNegative(`${field}.leastFlow`, need.leastFlow, 'm3/s');
  requireNotNegative(`${field}.minutes`, need.minutes, 'min');
  requireNotNegative(`${field}.shortestRun`, need.shortestRun, 'min');
  need.windows.forEach((window, index) => {
    requireSpan(`${field}.windows[${index}]`, window);
  });
  const { greatestFlow } = need;
  if (greatestFlow !== undefined && !(greatestFlow >= need.leastFlow)) {
    throw new CoreError(`${field}.greatestFlow`, greatestFlow, 'the least flow or more');
  }
}

function servesFlow(need: ServiceNeed, { kind, flow }: ReportedSegment): boolean {
  if (kind !== 'flowing') return false;
  const { leastFlow, greatestFlow } = need;
  return !isBelow(flow, leastFlow) && (greatestFlow === undefined || !isAbove(flow, greatestFlow));
}

function isBelow(value: number, bound: number): boolean {
  return value < bound * (1 - flowSlack);
}

function isAbove(value: number, bound: number): boolean {
  return value > bound * (1 + flowSlack);
}

/**
 * Whether a part of a day passes a limit.
 *
 * Law: passed when flow > greatest flow or speed > greatest speed.
 * @param limit The limit [see FlowLimit], fields as there.
 * @param segment Flow [m3/s] and speed ratio [-] of the part, each 0 or more.
 * @returns True when it passes the limit [-].
 * @throws nothing.
 * Accuracy: bounds are compared with a relative slack of 1e-6.
 * Source: arithmetic.
 * @example Number(passesLimit({ id: 'cover', greatestFlow: 0.004 }, { flow: 0.005, ratio: 1 })) // 1.000
 */
export function passesLimit(
  { greatestFlow, greatestRatio = Number.POSITIVE_INFINITY }: FlowLimit,
  { flow, ratio }: Pick<ReportedSegment, 'flow' | 'ratio'>,
): boolean {
  return isAbove(flow, greatestFlow) || isAbove(ratio, greatestRatio);
}

function crossingsOf<L extends FlowLimit>(
  limit: L,
  segments: readonly ReportedSegment[],
): readonly LimitCrossing<L>[] {
  requireNotNegative(`limit ${limit.id}.greatestFlow`, limit.greatestFlow, 'm3/s');
  const above = segments.filter((segment) => passesLimit(limit, segment));
  return ringRuns(above).map((run) => ({
    limit,
    from: run.start,
    to: run.end,
    minutes: spanMinutes(run),
    flow: greatestIn(run, above, (segment) => segment.flow),
    ratio: greatestIn(run, above, (segment) => segment.ratio),
  }));
}

function quietCrossingsOf(
  quiet: QuietHours,
  segments: readonly ReportedSegment[],
): readonly QuietCrossing[] {
  requireSpan('quiet', quiet);
  requireNotNegative('quiet.ceiling', quiet.ceiling, '');
  const above = segments.filter((segment) => isAbove(segment.ratio, quiet.ceiling));
  return ringRuns(intersectionOf(above, unionOf([quiet]))).map((run) => ({
    quiet,
    from: run.start,
    to: run.end,
    minutes: spanMinutes(run),
    ratio: greatestIn(run, above, (segment) => segment.ratio),
  }));
}

function greatestIn<S extends Piece>(
  run: Span,
  segments: readonly S[],
  value: (segment: S) => number,
): number {
  const inside = segments.filter((each) => intersectionOf([each], unionOf([run])).length > 0);
  return Math.max(...inside.map(value));
}
