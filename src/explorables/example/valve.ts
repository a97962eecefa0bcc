import { filterFactor } from '#core/hydraulics/equipment.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { powerFromEfficiency } from '#core/pump/power.ts';
import { type PumpPoint, pumpFromPoints } from '#core/pump/pump.ts';
import { demoCircuit, demoCurve, demoPoints, fixedDraw } from './demo.ts';
import { demoPowerByFlow, driveEfficiency, dueHeadAt } from './demoPump.ts';
import type { Rig, RigPump } from './rig.ts';

/** The invented pipes and pump of the home picture, and a larger invented pump to put in its place. */
const points = (list: readonly (readonly [flow: number, head: number])[]): readonly PumpPoint[] =>
  list.map(([flow, head]) => ({ flow, head }));

const pumpA: RigPump = {
  id: 'a',
  label: 'pump A',
  curve: demoCurve,
  power: demoPowerByFlow,
  points: demoPoints,
};

/** Its sheet ends before the flow it reaches in these pipes, as sheets sometimes do. */
const large = points([
  [0, 29],
  [0.002, 28.3],
  [0.004, 26],
  [0.0055, 22.9],
  [0.0062, 21],
]);

const largeCurve = pumpFromPoints(large);

const pumpB: RigPump = {
  id: 'b',
  label: 'pump B, larger',
  curve: largeCurve,
  power: powerFromEfficiency({
    fixed: fixedDraw,
    curve: largeCurve,
    best: { flow: 0.0058, efficiency: 0.7 },
    driveEfficiency,
    density: demoCircuit.water.density,
  }),
  points: large,
};

/** Clean as in the home picture, and due: heads at its reference flow, 0.004 m3/s [m]. */
const ends = { cleanHead: 3.1, dirtyHead: dueHeadAt(0.004, 2) };

export const exampleRig: Rig = {
  pumps: [pumpA, pumpB],
  circuit: {
    ...demoCircuit,
    discharge: demoCircuit.discharge.map((part) =>
      part.id === 'filter' && part.kind === 'equipment'
        ? { ...part, factor: filterFactor(ends, 0) }
        : part,
    ),
  },
  valveBore: pipeSize('sch40-2').bore,
  filter: { id: 'filter', ends, loading: 0 },
  ratio: 1,
};
