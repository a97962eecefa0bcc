import type { Family } from '../rule.ts';
import { affinityFamily } from './affinity.ts';
import { chlorineFamily } from './chlorine.ts';
import { conversionsFamily } from './conversions.ts';
import { electricityFamily } from './electricity.ts';
import { energyFactorFamily } from './energyFactor.ts';
import { fittingsFamily } from './fittings.ts';
import { frictionFactorFamily, frictionLossFamily } from './friction.ts';
import { gaugesFamily } from './gauges.ts';
import { mixingFamily } from './mixing.ts';
import { operatingFamily } from './operating.ts';
import { optimumFamily } from './optimum.ts';
import { pipeDimensionsFamily, velocityFamily } from './pipe.ts';
import { poolFamily } from './pool.ts';
import { suctionFamily } from './suction.ts';
import { waterFamily } from './water.ts';

/** Every family of cases the core can answer. */
export const families: readonly Family[] = [
  waterFamily,
  pipeDimensionsFamily,
  velocityFamily,
  frictionFactorFamily,
  frictionLossFamily,
  fittingsFamily,
  affinityFamily,
  operatingFamily,
  gaugesFamily,
  suctionFamily,
  electricityFamily,
  energyFactorFamily,
  mixingFamily,
  chlorineFamily,
  poolFamily,
  optimumFamily,
  conversionsFamily,
];
