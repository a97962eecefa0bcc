/** The least sum that can be told in a currency. */
import type { Money } from './money.ts';

/** One hundredth of a dollar, one yen [currency]. */
export const coinOf = ({ places }: Money): number => 10 ** -places;

/** Whether a sum would be written as none. */
export const isNoSum = (amount: number, money: Money): boolean =>
  Math.abs(amount) < coinOf(money) / 2;
