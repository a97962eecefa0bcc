import { branchFlows } from '#core/hydraulics/circuit.ts';
import { meanVelocity } from '#core/hydraulics/pipe.ts';
import { type OperatingPoint, operatingPoint } from '#core/pump/operatingPoint.ts';
import { hydraulicPower } from '#core/pump/power.ts';
import { type PumpCurve, pumpFromPoints, pumpFromThreePoints, pumpHead } from '#core/pump/pump.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Key } from '../keys.ts';
import { inSI, parsePolynomial } from '../polynomial.ts';
import type { Family } from '../rule.ts';
import { branchFields, circuit, parallels, unitsOfCase } from './caseCircuit.ts';
import { polynomialPump } from './pumpText.ts';
import { boreOf, densityOf, viscosityInputs } from './shared.ts';

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
