/** Demands in conflict: the smallest set of needs, limits and quiet hours that no day keeps. */
import { type Coefficients, type Constraint, solve } from 'yalps';
import { type Horizon, horizonOf } from './horizon.ts';
import { type CheapestDayInputs, requireInputs } from './inputs.ts';

/** One of the things that collide, with what it alone would have to give way by. */
export type CollisionMember =
  | {
      readonly kind: 'need';
      readonly needId: string;
      /** Service that is missing when all the others are kept [min], above 0. */
      readonly shortMinutes: number;
    }
  | {
      readonly kind: 'volume';
      /** Water that is missing when all the others are kept [m3], above 0. */
      readonly shortVolume: number;
    }
  | {
      readonly kind: 'limit';
      readonly limitId: string;
      /** Least flow the limit would have to allow [m3/s]. */
      readonly flowWanted: number;
    }
  | {
      readonly kind: 'quiet';
      /** Place in the list of quiet hours [-]. */
      readonly place: number;
      /** Least speed ratio they would have to allow [-]. */
      readonly ceilingWanted: number;
    }
  | { readonly kind: 'mustRun' };

type Demand =
  | { readonly kind: 'need'; readonly id: string }
  | { readonly kind: 'limit'; readonly id: string }
  | { readonly kind: 'quiet'; readonly place: number }
  | { readonly kind: 'volume' }
  | { readonly kind: 'mustRun' };

/** Slots that are missing and still count as none. */
const nothing = 1e-6;
/** Sets smaller than the first one found that are tried at most. */
const mostTried = 400;

function demandsOf(inputs: CheapestDayInputs): readonly Demand[] {
  const needs = inputs.needs.filter(({ minutes }) => minutes > 0);
  return [
    ...needs.map(({ id }) => ({ kind: 'need' as const, id })),
    ...(inputs.leastVolume > 0 ? [{ kind: 'volume' as const }] : []),
    ...inputs.limits.map(({ id }) => ({ kind: 'limit' as const, id })),
    ...inputs.quiet.map((_, place) => ({ kind: 'quiet' as const, place })),
    ...(inputs.mayStop ? [] : [{ kind: 'mustRun' as const }]),
  ];
}

function isAmong(
  demands: readonly Demand[],
  kind: Demand['kind'],
  name?: string | number,
): boolean {
  return demands.some(
    (each) =>
      each.kind === kind &&
      (name === undefined || ('id' in each ? each.id : 'place' in each && each.place) === name),
  );
}

/** The problem with nothing asked but these. */
function withOnly(inputs: CheapestDayInputs, demands: readonly Demand[]): CheapestDayInputs {
  return {
    ...inputs,
    needs: inputs.needs.filter(({ id }) => isAmong(demands, 'need', id)),
    leastVolume: isAmong(demands, 'volume') ? inputs.leastVolume : 0,
    limits: inputs.limits.filter(({ id }) => isAmong(demands, 'limit', id)),
    quiet: inputs.quiet.filter((_, place) => isAmong(demands, 'quiet', place)),
    mayStop: !isAmong(demands, 'mustRun'),
    mostChanges: undefined,
  };
}

/** Of speeds that serve the same needs in a class only the one that moves most water matters here. */
function strongest(horizon: Horizon, kind: number): readonly number[] {
  const { speeds = [], open = 0 } = horizon.classes[kind] ?? {};
  const best = new Map<number, number>();
  for (const speed of speeds) {
    const served = (horizon.speeds[speed]?.serves ?? 0) & open;
    const held = best.get(served);
    const more = (horizon.speeds[speed]?.flow ?? 0) > (horizon.speeds[held ?? -1]?.flow ?? -1);
    if (more) best.set(served, speed);
  }
  return [...best.values()];
}

/**
 * The least that is missing [slots], when only some of what is asked for may fall short: volume is
 * 0, each need one more than its place. No end where even that does not help.
 */
function leastMissing(horizon: Horizon, mayMiss: (service: number) => boolean): number {
  if (horizon.classes.some(({ speeds }) => speeds.length === 0)) return Number.POSITIVE_INFINITY;
  const constraints: [string, Constraint][] = [
    ...horizon.classes.map(({ slots }, kind): [string, Constraint] => [
      `class ${kind}`,
      { max: slots },
    ]),
    ...horizon.needs.map(({ slots }, place): [string, Constraint] => [
      `service ${place + 1}`,
      { min: slots },
    ]),
    ['service 0', { min: horizon.volume }],
  ];
  const variables: [string, Coefficients][] = [];
  for (let service = 0; service <= horizon.needs.length; service += 1)
    if (mayMiss(service))
      variables.push([
        `missing ${service}`,
        [['missing', 1] as const, [`service ${service}`, 1] as const],
      ]);
  for (const [kind, { open }] of horizon.classes.entries())
    for (const speed of strongest(horizon, kind)) {
      const { flow = 0, serves = 0 } = horizon.speeds[speed] ?? {};
      const row: [string, number][] = [
        [`class ${kind}`, 1],
        ['service 0', flow],
      ];
      for (let place = 0; place < horizon.needs.length; place += 1)
        if (serves & open & (1 << place)) row.push([`service ${place + 1}`, 1]);
      variables.push([`${kind} ${speed}`, row]);
    }
  const found = solve({
    direction: 'minimize' as const,
    objective: 'missing',
    constraints,
    variables,
  });
  return found.status === 'optimal' ? Math.max(0, found.result) : Number.POSITIVE_INFINITY;
}

function canBe(inputs: CheapestDayInputs): boolean {
  return leastMissing(horizonOf(inputs), () => true) <= nothing;
}

/** Drops whatever the collision does not need. */
function thinned(inputs: CheapestDayInputs, demands: readonly Demand[]): readonly Demand[] {
  return demands.reduce((kept, demand) => {
    const fewer = kept.filter((each) => each !== demand);
    return canBe(withOnly(inputs, fewer)) ? kept : fewer;
  }, demands);
}

function* subsets<T>(list: readonly T[], size: number): Generator<readonly T[]> {
  if (size === 0) yield [];
  for (const [place, first] of list.entries())
    if (size > 0)
      for (const rest of subsets(list.slice(place + 1), size - 1)) yield [first, ...rest];
}

function smallest(inputs: CheapestDayInputs, demands: readonly Demand[]): readonly Demand[] {
  const found = thinned(inputs, demands);
  let tried = 0;
  for (let size = 1; size < found.length; size += 1)
    for (const subset of subsets(demands, size)) {
      tried += 1;
      if (tried > mostTried) return found;
      if (!canBe(withOnly(inputs, subset))) return subset;
    }
  return found;
}

/** The least value, of those that could help, with which the rest can be kept. */
function leastThatHelps(
  values: readonly number[],
  changed: (value: number) => CheapestDayInputs,
): number {
  const rising = [...values].sort((a, b) => a - b);
  return rising.find((value) => canBe(changed(value))) ?? Number.POSITIVE_INFINITY;
}

function memberOf(
  inputs: CheapestDayInputs,
  demands: readonly Demand[],
  demand: Demand,
): CollisionMember {
  const within = withOnly(inputs, demands);
  if (demand.kind === 'mustRun') return { kind: 'mustRun' };
  if (demand.kind === 'quiet') {
    const { place } = demand;
    const raised = (ceiling: number) => {
      const quiet = inputs.quiet.map((each, index) =>
        index === place ? { ...each, ceiling } : each,
      );
      return withOnly({ ...inputs, quiet }, demands);
    };
    const ratios = inputs.speeds.map(({ ratio }) => ratio);
    return { kind: 'quiet', place, ceilingWanted: leastThatHelps(ratios, raised) };
  }
  if (demand.kind === 'limit') {
    const { id } = demand;
    const raised = (greatestFlow: number) => {
      const limits = inputs.limits.map((each) =>
        each.id === id ? { ...each, greatestFlow } : each,
      );
      return withOnly({ ...inputs, limits }, demands);
    };
    const flows = inputs.speeds.map(({ flow }) => flow);
    return { kind: 'limit', limitId: id, flowWanted: leastThatHelps(flows, raised) };
  }
  const horizon = horizonOf(within);
  if (demand.kind === 'volume') {
    const missing = leastMissing(horizon, (service) => service === 0);
    return { kind: 'volume', shortVolume: missing * horizon.slotVolume };
  }
  const service = horizon.needs.findIndex(({ need }) => need.id === demand.id) + 1;
  const missing = leastMissing(horizon, (each) => each === service);
  return { kind: 'need', needId: demand.id, shortMinutes: missing * horizon.minutes };
}

/**
 * The smallest set of needs, water, limits and quiet hours that no day keeps, and by how much each
 * of them alone would have to give way.
 *
 * Law: least total shortage of a linear programme of minutes by class; a set collides when it is above 0. A set found by leaving out one after the other is made smaller by trying all smaller ones.
 * @param inputs Speeds, needs, limits, quiet hours [see CheapestDayInputs], fields as there; the limit on changes is not looked at.
 * @returns The members [see CollisionMember], or an empty list when some day keeps everything. Giving way by what one of them says resolves the set; a number without end means that nothing it could give helps.
 * @throws CoreError when an input is outside its range.
 * Accuracy: 1e-6 slots; shortest runs count only where no window is long enough for one. With many demands sets beyond 400 tries are not looked at, and the set is then irreducible, perhaps not the smallest.
 * Source: Chinneck and Dravnieks, ORSA Journal on Computing 3, 1991 (deletion filter).
 * @example cheapestDayCollisions({ speeds: [{ ratio: 0.5, flow: 0.003, power: 200 }], mayStop: true, leastVolume: 300, needs: [], limits: [], quiet: [], prices: [{ start: 0, end: 1440, price: 0.3 }] })[0].shortVolume // 40.80
 */
export function cheapestDayCollisions(inputs: CheapestDayInputs): readonly CollisionMember[] {
  requireInputs(inputs);
  const demands = demandsOf(inputs);
  if (canBe(withOnly(inputs, demands))) return [];
  const found = smallest(inputs, demands);
  return found.map((demand) => memberOf(inputs, found, demand));
}
