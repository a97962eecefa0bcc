/** The pump of the home picture with a cartridge filter of its own, due at 24 ft and 60 gpm. */
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { foot } from '#units/factors.ts';
import { currency, demoCircuit, demoCurve, energyPrice, speeds } from './demo.ts';
import { demoPowerByFlow, dueFilter } from './demoPump.ts';
import { createBench } from './filterBench.ts';

/** Media that the water seeps through: nearer to n = 1 than to 2. */
const mediaExponent = 1.3;

/** Clean and dirty head at 60 gpm [m]: usual figures. */
export const filterEnds = { cleanHead: 4 * foot, dirtyHead: dueFilter.head } as const;
export const filterId = 'filter';

export const cleanCircuit: Circuit = {
  ...demoCircuit,
  discharge: demoCircuit.discharge.map((part) =>
    part.kind === 'equipment' && part.id === filterId
      ? {
          ...part,
          referenceHead: filterEnds.cleanHead,
          referenceFlow: dueFilter.flow,
          exponent: mediaExponent,
        }
      : part,
  ),
};

export const exampleBench = createBench({
  clean: cleanCircuit,
  filterId,
  ends: filterEnds,
  curve: demoCurve,
  power: demoPowerByFlow,
  speeds: { reference: speeds.rated, least: speeds.slowest, top: speeds.rated },
  price: { perKilowattHour: energyPrice, currency },
});

/** The picture opens here [rpm]. */
export const openingSpeed = 1800;
