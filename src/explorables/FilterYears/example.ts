/** The pump and filter of the lesson on loading, over a year. Every figure is made up. */

import { cleanCircuit, exampleBench, filterId } from '#explorables/example/filter.ts';
import { exampleTariff } from '#explorables/example/tariff.ts';
import { createSolver } from './solve.ts';

export const solveExample = createSolver({
  curve: exampleBench.curve,
  power: exampleBench.power,
  circuit: cleanCircuit,
  filterId,
  reference: exampleBench.speeds.reference,
  top: exampleBench.speeds.top,
  tariff: exampleTariff,
});
