import { z } from 'zod';
import { branchFlows } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { type OperatingPoint, operatingPoint } from '#core/pump/operatingPoint.ts';
import { type PumpCurve, pumpFromPoints, pumpFromThreePoints } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import type { Json } from '../caseFile.ts';
import { choice, formed, NotInGrammar, need, number, row } from '../grammar.ts';
import { toCanonical } from '../units.ts';
import { type CurveUnits, coefficientsOf, lossPart, polynomialPump } from './curves.ts';
import { viscosityInputs, viscosityOf } from './shared.ts';

/** "gpm, ft": flows and heads without a unit of their own follow it. */
const unitsOf = (flow: string, head: string): CurveUnits => ({
  flow: toCanonical(`q_${flow}`, 1),
  head: toCanonical(`h_${head}`, 1),
});
const units = choice({ 'gpm, ft': unitsOf('gpm', 'ft'), 'm3/h, m': unitsOf('m3_h', 'm') });

const pipes = formed(
  z.array(
    z.strictObject({
      inside_diameter_m: z.number(),
      length_m: z.number(),
      k_fittings: z.number().default(0),
    }),
  ),
);
type Pipes = ReturnType<typeof pipes.read>;

const optional = {
  speed: number('ratio'),
  k: number(),
  z: number(),
  equipment_k: number(),
  equipment: formed(z.strictObject({ h0: z.number(), q0: z.number(), n: z.number() })),
  series: pipes,
  parallel: pipes,
  roughness: number('m'),
  ...viscosityInputs,
};
type Optional = {
  readonly [K in keyof typeof optional]?: ReturnType<(typeof optional)[K]['read']> | undefined;
};
type InPipes = Optional & { readonly units: CurveUnits };
type Solve = InPipes & { readonly pump: PumpCurve };

const pipeParts = (pipe: Pipes[number], id: string, roughness: number): readonly CircuitPart[] => {
  const { inside_diameter_m: bore, length_m: length, k_fittings: k } = pipe;
  return [
    { kind: 'pipe', id: `${id} pipe`, bore, length, roughness },
    { kind: 'fitting', id: `${id} fittings`, k, bore },
  ];
};

function circuitOf(given: InPipes): Circuit {
  const { k = 0, equipment_k = 0, equipment, series = [], parallel = [] } = given;
  const { flow, head } = given.units;
  const hasPipes = series.length + parallel.length > 0;
  const roughness = hasPipes ? need(given.roughness, 'roughness') : 0;
  const branches = parallel.map((pipe, place) => {
    const id = `branch ${place + 1}`;
    return { id, parts: pipeParts(pipe, id, roughness), lift: 0 };
  });
  const filter: CircuitPart | undefined = equipment && {
    kind: 'equipment',
    id: 'equipment',
    referenceHead: equipment.h0 * head,
    referenceFlow: equipment.q0 * flow,
    exponent: equipment.n,
    factor: 1,
  };
  const plain = water(given.temperature ?? 20);
  const kinematicViscosity = hasPipes ? viscosityOf(given) : plain.kinematicViscosity;
  return {
    suction: branches.length > 0 ? [{ kind: 'parallel', id: 'parallel', branches }] : [],
    discharge: [
      ...[k, equipment_k].map((each, place) =>
        lossPart(`k ${place + 1}`, (each * head) / flow ** 2, 2),
      ),
      ...(filter ? [filter] : []),
      ...series.flatMap((pipe, place) => pipeParts(pipe, `run ${place + 1}`, roughness)),
    ],
    staticHead: (given.z ?? 0) * head,
    water: {
      ...plain,
      kinematicViscosity,
      dynamicViscosity: kinematicViscosity * plain.density,
    },
  };
}

function solved({ pump, ...given }: Solve): OperatingPoint {
  return operatingPoint(pump, circuitOf(given), given.speed ?? 1);
}

const ofPoint = (key: 'flow' | 'head') => (given: Solve) => {
  const point = solved(given);
  return point.kind === 'flowing' ? point[key] : null;
};

function shareOfFirst(given: Solve): number | null {
  if (given.parallel === undefined) throw new NotInGrammar('parallel is missing');
  const point = solved(given);
  if (point.kind !== 'flowing') return null;
  const [first] = branchFlows(circuitOf(given), point.flow);
  return (first?.flow ?? 0) / point.flow;
}

const met: Readonly<Record<string, (given: Solve) => Json>> = {
  flow_gpm: ofPoint('flow'),
  flow_m3_h: ofPoint('flow'),
  head_ft: ofPoint('head'),
  head_m: ofPoint('head'),
  share_of_first_branch: shareOfFirst,
};

/** The same answers once the pump of a case is read. */
function forPump<G extends InPipes>(pumpOf: (given: G) => PumpCurve, answers: typeof met) {
  return Object.fromEntries(
    Object.entries(answers).map(([key, answer]) => [
      key,
      (given: G) => answer({ ...given, pump: pumpOf(given) }),
    ]),
  );
}

const beyondLastPoint = (given: Solve): boolean => {
  const point = solved(given);
  return point.kind === 'flowing' && point.extrapolated;
};

const pairs = formed(z.array(z.tuple([z.number(), z.number()])));

export const operatingPoints = [
  row(
    {
      pump_law: choice({ 'three-point': pumpFromThreePoints, pchip: pumpFromPoints }),
      points: pairs,
      units,
    },
    optional,
    forPump(
      ({ pump_law, points, units: { flow, head } }) =>
        pump_law(points.map(([q, h]) => ({ flow: q * flow, head: h * head }))),
      { ...met, beyond_last_point: beyondLastPoint },
    ),
  ),
  row(
    {
      pump_law: choice({ polynomial: polynomialPump }),
      pump_head: formed(z.string(), 'ft', 'm'),
      units,
    },
    optional,
    forPump(
      ({ pump_law, pump_head, units: sizes }) => pump_law(coefficientsOf(pump_head, sizes)),
      met,
    ),
  ),
];
