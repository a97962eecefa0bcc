/** Whether a dearer pump earns its price back. */
import { CoreError, requireBetween, requireNotNegative } from '#core/base/errors.ts';

/** A purchase that saves money every year. */
export interface Investment {
  /** Price paid now [currency], 0 or more. */
  readonly outlay: number;
  /** Saved each year [currency/a], any finite amount. */
  readonly yearlySaving: number;
}

/**
 * Years until the savings have paid for a purchase, without interest.
 *
 * Law: outlay / yearly saving.
 * @param investment Outlay and yearly saving [see Investment], fields as there.
 * @returns Time [a]; null when nothing is saved, so that it never pays.
 * @throws CoreError when the outlay is negative or an amount is not a finite number.
 * Accuracy: exact.
 * Source: definition of the simple payback period (ASTM E1121; from memory).
 * @example paybackYears({ outlay: 900, yearlySaving: 300 }) // 3.000
 */
export function paybackYears(investment: Investment): number | null {
  const { outlay, yearlySaving } = requireInvestment(investment);
  if (outlay === 0) return 0;
  return yearlySaving > 0 ? outlay / yearlySaving : null;
}

function requireInvestment(investment: Investment): Investment {
  requireNotNegative('outlay', investment.outlay, 'currency');
  if (!Number.isFinite(investment.yearlySaving)) {
    throw new CoreError('yearlySaving', investment.yearlySaving, 'a finite amount');
  }
  return investment;
}

/**
 * What a purchase is worth today, all its savings counted.
 *
 * Law: NPV = -outlay + saving x sum over t = 1..n of (1 + rate)^-t.
 * @param investment Outlay and yearly saving [see Investment], fields as there.
 * @param rate Interest a year [-], -0.5 to 1; 0.05 is 5 %.
 * @param years How long it lasts [a], whole, 1 to 100; savings count at the end of each year.
 * @returns Net present value [currency]; above 0 it is worth its price.
 * @throws CoreError when a number is out of range.
 * Accuracy: exact up to rounding of doubles.
 * Source: definition of net present value (ASTM E1074; from memory).
 * @example netPresentValue({ outlay: 1000, yearlySaving: 200 }, 0.05, 10) // 544.3
 */
export function netPresentValue(investment: Investment, rate: number, years: number): number {
  const { outlay, yearlySaving } = requireInvestment(investment);
  requireBetween('rate', rate, -0.5, 1, '');
  if (!Number.isInteger(years) || years < 1 || years > 100) {
    throw new CoreError('years', years, 'a whole number from 1 to 100');
  }
  let worth = -outlay;
  for (let year = 1; year <= years; year += 1) worth += yearlySaving / (1 + rate) ** year;
  return worth;
}
