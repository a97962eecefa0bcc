/** What cannot be right together, in words. Comes with the fit, when that is fetched. */
import type { Contradiction, ReadQuantity } from '#core/fit/padEvidence.ts';

const instruments: Readonly<Record<ReadQuantity, string>> = {
  flow: 'the flow meter',
  dischargePressure: 'the filter gauge',
  suctionVacuum: 'the vacuum gauge',
  power: 'the watts',
  apparentPower: 'the amperes',
};

/** One contradiction as a sentence; `at` names a line by its speed. */
export function contradictionText(found: Contradiction, at: (id: string) => string): string {
  switch (found.kind) {
    case 'powerFallsWithSpeed':
      return `The watts at ${at(found.fasterId)} are fewer than at ${at(found.slowerId)}, though the pump turns faster.`;
    case 'flowFallsWithSpeed':
      return `The flow at ${at(found.fasterId)} is less than at ${at(found.slowerId)}, though the pump turns faster.`;
    case 'pressureFallsWithSpeed':
      return `The filter gauge at ${at(found.fasterId)} shows less than at ${at(found.slowerId)}, though the pump turns faster.`;
    case 'flowRisesFasterThanSpeed':
      return `From ${at(found.slowerId)} to ${at(found.fasterId)} the flow rises by more than the speed. Pipes do not allow that.`;
    case 'gaugesDisagreeWithMeter':
      return `At ${at(found.id)} the gauges and the flow meter do not agree.`;
    case 'headAboveShutoff':
      return `At ${at(found.id)} the gauge shows more than the pump can make at that speed.`;
    case 'powerBelowHydraulic':
      return `At ${at(found.id)} the watts are fewer than the water alone takes.`;
    case 'powerAboveApparent':
      return `At ${at(found.id)} the watts are more than volts times amperes.`;
    case 'offTheFit':
      return `At ${at(found.id)} ${instruments[found.quantity]} cannot be joined with the rest.`;
  }
}
