import { branchFlows, type Circuit, largestVelocity, suctionHead } from './circuit.ts';
import { CoreError, requireBetween, requireNotNegative, requirePositive } from './errors.ts';
import { npshAvailable } from './npsh.ts';

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
}

/** A cover over a suction outlet. */
export interface SuctionCover {
  /** Name of the cover, any text. */
  readonly id: string;
  /** Flow marked on the cover [m3/s], above 0. */
  readonly markedFlow: number;
  /** Branch of the suction side it stands at the end of; left out, it shares the whole flow with the other covers left out. */
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
  /** Filter area [m2] and greatest rate [m/s], both above 0. */
  readonly filter?: { readonly area: number; readonly rate: number } | undefined;
  /** Greatest flow through the heater [m3/s], above 0; with the branch it stands in, if it does. */
  readonly heater?:
    | { readonly greatestFlow: number; readonly branchId?: string | undefined }
    | undefined;
  /** Covers over the suction outlets [see SuctionCover]. */
  readonly suctionCovers?: readonly SuctionCover[] | undefined;
  /** How many of two or more covers are taken to be blocked [-], 0 or 1; 1 when left out. */
  readonly blockedCovers?: 0 | 1 | undefined;
  /** What the pump needs at its inlet [see NpshNeed]. */
  readonly npsh?: NpshNeed | undefined;
}

/** Beyond this no pool pump delivers [m3/s]; a limit that is not met below it binds nothing. */
const beyondAnyPump = 1;

/**
 * Every limit a pad sets, each as the greatest flow through the pump that keeps it.
 *
 * Law: velocity V = Q/A in the tightest place; filter Q = area x rate; heater and covers as marked, by the share of the flow that passes them; NPSH available(Q) = required(Q) + margin.
 * @param inputs What sets limits [see LimitInputs], fields as there.
 * @returns The limits [m3/s], the tightest first; the suction covers' are hard, and no limit is given for what was left out.
 * @throws CoreError when a field is outside its range or a branch is unknown; a limit that is crossed at no flow has greatest flow 0.
 * Accuracy: 1e-12 of the flow; covers as marked; with two or more covers one is taken as blocked unless said otherwise.
 * Source: 16 CFR 1450 and ANSI/APSP/ICC-16 for suction covers (sharing with one blocked: from memory); the label and manual of each unit; velocities common practice, no source.
 * @example limitsFor({ circuit: { suction: [], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, filter: { area: 0.5, rate: 0.01 } })[0].greatestFlow // 0.005000
 */
export function limitsFor(inputs: LimitInputs): Limit[] {
  const limits = [
    ...velocityLimit(inputs.circuit, 'suction', inputs.suctionVelocity),
    ...velocityLimit(inputs.circuit, 'discharge', inputs.dischargeVelocity),
    ...filterLimit(inputs),
    ...heaterLimit(inputs),
    ...coverLimits(inputs),
    ...npshLimit(inputs),
  ];
  return limits.sort((a, b) => a.greatestFlow - b.greatestFlow);
}

/**
 * The limits a flow crosses.
 *
 * Law: crossed when flow > greatest flow; touching is allowed.
 * @param limits The limits [see Limit], any number.
 * @param flow Flow through the pump [m3/s], 0 or more.
 * @returns Those of the limits [m3/s] that are crossed, in the order given.
 * @throws CoreError when the flow is negative or not a finite number.
 * Accuracy: a flow within 1e-9 of a limit counts as touching, so that rounding crosses nothing.
 * Source: arithmetic.
 * @example crossedLimits([{ id: 'filterRate', kind: 'filterRate', greatestFlow: 0.004, hard: false }], 0.005).length // 1.000
 */
export function crossedLimits(limits: readonly Limit[], flow: number): Limit[] {
  requireNotNegative('flow', flow, 'm3/s');
  return limits.filter((limit) => flow > limit.greatestFlow * (1 + 1e-9));
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

function filterLimit({ filter }: LimitInputs): Limit[] {
  if (filter === undefined) return [];
  requirePositive('filter area', filter.area, 'm2');
  requirePositive('filter rate', filter.rate, 'm/s');
  return [limitOf('filterRate', filter.area * filter.rate)];
}

function heaterLimit({ circuit, heater }: LimitInputs): Limit[] {
  if (heater === undefined) return [];
  requirePositive('heater flow', heater.greatestFlow, 'm3/s');
  const { branchId, greatestFlow } = heater;
  if (branchId === undefined) return [limitOf('heaterFlow', greatestFlow)];
  const total = flowWhere((flow) => flowInBranch(circuit, branchId, flow), greatestFlow);
  return total === undefined ? [] : [limitOf('heaterFlow', total, branchId)];
}

/** Covers in branches of their own bind by their branch's flow; the others share the whole flow. */
function coverLimits({ circuit, suctionCovers = [], blockedCovers = 1 }: LimitInputs): Limit[] {
  for (const cover of suctionCovers) requirePositive('markedFlow', cover.markedFlow, 'm3/s');
  const inBranches = suctionCovers.flatMap(({ id, markedFlow, branchId }) => {
    if (branchId === undefined) return [];
    const total = flowWhere((flow) => flowInBranch(circuit, branchId, flow), markedFlow);
    return total === undefined ? [] : [coverLimit(total, id)];
  });
  const sharing = suctionCovers.filter((cover) => cover.branchId === undefined);
  return [...inBranches, ...sharedCoverLimit(sharing, blockedCovers)];
}

/** Covers that share pass equal parts, so the one with the lowest mark is the first to be passed. */
function sharedCoverLimit(covers: readonly SuctionCover[], blocked: 0 | 1): Limit[] {
  const weakest = [...covers].sort((a, b) => a.markedFlow - b.markedFlow)[0];
  if (weakest === undefined) return [];
  const open = covers.length > 1 ? covers.length - blocked : 1;
  return [coverLimit(open * weakest.markedFlow, weakest.id)];
}

function coverLimit(greatestFlow: number, coverId: string): Limit {
  return { ...limitOf('suctionCover', greatestFlow, coverId), hard: true };
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

function flowInBranch(circuit: Circuit, branchId: string, flow: number): number {
  const branch = branchFlows(circuit, flow).find((one) => one.branchId === branchId);
  if (branch === undefined) throw new CoreError('branchId', branchId, 'a branch of the circuit');
  return branch.flow;
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
