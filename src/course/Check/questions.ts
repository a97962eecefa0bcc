import type { QuestionMaker } from './question.ts';
import { bank as buildADay } from './questions/buildADay.ts';
import { bank as filterLoading } from './questions/filterLoading.ts';
import { bank as flowPowerSpeed } from './questions/flowPowerSpeed.ts';
import { bank as friction } from './questions/friction.ts';
import { bank as headAndGauges } from './questions/headAndGauges.ts';
import { bank as needsAndLimits } from './questions/needsAndLimits.ts';
import { bank as operatingPoint } from './questions/operatingPoint.ts';
import { bank as readYourPump } from './questions/readYourPump.ts';
import { bank as suctionSide } from './questions/suctionSide.ts';
import { bank as systemCurve } from './questions/systemCurve.ts';
import { bank as tariffsAndTheCheapestDay } from './questions/tariffsAndTheCheapestDay.ts';
import { bank as theYear } from './questions/theYear.ts';
import { bank as velocityAndBore } from './questions/velocityAndBore.ts';
import { bank as volumeAndTurnover } from './questions/volumeAndTurnover.ts';
import { bank as wattsAndKilowattHours } from './questions/wattsAndKilowattHours.ts';
import { bank as whereTheCubeStops } from './questions/whereTheCubeStops.ts';

/*
 * Used where the site is built, and by tests. A page carries the question it shows, and fetches the
 * bank of a question only when the reader asks for other numbers.
 */

/** Every self-check of the course, by the lesson it was made for: the name of its file. */
export const banks = {
  buildADay,
  filterLoading,
  flowPowerSpeed,
  friction,
  headAndGauges,
  operatingPoint,
  readYourPump,
  suctionSide,
  systemCurve,
  tariffsAndTheCheapestDay,
  theYear,
  velocityAndBore,
  volumeAndTurnover,
  wattsAndKilowattHours,
  whereTheCubeStops,
  needsAndLimits,
} as const;

export type BankName = keyof typeof banks;

type NamesIn<Bank> = Bank extends unknown ? keyof Bank & string : never;

/** The name a lesson calls a self-check by; each stands in one bank only. */
export type QuestionName = NamesIn<(typeof banks)[BankName]>;

interface Found {
  readonly bank: BankName;
  readonly make: QuestionMaker;
}

/** The maker of a self-check and the bank it stands in. */
export function findQuestion(name: string): Found {
  for (const [bank, makers] of Object.entries(banks)) {
    const make = Object.hasOwn(makers, name)
      ? (makers as Readonly<Record<string, QuestionMaker>>)[name]
      : undefined;
    if (make !== undefined) return { bank: bank as BankName, make };
  }
  const known = Object.values(banks).flatMap((makers) => Object.keys(makers));
  throw new Error(`No self-check is called "${name}"; there are ${known.join(', ')}.`);
}
