import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { weightedEnergyFactor } from '#core/pump/energyFactor.ts';
import { cubePower, wirePower } from '#core/pump/power.ts';
import { paybackYears } from '#core/tariff/payback.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';

const currency = '$';
const shown = (amount: number, places = 2) => formatMoney(amount, currency, { places });

/** A year from a day per season; the mean of the two days is not it. */
const yearFromTwoDays: QuestionMaker = (draw) => {
  const summer = draw.pick([1.4, 1.6, 1.9] as const);
  const winter = draw.pick([0.5, 0.6, 0.7] as const);
  const summerDays = draw.pick([122, 92, 143] as const);
  const charge = draw.pick([0.3, 0.4] as const);
  const winterDays = 365 - summerDays;
  const energy = summerDays * summer + winterDays * winter;
  const answer = energy + 365 * charge;
  return {
    kind: 'number',
    prompt: `The energy of a summer day costs ${shown(summer)}, of a winter day ${shown(winter)}. Summer has ${summerDays} days, the rest of the 365 is winter. A daily charge of ${shown(charge)} comes on top. What does the year cost?`,
    quantity: null,
    unit: currency,
    answer,
    near: 0.005,
    slips: [
      {
        value: energy,
        says: 'The daily charge is missing, or counted once. It is due on all 365 days.',
      },
      {
        value: (365 * (summer + winter)) / 2 + 365 * charge,
        says: 'That takes the seasons as equally long. Count the days of each.',
      },
      {
        value: 365 * (summer + charge),
        says: 'That makes every day a summer day.',
      },
    ],
    working: [
      `${summerDays} × ${shown(summer)} + ${winterDays} × ${shown(winter)} = ${shown(energy)}.`,
      `365 × ${shown(charge)} = ${shown(365 * charge)}.`,
      `${shown(energy)} + ${shown(365 * charge)} = ${shown(answer)}.`,
    ],
  };
};

const yearsToPayBack: QuestionMaker = (draw) => {
  const [price, plain] = draw.pick([
    [1700, 600],
    [1800, 600],
    [1600, 500],
  ] as const);
  const before = draw.pick([3600, 3000] as const);
  const after = draw.pick([900, 1000] as const);
  const perKilowattHour = draw.pick([0.22, 0.3] as const);
  const yearlySaving = (before - after) * perKilowattHour;
  const answer = paybackYears({ outlay: price - plain, yearlySaving }) ?? 0;
  return {
    kind: 'number',
    prompt: `The old pump is worn out. A new one-speed pump costs ${shown(plain, 0)} and would take ${before} kWh a year; a variable-speed pump costs ${shown(price, 0)} and takes ${after} kWh for the same water. A kWh costs ${shown(perKilowattHour)}. After how many years has the more expensive one paid back what it costs more?`,
    quantity: null,
    unit: 'years',
    answer,
    near: 0.02,
    slips: [
      {
        value: price / yearlySaving,
        says: 'That pays back the whole pump. One of the two must be bought anyway: only the difference is to be paid back.',
      },
      {
        value: (price - plain) / (before * perKilowattHour),
        says: 'That takes the whole old bill as saved. The new pump has a bill too.',
      },
      {
        value: (price - plain) / (after * perKilowattHour),
        says: 'That divides by the new bill. Divide by what is saved.',
      },
      {
        value: yearlySaving / (price - plain),
        says: 'That is upside down: money spent over money saved a year gives years.',
      },
    ],
    working: [
      `Saved: (${before} − ${after}) kWh × ${shown(perKilowattHour)} = ${shown(yearlySaving)} a year.`,
      `(${shown(price, 0)} − ${shown(plain, 0)}) / ${shown(yearlySaving)} = ${answer.toFixed(2)} years.`,
    ],
  };
};

/** A night of frost at half speed. */
const nightOfFrost: QuestionMaker = (draw, units) => {
  const cube = draw.pick([1440, 1600, 1840] as const);
  const fixed = draw.pick([50, 60] as const);
  const hours = draw.pick([8, 10] as const);
  const power = wirePower(cubePower({ fixed, cube }), 0, 0.5);
  const energy = (watts: number) => watts * hours * 3600;
  const answer = energy(power);
  const watts = format('power', power, units, { digits: 3 });
  return {
    kind: 'number',
    prompt: `At full speed a pump draws ${fixed + cube} W: ${fixed} W that never change and ${cube} W that follow the cube of the speed. On a night of frost it runs ${hours} h at half speed. How much energy is that?`,
    quantity: 'energy',
    answer,
    near: 0.02,
    slips: [
      {
        value: energy(fixed + cube),
        says: 'That is full speed. The plan runs at half of it.',
      },
      { value: energy((fixed + cube) / 2), says: 'Half the speed is not half the power.' },
      {
        value: energy(cube / 8),
        says: 'That leaves out the fixed draw, which does not fall with speed.',
      },
      {
        value: energy((fixed + cube) / 8),
        says: 'That takes an eighth of everything. The fixed draw does not fall with speed.',
      },
    ],
    working: [
      `Power: ${fixed} + ${cube} / 8 = ${watts}.`,
      `${watts} × ${hours} h = ${(answer / joulesPerKilowattHour).toFixed(2)} kWh.`,
    ],
  };
};

/** The label's number from its two points; the rule itself is written in gallons. */
const factorOnTheLabel: QuestionMaker = (draw) => {
  const [lowPower, highPower] = draw.pick([
    [150, 900],
    [180, 1000],
    [130, 800],
  ] as const);
  const highGpm = draw.pick([60, 64, 68] as const);
  const lowGpm = 31.1;
  const flow = (gpm: number) => toSI('flow', gpm, 'gpm');
  const weighted = (low: number, high: number) =>
    weightedEnergyFactor([
      { flow: flow(lowGpm), power: lowPower, weight: low },
      { flow: flow(highGpm), power: highPower, weight: high },
    ]);
  const answer = weighted(0.8, 0.2);
  const [lowFactor, highFactor] = [(lowGpm * 60) / lowPower, (highGpm * 60) / highPower];
  return {
    kind: 'number',
    prompt: `A variable-speed pump is rated at two points: ${lowGpm} gpm with ${lowPower} W, weight 0.8, and ${highGpm} gpm with ${highPower} W, weight 0.2. What is its weighted energy factor, in gallons per watt-hour?`,
    quantity: null,
    unit: 'gal/Wh',
    answer,
    near: 0.01,
    slips: [
      {
        value: 0.8 * lowFactor + 0.2 * highFactor,
        says: 'That weighs the two factors. The rule weighs flow and power first, and divides then.',
      },
      { value: weighted(0.2, 0.8), says: 'The weights are swapped: the low flow has 0.8.' },
      {
        value: weighted(0.5, 0.5),
        says: 'The weights are missing: 0.8 for the low flow, 0.2 for the high.',
      },
      { value: answer / 60, says: 'Gallons a minute are 60 times as many in an hour.' },
    ],
    working: [
      `Gallons an hour: 60 × (0.8 × ${lowGpm} + 0.2 × ${highGpm}) = ${(60 * (0.8 * lowGpm + 0.2 * highGpm)).toFixed(0)}.`,
      `Watts: 0.8 × ${lowPower} + 0.2 × ${highPower} = ${(0.8 * lowPower + 0.2 * highPower).toFixed(0)}.`,
      `The one over the other: ${(60 * (0.8 * lowGpm + 0.2 * highGpm)).toFixed(0)} / ${(0.8 * lowPower + 0.2 * highPower).toFixed(0)} = ${answer.toFixed(2)}.`,
    ],
  };
};

const whatTheLabelSays: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'One pump has a weighted energy factor of 9 on its label, another 7. What does that say about the bill of your pool?',
  options: [
    {
      id: 'ratio',
      label: 'The first costs 7/9 of the second, whatever the pool',
      right: false,
      says: 'Only at the two points of the rule. At your flow and in your pipes it may be otherwise.',
    },
    {
      id: 'pipes',
      label: 'In the pipes of the rule the first moves more water per kWh; mine must be worked out',
      right: true,
      says: 'Right. It compares pumps in one set of pipes. What you pay is decided by your pipes, speeds and hours.',
    },
    {
      id: 'power',
      label: 'The first is the weaker pump',
      right: false,
      says: 'The factor is water over energy. It says nothing about how much the pump can move.',
    },
    {
      id: 'nothing',
      label: 'Nothing: labels do not hold',
      right: false,
      says: 'It is measured by one rule for all pumps, so it does compare them. It only does not know your pool.',
    },
  ],
  working: ['The rule measures every pump on one and the same system curve.'],
});

/** The same water through a loaded filter, kept with hours. */
const waterThroughDirt: QuestionMaker = (draw) => {
  const [clean, loaded] = draw.pick([
    [50, 40],
    [45, 36],
    [60, 48],
  ] as const);
  const power = draw.pick([290, 300, 320] as const);
  const hours = draw.pick([8, 10] as const);
  const less = power - 15;
  const longer = (hours * clean) / loaded;
  const energy = (watts: number, time: number) => watts * time * 3600;
  const answer = energy(less, longer);
  return {
    kind: 'number',
    prompt: `A clean filter lets ${clean} gpm through and the pump draws ${power} W, ${hours} h a day. Loaded, at the same speed: ${loaded} gpm and ${less} W. The run is made longer until the same water is moved. How much energy a day?`,
    quantity: 'energy',
    answer,
    near: 0.01,
    slips: [
      {
        value: energy(less, hours),
        says: 'That is the old number of hours. They no longer move the same water.',
      },
      {
        value: energy(power, longer),
        says: 'That takes the draw with a clean filter. At the same speed it falls a little.',
      },
      {
        value: energy(power * (clean / loaded) ** 3, hours),
        says: 'That turns the speed up, by the cube. Here the hours are made longer.',
      },
      {
        value: energy(less, (hours * loaded) / clean),
        says: 'That makes the run shorter. Less flow needs more time.',
      },
    ],
    working: [
      `Hours: ${hours} × ${clean} / ${loaded} = ${longer.toFixed(2)}.`,
      `${less} W × ${longer.toFixed(2)} h = ${(answer / joulesPerKilowattHour).toFixed(2)} kWh.`,
    ],
  };
};

/** A year, frost, payback, the label and a loading filter. */
export const bank = {
  yearFromTwoDays,
  yearsToPayBack,
  nightOfFrost,
  factorOnTheLabel,
  whatTheLabelSays,
  waterThroughDirt,
} satisfies QuestionBank;
