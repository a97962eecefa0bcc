import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { powerFactor } from '#core/pump/power.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { format } from '#units/format.ts';
import { formatMoney, formatPrice } from '#units/money.ts';

const priceOfADay: QuestionMaker = (draw, units) => {
  const power = draw.pick([250, 400, 1200, 1500] as const);
  const hours = draw.pick([6, 8, 10, 20] as const);
  const price = draw.pick([0.15, 0.18, 0.24] as const);
  const energy = (power * hours * 3600) / joulesPerKilowattHour;
  const answer = energy * price;
  return {
    kind: 'number',
    prompt: `A pump draws ${format('power', power, units)} for ${hours} hours a day. Energy costs ${formatPrice(price, '$')}. What does a day cost?`,
    quantity: null,
    unit: '$',
    answer,
    near: 0.02,
    slips: [
      {
        value: (power / 1000) * price,
        says: 'That pays for the kilowatts, as if it ran for one hour. Kilowatts times hours first.',
      },
      {
        value: power * hours * price,
        says: 'Those are watt-hours. A kilowatt-hour is 1000 of them.',
      },
      { value: energy, says: 'Those are the kilowatt-hours. Now times the price.' },
      {
        value: (power / 1000) * 24 * price,
        says: 'That lets it run round the clock.',
      },
    ],
    working: [
      `${power} W × ${hours} h = ${power * hours} Wh = ${energy} kWh.`,
      `${energy} kWh × ${formatMoney(price, '$')} = ${formatMoney(answer, '$')}.`,
    ],
  };
};

const factorOfAReading: QuestionMaker = (draw, units) => {
  const power = draw.pick([160, 200, 240, 300] as const);
  const current = draw.pick([3.2, 3.5, 3.8] as const);
  const voltage = 230;
  const answer = powerFactor(power, voltage, current);
  const apparent = voltage * current;
  return {
    kind: 'number',
    prompt: `At a low speed a meter says ${format('power', power, units)}, and a true-RMS clamp meter ${format('current', current, units)} on ${format('voltage', voltage, units)}. What is the power factor?`,
    quantity: null,
    answer,
    near: 0.03,
    slips: [
      { value: 1 / answer, says: 'That is upside down: watts over volts times amperes.' },
      {
        value: apparent,
        says: 'Those are volts times amperes. Now the watts over that.',
      },
      {
        value: 1,
        says: 'A power factor of 1 would mean that all the amperes do work.',
      },
      { value: power / voltage, says: 'Those are the amperes that the watts alone would need.' },
    ],
    working: [
      `Volts times amperes: ${voltage} × ${current} = ${Math.round(apparent)} VA.`,
      `${power} / ${Math.round(apparent)} = ${answer.toFixed(2)}.`,
    ],
  };
};

const kilowattsOrHours: QuestionMaker = () => ({
  kind: 'choice',
  prompt: 'Someone says: “My pump uses 1.5 kilowatts an hour.” What is meant?',
  options: [
    {
      id: 'rate',
      label: 'It draws 1.5 kW, so 1.5 kWh in each hour that it runs',
      right: true,
      says: 'Right. A kilowatt is already a rate, so “an hour” says it twice.',
    },
    {
      id: 'day',
      label: 'It takes 1.5 kWh a day',
      right: false,
      says: 'That would be about 60 W round the clock. Ask: for how long did it run?',
    },
    {
      id: 'rising',
      label: 'Its power rises by 1.5 kW every hour',
      right: false,
      says: 'That is what the words say. No pump does it.',
    },
  ],
  working: ['1.5 kW × 1 h = 1.5 kWh.'],
});

const twoLabels: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'One motor says 1.5 hp, service factor 1.3. Another says 1.95 hp, service factor 1.0. Which can give more at its shaft?',
  options: [
    {
      id: 'second',
      label: 'The second: 1.95 is more than 1.5',
      right: false,
      says: 'The horsepower alone is only half of the label. Times the service factor, both are 1.95.',
    },
    {
      id: 'first',
      label: 'The first: its service factor is higher',
      right: false,
      says: 'The factor counts on its own horsepower: 1.5 × 1.3 is just 1.95.',
    },
    {
      id: 'same',
      label: 'Neither: both may give 1.95 hp',
      right: true,
      says: 'Right. Multiply before you compare. What either takes from the wire is another number again.',
    },
  ],
  working: ['1.5 × 1.3 = 1.95, and 1.95 × 1.0 = 1.95.'],
});

/** Watts, amperes, kilowatt-hours. */
export const bank = {
  priceOfADay,
  factorOfAReading,
  kilowattsOrHours,
  twoLabels,
} satisfies QuestionBank;
