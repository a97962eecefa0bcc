import { joulesPerKilowattHour, minutesPerDay } from '#core/base/constants.ts';
import { usualThreeBlockDay } from '#core/day/day.ts';
import { dayReport } from '#core/day/dayReport.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import { spanMinutes } from '#core/time/spans.ts';
import { roundFlow } from '#course/Check/drawn.ts';
import { asPrinted } from '#course/Check/printed.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';

const hour = 60;

/** Power and hours of an invented three-block day. */
const plans = [
  { powers: [1200, 350, 110], hours: [3, 6, 15] },
  { powers: [1000, 300, 90], hours: [2, 6, 16] },
  { powers: [900, 260, 120], hours: [4, 5, 15] },
] as const;

/** The three blocks on the clock with their watts. */
function spansOf({ powers, hours }: (typeof plans)[number]) {
  const [high, middle] = hours;
  const blocks = usualThreeBlockDay({
    high: 1,
    middle: 1,
    low: 1,
    highMinutes: high * hour,
    middleMinutes: middle * hour,
  });
  return blocks.map(({ start, end }, place) => ({ start, end, power: powers[place] ?? 0 }));
}

const inWords = ({ powers, hours }: (typeof plans)[number]) =>
  powers.map((power, place) => `${hours[place]} h at ${power} W`).join(', ');

function flatTariff(price: number): Tariff {
  return tariffOf([{ start: 0, end: minutesPerDay, price }]);
}

function tariffOf(bands: readonly { start: number; end: number; price: number }[]): Tariff {
  const dayType = { id: 'all', name: 'All', weekdays: [0, 1, 2, 3, 4, 5, 6], bands };
  return {
    currency: '$',
    dailyCharge: 0,
    seasons: [{ id: 'year', name: 'Year', from: { month: 1, day: 1 }, dayTypes: [dayType] }],
  };
}

const someDay = { year: 2027, month: 7, day: 14 } as const;

const energyOfBlocks: QuestionMaker = (draw, units) => {
  const plan = draw.pick(plans);
  const spans = spansOf(plan);
  const answer = priceDay(flatTariff(0), someDay, spans).energy;
  const { powers } = plan;
  const mean = powers.reduce((sum, power) => sum + power, 0) / powers.length;
  const parts = spans.map((span) =>
    asPrinted('energy', span.power * spanMinutes(span) * 60, units),
  );
  const sum = parts.reduce((total, { value }) => total + value, 0);
  const each = spans.map(
    (span, place) =>
      `${spanMinutes(span) / hour} h × ${span.power} W = ${parts[place]?.text ?? ''}`,
  );
  return {
    kind: 'number',
    prompt: `A day has three blocks: ${inWords(plan)}. How much energy does it take?`,
    quantity: 'energy',
    answer,
    near: 0.02,
    slips: [
      {
        value: mean * 24 * 3600,
        says: 'That is the plain mean of the three powers for 24 hours. Each power counts for its own hours only.',
      },
      {
        value: answer / 24,
        says: 'That is divided by the 24 hours once more. Watts times hours are already the energy.',
      },
      {
        value: powers[0] * 24 * 3600,
        says: 'That is the high power round the clock. It runs so for its own block only.',
      },
      {
        value: (powers[0] + powers[1] + powers[2]) * 3600,
        says: 'That adds up the watts. Each must first be multiplied by its hours.',
      },
    ],
    working: [
      `${each.join('; ')}.`,
      `${parts.map(({ text }) => text).join(' + ')} = ${format('energy', sum, units)}.`,
    ],
  };
};

/** A need of some hours at a flow, beside a day whose blocks serve it or not. */
const waterOfBlocks: QuestionMaker = (draw, units) => {
  const flows = draw.pick([
    { us: [60, 40, 25], metric: [14, 9, 6] },
    { us: [70, 45, 30], metric: [16, 10, 7] },
  ] as const);
  const hours = draw.pick([
    [3, 6, 15],
    [2, 8, 14],
  ] as const);
  const each = flows.us.map((gpm, place) => roundFlow(units, gpm, flows.metric[place] ?? 0));
  const metricPool = draw.pick([80, 100] as const);
  const pool =
    units.preset === 'us'
      ? toSI('volume', metricPool * 250, 'gal')
      : toSI('volume', metricPool, 'm3');
  const [high, middle] = hours;
  const blocks = usualThreeBlockDay({
    high: 3,
    middle: 2,
    low: 1,
    highMinutes: high * hour,
    middleMinutes: middle * hour,
  });
  const report = dayReport({
    blocks,
    pointAt: (ratio) => ({
      kind: 'flowing',
      flow: each[3 - ratio] ?? 0,
      power: 0,
      suctionVelocity: 0,
      dischargeVelocity: 0,
    }),
    volume: pool,
    needs: [],
    limits: [],
    quiet: [],
  });
  const [fast = 0, mid = 0] = each;
  const seconds = (count: number) => count * 3600;
  return {
    kind: 'number',
    prompt: `A pool holds ${format('volume', pool, units)}. Its day is ${each
      .map((flow, place) => `${hours[place]} h at ${format('flow', flow, units)}`)
      .join(', ')}. How many turnovers is that?`,
    quantity: null,
    unit: 'turnovers',
    answer: report.turnovers,
    near: 0.03,
    slips: [
      {
        value: (fast * seconds(24)) / pool,
        says: 'That is the high flow round the clock.',
      },
      {
        value: (fast * seconds(high) + mid * seconds(middle)) / pool,
        says: 'That leaves out the low block. It is slow, but it is most of the day.',
      },
      {
        value: 1 / report.turnovers,
        says: 'That is the pool over the water moved. Turnovers are the water moved over the pool.',
      },
    ],
    working: [
      `Water moved: ${units.preset === 'us' ? '60 min × ' : ''}(${each
        .map((flow, place) => `${hours[place]} h × ${format('flow', flow, units)}`)
        .join(' + ')}) = ${format('volume', report.volumeMoved, units)}.`,
      `Turnovers: ${format('volume', report.volumeMoved, units)} / ${format('volume', pool, units)} = ${report.turnovers.toFixed(2)}.`,
    ],
  };
};

/** A block that reaches into the dear hours. */
const intoDearHours: QuestionMaker = (draw) => {
  const power = draw.pick([300, 400, 500] as const);
  const [cheap, dear] = draw.pick([
    [0.2, 0.5],
    [0.24, 0.44],
    [0.18, 0.48],
  ] as const);
  const [start, end] = draw.pick([
    [12, 18],
    [13, 18],
    [11, 17],
  ] as const);
  const span = { start: start * hour, end: end * hour, power };
  const dearFrom = 16 * hour;
  const dearTo = 21 * hour;
  const tariff = tariffOf([
    { start: dearTo, end: dearFrom, price: cheap },
    { start: dearFrom, end: dearTo, price: dear },
  ]);
  const { energy, energyCost } = priceDay(tariff, someDay, [span]);
  const kilowattHours = energy / joulesPerKilowattHour;
  const inDear = end - 16;
  const inCheap = 16 - start;
  const kilowatts = power / 1000;
  return {
    kind: 'number',
    prompt: `A block runs from ${clock(span.start)} to ${clock(span.end)} at ${power} W. A kWh costs ${formatMoney(dear, '$')} from ${clock(dearFrom)} to ${clock(dearTo)} and ${formatMoney(cheap, '$')} otherwise. What does the block cost a day?`,
    quantity: null,
    unit: '$',
    answer: energyCost,
    near: 0.015,
    slips: [
      {
        value: kilowattHours * cheap,
        says: 'That prices the whole block by the hour it begins in. Cut it where the price changes.',
      },
      {
        value: kilowattHours * dear,
        says: 'That prices the whole block at the peak price. Only the hours from 16:00 on have it.',
      },
      {
        value: (kilowattHours * (cheap + dear)) / 2,
        says: 'That takes the mean of the two prices. Each price counts for its own hours.',
      },
    ].filter(({ value }) => Math.abs(value / energyCost - 1) > 0.05),
    working: [
      `Before 16:00: ${inCheap} h × ${kilowatts} kW × ${formatMoney(cheap, '$')} = ${formatMoney(inCheap * kilowatts * cheap, '$', { places: 3 })}.`,
      `From 16:00: ${inDear} h × ${kilowatts} kW × ${formatMoney(dear, '$')} = ${formatMoney(inDear * kilowatts * dear, '$', { places: 3 })}.`,
      `${formatMoney(inCheap * kilowatts * cheap, '$', { places: 3 })} + ${formatMoney(inDear * kilowatts * dear, '$', { places: 3 })} = ${formatMoney(energyCost, '$', { places: 3 })}.`,
    ],
  };
};

const allDayOrNot: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'All needs of a pool are met in nine hours of the day. Should the pump run slowly for the other fifteen as well?',
  options: [
    {
      id: 'always',
      label: 'Yes: a pump must run round the clock',
      right: false,
      says: 'No rule says so everywhere. It is a choice with a price, and the price can be worked out.',
    },
    {
      id: 'never',
      label: 'No: every hour it runs costs money',
      right: false,
      says: 'It costs little at low speed, and may move as much water as the other hours together. Weigh what that water is worth here.',
    },
    {
      id: 'weigh',
      label: 'It depends: work out the price, and compare it with what those hours are for',
      right: true,
      says: 'Right. Mixing, a cover and chlorine speak for it; the price and the noise against. Where local code asks for a turnover, that decides first.',
    },
    {
      id: 'free',
      label: 'Yes: at low speed it costs next to nothing',
      right: false,
      says: 'The power is small, the hours are many. In the example of this lesson the low block is about a third of the bill.',
    },
  ],
  working: [
    'Price of the low block: its kilowatts × its hours × the price of those hours.',
    'What it gives: its flow × its hours, and whatever needs it serves.',
  ],
});

/** Three blocks over the day, and their price. */
export const bank = {
  energyOfBlocks,
  waterOfBlocks,
  intoDearHours,
  allDayOrNot,
} satisfies QuestionBank;
