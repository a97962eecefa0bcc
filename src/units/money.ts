/** Money of any currency. Amounts are plain numbers in the tariff's own currency. */
import { fixed, grouped, hardSpace, noValue } from './numerals.ts';

export interface MoneyOptions {
  /** Places after the point; 2 unless set. */
  readonly places?: number;
}

/** A sign such as $ or € stands before the number, a code or word after it. */
function isSign(currency: string): boolean {
  return /^\p{Sc}$/u.test(currency);
}

/** An amount: "$0.44", "12.30 EUR". */
export function formatMoney(amount: number, currency: string, options: MoneyOptions = {}): string {
  if (!Number.isFinite(amount)) return noValue;
  const number = grouped(fixed(amount, options.places ?? 2));
  if (!isSign(currency)) return `${number}${hardSpace}${currency}`.trim();
  const sign = number.startsWith('−') ? '−' : '';
  return `${sign}${currency}${number.slice(sign.length)}`;
}

/** A price of energy: "$0.22 per kWh", with as many places as a tariff prints. */
export function formatPrice(perKilowattHour: number, currency: string): string {
  const places = Number(perKilowattHour.toFixed(2)) === Number(perKilowattHour.toFixed(5)) ? 2 : 4;
  return `${formatMoney(perKilowattHour, currency, { places })} per${hardSpace}kWh`;
}
