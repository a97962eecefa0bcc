import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import type { CompiledCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';

/** Lines of parts in a circuit: its own, and one for each branch. */
function linesIn({ groups }: CompiledCircuit): number {
  return groups
    .flatMap(({ branches }) => branches)
    .reduce((sum, { compiled }) => sum + linesIn(compiled), 1);
}

/** Calls on each time the head of a line is worked out, which begins with its lift. */
function watch(compiled: CompiledCircuit, tick: () => void): void {
  const { lift } = compiled;
  Object.defineProperty(compiled, 'lift', {
    get: () => {
      tick();
      return lift;
    },
  });
  for (const { branches } of compiled.groups) for (const one of branches) watch(one.compiled, tick);
}

/** How often a piece of work asks for the head of each line of a circuit, on average. */
export function headsOfEachLine(
  circuit: Circuit,
  work: (compiled: CompiledCircuit) => void,
): number {
  const compiled = compileCircuit(circuit);
  let heads = 0;
  watch(compiled, () => {
    heads += 1;
  });
  work(compiled);
  return heads / linesIn(compiled);
}
