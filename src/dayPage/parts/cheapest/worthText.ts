/** What each thing asked for costs, in words. */
import type { NeedPrice } from '#core/planner/prices.ts';
import { joined } from '#dayPage/planning/collisionText.ts';
import { isNoSum } from '#units/coin.ts';
import { formatMoney } from '#units/money.ts';
import { needName } from '#words/needsAndLimits.ts';
import type { FinderModel } from './model.ts';

/** What each thing asked for costs, the dearest first; what costs nothing extra is told together. */
export function worthTexts(model: FinderModel): readonly string[] {
  const prices = model.prices.value;
  if (prices.length === 0) return [];
  if (isFree(model)) return ['Energy costs nothing on this day, so nothing that you ask does.'];
  const money = model.day.currency.value;
  const isFreeOfCost = ({ savedWithout }: NeedPrice) =>
    savedWithout <= 0 || isNoSum(savedWithout, money);
  const dear = prices
    .filter((price) => !isFreeOfCost(price))
    .sort((one, other) => other.savedWithout - one.savedWithout)
    .map((price) => worthText(model, price));
  const free = counted(prices.filter(isFreeOfCost).map((price) => nameOf(model, price)));
  return free === '' ? dear : [...dear, free];
}

/** Whether no hour of the day has a price. */
const isFree = ({ asked }: FinderModel): boolean =>
  asked.value?.prices.every(({ price }) => price === 0) ?? false;

function nameOf(model: FinderModel, { needId }: NeedPrice): string {
  if (needId === null) return 'The water to be moved';
  const found = model.needs.value.find(({ need }) => need.id === needId);
  return found === undefined ? 'A need' : needName(found.need);
}

/** "Heater and Salt cell (2 of them) cost nothing extra: …"; empty where there is none. */
function counted(names: readonly string[]): string {
  const unique = [...new Set(names)];
  const words = unique.map((name) => {
    const count = names.filter((each) => each === name).length;
    return count === 1 ? name : `${name} (${count} of them)`;
  });
  if (words.length === 0) return '';
  return names.length === 1
    ? `${words[0]} costs nothing extra: the rest of the day gives it.`
    : `${joined(words, 'and')} cost nothing extra: the rest of the day gives them.`;
}

function worthText(model: FinderModel, price: NeedPrice): string {
  const money = model.day.currency.value;
  const { needId, savedByLess, savedWithout } = price;
  const lessOf = needId === null ? 'a tenth less' : 'an hour less';
  const byLess = isNoSum(savedByLess, money)
    ? 'nothing'
    : `${formatMoney(savedByLess, money)} a day`;
  return `${nameOf(model, price)}: ${lessOf} would save ${byLess}; without it the day would be ${formatMoney(savedWithout, money)} cheaper.`;
}
