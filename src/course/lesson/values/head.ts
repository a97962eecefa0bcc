import {
  type GaugeGrade,
  gaugeGrades,
  gaugeTolerance,
  pressureHead,
  roundedDynamicHead,
  totalDynamicHead,
} from '#core/fit/gauges.ts';
import { branchFlows, systemHead } from '#core/hydraulics/circuit.ts';
import type { Branch } from '#core/hydraulics/circuitParts.ts';
import { type FittingKind, fittingK } from '#core/hydraulics/fittings.ts';
import {
  darcyWeisbach,
  frictionFactor,
  smoothPlasticRoughness,
} from '#core/hydraulics/friction.ts';
import { hazenWilliams } from '#core/hydraulics/hazenWilliams.ts';
import { flowArea, pipeSize, reynoldsNumber } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import type { LessonValue, ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { exampleScene } from '#explorables/CircuitBuilder/example.ts';
import { circuitOf, pieceHeads } from '#explorables/CircuitBuilder/model.ts';
import { exampleStates, exampleTemperature } from '#explorables/GaugeHead/example.ts';
import { headsOf } from '#explorables/GaugeHead/model.ts';
import { readGiven } from '#units/given.ts';
import { grouped } from '#units/numerals.ts';

const densityOf = (given: ValueProps) =>
  water(readGiven('temperature', given['temperature'])).density;

const pairOf = (given: ValueProps) => ({
  dischargePressure: readGiven('pressure', given['pressure']),
  suctionVacuum: readGiven('vacuum', given['vacuum']),
  gaugeHeight: readGiven('length', given['height']),
  density: densityOf(given),
});

function toleranceOf(given: ValueProps): number {
  const grade = given['grade'] ?? '';
  if (!Object.hasOwn(gaugeGrades, grade)) throw new RangeError(`"${grade}" is no gauge grade.`);
  const span = readGiven('pressure', given['span']);
  return gaugeTolerance(
    { grade: grade as GaugeGrade, span },
    readGiven('pressure', given['pressure']),
  );
}

/** What the lesson's own example shows in one of its states. */
function gaugeExample(given: ValueProps): LessonValue {
  const state = exampleStates.find(({ id }) => id === given['state']);
  if (state === undefined) throw new RangeError(`The example has no state "${given['state']}".`);
  switch (given['show']) {
    case 'pressure':
      return { quantity: 'pressure', value: state.filterPressure };
    case 'vacuum':
      return { quantity: 'vacuum', value: state.suctionVacuum };
    case 'flow':
      return { quantity: 'flow', value: state.flow ?? 0 };
    case 'head':
      return {
        quantity: 'head',
        value: headsOf(state, water(exampleTemperature).density).total,
      };
    default:
      throw new RangeError('show must be pressure, vacuum, flow or head.');
  }
}

const boreOf = (given: ValueProps) => pipeSize(given['pipe'] ?? '').bore;

const reynoldsOf = (given: ValueProps) =>
  reynoldsNumber(
    readGiven('flow', given['flow']) / flowArea(boreOf(given)),
    boreOf(given),
    water(readGiven('temperature', given['temperature'])).kinematicViscosity,
  );

/** Friction over a metre of smooth plastic; the wall is rougher where the lesson says so. */
function gradientOf(given: ValueProps): number {
  const rough = given['roughness'];
  return darcyWeisbach({
    flow: readGiven('flow', given['flow']),
    bore: boreOf(given),
    length: 1,
    roughness: rough === undefined ? smoothPlasticRoughness : readGiven('roughness', rough),
    kinematicViscosity: water(readGiven('temperature', given['temperature'])).kinematicViscosity,
  });
}

const plain = (value: number, shown: string): LessonValue => ({ quantity: null, value, shown });

/** How many times the loss, once one thing is another: "to-flow", "to-pipe" and so on. */
function lossTimes(given: ValueProps): LessonValue {
  const changed = Object.entries(given).flatMap(([name, text]) =>
    name.startsWith('to-') ? [[name.slice(3), text]] : [],
  );
  const times = gradientOf({ ...given, ...Object.fromEntries(changed) }) / gradientOf(given);
  return plain(times, String(Number(times.toPrecision(2))));
}

/** The lesson's example circuit: so many of each piece, as the lesson writes it ("lines", "returns"). */
function exampleCircuit(given: ValueProps): LessonValue {
  const flow = readGiven('flow', given['flow']);
  const counts = Object.fromEntries(
    exampleScene.pieces.flatMap(({ id }) => (id in given ? [[id, Number(given[id])]] : [])),
  );
  const lift = given['lift'] === undefined ? 0 : readGiven('length', given['lift']);
  const built = { counts, lift };
  const piece = given['piece'];
  if (piece === undefined) {
    return { quantity: 'head', value: systemHead(circuitOf(exampleScene, built), flow) };
  }
  const found = pieceHeads(exampleScene, built, flow).find((one) => one.piece.id === piece);
  if (found === undefined) throw new RangeError(`The example has no piece "${piece}".`);
  return { quantity: 'head', value: found.head };
}

/** Flow through the first of two plain runs side by side, of one pipe and two lengths. */
function splitFlow(given: ValueProps): LessonValue {
  const way = (id: 'first' | 'second'): Branch => ({
    id,
    lift: 0,
    parts: [
      {
        kind: 'pipe',
        id: `${id}-run`,
        bore: boreOf(given),
        length: readGiven('length', given[id]),
        roughness: smoothPlasticRoughness,
      },
    ],
  });
  const pair = { kind: 'parallel' as const, id: 'pair', branches: [way('first'), way('second')] };
  const circuit = { suction: [pair], discharge: [], staticHead: 0, water: water(27) };
  const [first] = branchFlows(circuit, readGiven('flow', given['flow']));
  return { quantity: 'flow', value: first?.flow ?? Number.NaN };
}

/** Head: what gauges tell of it, what friction takes, and what a whole circuit takes. */
export const makers = {
  headOfPressure: (given) => ({
    quantity: 'head',
    value: pressureHead(readGiven('pressure', given['pressure']), densityOf(given)),
  }),
  headOfVacuum: (given) => ({
    quantity: 'head',
    value: pressureHead(readGiven('vacuum', given['vacuum']), densityOf(given)),
  }),
  gaugeHead: (given) => ({ quantity: 'head', value: totalDynamicHead(pairOf(given)) }),
  gaugeHeadRounded: (given) => ({ quantity: 'head', value: roundedDynamicHead(pairOf(given)) }),
  gaugeTolerance: (given) => ({ quantity: 'pressure', value: toleranceOf(given) }),
  gaugeToleranceHead: (given) => ({
    quantity: 'head',
    value: pressureHead(toleranceOf(given), densityOf(given)),
  }),
  velocityHeadGain: (given) => ({
    quantity: 'head',
    value: totalDynamicHead({
      dischargePressure: 0,
      suctionVacuum: 0,
      gaugeHeight: 0,
      density: 1000,
      flow: readGiven('flow', given['flow']),
      suctionBore: pipeSize(given['from'] ?? '').bore,
      dischargeBore: pipeSize(given['to'] ?? '').bore,
    }),
  }),
  gaugeExample,
  reynolds: (given) => {
    const reynolds = reynoldsOf(given);
    const figures = Number(given['figures'] ?? 2);
    return plain(reynolds, grouped(String(Number(reynolds.toPrecision(figures)))));
  },
  frictionFactor: (given) => {
    const factor = frictionFactor(reynoldsOf(given), smoothPlasticRoughness / boreOf(given));
    return plain(factor, factor.toFixed(4));
  },
  hazenLoss: (given) => ({
    quantity: 'head',
    value: hazenWilliams({
      flow: readGiven('flow', given['flow']),
      bore: boreOf(given),
      length: readGiven('length', given['length']),
      c: Number(given['c']),
    }),
  }),
  lossTimes,
  fittingK: (given) => {
    const k = fittingK(given['kind'] as FittingKind, boreOf(given));
    return plain(k, String(Number(k.toPrecision(2))));
  },
  exampleCircuit,
  splitFlow,
} as const satisfies ValueMakers;
