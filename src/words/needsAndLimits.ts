/** Names of needs and limits, as a reader sees them. */
import type { Limit } from '#core/day/limits.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';

export const needTitles: Readonly<Record<NamedNeed['kind'], string>> = {
  skimming: 'Skimming',
  heating: 'Heating',
  saltCell: 'Salt cell',
  cleaner: 'Cleaner',
  solar: 'Solar heating',
  spillway: 'Spillway',
  filtering: 'Filtering',
};

export const needName = (need: NamedNeed): string => need.name || needTitles[need.kind];

const limitTitles: Readonly<Record<Limit['kind'], string>> = {
  suctionVelocity: 'Velocity in the suction pipe',
  dischargeVelocity: 'Velocity in the return pipe',
  filterRate: 'Rate through the filter',
  heaterFlow: 'Flow through the heater',
  suctionCover: 'Flow marked on the suction covers',
  npsh: 'Suction head the pump requires (NPSH)',
};

/** The same for a label on a line. */
export const limitShortNames: Readonly<Record<Limit['kind'], string>> = {
  suctionVelocity: 'suction velocity',
  dischargeVelocity: 'return velocity',
  filterRate: 'filter rate',
  heaterFlow: 'heater',
  suctionCover: 'suction covers',
  npsh: 'NPSH',
};

export const limitName = (limit: Limit): string => limitTitles[limit.kind];
