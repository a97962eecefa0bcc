/**
 * Pump head curves at the reference speed, and what the affinity laws make of them at another.
 */
import { CoreError, requireBetween, requirePositive } from '#core/base/errors.ts';
import { monotoneCurve } from '#core/numerics/monotoneCurve.ts';

/** One point of a head curve, at the reference speed. */
export interface PumpPoint {
  /** Flow [m3/s], 0 to 10. */
  readonly flow: number;
  /** Head [m], 0 to 1000. */
  readonly head: number;
}

/** Head against flow at the reference speed. */
export interface PumpCurve {
  /** Head at no flow [m], above 0. */
  readonly shutoffHead: number;
  /** End of the data [m3/s], above 0; beyond it the curve is extrapolated. */
  readonly lastFlow: number;
  /** What the curve rests on. */
  readonly provenance: 'points' | 'threePoints' | 'typical';
  /** Head [m] at a flow [m3/s] of 0 or more; below zero far beyond the data. */
  head(flow: number): number;
  /** Slope of the head [m per m3/s] at a flow [m3/s]; never above zero. */
  slope(flow: number): number;
}

/** H = A - B Q^C. */
export interface PowerLaw {
  /** Head at no flow [m], above 0. */
  readonly a: number;
  /** Coefficient [m/(m3/s)^C], above 0. */
  readonly b: number;
  /** Power of the flow [-], 0.5 to 10. */
  readonly c: number;
}

/** Least rise of flow between points, as a share of the last flow; below it points coincide. */
const coincident = 1e-9;

function requirePoints(points: readonly PumpPoint[], least: number): void {
  if (points.length < least) {
    throw new CoreError('points', points.length, `at least ${least} points`);
  }
  points.forEach((point, index) => {
    requireBetween(`flow of point ${index + 1}`, point.flow, 0, 10, 'm3/s');
    requireBetween(`head of point ${index + 1}`, point.head, 0, 1000, 'm');
    const before = points[index - 1];
    if (before === undefined) return;
    if (point.flow - before.flow <= coincident * point.flow) {
      throw new CoreError(
        `flow of point ${index + 1}`,
        point.flow,
        `greater than that of the point before, ${before.flow} m3/s`,
      );
    }
    if (point.head > before.head) {
      throw new CoreError(
        `head of point ${index + 1}`,
        point.head,
        `no greater than that of the point before, ${before.head} m`,
      );
    }
  });
}

/**
 * Pump curve through points of a data sheet, smooth and never rising.
 *
 * Law: piecewise cubic through the points, slopes by the weighted harmonic mean of the neighbouring chords (Fritsch and Butland); beyond the last point the last chord bends on as a parabola, before the first the head is level.
 * @param points Points [m3/s, m], at least 2; flows rising, heads never rising.
 * @returns The curve [m against m3/s].
 * @throws CoreError naming the point when one is out of range or out of order, or when the head never falls.
 * Accuracy: scipy 1.10.1 PchipInterpolator between the points, to rounding.
 * Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5, 300 (1984), doi 10.1137/0905021; the extrapolation is common practice, no source.
 * @example pumpFromPoints([{ flow: 0, head: 20 }, { flow: 0.004, head: 16 }, { flow: 0.006, head: 10 }]).head(0.004) // 16.00
 */
export function pumpFromPoints(points: readonly PumpPoint[]): PumpCurve {
  requirePoints(points, 2);
  const first = points[0] as PumpPoint;
  const last = points[points.length - 1] as PumpPoint;
  if (last.head >= first.head) {
    throw new CoreError('points', last.head, 'falling: the last head must be below the first');
  }
  const inside = monotoneCurve(
    points.map((point) => point.flow),
    points.map((point) => point.head),
  );
  const fall = (first.head - last.head) / (last.flow - first.flow);
  const endSlope = Math.min(inside.slope(last.flow), -0.5 * fall);
  const bend = fall / last.flow;
  return {
    shutoffHead: first.head,
    lastFlow: last.flow,
    provenance: 'points',
    head(flow) {
      if (flow <= first.flow) return first.head;
      if (flow <= last.flow) return inside.value(flow);
      const beyond = flow - last.flow;
      return last.head + endSlope * beyond - bend * beyond * beyond;
    },
    slope(flow) {
      if (flow <= first.flow) return 0;
      if (flow <= last.flow) return inside.slope(flow);
      return endSlope - 2 * bend * (flow - last.flow);
    },
  };
}

/**
 * Pump curve H = A - B Q^C from its three numbers.
 *
 * Law: H = A - B Q^C.
 * @param law The three numbers [see PowerLaw], fields as there.
 * @param lastFlow End of the data [m3/s], above 0.
 * @param provenance What the numbers rest on [-], one of the kinds of PumpCurve; three points when left out.
 * @returns The curve [m against m3/s]; beyond the last flow the law goes on, below zero in the end.
 * @throws CoreError when a number is out of range.
 * Accuracy: exact.
 * Source: common practice, no source; the law is one of those of the EPANET 2.2 manual, "Pumps".
 * @example pumpFromPowerLaw({ a: 20, b: 2e5, c: 2 }, 0.008).head(0.005) // 15.00
 */
export function pumpFromPowerLaw(
  law: PowerLaw,
  lastFlow: number,
  provenance: PumpCurve['provenance'] = 'threePoints',
): PumpCurve {
  const a = requirePositive('head at no flow', law.a, 'm');
  const b = requirePositive('coefficient', law.b, 'm/(m3/s)^C');
  const c = requireBetween('power of the flow', law.c, 0.5, 10, '');
  requirePositive('last flow', lastFlow, 'm3/s');
  const square = c === 2;
  return {
    shutoffHead: a,
    lastFlow,
    provenance,
    head: square ? (flow) => a - b * flow * flow : (flow) => a - b * flow ** c,
    slope: square
      ? (flow) => (flow > 0 ? -2 * b * flow : 0)
      : (flow) => (flow <= 0 ? 0 : -b * c * flow ** (c - 1)),
  };
}

/**
 * Pump curve H = A - B Q^C through three points, the first at no flow.
 *
 * Law: A = H at no flow, C = ln((A - H2)/(A - H1)) / ln(Q2/Q1), B = (A - H1)/Q1^C.
 * @param points Three points [m3/s, m]; the first at no flow, flows rising, heads falling.
 * @returns The curve [m against m3/s]; beyond the third point the law goes on.
 * @throws CoreError when the points are not three, the first is not at no flow, a head does not fall, or C falls outside 0.5 to 10.
 * Accuracy: through the points to rounding.
 * Source: EPANET 2.2 manual, "Pumps", power-function curve.
 * @example pumpFromThreePoints([{ flow: 0, head: 20 }, { flow: 0.004, head: 16 }, { flow: 0.008, head: 4 }]).head(0.006) // 11.00
 */
export function pumpFromThreePoints(points: readonly PumpPoint[]): PumpCurve {
  requirePoints(points, 3);
  const [shutoff, middle, end] = points as readonly [PumpPoint, PumpPoint, PumpPoint];
  if (points.length !== 3) throw new CoreError('points', points.length, 'three points');
  if (shutoff.flow !== 0) {
    throw new CoreError('flow of point 1', shutoff.flow, '0: the first point is at no flow');
  }
  if (middle.head >= shutoff.head || end.head >= middle.head) {
    throw new CoreError('points', middle.head, 'falling from each point to the next');
  }
  const a = shutoff.head;
  const c = Math.log((a - end.head) / (a - middle.head)) / Math.log(end.flow / middle.flow);
  return pumpFromPowerLaw({ a, b: (a - middle.head) / middle.flow ** c, c }, end.flow);
}

/** Head at no flow over head at the best point, of the typical shape [-]; common practice, no source. */
const typicalShutoff = 1.3;

/** End of the typical shape's data over the flow of the best point [-]; common practice, no source. */
const typicalLast = 1.4;

/**
 * An estimated pump curve: the typical shape through one known point near the best efficiency.
 *
 * Law: H/Hb = 1.3 - 0.3 (Q/Qb)^2 for the best point Qb, Hb.
 * @param best Flow [m3/s] above 0 and head [m] above 0 near the best efficiency.
 * @returns The curve [m against m3/s], marked typical: an estimate, to be said to be one.
 * @throws CoreError when the flow or the head is not above zero.
 * Accuracy: an estimate; real pumps of this kind have shut-off heads from 1.1 to 1.6 times the best head.
 * Source: common practice, no source.
 * @example typicalPump({ flow: 0.004, head: 15 }).shutoffHead // 19.50
 */
export function typicalPump(best: PumpPoint): PumpCurve {
  const flow = requirePositive('best flow', best.flow, 'm3/s');
  const head = requirePositive('best head', best.head, 'm');
  const b = ((typicalShutoff - 1) * head) / (flow * flow);
  return pumpFromPowerLaw({ a: typicalShutoff * head, b, c: 2 }, typicalLast * flow, 'typical');
}

function speedRatio(from: number, to: number): number {
  requirePositive('first speed', from, '');
  return requireBetween('second speed', to, 0, Number.MAX_VALUE, '') / from;
}

/**
 * Flow at another speed, along the same similarity parabola.
 *
 * Law: Q2 = Q1 N2/N1.
 * @param flow Flow at the first speed [m3/s], any unit, 0 or more.
 * @param from First speed [rpm or -], above 0.
 * @param to Second speed [rpm or -], 0 or more, in the same unit.
 * @returns Flow at the second speed [m3/s].
 * @throws CoreError when a speed is out of range.
 * Accuracy: exact for similar flow.
 * Source: ANSI/HI 14.3; Hydraulic Institute data tool eq. 1.B.6.
 * @example affinityFlow(80, 3450, 1725) // 40.00
 */
export function affinityFlow(flow: number, from: number, to: number): number {
  return flow * speedRatio(from, to);
}

/**
 * Head at another speed, along the same similarity parabola.
 *
 * Law: H2 = H1 (N2/N1)^2.
 * @param head Head at the first speed [m], any unit, 0 or more.
 * @param from First speed [rpm or -], above 0.
 * @param to Second speed [rpm or -], 0 or more, in the same unit.
 * @returns Head at the second speed [m].
 * @throws CoreError when a speed is out of range.
 * Accuracy: exact for similar flow.
 * Source: ANSI/HI 14.3; Hydraulic Institute data tool eq. 1.B.6.
 * @example affinityHead(60, 3450, 1725) // 15.00
 */
export function affinityHead(head: number, from: number, to: number): number {
  return head * speedRatio(from, to) ** 2;
}

/**
 * Shaft power at another speed, along the same similarity parabola.
 *
 * Law: P2 = P1 (N2/N1)^3.
 * @param power Shaft power at the first speed [W], any unit, 0 or more.
 * @param from First speed [rpm or -], above 0.
 * @param to Second speed [rpm or -], 0 or more, in the same unit.
 * @returns Shaft power at the second speed [W].
 * @throws CoreError when a speed is out of range.
 * Accuracy: exact for similar flow and equal efficiency.
 * Source: ANSI/HI 14.3; Hydraulic Institute data tool eq. 1.B.6.
 * @example affinityPower(1800, 3450, 1725) // 225.0
 */
export function affinityPower(power: number, from: number, to: number): number {
  return power * speedRatio(from, to) ** 3;
}

/**
 * Head of a pump at any speed.
 *
 * Law: H(Q, r) = r^2 H(Q/r).
 * @param curve Curve at the reference speed [see PumpCurve], any of them.
 * @param flow Flow [m3/s], 0 to 10.
 * @param ratio Speed over reference speed [-], 0 to 10; a stopped pump makes no head.
 * @returns Head [m]; below zero where the pump would hold the water back.
 * @throws CoreError when the flow or the ratio is out of range.
 * Accuracy: exact for similar flow.
 * Source: ANSI/HI 14.3.
 * @example pumpHead(pumpFromPowerLaw({ a: 20, b: 2e5, c: 2 }, 0.008), 0.002, 0.5) // 4.200
 */
export function pumpHead(curve: PumpCurve, flow: number, ratio: number): number {
  requireBetween('flow', flow, 0, 10, 'm3/s');
  requireBetween('speed ratio', ratio, 0, 10, '');
  if (ratio < 1e-9) return 0;
  return ratio * ratio * curve.head(flow / ratio);
}

/**
 * Speed below which a pump moves no water against a head that is there at no flow.
 *
 * Law: r = sqrt(H0 / H(0)): the head at no flow falls with the square of the speed.
 * @param curve The pump [see PumpCurve], with a head at no flow above 0.
 * @param head Head the circuit takes at no flow, such as a lift [m], 0 to 1e6.
 * @returns Speed over reference speed [-], 0 or more; above 1 when the reference speed does not reach.
 * @throws CoreError when the head is out of range.
 * Accuracy: exact; reference file affinity-laws.
 * Source: ANSI/HI 14.3.
 * @example leastFlowRatio(pumpFromPowerLaw({ a: 20, b: 2e5, c: 2 }, 0.008), 5) // 0.5000
 */
export function leastFlowRatio(curve: PumpCurve, head: number): number {
  return Math.sqrt(requireBetween('head', head, 0, 1e6, 'm') / curve.shutoffHead);
}
