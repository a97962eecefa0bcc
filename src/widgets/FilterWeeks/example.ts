/** The pump of the home picture with a cartridge filter of its own. Every figure is made up. */
import type { Circuit } from '#core/circuit.ts';
import { powerFromEfficiency } from '#core/power.ts';
import {
  currency,
  demoCircuit,
  demoCurve,
  energyPrice,
  fixedDraw,
  speeds,
} from '#widgets/CubeLaw/demo.ts';
import { createBench } from './bench.ts';

/** Clean and dirty head at 0.004 m3/s [m]. */
export const filterEnds = { cleanHead: 1.2, dirtyHead: 15 } as const;
export const filterId = 'filter';

/** Media that the water seeps through: nearer to n = 1 than to 2. */
const mediaExponent = 1.3;

export const cleanCircuit: Circuit = {
  ...demoCircuit,
  discharge: demoCircuit.discharge.map((part) =>
    part.kind === 'equipment' && part.id === filterId
      ? { ...part, referenceHead: filterEnds.cleanHead, exponent: mediaExponent }
      : part,
  ),
};

export const exampleBench = createBench({
  clean: cleanCircuit,
  filterId,
  ends: filterEnds,
  curve: demoCurve,
  // Power that follows the flow, since a loaded filter moves the pump along its curve.
  power: powerFromEfficiency({
    fixed: fixedDraw,
    curve: demoCurve,
    best: { flow: 0.0052, efficiency: 0.62 },
    driveEfficiency: 0.82,
    density: demoCircuit.water.density,
  }),
  speeds: { reference: speeds.rated, least: speeds.slowest, top: speeds.rated },
  price: { perKilowattHour: energyPrice, currency },
});

/** The picture opens here [rpm]. */
export const openingSpeed = 1800;
