import { filterFactor } from '#core/equipment.ts';
import { pipeSize } from '#core/pipe.ts';
import { powerFromEfficiency } from '#core/power.ts';
import { type PumpPoint, pumpFromPoints } from '#core/pump.ts';
import { demoCircuit, fixedDraw } from '#widgets/CubeLaw/demo.ts';
import type { Rig, RigPump } from './rig.ts';

/** The invented pipes of the home picture, with two invented pumps to put before them. */
const points = (list: readonly (readonly [flow: number, head: number])[]): readonly PumpPoint[] =>
  list.map(([flow, head]) => ({ flow, head }));

function pump(
  id: string,
  label: string,
  sheet: readonly PumpPoint[],
  best: { readonly flow: number; readonly efficiency: number },
): RigPump {
  const curve = pumpFromPoints(sheet);
  const power = powerFromEfficiency({
    fixed: fixedDraw,
    curve,
    best,
    driveEfficiency: 0.82,
    density: demoCircuit.water.density,
  });
  return { id, label, curve, power, points: sheet };
}

const small = points([
  [0, 25.5],
  [0.002, 24.4],
  [0.004, 21.2],
  [0.0055, 17.2],
  [0.0068, 12.4],
]);

/** Its sheet ends before the flow it reaches in these pipes, as sheets sometimes do. */
const large = points([
  [0, 29],
  [0.002, 28.3],
  [0.004, 26],
  [0.0055, 22.9],
  [0.0062, 21],
]);

const ends = { cleanHead: 3.1, dirtyHead: 10.1 };

export const exampleRig: Rig = {
  pumps: [
    pump('a', 'pump A', small, { flow: 0.0045, efficiency: 0.62 }),
    pump('b', 'pump B, larger', large, { flow: 0.0058, efficiency: 0.64 }),
  ],
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
