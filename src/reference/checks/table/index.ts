/** The table: for each file of cases its rows. */
import type { Row } from '../grammar.ts';
import { operatingPoints } from './circuits.ts';
import { electricity, scheduleOptimum } from './days.ts';
import { hydraulicsConversions } from './gauges.ts';
import {
  frictionFactorCases,
  minorLosses,
  pipeDimensions,
  pipeFrictionLoss,
  pipeVelocity,
} from './pipes.ts';
import { poolVolumes } from './pools.ts';
import { affinityLaws, energyFactors, npsh } from './pumps.ts';
import { chlorineAndHeat, mixing, waterProperties } from './water.ts';

export const table: Readonly<Record<string, readonly Row[]>> = {
  'affinity-laws': affinityLaws,
  'chlorine-and-heat': chlorineAndHeat,
  electricity,
  'energy-factor': energyFactors,
  'friction-factor': frictionFactorCases,
  'hydraulics-conversions': hydraulicsConversions,
  'minor-losses': minorLosses,
  mixing,
  npsh,
  'operating-point': operatingPoints,
  'pipe-dimensions': pipeDimensions,
  'pipe-friction-loss': pipeFrictionLoss,
  'pipe-velocity': pipeVelocity,
  'pool-volume': poolVolumes,
  'schedule-optimum': scheduleOptimum,
  'water-properties': waterProperties,
};
