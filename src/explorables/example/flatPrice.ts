import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { demoCircuit, demoCurve, demoPower, speeds } from './demo.ts';
import type { Machine } from './machine.ts';

/** The invented pump of the home picture, so that a reader meets it again here. */
export const exampleMachine: Machine = {
  curve: demoCurve,
  circuit: compileCircuit(demoCircuit),
  power: demoPower,
  referenceSpeed: speeds.rated,
  leastSpeed: speeds.slowest,
  topSpeed: speeds.rated,
};
