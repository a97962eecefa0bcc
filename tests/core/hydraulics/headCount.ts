import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import type { FoldedCircuit } from '#core/hydraulics/foldedCircuit.ts';
import { foldCircuit } from '#core/hydraulics/foldedCircuit.ts';

/** Lines of parts in a circuit: its own, and one for each branch. */
function linesIn({ groups }: FoldedCircuit): number {
  return groups
    .flatMap(({ branches }) => branches)
    .reduce((sum, { folded }) => sum + linesIn(folded), 1);
}

/** Calls on each time the head of a line is worked out, which begins with its lift. */
function watch(folded: FoldedCircuit, tick: () => void): void {
  const { lift } = folded;
  Object.defineProperty(folded, 'lift', {
    get: () => {
      tick();
      return lift;
    },
  });
  for (const { branches } of folded.groups) for (const one of branches) watch(one.folded, tick);
}

/** How often a piece of work asks for the head of each line of a circuit, on average. */
export function headsOfEachLine(circuit: Circuit, work: (folded: FoldedCircuit) => void): number {
  const folded = foldCircuit(circuit);
  let heads = 0;
  watch(folded, () => {
    heads += 1;
  });
  work(folded);
  return heads / linesIn(folded);
}
