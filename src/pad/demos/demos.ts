/** The three invented pads of the site, and the one pages show before a reader has a pad. */

import type { Pad } from '#pad/document/schema.ts';
import { lodgePad } from './demoLodge.ts';
import { ownerPad } from './demoOwner.ts';
import { rigPad } from './demoRig.ts';

export { lodgePad, ownerPad, rigPad };

export interface Demo {
  readonly id: 'owner' | 'lodge' | 'rig';
  readonly title: string;
  /** What sets it apart, in one sentence that says it is invented. */
  readonly sentence: string;
  readonly pad: Pad;
}

export const demos: readonly Demo[] = [
  {
    id: 'owner',
    title: 'An owner’s garden pool',
    sentence: 'Invented: US units, 2 in pipe, a gas heater, a salt cell and prices by time of use.',
    pad: ownerPad,
  },
  {
    id: 'lodge',
    title: 'A small lodge’s pool',
    sentence: 'Invented: metric units, 63 mm pipe, 230 V, a heat pump and a cheaper night.',
    pad: lodgePad,
  },
  {
    id: 'rig',
    title: 'A training rig',
    sentence: 'Invented: a bench with 1½ in and 2 in pipe side by side and gauges on both sides.',
    pad: rigPad,
  },
];

/** The pad that pages are built with. */
export const defaultPad: Pad = ownerPad;
