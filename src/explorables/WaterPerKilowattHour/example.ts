import { speeds } from '#explorables/example/demo.ts';
import { exampleRig } from '#explorables/example/valve.ts';
import type { Setup } from './mileage.ts';

const [pumpA] = exampleRig.pumps;

/** Pump A of the lesson on the operating point, in the same invented pipes, made to turn very slowly. */
export const exampleSetup: Setup = {
  curve: pumpA.curve,
  circuit: exampleRig.circuit,
  power: pumpA.power,
  referenceSpeed: speeds.rated,
  leastSpeed: 300,
  topSpeed: speeds.rated,
};
