import {
  CoreError,
  requireBetween,
  requireNotNegative,
  requirePositive,
} from '#core/base/errors.ts';
import { branchFlows, largestVelocity, suctionHead } from '#core/hydraulics/circuit.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { type SuctionCover, suctionStop } from '#core/hydraulics/suctionOutlets.ts';
import { npshAvailable } from '#core/pump/npsh.ts';

/** What a limit protects. */
export type LimitKind =
  | 'suctionVelocity'
  | 'dischargeVelocity'
  | 'filterRate'
  | 'heaterFlow'
  | 'suctionCover'
  | 'npsh';

/** A flow through the pump that must not be passed. */
export interface Limit {
  /** Name of the limit, its kind first. */
  readonly id: string;
  readonly kind: LimitKind;
  /** Greatest flow through the pump that keeps the limit [m3/s], 0 or more. */
  readonly greatestFlow: number;
  /** Whether it is a hard stop: no plan and no speed may cross it, whatever else is gained. */
  readonly hard: boolean;
  /** Where it binds: the part, the cover or the branch. */
  readonly partId?: string;
  /** Speed over reference speed not to be passed, whatever the flow is today [-], 0 or more; none when left out. */
  readonly greatestRatio?: number;
}

/** A filter, which binds by its own flow. */
export interface FilterUnit {
  /** Name of the filter, any text. */
  readonly id?: string | undefined;
  /** Area [m2], above 0. */
  readonly area: number;
  /** Branch it stands in; left out where the whole flow passes it. */
  readonly branchId?: string | undefined;
}

/** A heater, which binds by its own flow. */
export interface HeaterUnit {
  /** Name of the heater, any text. */
  readonly id?: string | undefined;
  /** Greatest flow through it [m3/s], above 0. */
  readonly greatestFlow: number;
  /** Branch it stands in; left out where the whole flow passes it. */
  readonly branchId?: string | undefined;
}

/** What the pump needs at its inlet. */
export interface NpshNeed {
  /** Absolute pressure on the pool surface [Pa], 0 to 110000. */
  readonly atmosphere: number;
  /** Height of the pool surface above the pump centreline [m], -50 to 50. */
  readonly surfaceAbovePump: number;
  /** NPSH required [m] at a flow [m3/s] and reference speed; it rises with flow. Lower speeds need less, so this errs to the safe side. */
  readonly required: (flow: number) => number;
  /** Margin wanted above it [m], 0 to 20. */
  readonly margin: number;
}

/** Everything that can set a limit; what is left out sets none. */
export interface LimitInputs {
  /** The circuit [see Circuit], fields as there. */
  readonly circuit: Circuit;
  /** Greatest velocity in suction pipe [m/s], above 0. */
  readonly suctionVelocity?: number | undefined;
  /** Greatest velocity in discharge pipe [m/s], above 0. */
  readonly dischargeVelocity?: number | undefined;
  /** Greatest flow per filter area [m/s], above 0. */
  readonly filterRate?: number | undefined;
  /** Filters that the rate holds for [see FilterUnit]. */
  readonly filters?: readonly FilterUnit[] | undefined;
  /** Heaters [see HeaterUnit]. */
  readonly heaters?: readonly HeaterUnit[] | undefined;
  /** Covers over the suction outlets [see SuctionCover]. */
  readonly suctionCovers?: readonly SuctionCover[] | undefined;
  /** Whether covers on one line share it evenly [see SuctionOutlets]; no when left out. */
  readonly coversBalanced?: boolean | undefined;
  /** Suction branches with a valve that can shut them, by id; none when left out. */
  readonly valvedBranches?: readonly string[] | undefined;
  /** What the pump needs at its inlet [see NpshNeed]. */
  readonly npsh?: NpshNeed | undefined;
}

/** Beyond this no pool pump delivers [m3/s]; a limit that is not met below it binds nothing. */
const beyondAnyPump = 1;

/**
 * Every limit a pad sets, each as the greatest flow through the pump that keeps it.
 *
 * Law: velocity V = Q/A in the tightest place; filter Q = area x rate and heater as marked, each by the flow through that unit; covers by suctionStop; NPSH available(Q) = required(Q) + margin.
 * @param inputs What sets limits [see LimitInputs], fields as there.
 * @returns The limits [m3/s], one of each kind, the tightest first; that of the suction covers is hard, and no limit is given for what was left out.
 * @throws CoreError when a field is outside its range or a branch is unknown; a limit that is crossed at no flow has greatest flow 0.
 * Accuracy: 1e-12 of the flow; covers as suctionStop.
 * Source: as suctionStop for suction covers; the label and manual of each unit; velocities common practice, no source.
 * @example limitsFor({ circuit: { suction: [], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, filterRate: 0.01, filters: [{ area: 0.5 }] })[0].greatestFlow // 0.005000
 */
export function limitsFor(inputs: LimitInputs): Limit[] {
  const limits = [
    ...velocityLimit(inputs.circuit, 'suction', inputs.suctionVelocity),
    ...velocityLimit(inputs.circuit, 'discharge', inputs.dischargeVelocity),
    ...tightest(filterLimits(inputs)),
    ...tightest(heaterLimits(inputs)),
    ...coverLimit(inputs),
    ...npshLimit(inputs),
  ];
  return limits.sort((a, b) => a.greatestFlow - b.greatestFlow);
}

/**
 * The limits a flow crosses.
 *
 * Law: crossed when flow > greatest flow or speed > greatest speed; touching is allowed.
 * @param limits The limits [see Limit], any number.
 * @param flow Flow through the pump [m3/s], 0 or more.
 * @param ratio Speed over reference speed [-], 0 or more; 0 when left out, which passes no speed.
 * @returns Those of the limits [m3/s] that are crossed, in the order given.
 * @throws CoreError when the flow is negative or not a finite number.
 * Accuracy: a flow or a speed within 1e-9 of a limit counts as touching, so that rounding crosses nothing.
 * Source: arithmetic.
 * @example crossedLimits([{ id: 'filterRate', kind: 'filterRate', greatestFlow: 0.004, hard: false }], 0.005).length // 1.000
 */
export function crossedLimits(limits: readonly Limit[], flow: number, ratio = 0): Limit[] {
  requireNotNegative('flow', flow, 'm3/s');
  requireNotNegative('ratio', ratio, '');
  return limits.filter(
    ({ greatestFlow, greatestRatio = Number.POSITIVE_INFINITY }) =>
      flow > greatestFlow * (1 + 1e-9) || ratio > greatestRatio * (1 + 1e-9),
  );
}

/**
 * The greatest speed at which the flow stays at or below a limit.
 *
 * Law: the ratio r with Q(r) = greatest flow, by halving; flow rises with speed.
 * @param flowAt Flow [m3/s] at a speed ratio [-], above 0; it must not fall as the ratio rises.
 * @param greatestFlow Flow not to be passed [m3/s], 0 or more.
 * @param top Fastest ratio looked at [-], above 0 to 10.
 * @returns Speed ratio [-], 0 where every speed passes it; undefined where even the fastest keeps it.
 * @throws CoreError when the flow or the ratio is out of range.
 * Accuracy: 1e-10 of the fastest ratio, on the side that keeps the limit.
 * Source: common practice, no source (bisection).
 * @example greatestRatioWithin((ratio) => 0.006 * ratio, 0.003, 1) // 0.5000
 */
export function greatestRatioWithin(
  flowAt: (ratio: number) => number,
  greatestFlow: number,
  top: number,
): number | undefined {
  requireNotNegative('greatest flow', greatestFlow, 'm3/s');
  requireBetween('top', requirePositive('top', top, ''), 0, 10, '');
  if (flowAt(top) <= greatestFlow) return undefined;
  let [low, high] = [0, top];
  for (let halving = 0; halving < 34; halving += 1) {
    const middle = (low + high) / 2;
    if (flowAt(middle) <= greatestFlow) low = middle;
    else high = middle;
  }
  return low;
}

/** The tightest of some limits, as a list of one; empty where there are none. */
function tightest(limits: readonly Limit[]): readonly Limit[] {
  return limits.toSorted((a, b) => a.greatestFlow - b.greatestFlow).slice(0, 1);
}

function velocityLimit(
  circuit: Circuit,
  side: 'suction' | 'discharge',
  greatest: number | undefined,
): Limit[] {
  if (greatest === undefined) return [];
  requirePositive(`${side}Velocity`, greatest, 'm/s');
  const fastest = (flow: number) => largestVelocity(circuit, flow, side)?.velocity ?? 0;
  const greatestFlow = flowWhere(fastest, greatest);
  if (greatestFlow === undefined) return [];
  const partId = largestVelocity(circuit, greatestFlow, side)?.partId;
  const kind = `${side}Velocity` as const;
  return [limitOf(kind, greatestFlow, partId)];
}

function filterLimits({ circuit, filterRate, filters = [] }: LimitInputs): readonly Limit[] {
  if (filterRate === undefined) return [];
  requirePositive('filter rate', filterRate, 'm/s');
  return filters.flatMap(({ id, area, branchId }) => {
    const greatest = requirePositive('filter area', area, 'm2') * filterRate;
    return unitLimit(circuit, 'filterRate', greatest, branchId, id);
  });
}

function heaterLimits({ circuit, heaters = [] }: LimitInputs): readonly Limit[] {
  return heaters.flatMap(({ id, greatestFlow, branchId }) => {
    const greatest = requirePositive('heater flow', greatestFlow, 'm3/s');
    return unitLimit(circuit, 'heaterFlow', greatest, branchId, id);
  });
}

/** A limit on the flow through one unit, as a flow through the pump. */
function unitLimit(
  circuit: Circuit,
  kind: LimitKind,
  greatest: number,
  branchId: string | undefined,
  id: string | undefined,
): readonly Limit[] {
  const total = branchId === undefined ? greatest : flowForBranch(circuit, branchId, greatest);
  return total === undefined ? [] : [limitOf(kind, total, id ?? branchId)];
}

function coverLimit(inputs: LimitInputs): readonly Limit[] {
  const { circuit, suctionCovers = [], coversBalanced = false, valvedBranches } = inputs;
  const stop = suctionStop({
    circuit,
    covers: suctionCovers,
    balanced: coversBalanced,
    valved: valvedBranches,
  });
  if (stop === undefined || stop.greatestFlow > beyondAnyPump) return [];
  return [{ ...limitOf('suctionCover', stop.greatestFlow, stop.coverId), hard: true }];
}

function npshLimit({ circuit, npsh }: LimitInputs): Limit[] {
  if (npsh === undefined) return [];
  requireBetween('margin', npsh.margin, 0, 20, 'm');
  const shortfall = (flow: number) =>
    npsh.required(flow) -
    npshAvailable({
      atmosphere: npsh.atmosphere,
      water: circuit.water,
      surfaceAbovePump: npsh.surfaceAbovePump,
      suctionLoss: suctionHead(circuit, flow),
    });
  const greatestFlow = flowWhere(shortfall, -npsh.margin);
  return greatestFlow === undefined ? [] : [limitOf('npsh', greatestFlow)];
}

function limitOf(kind: LimitKind, greatestFlow: number, partId?: string): Limit {
  const place = partId === undefined ? {} : { partId };
  return {
    id: partId === undefined ? kind : `${kind}:${partId}`,
    kind,
    greatestFlow,
    hard: false,
    ...place,
  };
}

/**
 * Flow through the pump at which a branch carries a flow of its own.
 *
 * Law: the split of branchFlows, turned round by halving; a branch carries more the more the pump moves.
 * @param circuit The circuit [see Circuit], fields as there.
 * @param branchId A branch of it [-], any id it has.
 * @param flow Flow in the branch [m3/s], 0 or more.
 * @returns Flow through the pump [m3/s]; undefined where no pool pump moves so much, above 1 m3/s.
 * @throws CoreError when the circuit lacks the branch.
 * Accuracy: 1e-12 of the flow.
 * Source: conservation of mass and energy.
 * @example flowForBranch({ suction: [{ kind: 'parallel', id: 'lines', branches: [{ id: 'a', lift: 0, parts: [{ kind: 'fitting', id: 'x', k: 2, bore: 0.05 }] }, { id: 'b', lift: 0, parts: [{ kind: 'fitting', id: 'y', k: 2, bore: 0.05 }] }] }], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 'a', 0.002) // 0.004000
 */
export function flowForBranch(
  circuit: Circuit,
  branchId: string,
  flow: number,
): number | undefined {
  return flowWhere((through) => {
    const branch = branchFlows(circuit, through).find((one) => one.branchId === branchId);
    if (branch === undefined) throw new CoreError('branchId', branchId, 'a branch of the circuit');
    return branch.flow;
  }, flow);
}

/** Greatest flow at which a quantity that grows with flow has not passed a level; undefined when it never does. */
function flowWhere(quantity: (flow: number) => number, level: number): number | undefined {
  if (quantity(0) >= level) return 0;
  let [low, high] = [0, 1e-3];
  while (quantity(high) <= level) {
    if (high >= beyondAnyPump) return undefined;
    [low, high] = [high, 2 * high];
  }
  for (let halving = 0; halving < 50; halving += 1) {
    const middle = (low + high) / 2;
    if (quantity(middle) <= level) low = middle;
    else high = middle;
  }
  return low;
}
