/**
 * Wire power as a data sheet states it: watts at points, with the draw that does not fall with speed
 * within them.
 */
import { requireBetween, requireNotNegative, requirePositive } from '#core/base/errors.ts';
import { monotoneCurve } from '#core/numerics/monotoneCurve.ts';
import type { FlowRange, PumpPower } from './power.ts';

/** One point of a data sheet with its watts, at the reference speed. */
export interface WattPoint {
  /** Flow [m3/s], 0 to 10. */
  readonly flow: number;
  /** Wire power [W], 0 to 1e6: all of it, the fixed draw within. */
  readonly power: number;
}

/** Wire power as a data sheet states it, the fixed draw within and not told apart. */
export interface StatedPower {
  /** All wire power [W] at the reference speed and a flow [m3/s] there. */
  wire(flow: number): number;
  /** The least of it [W], 0 or more. */
  readonly least: number;
  /** Flows the sheet gives watts for [see FlowRange]. */
  readonly covered: FlowRange;
}

/**
 * Wire power through the points of a data sheet.
 *
 * Law: smooth and never past a neighbour between the points (see monotoneCurve); before the first and past the last their own watts.
 * @param points Points [see WattPoint], at least 2, flows rising.
 * @returns The power as stated [see StatedPower]; the draw that does not fall with speed is within it.
 * @throws CoreError when there are fewer than two points or one is out of range.
 * Accuracy: exact at the points; past them the end values are kept, which is a guess: see covered.
 * Source: as monotoneCurve; the ends are common practice, no source.
 * @example statedPower([{ flow: 0, power: 700 }, { flow: 0.004, power: 1000 }]).wire(0.002) // 850.0
 */
export function statedPower(points: readonly WattPoint[]): StatedPower {
  requireBetween('number of points', points.length, 2, 1000, '');
  for (const { flow, power } of points) {
    requireBetween('flow of a point', flow, 0, 10, 'm3/s');
    requireBetween('power of a point', power, 0, 1e6, 'W');
  }
  const flows = points.map(({ flow }) => flow);
  const watts = points.map(({ power }) => power);
  const covered = { first: Math.min(...flows), last: Math.max(...flows) };
  const curve = monotoneCurve(flows, watts);
  return {
    wire: (flow) => curve.value(Math.min(Math.max(flow, covered.first), covered.last)),
    least: Math.min(...watts),
    covered,
  };
}

/**
 * Wire power of a data sheet, split into what does not fall with speed and the rest.
 *
 * Law: P_ref(Q) = s P_sheet(Q) - P_fixed, so that at the reference speed the sheet stands whatever the fixed draw; P_fixed is at most the least watts of the sheet.
 * @param stated Wire power as stated [see StatedPower], any.
 * @param fixed Draw that does not fall with speed [W], 0 or more.
 * @param scale Multiplier on all the watts [-], above 0; 1 when left out.
 * @returns The power [see PumpPower].
 * @throws CoreError when the draw or the multiplier is out of range.
 * Accuracy: exact at the reference speed.
 * Source: affinity laws, ANSI/HI 14.3; the fixed draw is common practice, no source.
 * @example splitPower(statedPower([{ flow: 0, power: 700 }, { flow: 0.004, power: 1000 }]), 40).atReference(0.004) // 960.0
 */
export function splitPower(stated: StatedPower, fixed: number, scale = 1): PumpPower {
  requirePositive('multiplier', scale, '');
  const within = Math.min(requireNotNegative('fixed draw', fixed, 'W'), scale * stated.least);
  return {
    fixed: within,
    atReference: (flow) => Math.max(scale * stated.wire(flow) - within, 0),
    covered: stated.covered,
  };
}

/** Slack in comparing a flow with the ends of the watts that were given [-]. */
const coverSlack = 1e-9;

/**
 * Whether watts were given for a flow at a speed, or are only carried on from the nearest point.
 *
 * Law: the flow Q/r at the reference speed lies among those that watts were given for.
 * @param power The power [see PumpPower], any.
 * @param flow Flow [m3/s], 0 or more.
 * @param ratio Speed over reference speed [-], 0 or more.
 * @returns True where it does [-], and where the power is a law that holds at every flow; so it is for a stopped pump.
 * @throws nothing.
 * Accuracy: a flow within 1e-9 of an end counts as given.
 * Source: affinity laws, ANSI/HI 14.3.
 * @example Number(coversFlow(splitPower(statedPower([{ flow: 0, power: 700 }, { flow: 0.004, power: 1000 }]), 40), 0.003, 0.5)) // 0.000
 */
export function coversFlow({ covered }: PumpPower, flow: number, ratio: number): boolean {
  if (covered === undefined || ratio < 1e-9) return true;
  const there = flow / ratio;
  const slack = coverSlack * covered.last;
  return there >= covered.first - slack && there <= covered.last + slack;
}
