import type { DayType, Tariff } from '#core/tariff/tariff.ts';

const hour = (clock: number) => clock * 60;

const weekday = (peak: number, middle: number, night: number): DayType => ({
  id: 'weekday',
  name: 'weekday',
  weekdays: [1, 2, 3, 4, 5],
  bands: [
    { start: hour(0), end: hour(7), name: 'Night', price: night },
    { start: hour(7), end: hour(16), name: 'Day', price: middle },
    { start: hour(16), end: hour(21), name: 'Evening', price: peak },
    { start: hour(21), end: hour(24), name: 'Late', price: middle },
  ],
});

const weekend = (evening: number, rest: number): DayType => ({
  id: 'weekend',
  name: 'weekend',
  weekdays: [0, 6],
  bands: [
    { start: hour(17), end: hour(20), name: 'Evening', price: evening },
    { start: hour(20), end: hour(17), name: 'Rest of the day', price: rest },
  ],
});

/** Two seasons, two kinds of day, three prices; every figure is made up. */
export const exampleTariff: Tariff = {
  currency: '$',
  dailyCharge: 0.35,
  seasons: [
    {
      id: 'summer',
      name: 'Summer',
      from: { month: 6, day: 1 },
      dayTypes: [weekday(0.49, 0.27, 0.18), weekend(0.34, 0.2)],
    },
    {
      id: 'winter',
      name: 'Winter',
      from: { month: 10, day: 1 },
      dayTypes: [weekday(0.31, 0.22, 0.16), weekend(0.25, 0.17)],
    },
  ],
};
