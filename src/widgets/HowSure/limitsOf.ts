/** Limits of a trial pad: most are those of the most likely pad, and only near them it matters. */
import type { Limit } from '#core/limits.ts';
import type { SettledPad } from '#core/padModel.ts';
import { assembleLimits } from '#pad/assembleLimits.ts';
import { memoize } from '#pad/memo.ts';
import type { Pad } from '#pad/schema.ts';

/**
 * A loss that is k times as great is reached at a flow k times smaller at the least, since loss grows
 * faster than flow; what is left below one is for water that divides otherwise between branches.
 */
const farEnough = 0.8;

/**
 * Limits of any trial pad, each worked out once, however often the day is changed. Where the flow
 * asked about stays far from every limit, those of the most likely pad serve as well.
 */
export const limitsWith = memoize(
  (limits: Pad['limits'], site: Pad['site'], plumbing: Pad['plumbing'], best: SettledPad) => {
    const known = new WeakMap<SettledPad, readonly Limit[]>();
    const exact = (pad: SettledPad): readonly Limit[] => {
      const found = known.get(pad) ?? assembleLimits(limits, site, plumbing, pad.circuit).limits;
      known.set(pad, found);
      return found;
    };
    const ofBest = exact(best);
    const least = Math.min(...ofBest.map(({ greatestFlow }) => greatestFlow));
    return (pad: SettledPad, greatestFlow: number): readonly Limit[] => {
      const worse = Math.max(
        1,
        pad.suctionFactor / best.suctionFactor,
        pad.dischargeFactor / best.dischargeFactor,
      );
      return greatestFlow * worse < farEnough * least ? ofBest : exact(pad);
    };
  },
);
