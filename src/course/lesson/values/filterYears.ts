import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { type CycleDay, type FilterYear, type Worked, ways } from '#explorables/FilterYears/ask.ts';
import { exampleBasis } from '#explorables/FilterYears/basis.ts';
import { solveExample } from '#explorables/FilterYears/example.ts';
import { openingAsk } from '#explorables/FilterYears/model.ts';
import { formatMoney } from '#units/money.ts';

/** The years of the lesson's picture as it opens, with the filter treated as the lesson says. */
function worked(given: ValueProps): Worked {
  const way = ways.find((each) => each === given['way']);
  if (way === undefined) throw new RangeError(`Say which way: ${ways.join(', ')}.`);
  return solveExample({ ...openingAsk(exampleBasis), way });
}

function yearOf(given: ValueProps): FilterYear {
  return worked(given).filters[given['filter'] === 'large' ? 1 : 0];
}

/** Just cleaned, or on the last day before the next cleaning. */
function dayOf(given: ValueProps): CycleDay {
  const { cycle } = yearOf(given);
  const day = given['when'] === 'clean' ? cycle[0] : cycle.at(-1);
  if (day === undefined) throw new RangeError('A cycle has a day at least.');
  return day;
}

/** By how much a figure is greater before a cleaning than after it. */
function rise(given: ValueProps, value: (day: CycleDay) => number) {
  const before = value(dayOf({ ...given, when: 'due' }));
  return {
    quantity: 'share',
    value: before / value(dayOf({ ...given, when: 'clean' })) - 1,
  } as const;
}

const money = (value: number, places: number) =>
  ({
    quantity: null,
    value,
    shown: formatMoney(value, exampleBasis.currency, { places }),
  }) as const;

/** A year under two filters. */
export const makers = {
  filterYearFlow: (given) => ({ quantity: 'flow', value: dayOf(given).flow }),
  filterYearPower: (given) => ({ quantity: 'power', value: dayOf(given).power }),
  filterYearEnergy: (given) => ({ quantity: 'energy', value: yearOf(given).energy }),
  filterYearPrice: (given) => money(yearOf(given).cost, 0),
  filterYearDearer: (given) => rise(given, ({ power, flow }) => power / flow),
  filterYearFaster: (given) => rise(given, ({ speed }) => speed),
  filterYearStronger: (given) => rise(given, ({ power }) => power),
  /** What the cube alone would say of that speed. */
  filterYearCube: (given) => ({
    quantity: 'share',
    value: (rise(given, ({ speed }) => speed).value + 1) ** 3 - 1,
  }),
  /** What each cleaning more earns when the small filter is cleaned twice as often. */
  cleaningEarns: (given) => {
    const { filters, oftener } = worked(given);
    const more = oftener.cleanings - filters[0].cleanings;
    return money((filters[0].cost - oftener.cost) / more, 0);
  },
} as const satisfies ValueMakers;
