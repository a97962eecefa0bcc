import type { UnitChoice } from '#units/choice.ts';
import { type ProblemValue, shownValue } from './problems.ts';
import type { Say } from './sentences.ts';

/** What was taken for granted because nobody said, one sentence each. */
const sentences = {
  waterTemperature: (say) => `The water is taken to be at ${say('value')}.`,
  seaLevel: () => 'The pad is taken to stand at sea level.',
  pumpAtSurface: () => 'The pump is taken to stand level with the pool surface.',
  referenceIsTop: (say) => `The pump is taken to be rated at its top speed, ${say('value')}.`,
  typicalPump: (say) =>
    `The pump’s curve is an estimate: the usual shape through ${say('flow')} at ${say('head')}.`,
  pumpFromPower: (say) =>
    `That best point is guessed from ${say('power')} at the shaft, for want of a data sheet.`,
  powerIsShaft: () => 'The rated power is taken to be power at the shaft.',
  powerFromReading: (say) =>
    `The size of the pump is guessed from the ${say('power')} that was read, for want of a nameplate.`,
  circuitTypical: () =>
    'No pipes are described: a circuit is assumed that lets the pump run at its best point.',
  leastSpeed: (say) => `The slowest speed is taken to be ${say('value')}.`,
  gaugesTypical: (say) =>
    `The gauges are taken to be ordinary ones, grade B, with scales of ${say('filter')} at the ` +
    `filter and ${say('vacuum')} before the pump.`,
  meterTypical: (say) => `The flow meter is taken to be good to ${say('share')}.`,
  wattsTypical: (say) => `The power reading is taken to be good to ${say('share')}.`,
  efficiencyTyped: (say) =>
    `A drive efficiency of ${say('drive')} and a fixed draw of ${say('fixed')} are taken.`,
  standbyNone: (say) =>
    `Nothing is given for the watts while the pump is stopped: ${say('value')} is taken.`,
  npshLevel: () => 'The NPSH the pump requires is taken to be the same at every flow.',
  curveWithinTolerance: (say) =>
    `The curve of the data sheet is taken to be good to about ${say('spread')}.`,
  curveEstimated: (say) => `An estimated curve may well be off by ${say('spread')}.`,
  circuitAsDescribed: (say) =>
    `Resistances worked out from a description may well be off by ${say('spread')}.`,
  flowReadFromCurve: () => 'There is no flow meter: the flow is read off the pump’s curve.',
  suctionLossFromPipes: () =>
    'There is no vacuum gauge: the loss on the suction side is worked out from the pipes.',
  filterGaugeSide: () =>
    'The filter gauge is taken to show the pressure of all that lies after the pump.',
  gaugeLevelUnknown: (say) =>
    `The filter gauge is taken to sit level with the pool surface, within ${say('spread')}.`,
  efficiencyTypical: (say) =>
    `From wire to water the pump is taken to turn ${say('value')} of the power into flow at full speed.`,
  fixedShareTypical: (say) =>
    `The draw that does not fall with speed is taken to be ${say('value')} of full power.`,
  powerFactorTypical: (say) =>
    `Power is worked out from the current with a power factor of ${say('value')}.`,
} as const satisfies Readonly<Record<string, (say: Say) => string>>;

export type AssumptionCode = keyof typeof sentences;

export const assumptionCodes = Object.keys(sentences) as readonly AssumptionCode[];

/** Something taken for granted. */
export interface Assumption {
  readonly code: AssumptionCode;
  readonly values: Readonly<Record<string, ProblemValue>>;
}

export function assumption(code: AssumptionCode, values: Assumption['values'] = {}): Assumption {
  return { code, values };
}

/** The assumption as a sentence in the reader's units. */
export function assumptionSentence({ code, values }: Assumption, units: UnitChoice): string {
  const say: Say = (name) => shownValue(values[name], units);
  return (sentences[code] as (say: Say) => string)(say);
}
