/** The insides of the steps; fetched when the first of them is opened. */
import type { JSX } from 'preact';
import { StepKeep } from './StepKeep.tsx';
import { StepLimits } from './StepLimits.tsx';
import { StepNeeds } from './StepNeeds.tsx';
import { StepPipes } from './StepPipes.tsx';
import { StepPlace } from './StepPlace.tsx';
import { StepPool } from './StepPool.tsx';
import { StepPump } from './StepPump.tsx';
import { StepReadings } from './StepReadings.tsx';
import { StepTariff } from './StepTariff.tsx';
import type { StepId, StepTexts } from './steps.ts';

export interface BodyProps extends StepTexts {
  readonly id: StepId;
}

export function Body({ id, cautions, schemaHref }: BodyProps): JSX.Element {
  switch (id) {
    case 'place':
      return <StepPlace />;
    case 'pool':
      return <StepPool />;
    case 'pipes':
      return <StepPipes />;
    case 'pump':
      return <StepPump caution={cautions.pump} />;
    case 'readings':
      return <StepReadings caution={cautions.readings} />;
    case 'needs':
      return <StepNeeds caution={cautions.manuals} />;
    case 'limits':
      return <StepLimits coverCaution={cautions.suctionCovers} />;
    case 'tariff':
      return <StepTariff />;
    case 'keep':
      return <StepKeep schemaHref={schemaHref} />;
  }
}
