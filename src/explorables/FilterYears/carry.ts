/** The answer as a page carries it: no more figures than the picture and its words show. */
import type { CycleDay, FilterYear, Worked } from './ask.ts';

/** Figures of a day, which is drawn and told to three, and of a sum [-]. */
const figures = { day: 4, sum: 7 };

const rounded = <Amounts extends object>(amounts: Amounts, to: number): Amounts =>
  Object.fromEntries(
    Object.entries(amounts).map(([name, value]) => [
      name,
      typeof value === 'number' ? Number(value.toPrecision(to)) : value,
    ]),
  ) as Amounts;

function carriedYear(year: FilterYear): FilterYear {
  const cycle = year.cycle.map((day): CycleDay => rounded(day, figures.day));
  return { ...rounded(year, figures.sum), cycle };
}

export function carried({ filters, asked, oftener }: Worked): Worked {
  const [first, second] = filters;
  return {
    filters: [carriedYear(first), carriedYear(second)],
    asked: Number(asked.toPrecision(figures.sum)),
    oftener: rounded(oftener, figures.sum),
  };
}
