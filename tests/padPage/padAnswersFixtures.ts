/** Pads a reader might have half way, with figures made up for the tests. */

import { emptyPad, newNeed, newReading } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { toSI } from '#units/convert.ts';

export const gpm = (value: number): number => toSI('flow', value, 'gpm');
const psi = (value: number): number => toSI('pressure', value, 'psi');
const hp = (value: number): number => toSI('power', value, 'hp');

/** What a nameplate says: rated power and rated speed. */
export const nameplatePad: Pad = {
  ...emptyPad('us'),
  pump: {
    ...emptyPad('us').pump,
    referenceSpeed: 3450,
    knowledge: { kind: 'nameplate', power: hp(1.5), powerMeans: 'shaft', flow: null, head: null },
  },
};

/** The same with what the drive and one filter gauge showed, and two things the water is for. */
export const commonPad: Pad = {
  ...nameplatePad,
  readings: [
    newReading('high', { speed: 3450, filterPressure: psi(20), power: 1650 }),
    newReading('low', { speed: 1725, filterPressure: psi(5), power: 250 }),
  ],
  needs: [
    newNeed('skim', 'skimming', { leastFlow: gpm(40), minutes: 180 }),
    newNeed('filter', 'filtering', { leastFlow: gpm(20), minutes: 1200 }),
  ],
};
