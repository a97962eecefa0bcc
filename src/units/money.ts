/** Money of any currency. Amounts are plain numbers in the tariff's own currency. */
import { fixed, grouped, hardSpace, noValue } from './numerals.ts';

/** What sums are written in. */
export interface Money {
  /** A sign such as $, a code or a word, as the reader typed it. */
  readonly sign: string;
  /** Places after the point. */
  readonly places: number;
}

export interface MoneyOptions {
  /** Places after the point; those of the currency unless set. */
  readonly places?: number;
}

/** From this price of a kilowatt-hour on, a hundredth of the unit buys less than half a watt-hour. */
const smallUnit = 20;

/** A sign such as $ or € stands before the number, a code or word after it. */
function isSign(currency: string): boolean {
  return /^\p{Sc}$/u.test(currency);
}

/** The places that go with a code of ISO 4217; 2 for a sign or a word, which may mean several. */
function placesOf(currency: string): number {
  try {
    const said = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions();
    return said.maximumFractionDigits ?? 2;
  } catch {
    return 2;
  }
}

/** The money of a tariff: a currency in which energy has a high number has no use for cents. */
export function moneyOf(sign: string, prices: readonly (number | null)[] = []): Money {
  const isSmall = prices.some((price) => price !== null && price >= smallUnit);
  return { sign, places: isSmall ? 0 : placesOf(sign) };
}

/** An amount: "$0.44", "12.30 EUR", "178 HUF". */
export function formatMoney(
  amount: number,
  currency: string | Money,
  options: MoneyOptions = {},
): string {
  if (!Number.isFinite(amount)) return noValue;
  const money = typeof currency === 'string' ? moneyOf(currency) : currency;
  const number = grouped(fixed(amount, options.places ?? money.places));
  if (!isSign(money.sign)) return `${number}${hardSpace}${money.sign}`.trim();
  const sign = number.startsWith('−') ? '−' : '';
  return `${sign}${money.sign}${number.slice(sign.length)}`;
}

/** A price of energy: "$0.22 per kWh", with as many places as a tariff prints. */
export function formatPrice(perKilowattHour: number, currency: string | Money): string {
  const money = typeof currency === 'string' ? moneyOf(currency) : currency;
  const exact = Number(perKilowattHour.toFixed(5));
  const places = [money.places, 2].find((few) => Number(perKilowattHour.toFixed(few)) === exact);
  return `${formatMoney(perKilowattHour, money, { places: places ?? 4 })} per${hardSpace}kWh`;
}
