/** A bench simple enough to reckon by hand, and a pad store without a browser. */

import type { Limit } from '#core/day/limits.ts';
import { flatTariff } from '#core/tariff/tariff.ts';
import type { Bench } from '#dayPage/day/figures.ts';
import { padReader } from '#pad/document/padReader.ts';
import type { Pad, PadBlock } from '#pad/document/schema.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import { createPadStore, type PadStore } from '#pad/store/store.ts';

/** Flow 0.004 r [m3/s]; power 100 + 900 r³ [W]; a pool of 50 m3; 0.20 per kWh and 0.10 a day. */
export const handBench: Bench = {
  speeds: { reference: 3000, least: 600, top: 3000, step: 10 },
  pointAt: (ratio) => ({
    kind: 'flowing',
    flow: 0.004 * ratio,
    power: 100 + 900 * ratio ** 3,
    suctionVelocity: 2 * ratio,
    dischargeVelocity: 3 * ratio,
  }),
  volume: 50,
  needs: [],
  limits: [],
  quiet: [],
  tariff: flatTariff(0.2, 0.1, '$'),
  standbyPower: 0,
};

export function need(given: Partial<NamedNeed> = {}): NamedNeed {
  return {
    id: 'skim',
    kind: 'skimming',
    name: '',
    leastFlow: 0.003,
    minutes: 180,
    windows: [],
    shortestRun: 0,
    ...given,
  };
}

export function limit(given: Partial<Limit> = {}): Limit {
  return { id: 'suctionCover', kind: 'suctionCover', greatestFlow: 0.0035, hard: true, ...given };
}

export function block(id: string, start: number, end: number, speed = 1500): PadBlock {
  return { id, start, end, speed, reason: '' };
}

/** A store that keeps nothing; its clock goes a second at every look, so that no two steps become one. */
export function storeOf(pad: Pad): PadStore {
  let seconds = 0;
  const surroundings = {
    storage: () => null,
    now: () => {
      seconds += 1;
      return seconds * 1000;
    },
    later: () => () => {},
    fragment: () => '',
    clearFragment: () => {},
    onFragment: () => () => {},
    onKept: () => () => {},
    onLeave: () => () => {},
    onReturn: () => () => {},
    session: () => null,
    freshId: () => `id-${seconds}`,
    askToKeep: () => {},
    padIsThere: () => {},
    onTouch: () => () => {},
  };
  return createPadStore(pad, surroundings, {
    present: () => padReader,
    fetch: async () => padReader,
  });
}
