/** Limits of a trial pad: most are those of the most likely pad, and need not be worked out again. */

import type { Limit } from '#core/day/limits.ts';
import type { SettledPad } from '#core/fit/padEvidence.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import type { Pad } from '#pad/document/schema.ts';
import { assembleLimits } from './assembleLimits.ts';
import { memoize } from './memo.ts';

/**
 * Limits of any trial pad, each worked out once, however often the day is changed.
 *
 * A trial pad differs from the most likely one by a factor on every described loss of a side, and by
 * what the description lacks, which all the water of that side passes. Water then divides between
 * branches as before, unless one of them lifts it, so of the limits only that of the pump's inlet
 * (NPSH) moves. It is reached at the same loss before the pump: a flow that keeps it on the most
 * likely pad, and loses less than its greatest there, cannot cross it. The speed of a stop is left
 * out, since it holds at the worst state and not at that of the trial pad.
 */
export const limitsWith = memoize(
  (limits: Pad['limits'], site: Pad['site'], plumbing: Pad['plumbing'], best: SettledPad) => {
    const allOf = (circuit: Circuit, of = limits) =>
      assembleLimits(of, site, plumbing, circuit).limits;
    const ofBest = allOf(best.circuit);
    const still = ofBest.filter(({ kind }) => kind !== 'npsh');
    const inlet = ofBest.find(({ kind }) => kind === 'npsh')?.greatestFlow;
    const lossAtInlet = compiledHead(best.compiledSuction, inlet ?? 0);
    const divides = raises([...best.circuit.suction, ...best.circuit.discharge]);
    const known = new WeakMap<SettledPad, readonly Limit[]>();
    const limitsOf = ({ circuit }: SettledPad): readonly Limit[] =>
      divides ? allOf(circuit) : [...still, ...allOf(circuit, inletAlone(limits))];
    return (pad: SettledPad, greatestFlow: number): readonly Limit[] => {
      const isFar =
        inlet === undefined ||
        (greatestFlow < inlet && compiledHead(pad.compiledSuction, greatestFlow) < lossAtInlet);
      if (!divides && isFar) return ofBest;
      const found = known.get(pad) ?? limitsOf(pad);
      known.set(pad, found);
      return found;
    };
  },
);

/** Whether some branch lifts its water. */
function raises(parts: readonly CircuitPart[]): boolean {
  return parts.some(
    (part) =>
      part.kind === 'parallel' &&
      part.branches.some((branch) => branch.lift > 0 || raises(branch.parts)),
  );
}

function inletAlone(limits: Pad['limits']): Pad['limits'] {
  return {
    ...limits,
    suctionVelocity: null,
    dischargeVelocity: null,
    filterRate: null,
    heaterGreatestFlow: null,
    suctionCovers: [],
  };
}
