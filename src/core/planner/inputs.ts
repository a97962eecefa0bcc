/**
 * What the cheapest day is looked for in: the speeds a pump can be set to with what each one does,
 * the needs, the limits, the quiet hours and the prices of one day.
 */
import { minutesPerDay } from '#core/base/constants.ts';
import { CoreError, requireBetween, requireNotNegative } from '#core/base/errors.ts';
import type { FlowLimit, QuietHours, RunningPoint, ServiceNeed } from '#core/day/dayReport.ts';
import { complementOf, requireSpan, type Span, spanMinutes, unionOf } from '#core/time/spans.ts';

/** A speed the pump can be set to, and what it does there. */
export interface SpeedRow {
  /** Speed over reference speed [-], above 0 to 2. */
  readonly ratio: number;
  /** Flow [m3/s], above 0 to 10. */
  readonly flow: number;
  /** Wire power [W], 0 to 1e6. */
  readonly power: number;
}

/** A interval of the day at one price. */
export interface PricedSpan extends Span {
  /** Price of energy [currency/kWh], -1e9 to 1e9; negative when the supplier pays. */
  readonly price: number;
}

/** Everything that decides which day is the cheapest. */
export interface CheapestDayInputs {
  /** The speeds [see SpeedRow], any order, at least one. */
  readonly speeds: readonly SpeedRow[];
  /** Whether the pump may stand still. */
  readonly mayStop: boolean;
  /** Draw while it stands still [W], 0 to 1e6; 0 when left out. */
  readonly standbyPower?: number | undefined;
  /** Water to be moved in the day at least [m3], 0 to 1e6. */
  readonly leastVolume: number;
  /** Needs [see ServiceNeed], 0 to 30; one of 0 minutes asks for nothing. */
  readonly needs: readonly ServiceNeed[];
  /** Flows that no minute of the day may pass [see FlowLimit]. */
  readonly limits: readonly FlowLimit[];
  /** Hours with a ceiling on the speed [see QuietHours]; where two meet the lower ceiling holds. */
  readonly quiet: readonly QuietHours[];
  /** Prices of the day [see PricedSpan]; between them they cover the 24 hours once. */
  readonly prices: readonly PricedSpan[];
  /** Most changes of speed in the cyclic day [-], 0 to 24, off counting as a speed; no end when left out. */
  readonly mostChanges?: number | undefined;
  /** Whole minutes in which a block is measured [min], one of the divisors of 1440; 1 when left out. */
  readonly minuteStep?: number | undefined;
  /** No block and no stop is shorter than this where any day allows it, and changes that cost less than 0.1 % go [min], 0 to 60; 0 when left out, which leaves the day as it is found. */
  readonly shortestBlock?: number | undefined;
}

/** The range a pump's speed is set in. */
export interface SpeedRange {
  /** Slowest speed over reference speed [-], 0.01 to 2. */
  readonly least: number;
  /** Fastest speed over reference speed [-], the slowest to 2. */
  readonly top: number;
  /** Step over reference speed [-], 1e-5 to 1; steps count from standstill; 0 when only the ends are wanted. */
  readonly step: number;
}

/**
 * The speeds a pump can be set to, as ratios.
 *
 * Law: both ends of the range, every multiple of the step between them, and the further ratios asked for; the step is never widened.
 * @param range The range [see SpeedRange], fields as there; with a step of 0 only the ends and the further ratios.
 * @param also Further ratios that can be set, such as the slowest for each need or those of a day laid by hand [-], any; those outside the range are left out.
 * @returns Ratios [-], rising, none twice.
 * @throws CoreError when the range is empty or a field is outside its own range.
 * Accuracy: exact.
 * Source: common practice, no source.
 * @example settableRatios({ least: 0.25, top: 1, step: 0.1 })[1] // 0.3000
 */
export function settableRatios(range: SpeedRange, also: readonly number[] = []): readonly number[] {
  const { least, top, step } = range;
  requireBetween('least', least, 0.01, 2, '');
  requireBetween('top', top, least, 2, '');
  if (step !== 0) requireBetween('step', step, 1e-5, 1, '');
  const inside = also.filter((ratio) => ratio >= least && ratio <= top);
  if (step === 0) return rising([least, ...inside, top]);
  const [first, last] = [Math.ceil(least / step - 1e-7), Math.floor(top / step + 1e-7)];
  const steps = Array.from({ length: Math.max(0, last - first + 1) }, (_, place) =>
    Math.min(top, Math.max(least, (first + place) * step)),
  );
  return rising([least, ...steps, ...inside, top]);
}

function rising(ratios: readonly number[]): readonly number[] {
  const sorted = [...ratios].sort((a, b) => a - b);
  return sorted.filter((ratio, place) => place === 0 || ratio - (sorted[place - 1] ?? 0) > 1e-9);
}

/**
 * What the pump does at each of its speeds, as a table for the search.
 *
 * Law: one row per ratio at which water flows; a pump that turns and moves nothing is left out.
 * @param ratios Speeds over reference speed [-], above 0 to 2.
 * @param pointAt What the pump does at a ratio [see RunningPoint].
 * @returns Rows [see SpeedRow] in the order given.
 * @throws whatever pointAt throws.
 * Accuracy: that of pointAt.
 * Source: definition of the operating point, ANSI/HI 14.6.
 * @example speedTable([0.5], () => ({ kind: 'flowing', flow: 0.002, power: 150, suctionVelocity: 1, dischargeVelocity: 1 }))[0].power // 150.0
 */
export function speedTable(
  ratios: readonly number[],
  pointAt: (ratio: number) => RunningPoint,
): readonly SpeedRow[] {
  return ratios.flatMap((ratio) => {
    const point = pointAt(ratio);
    if (point.kind === 'noFlow' || point.flow <= 0) return [];
    return [{ ratio, flow: point.flow, power: point.power }];
  });
}

/**
 * Throws for inputs that break their contract.
 *
 * @internal
 */
export function requireInputs(inputs: CheapestDayInputs): void {
  const { speeds, needs, limits, quiet, prices, mostChanges, minuteStep = 1 } = inputs;
  requireBetween('shortestBlock', inputs.shortestBlock ?? 0, 0, 60, 'min');
  for (const [place, { ratio, flow, power }] of speeds.entries()) {
    requireBetween(`speeds[${place}].ratio`, ratio, 1e-6, 2, '');
    requireBetween(`speeds[${place}].flow`, flow, 1e-12, 10, 'm3/s');
    requireBetween(`speeds[${place}].power`, power, 0, 1e6, 'W');
  }
  requireBetween('standbyPower', inputs.standbyPower ?? 0, 0, 1e6, 'W');
  requireBetween('leastVolume', inputs.leastVolume, 0, 1e6, 'm3');
  if (needs.length > 30) throw new CoreError('needs', needs.length, 'at most 30');
  needs.forEach(requireNeed);
  for (const limit of limits)
    requireNotNegative(`limit ${limit.id}.greatestFlow`, limit.greatestFlow, 'm3/s');
  for (const [place, each] of quiet.entries()) {
    requireSpan(`quiet[${place}]`, each);
    requireNotNegative(`quiet[${place}].ceiling`, each.ceiling, '');
  }
  requireWholeDay(prices);
  if (mostChanges !== undefined && !(Number.isInteger(mostChanges) && mostChanges >= 0))
    throw new CoreError('mostChanges', mostChanges, 'a whole number from 0 to 24');
  requireBetween('mostChanges', mostChanges ?? 0, 0, 24, '');
  if (!Number.isInteger(minuteStep) || minuteStep < 1 || minutesPerDay % minuteStep !== 0)
    throw new CoreError('minuteStep', minuteStep, 'a whole number of minutes that divides 1440');
  const ends = [...prices, ...quiet, ...needs.flatMap(({ windows }) => windows)].flatMap(
    ({ start, end }) => [start, end],
  );
  const odd = ends.find((end) => end % minuteStep !== 0);
  if (odd !== undefined)
    throw new CoreError('minuteStep', minuteStep, `a divisor of every end of a span, also ${odd}`);
}

function requireNeed(need: ServiceNeed): void {
  const { leastFlow, greatestFlow = leastFlow, minutes, shortestRun, windows, id } = need;
  requireBetween(`need ${id}.leastFlow`, leastFlow, 0, 10, 'm3/s');
  requireBetween(`need ${id}.greatestFlow`, greatestFlow, leastFlow, 1e9, 'm3/s');
  requireBetween(`need ${id}.minutes`, minutes, 0, minutesPerDay, 'min');
  requireBetween(`need ${id}.shortestRun`, shortestRun, 0, minutesPerDay, 'min');
  for (const window of windows) requireSpan(`need ${id}.windows`, window);
}

function requireWholeDay(prices: readonly PricedSpan[]): void {
  for (const [place, span] of prices.entries()) {
    requireSpan(`prices[${place}]`, span);
    requireBetween(`prices[${place}].price`, span.price, -1e9, 1e9, 'currency/kWh');
  }
  const minutes = prices.reduce((sum, span) => sum + spanMinutes(span), 0);
  if (minutes !== minutesPerDay || complementOf(unionOf(prices)).length > 0)
    throw new CoreError('prices', `${minutes} min`, 'spans that cover the 24 hours once');
}
