/** What each answer of a pad still lacks. */

import type { Pad } from '#pad/document/schema.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import type { AssembledNeeds } from './assembleNeeds.ts';
import type { AssembledPool } from './assemblePool.ts';
import type { AssembledPump } from './assemblePump.ts';
import type { AssembledTariff } from './assembleTariff.ts';

/** What a reader may want to know. */
export type Answer = 'volume' | 'running' | 'turnover' | 'ladder' | 'price' | 'day';

interface Judged {
  readonly pool: AssembledPool;
  readonly pump: AssembledPump;
  readonly needs: AssembledNeeds;
  readonly tariff: AssembledTariff;
}

/** The problems that keep each answer from being given; none where it can be. */
export function missingFor(
  pad: Pad,
  { pool, pump, needs, tariff }: Judged,
  refused: readonly Problem[],
): Readonly<Record<Answer, readonly Problem[]>> {
  const volume = pool.volume === null ? pool.problems : [];
  const running = pump.curve === null || pump.speeds === null ? pump.problems : refused;
  const served =
    pad.needs.length === 0
      ? [problem('noNeeds', ['needs'])]
      : needs.needs.length === 0
        ? needs.problems
        : [];
  const planned = pad.day.blocks.length === 0 ? [problem('noBlocks', ['day', 'blocks'])] : [];
  return {
    volume,
    running,
    turnover: [...volume, ...running],
    ladder: [...running, ...served],
    price: [...running, ...(tariff.tariff === null ? tariff.problems : [])],
    day: [...volume, ...running, ...planned],
  };
}
