/** Circuits for the oracle and the benchmark: invented, in shapes that pool plumbing takes. */
import type { Branch, Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { fittingK } from '#core/hydraulics/fittings.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import type { ThreePoints } from './engine.ts';

const foot = 0.3048;
const gallonPerMinute = (231 * 0.0254 ** 3) / 60;

export const pumpPoints: ThreePoints = [
  { flow: 0, head: 25.5 },
  { flow: 0.004, head: 21.2 },
  { flow: 0.0068, head: 12.4 },
];

let parts = 0;
const named = (what: string) => {
  parts += 1;
  return `${what}-${parts}`;
};

export function pipe(size: string, feet: number): CircuitPart {
  const { bore } = pipeSize(size);
  return { kind: 'pipe', id: named('pipe'), bore, length: feet * foot, roughness: 1.5e-6 };
}

export function elbows(size: string, count: number): CircuitPart {
  const { bore } = pipeSize(size);
  return { kind: 'fitting', id: named('elbows'), k: count * fittingK('elbow90', bore), bore };
}

export function equipment(head: number, gpm: number, factor = 1): CircuitPart {
  const referenceFlow = gpm * gallonPerMinute;
  return {
    kind: 'equipment',
    id: named('equipment'),
    referenceHead: head * foot,
    referenceFlow,
    exponent: 2,
    factor,
  };
}

export function branch(parts: readonly CircuitPart[], lift = 0): Branch {
  return { id: named('branch'), parts, lift };
}

export function sideBySide(...branches: Branch[]): CircuitPart {
  return { kind: 'parallel', id: named('group'), branches };
}

function circuit(
  suction: readonly CircuitPart[],
  discharge: readonly CircuitPart[],
  staticHead = 0,
  temperature = 20,
): Circuit {
  return { suction, discharge, staticHead, water: water(temperature) };
}

/** 30 ft of 2.5 in to the pump, 100 ft of 2 in back, warm water, elbows and a loaded filter. */
export const series: Circuit = circuit(
  [pipe('sch40-2.5', 30), elbows('sch40-2.5', 4)],
  [equipment(4, 60, 2.2), equipment(6, 60), pipe('sch40-2', 100), elbows('sch40-2', 8)],
  0,
  27,
);

/** The same with two suction lines and three returns. */
export const branched: Circuit = circuit(
  [
    sideBySide(
      branch([pipe('sch40-2', 28), elbows('sch40-2', 3)]),
      branch([pipe('sch40-2', 46), elbows('sch40-2', 5)]),
    ),
    pipe('sch40-2.5', 6),
    elbows('sch40-2.5', 1),
  ],
  [
    pipe('sch40-2', 60),
    equipment(4, 60, 2.2),
    elbows('sch40-2', 8),
    sideBySide(
      branch([pipe('sch40-1.5', 8), elbows('sch40-1.5', 3)]),
      branch([pipe('sch40-1.5', 20), elbows('sch40-1.5', 4)]),
      branch([pipe('sch40-1.5', 34), elbows('sch40-1.5', 4)]),
    ),
  ],
  0,
  27,
);

/** Every circuit that the engine is asked about, with the speeds it is asked at. */
export const oracleCircuits: readonly {
  readonly name: string;
  readonly circuit: Circuit;
  readonly ratios: readonly number[];
}[] = [
  { name: 'series, loaded filter, 27 degC', circuit: series, ratios: [1, 0.7, 0.4] },
  { name: 'two suction lines, three returns', circuit: branched, ratios: [1, 0.7, 0.4] },
  {
    name: 'cold water, Schedule 80',
    circuit: circuit([pipe('sch80-2', 40)], [pipe('sch80-2', 120), elbows('sch80-2', 10)], 0, 5),
    ratios: [1, 0.6],
  },
  {
    name: 'lift of 3 m',
    circuit: circuit([pipe('sch40-2', 30)], [pipe('sch40-2', 80), equipment(5, 60)], 3),
    ratios: [1, 0.6],
  },
  {
    name: 'lift of 8 m, near the least speed',
    circuit: circuit([pipe('sch40-2', 30)], [pipe('sch40-2', 80), equipment(5, 60)], 8),
    ratios: [1, 0.65],
  },
  {
    name: 'metric pipe, 63 and 50 mm',
    circuit: circuit([pipe('pn10-63', 40)], [pipe('pn10-50', 60), elbows('pn10-50', 6)], 0, 28),
    ratios: [1, 0.5],
  },
  {
    name: 'three bores in a row',
    circuit: circuit(
      [pipe('sch40-3', 20), pipe('sch40-2.5', 20)],
      [pipe('sch40-2', 40), pipe('sch40-1.5', 20)],
    ),
    ratios: [1, 0.5],
  },
  {
    name: 'two unlike suction lines',
    circuit: circuit(
      [sideBySide(branch([pipe('sch40-2', 30)]), branch([pipe('sch40-1.5', 60)]))],
      [pipe('sch40-2', 80), equipment(6, 60)],
    ),
    ratios: [1, 0.5],
  },
  {
    name: 'a group inside a branch',
    circuit: circuit(
      [pipe('sch40-2.5', 20)],
      [
        pipe('sch40-2', 30),
        sideBySide(
          branch([
            pipe('sch40-2', 10),
            sideBySide(branch([pipe('sch40-1.5', 10)]), branch([pipe('sch40-1', 15)])),
          ]),
          branch([pipe('sch40-1.5', 40), elbows('sch40-1.5', 4)]),
        ),
      ],
    ),
    ratios: [1, 0.5],
  },
  {
    name: 'a spillway beside returns',
    circuit: circuit(
      [pipe('sch40-2.5', 20)],
      [
        pipe('sch40-2', 40),
        sideBySide(
          branch([pipe('sch40-2', 20), elbows('sch40-2', 3)]),
          branch([pipe('sch40-1.5', 30)], 0.6),
        ),
      ],
    ),
    ratios: [1, 0.6],
  },
  {
    name: 'a spillway too high for the low speed',
    circuit: circuit(
      [pipe('sch40-2.5', 20)],
      [
        pipe('sch40-2', 40),
        sideBySide(branch([pipe('sch40-2', 20)]), branch([pipe('sch40-1.5', 30)], 1.5)),
      ],
    ),
    ratios: [1, 0.25],
  },
  {
    name: 'nothing but a long thin pipe',
    circuit: circuit([pipe('sch40-1', 10)], [pipe('sch40-1', 200)]),
    ratios: [1, 0.3],
  },
];
