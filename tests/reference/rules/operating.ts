import { type Branch, branchFlows, type Circuit, type CircuitPart } from '#core/circuit.ts';
import { smoothPlasticRoughness } from '#core/friction.ts';
import { type OperatingPoint, operatingPoint } from '#core/operatingPoint.ts';
import { meanVelocity } from '#core/pipe.ts';
import { hydraulicPower } from '#core/power.ts';
import { type PumpCurve, pumpFromPoints, pumpFromThreePoints, pumpHead } from '#core/pump.ts';
import { type Water, water } from '#core/water.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Key, Value } from '../keys.ts';
import type { KeyUnit } from '../keyUnits.ts';
import { inSI, parsePolynomial, unitSpelled } from '../polynomial.ts';
import type { Family } from '../rule.ts';
import { lossPart, polynomialPump, systemParts } from './pumpText.ts';
import { boreInputs, boreOf, densityOf, viscosityInputs, viscosityOf } from './shared.ts';

interface CaseUnits {
  readonly flow: KeyUnit;
  readonly head: KeyUnit;
}

/** "gpm, ft", in either order; without it, the units the answers are wanted in. */
function unitsOfCase(given: Given): CaseUnits {
  const spelled = given.has('units')
    ? given
        .text('units')
        .split(/,|;| and /)
        .map(unitSpelled)
    : [];
  if (spelled.includes(undefined)) throw new NotUnderstood('the units of the case are not known');
  const find = (dimension: string) => spelled.find((unit) => unit?.dimension === dimension);
  const flow = find('flow') ?? given.expectedUnit('flow', 'branchFlow', 'branchFlows');
  const head = find('length') ?? given.expectedUnit('head');
  if (flow === undefined || head === undefined) {
    throw new NotUnderstood('the units of the case are not stated');
  }
  return { flow, head };
}

/** A coefficient of Q^n, from the units of the case to SI. */
function coefficientInSI(k: number, exponent: number, { flow, head }: CaseUnits): number {
  return (k * head.factor) / flow.factor ** exponent;
}

function pump(given: Given): PumpCurve {
  const units = unitsOfCase(given);
  const law = given.text('pumpLaw');
  if (law === 'polynomial') {
    const written = parsePolynomial(given.text('pumpHead'));
    const head = given.key('pumpHead')?.unit ?? units.head;
    return polynomialPump(inSI(written, written.flowUnit ?? units.flow, head));
  }
  const points = given.pairs('points').map(([flow, head]) => ({
    flow: flow * units.flow.factor,
    head: head * units.head.factor,
  }));
  if (law === 'three-point' || law === 'three point') return pumpFromThreePoints(points);
  if (['pchip', 'points', 'monotone cubic'].includes(law)) return pumpFromPoints(points);
  throw new NotUnderstood(`the pump law "${law}" is not known`);
}

const pipeFields = [...boreInputs, 'length', 'kFittings', 'k', 'roughness'];

/** What every pipe of a case shares. */
interface Surroundings {
  readonly units: CaseUnits;
  readonly roughness: number;
}

function pipeParts(pipe: Given, id: string, { roughness }: Surroundings): readonly CircuitPart[] {
  const bore = boreOf(pipe);
  const k = (pipe.maybe('kFittings') ?? 0) + (pipe.maybe('k') ?? 0);
  return [
    {
      kind: 'pipe',
      id: `${id} pipe`,
      bore,
      length: pipe.maybe('length') ?? 0,
      roughness: pipe.maybe('roughness') ?? roughness,
    },
    { kind: 'fitting', id: `${id} fittings`, k, bore },
  ];
}

function seriesParts(given: Given, list: readonly Value[], id: string, around: Surroundings) {
  return list.flatMap((each, index) =>
    pipeParts(given.inside(each, pipeFields), `${id} ${index + 1}`, around),
  );
}

const branchFields = [...pipeFields, 'series', 'equipment', 'staticHead'];

function branch(given: Given, value: Value, id: string, around: Surroundings): Branch {
  const inner = given.inside(value, branchFields);
  const own = inner.has('bore') || inner.has('nominal') ? pipeParts(inner, id, around) : [];
  const series = inner.has('series') ? seriesParts(inner, inner.list('series'), id, around) : [];
  const equipment = inner.has('equipment')
    ? equipmentParts(inner, inner.value('equipment'), id, around.units)
    : [];
  return { id, parts: [...own, ...series, ...equipment], lift: inner.maybe('staticHead') ?? 0 };
}

function parallelPart(given: Given, id: string, around: Surroundings): readonly CircuitPart[] {
  if (!given.has(id)) return [];
  const branches = given
    .list(id)
    .map((each, index) => branch(given, each, `${id} ${index + 1}`, around));
  return [{ kind: 'parallel', id, branches }];
}

/** One piece of equipment by its point and exponent, in the units of the case unless it says. */
function oneEquipment(given: Given, value: Value, id: string, units: CaseUnits): CircuitPart {
  const fields = ['h0', 'q0', 'referenceHead', 'referenceFlow', 'n', 'factor'];
  const inner = given.inside(value, fields);
  return {
    kind: 'equipment',
    id,
    referenceHead: inner.maybe('referenceHead') ?? inner.number('h0') * units.head.factor,
    referenceFlow: inner.maybe('referenceFlow') ?? inner.number('q0') * units.flow.factor,
    exponent: inner.maybe('n') ?? 2,
    factor: inner.maybe('factor') ?? 1,
  };
}

function equipmentParts(
  given: Given,
  value: Value,
  id: string,
  units: CaseUnits,
): readonly CircuitPart[] {
  const list = Array.isArray(value) ? (value as readonly Value[]) : [value];
  return list.map((each, index) => oneEquipment(given, each, `${id} unit ${index + 1}`, units));
}

/** Water of the stated viscosity; where no pipe is described its properties bear on nothing. */
function waterOf(given: Given): Water {
  if (!viscosityInputs.some((id) => id !== 'density' && given.has(id))) {
    if (given.has('series') || parallels.some((id) => given.has(id))) {
      throw new NotUnderstood('neither viscosity nor temperature is given');
    }
    return water(20);
  }
  const base = water(given.maybe('temperature') ?? 20);
  const kinematicViscosity = viscosityOf(given);
  return { ...base, kinematicViscosity, dynamicViscosity: kinematicViscosity * base.density };
}

const parallels = ['suctionParallel', 'parallel', 'returnParallel'];

function circuit(given: Given): Circuit {
  const units = unitsOfCase(given);
  const around = { units, roughness: given.maybe('roughness') ?? smoothPlasticRoughness };
  const ks = ['k', 'equipmentK'].map((id) => given.maybe(id) ?? 0);
  const written = given.has('systemHead') ? systemParts(given) : undefined;
  const staticHead =
    written?.staticHead ??
    given.maybe('staticHead') ??
    (given.maybe('caseStaticHead') ?? 0) * units.head.factor;
  const pipes = given.has('series') ? seriesParts(given, given.list('series'), 'run', around) : [];
  const equipment = given.has('equipment')
    ? equipmentParts(given, given.value('equipment'), 'equipment', units)
    : [];
  return {
    suction: ['suctionParallel', 'parallel'].flatMap((id) => parallelPart(given, id, around)),
    discharge: [
      ...ks.map((k, index) => lossPart(`k ${index + 1}`, coefficientInSI(k, 2, units), 2)),
      ...equipment,
      ...(written?.parts ?? []),
      ...pipes,
      ...parallelPart(given, 'returnParallel', around),
    ],
    staticHead,
    water: waterOf(given),
  };
}

function ratio(given: Given): number {
  if (given.has('speedRatio')) return given.number('speedRatio');
  return given.has('speed') ? given.number('speed') / given.number('referenceSpeed') : 1;
}

function solved(given: Given): OperatingPoint {
  return operatingPoint(pump(given), circuit(given), ratio(given));
}

/** The flow of each branch, or null where no water moves; a case with two groups must say which. */
function flowsOfBranches(given: Given): readonly number[] | null {
  const point = solved(given);
  if (point.kind !== 'flowing') return null;
  const flows = branchFlows(circuit(given), point.flow);
  const groups = new Set(flows.map(({ parallelId }) => parallelId));
  if (groups.size !== 1) throw new NotUnderstood('which group of branches is not stated');
  return flows.map(({ flow }) => flow);
}

function sharesOfBranches(given: Given): readonly number[] | null {
  const flows = flowsOfBranches(given);
  const total = flows?.reduce((sum, flow) => sum + flow, 0) ?? 1;
  return flows?.map((flow) => flow / total) ?? null;
}

/** Each branch counted in its own bore; one of several bores has no one velocity. */
function velocitiesOfBranches(given: Given): readonly number[] | null {
  const flows = flowsOfBranches(given);
  const id = parallels.find((each) => given.has(each)) ?? 'parallel';
  const bores = given.list(id).map((each) => {
    const inner = given.inside(each, branchFields);
    if (inner.has('series')) throw new NotUnderstood('a branch of several bores');
    return boreOf(inner);
  });
  return flows?.map((flow, place) => meanVelocity(flow, bores[place] ?? 0)) ?? null;
}

function oneBranch(all: (given: Given) => readonly number[] | null) {
  return (given: Given, { index }: Key): number | null => {
    if (index === undefined) throw new NotUnderstood('which branch is meant is not stated');
    const values = all(given);
    if (values === null) return null;
    const value = values[index - 1];
    if (value === undefined) throw new NotUnderstood(`there is no branch ${index}`);
    return value;
  };
}

/** Where no pipe is described the density stands beside no viscosity. */
const densityFor = (given: Given): number =>
  given.has('density') ? given.number('density') : densityOf(given);

/** Asked at a speed too slow to lift any water, the core names the speed that would. */
function leastRatio(given: Given): number {
  const point = operatingPoint(pump(given), circuit(given), 1e-3);
  return point.kind === 'noFlow' ? point.leastRatio : 0;
}

/** Head of the pump alone at a flow, in SI. */
function headOfPump(given: Given): number {
  return pumpHead(pump(given), given.number('flow'), ratio(given));
}

function beyondLastPoint(given: Given): boolean {
  if (given.text('pumpLaw') === 'polynomial')
    throw new NotUnderstood('the curve has no last point');
  const point = solved(given);
  return point.kind === 'flowing' && point.extrapolated;
}

export const operatingFamily: Family = {
  name: 'operating point',
  quantity: /pump and circuit|operating point|duty point/i,
  rules: [
    {
      what: 'head of the pump alone',
      needs: ['pumpLaw', 'points|pumpHead', 'flow'],
      takes: ['units', 'speedRatio', 'speed', 'referenceSpeed'],
      gives: { head: headOfPump },
    },
    {
      what: 'operating point',
      needs: [
        'pumpLaw',
        'points|pumpHead',
        'k|series|parallel|suctionParallel|returnParallel|equipment|equipmentK|systemHead',
      ],
      takes: [
        ...['units', 'speedRatio', 'speed', 'referenceSpeed', 'staticHead', 'caseStaticHead'],
        ...[
          'k',
          'equipment',
          'equipmentK',
          'series',
          'roughness',
          'systemHead',
          ...parallels,
          ...viscosityInputs,
        ],
      ],
      gives: {
        flow: (given) => {
          const point = solved(given);
          return point.kind === 'flowing' ? point.flow : null;
        },
        head: (given) => {
          const point = solved(given);
          return point.kind === 'flowing' ? point.head : null;
        },
        beyondLastPoint,
        leastRatio: (given) => leastRatio(given),
        leastSpeed: (given) => leastRatio(given) * given.number('referenceSpeed'),
        hydraulicPower: (given) => {
          const point = solved(given);
          return point.kind === 'flowing'
            ? hydraulicPower(densityFor(given), point.flow, point.head)
            : null;
        },
        branchFlow: oneBranch(flowsOfBranches),
        branchVelocity: oneBranch(velocitiesOfBranches),
        branchFlows: flowsOfBranches,
        branchShare: oneBranch(sharesOfBranches),
        branchShares: sharesOfBranches,
      },
    },
  ],
};
