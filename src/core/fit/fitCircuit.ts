import { CoreError, requireBetween, requirePositive } from '#core/base/errors.ts';
import {
  type Band,
  bandAbout,
  type LinePoint,
  lineThrough,
  varianceOf,
} from '#core/numerics/band.ts';

/** Head read at one flow. */
export interface HeadReading {
  /** Name of the reading, any text. */
  readonly id: string;
  /** Flow [m3/s], above 0, up to 10. */
  readonly flow: number;
  /** Total dynamic head [m], 0 to 1000. */
  readonly head: number;
  /** How far the head may be off, 95 % [m], above 0; 3 % of it when left out. */
  readonly headTolerance?: number | undefined;
}

/** How the circuit is taken to behave. */
export interface CircuitFitOptions {
  /** Whether to look for a static lift as well; no when left out, since a pool loop has none. */
  readonly withLift?: boolean | undefined;
  /** Power of the flow in the loss [-], 1 to 2; 2 when left out. */
  readonly exponent?: number | undefined;
}

/** Loss coefficient and lift from head readings, or why there are none. */
export type CircuitFit =
  | {
      readonly kind: 'fitted';
      /** Loss coefficient [m/(m3/s)^n]. */
      readonly k: number;
      /** Static lift [m]. */
      readonly lift: number;
      readonly exponent: number;
      /** Whether the lift came out negative and was held at 0, or the loss did. */
      readonly held: 'lift' | 'loss' | 'neither';
      headAt(flow: number): number;
      bandAt(flow: number): Band;
      /** Measured less fitted head [m]. */
      readonly residuals: readonly { readonly id: string; readonly residual: number }[];
    }
  | { readonly kind: 'notEnoughReadings'; readonly flowsNeeded: number };

/** What flowFromHead needs to know of a pump curve, at reference speed. */
export interface HeadCurve {
  /** Head at no flow [m], above 0. */
  readonly shutoffHead: number;
  /** Flow at the end of the data [m3/s], above 0. */
  readonly lastFlow: number;
  /** Head [m] at a flow [m3/s] of 0 or more; falling. */
  head(flow: number): number;
}

/** The flow a pump must be moving to make a head, or why there is none. */
export type FlowRead =
  | { readonly kind: 'found'; readonly flow: number; readonly extrapolated: boolean }
  | { readonly kind: 'aboveShutoff'; readonly shutoffHead: number };

/**
 * Loss coefficient of a circuit, and its static lift when asked, from head against flow.
 *
 * Law: H = z + k Q^n, least weighted squares with neither part negative.
 * @param readings Heads and flows [see HeadReading], any number; one flow gives k, two are needed for the lift.
 * @param options How the circuit behaves [see CircuitFitOptions], fields as there.
 * @returns The fit [m], with residuals and a 95 % band, or how many different flows are needed.
 * @throws CoreError when a field is outside its range.
 * Accuracy: exact for readings that follow the law; a real smooth-pipe circuit goes with about Q^1.8 to Q^2.
 * Source: Darcy-Weisbach with constant f; least squares after JCGM 100:2008.
 * @example fitCircuit([{ id: 'a', flow: 0.005, head: 12.5 }]).k // 500000
 */
export function fitCircuit(
  readings: readonly HeadReading[],
  options: CircuitFitOptions = {},
): CircuitFit {
  const exponent = requireBetween('exponent', options.exponent ?? 2, 1, 2, '');
  const points = readings.map((reading) => weigh(reading, exponent));
  const flowsNeeded = options.withLift === true ? 2 : 1;
  if (differentFlows(readings) < flowsNeeded) {
    return { kind: 'notEnoughReadings', flowsNeeded };
  }
  const { lift, k, held, covariance } =
    options.withLift === true ? lineOf(points) : slopeOf(points);
  const headAt = (flow: number) =>
    lift + k * requireBetween('flow', flow, 0, 10, 'm3/s') ** exponent;
  return {
    kind: 'fitted',
    k,
    lift,
    exponent,
    held,
    headAt,
    bandAt: (flow) => bandAbout(headAt(flow), varianceOf([1, flow ** exponent], covariance)),
    residuals: readings.map(({ id, flow, head }) => ({ id, residual: head - headAt(flow) })),
  };
}

/**
 * Flow a pump must be moving when it makes a known head: how gauges stand in for a meter.
 *
 * Law: r^2 H(Q/r) = head, solved for Q by halving.
 * @param curve Head curve at reference speed [see HeadCurve], falling.
 * @param head Total dynamic head [m], 0 to 1000.
 * @param ratio Speed over reference speed [-], 0.01 to 2.
 * @returns The flow [m3/s] and whether it lies past the end of the data, or that the head is above the shut-off head.
 * @throws CoreError when the head or the ratio is outside its range, or the curve does not fall to the head.
 * Accuracy: 1e-12 of the flow at the end of the data; near shut-off a flat curve turns a small gauge error into a large flow error.
 * Source: affinity law, ANSI/HI 14.6; halving.
 * @example flowFromHead({ shutoffHead: 20, lastFlow: 0.01, head: (q) => 20 - 2e5 * q * q }, 15, 1).flow // 0.005000
 */
export function flowFromHead(curve: HeadCurve, head: number, ratio: number): FlowRead {
  requireBetween('head', head, 0, 1000, 'm');
  requireBetween('ratio', ratio, 0.01, 2, '');
  const scaledHead = head / ratio ** 2;
  if (scaledHead > curve.shutoffHead) {
    return { kind: 'aboveShutoff', shutoffHead: curve.shutoffHead * ratio ** 2 };
  }
  let [low, high] = [0, curve.lastFlow];
  for (let doubling = 0; curve.head(high) > scaledHead; doubling += 1) {
    if (doubling === 20) throw new CoreError('curve', head, 'a curve that falls to the head asked');
    [low, high] = [high, 2 * high];
  }
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (curve.head(middle) > scaledHead) low = middle;
    else high = middle;
  }
  const flow = (low + high) / 2;
  return { kind: 'found', flow: flow * ratio, extrapolated: flow > curve.lastFlow * (1 + 1e-9) };
}

function weigh({ flow, head, headTolerance }: HeadReading, exponent: number): LinePoint {
  requirePositive('flow', flow, 'm3/s');
  requireBetween('flow', flow, 0, 10, 'm3/s');
  requireBetween('head', head, 0, 1000, 'm');
  const tolerance = requirePositive('headTolerance', headTolerance ?? (0.03 * head || 0.01), 'm');
  return { x: flow ** exponent, y: head, weight: (2 / tolerance) ** 2 };
}

/** How many flows there are, counting those within 0.1 % as one, up to two. */
function differentFlows(readings: readonly HeadReading[]): number {
  const flows = readings.map((reading) => reading.flow);
  if (flows.length === 0) return 0;
  return Math.max(...flows) / Math.min(...flows) > 1.001 ? 2 : 1;
}

/** Through the origin: a closed loop. */
function slopeOf(points: readonly LinePoint[]) {
  const wxx = total(points, ({ x }) => x * x);
  const k = total(points, ({ x, y }) => x * y) / wxx;
  const covariance = [
    [0, 0],
    [0, 1 / wxx],
  ] as const;
  return { lift: 0, k, held: 'neither', covariance } as const;
}

/** Lift and loss together; one that comes out negative is held at 0 and the other fitted alone. */
function lineOf(points: readonly LinePoint[]) {
  const { start, slope, held, covariance } = lineThrough(points);
  const names = { start: 'lift', slope: 'loss', neither: 'neither' } as const;
  return { lift: start, k: slope, held: names[held], covariance };
}

function total(points: readonly LinePoint[], pick: (point: LinePoint) => number): number {
  return points.reduce((sum, point) => sum + point.weight * pick(point), 0);
}
