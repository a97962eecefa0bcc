import { dayReport } from '#core/day/dayReport.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import { priceAt, type Tariff } from '#core/tariff/tariff.ts';
import { dayOfWeek } from '#core/time/calendar.ts';
import { roundFlow } from '#course/Check/drawn.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';

const currency = '$';
const shown = (amount: number, places = 2) => formatMoney(amount, currency, { places });
const everyDay = [0, 1, 2, 3, 4, 5, 6];
const hour = (at: number) => at * 60;

/** Two prices a day, the dear one from four to nine. */
function twoPrices(cheap: number, dear: number): Tariff {
  const bands = [
    { start: hour(16), end: hour(21), price: dear },
    { start: hour(21), end: hour(16), price: cheap },
  ];
  const dayType = { id: 'all', name: 'every day', weekdays: everyDay, bands };
  const season = { id: 'all', name: 'all year', from: { month: 1, day: 1 }, dayTypes: [dayType] };
  return { currency, dailyCharge: 0, seasons: [season] };
}

/** A run that begins at one price and ends at another. */
const acrossTheBand: QuestionMaker = (draw) => {
  const [start, end] = draw.pick([
    [10, 18],
    [12, 17],
    [19, 24],
    [13, 19],
  ] as const);
  const power = draw.pick([400, 600, 900] as const);
  const [cheap, dear] = draw.pick([
    [0.2, 0.45],
    [0.22, 0.5],
    [0.18, 0.42],
  ] as const);
  const tariff = twoPrices(cheap, dear);
  const date = { year: 2027, month: 7, day: 14 };
  const priced = priceDay(tariff, date, [{ start: hour(start), end: hour(end) % 1440, power }]);
  const answer = priced.energyCost;
  const kilowattHours = (power / 1000) * (end - start);
  const dearHours = Math.min(end, 21) - Math.max(start, 16);
  const cheapHours = end - start - dearHours;
  return {
    kind: 'number',
    prompt: `A kWh costs ${shown(dear)} from 16:00 to 21:00 and ${shown(cheap)} at all other times. The pump draws ${power} W from ${clock(hour(start))} to ${clock(hour(end))}. What does the energy cost?`,
    quantity: null,
    unit: currency,
    answer,
    near: 0.01,
    slips: [
      {
        value: kilowattHours * cheap,
        says: 'That prices the whole run at the cheap rate. Part of it lies in the peak band.',
      },
      {
        value: kilowattHours * dear,
        says: 'That prices the whole run at the peak rate. Part of it lies outside the peak band.',
      },
      {
        value: answer * 1000,
        says: 'That counts watts as kilowatts: divide by 1000.',
      },
      {
        value: (power / 1000) * (cheap + dear),
        says: 'That leaves the hours out: a price is per kWh, and a kWh is kilowatts times hours.',
      },
    ],
    working: [
      `At ${shown(cheap)}: ${cheapHours} h × ${power / 1000} kW × ${shown(cheap)} = ${shown((cheapHours * power * cheap) / 1000, 3)}.`,
      `At ${shown(dear)}: ${dearHours} h × ${power / 1000} kW × ${shown(dear)} = ${shown((dearHours * power * dear) / 1000, 3)}.`,
      `${shown((cheapHours * power * cheap) / 1000, 3)} + ${shown((dearHours * power * dear) / 1000, 3)} = ${shown(answer, 3)}.`,
    ],
  };
};

/** Two seasons and two kinds of day, for reading a price off. */
const twoSeasons = (() => {
  const kind = (id: string, weekdays: number[], evening: number, rest: number) => ({
    id,
    name: id,
    weekdays,
    bands: [
      { start: hour(17), end: hour(20), price: evening },
      { start: hour(20), end: hour(17), price: rest },
    ],
  });
  const season = (name: string, month: number, prices: readonly number[]) => {
    const [evening = 0, rest = 0, freeEvening = 0, free = 0] = prices;
    return {
      id: name,
      name,
      from: { month, day: 1 },
      dayTypes: [
        kind('weekday', [1, 2, 3, 4, 5], evening, rest),
        kind('weekend', [0, 6], freeEvening, free),
      ],
    };
  };
  const tariff: Tariff = {
    currency,
    dailyCharge: 0,
    seasons: [
      season('summer', 6, [0.46, 0.24, 0.36, 0.2]),
      season('winter', 10, [0.32, 0.22, 0.28, 0.16]),
    ],
  };
  return tariff;
})();

const weekdayNames = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

/** Which of eight prices holds at a minute of a date. */
const priceOfAnHour: QuestionMaker = (draw) => {
  const [month, day] = draw.pick([
    [7, 15],
    [7, 18],
    [1, 13],
    [11, 21],
    [9, 30],
    [10, 3],
  ] as const);
  const time = draw.pick([hour(18), hour(11)] as const);
  const date = { year: 2027, month, day };
  const weekday = dayOfWeek(date);
  const answer = priceAt(twoSeasons, date, time);
  const isSummer = month >= 6 && month <= 9;
  const isWeekend = weekday === 0 || weekday === 6;
  const otherTime = time === hour(18) ? hour(11) : hour(18);
  // The first Wednesday and Sunday of a month in either season stand for the other choices.
  const other = (summer: boolean, weekend: boolean) => ({
    year: 2027,
    month: summer ? 7 : 1,
    day: summer ? (weekend ? 4 : 7) : weekend ? 3 : 6,
  });
  return {
    kind: 'number',
    prompt: `Summer is June to September, winter the rest. Weekdays from 17:00 to 20:00 a kWh costs $0.46 in summer and $0.32 in winter, at other times $0.24 and $0.22. On weekends it is $0.36 and $0.28 from 17:00 to 20:00, and $0.20 and $0.16 otherwise. What is the price on ${weekdayNames[weekday]}, ${day} ${monthNames[month - 1]}, at ${clock(time)}?`,
    quantity: null,
    unit: '$ per kWh',
    answer,
    near: 0.005,
    slips: [
      {
        value: priceAt(twoSeasons, other(!isSummer, isWeekend), time),
        says: 'That is the other season. Look at the month first.',
      },
      {
        value: priceAt(twoSeasons, other(isSummer, !isWeekend), time),
        says: 'That is the other kind of day. Look at the day of the week.',
      },
      {
        value: priceAt(twoSeasons, date, otherTime),
        says: 'Season and day are right; that is the price at another time of the day.',
      },
    ],
    working: [
      `${monthNames[month - 1]} lies in ${isSummer ? 'summer' : 'winter'}; ${weekdayNames[weekday]} is ${isWeekend ? 'weekend' : 'a weekday'}; ${clock(time)} is ${time === hour(18) ? 'inside' : 'outside'} 17:00 to 20:00.`,
      `So ${shown(answer)} per kWh.`,
    ],
  };
};

/** Window and shortest run both take minutes away. */
const minutesThatCount: QuestionMaker = (draw, units) => {
  const early = draw.pick([15, 30, 45] as const);
  const short = draw.pick([40, 50] as const);
  const late = draw.pick([80, 100] as const);
  const flow = roundFlow(units, 48, 11);
  const blocks = [
    { id: 'a', start: hour(8) - early, end: hour(9) + 20, ratio: 1 },
    { id: 'b', start: hour(12), end: hour(12) + short, ratio: 1 },
    { id: 'c', start: hour(15), end: hour(15) + late, ratio: 1 },
  ];
  const need = {
    id: 'skim',
    leastFlow: flow,
    minutes: 180,
    windows: [{ start: hour(8), end: hour(18) }],
    shortestRun: 60,
  };
  const point = { kind: 'flowing', flow, power: 300, suctionVelocity: 0, dischargeVelocity: 0 };
  const report = dayReport({
    blocks,
    pointAt: () => ({ ...point, kind: 'flowing' }),
    volume: 60,
    needs: [need],
    limits: [],
    quiet: [],
  });
  const answer = report.needs[0]?.servedMinutes ?? 0;
  const runs = blocks.map(({ start, end }) => `${clock(start)} to ${clock(end)}`);
  return {
    kind: 'number',
    prompt: `The skimmer counts only between 08:00 and 18:00, and only runs of 60 min or more. The pump moves enough (${format('flow', flow, units)}) from ${runs[0]}, ${runs[1]} and ${runs[2]}. How many minutes count?`,
    quantity: null,
    unit: 'min',
    answer,
    near: 0.01,
    slips: [
      {
        value: answer + early,
        says: 'The minutes before 08:00 lie outside the window.',
      },
      {
        value: answer + short,
        says: `The run of ${short} min is shorter than 60 min, so it does not count.`,
      },
      {
        value: answer + early + short,
        says: 'That counts every minute. The window and the shortest run both take some away.',
      },
    ],
    working: [
      `08:00 to 09:20: 80 min. ${runs[1]}: ${short} min, too short. ${runs[2]}: ${late} min.`,
      `80 + ${late} = ${answer} min.`,
    ],
  };
};

const halfTheHoursAtHalfThePrice: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'A pump moves its water in 16 hours at one price. You pack the same water into 8 night hours, at half that price. By the affinity laws, what happens to the bill?',
  options: [
    {
      id: 'quarter',
      label: 'A quarter: half the hours at half the price',
      right: false,
      says: 'Half the hours only move the same water at twice the speed, and that takes eight times the power.',
    },
    {
      id: 'half',
      label: 'Half: the same energy at half the price',
      right: false,
      says: 'The energy is not the same. Eight times the power for half the time is four times the energy.',
    },
    {
      id: 'same',
      label: 'About the same',
      right: false,
      says: 'Four times the energy at half the price is twice the bill.',
    },
    {
      id: 'double',
      label: 'It doubles',
      right: true,
      says: 'Right: four times the energy at half the price. A fixed draw makes it a little less.',
    },
  ],
  working: [
    'Twice the speed, so the power is 2 × 2 × 2 = 8 times.',
    'Energy: 8 × ½ = 4 times. Bill: 4 × ½ = 2 times.',
  ],
});

/** Tariffs, and what a day costs. */
export const bank = {
  acrossTheBand,
  priceOfAnHour,
  minutesThatCount,
  halfTheHoursAtHalfThePrice,
} satisfies QuestionBank;
