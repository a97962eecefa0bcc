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

/** The places that go with a code of ISO 4217; 2 for a sign or a word, which may mean several. */
const placesOf = (sign: string): number =>
  /^[a-z]{3}$/i.test(sign)
    ? (new Intl.NumberFormat('en', { style: 'currency', currency: sign }).resolvedOptions()
        .maximumFractionDigits as number)
    : 2;

/** The money of a tariff: a currency in which energy has a high number has no use for cents. */
export const moneyOf = (
  sign: string,
  bands: readonly { readonly price: number }[] = [],
): Money => ({
  sign,
  places: bands.some(({ price }) => price >= smallUnit) ? 0 : placesOf(sign),
});

const moneyIn = (currency: string | Money): Money =>
  typeof currency === 'string' ? moneyOf(currency) : currency;

/** A sign such as $ or € stands before the number, a code or word after it. */
function isSign(currency: string): boolean {
  return /^\p{Sc}$/u.test(currency);
}

/** An amount: "$0.44", "12.30 EUR", "178 HUF". */
export function formatMoney(
  amount: number,
  currency: string | Money,
  options: MoneyOptions = {},
): string {
  if (!Number.isFinite(amount)) return noValue;
  const money = moneyIn(currency);
  const number = grouped(fixed(amount, options.places ?? money.places));
  if (!isSign(money.sign)) return `${number}${hardSpace}${money.sign}`.trim();
  const sign = number.startsWith('−') ? '−' : '';
  return `${sign}${money.sign}${number.slice(sign.length)}`;
}

/** A price of energy: "$0.22 per kWh", with as many places as a tariff prints. */
export function formatPrice(perKilowattHour: number, currency: string | Money): string {
  const money = moneyIn(currency);
  const short = (few: number) =>
    Number(perKilowattHour.toFixed(few)) === Number(perKilowattHour.toFixed(5));
  const places = [money.places, 2].find(short) ?? 4;
  return `${formatMoney(perKilowattHour, money, { places })} per${hardSpace}kWh`;
}
