import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { bestMileageRatio } from '#core/pump/power.ts';
import { roundFlow } from '#course/Check/drawn.ts';
import { asPrinted } from '#course/Check/printed.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { format } from '#units/format.ts';

const bestSpeed: QuestionMaker = (draw, units) => {
  const fixed = draw.pick([30, 40, 60, 80] as const);
  const cube = draw.pick([1200, 1500, 2000] as const);
  const top = draw.pick([3000, 3450] as const);
  const answer = top * bestMileageRatio({ fixed, cube });
  const watts = (value: number) => format('power', value, units);
  return {
    kind: 'number',
    prompt: `A pump draws ${watts(fixed)} at any speed, and above that ${watts(cube)} at ${top} rpm, falling with the cube. The water is not lifted. At which speed does it move the most water for a kilowatt-hour?`,
    quantity: 'speed',
    answer,
    near: 0.03,
    slips: [
      {
        value: answer * Math.cbrt(2),
        says: 'The 2 is missing: the fixed draw is divided by twice the cube part.',
      },
      {
        value: top * Math.sqrt(fixed / (2 * cube)),
        says: 'That takes the square root. The power follows the cube, so it is the cube root.',
      },
      {
        value: top,
        says: 'That is top speed, where the cube part costs most.',
      },
    ],
    working: [
      `Fixed draw over twice the cube part: ${fixed} / (2 × ${cube}) = ${(fixed / (2 * cube)).toFixed(5)}.`,
      `Its cube root is ${(answer / top).toFixed(4)}; ${(answer / top).toFixed(4)} × ${top} = ${format('speed', Math.round(Number((answer / top).toFixed(4)) * top), units)}.`,
    ],
  };
};

const waterForKilowattHour: QuestionMaker = (draw, units) => {
  const flow = roundFlow(
    units,
    draw.pick([20, 26, 30, 45] as const),
    draw.pick([4, 6, 8, 10] as const),
  );
  const power = draw.pick([110, 150, 260, 480] as const);
  const answer = (flow / power) * joulesPerKilowattHour;
  const minutes = units.preset === 'us';
  const hourly = asPrinted('volume', flow * 3600, units);
  return {
    kind: 'number',
    prompt: `A pump moves ${format('flow', flow, units)} and draws ${format('power', power, units)}. How much water does it move for a kilowatt-hour?`,
    quantity: 'volume',
    answer,
    near: 0.02,
    slips: [
      {
        value: minutes ? answer / 60 : answer / 1000,
        says: minutes
          ? 'The flow counts by the minute and the kilowatt-hour by the hour: times 60.'
          : 'A kilowatt is 1000 watts.',
      },
      {
        value: (flow * 3600 * power) / 1000,
        says: 'That multiplies by the power. More watts for the same flow give less water, so divide.',
      },
      {
        value: flow * 3600,
        says: 'That is the water of one hour. In an hour it uses less than a kilowatt-hour.',
      },
    ],
    working: [
      `In an hour it moves ${hourly.text}, for ${format('power', power, units)} × 1 h = ${power / 1000} kWh.`,
      `For a kilowatt-hour: ${hourly.text} / ${power / 1000} = ${format('volume', hourly.value / (power / 1000), units)}.`,
    ],
  };
};

const liftAndFlow: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'A pump lifts water over a spillway. You turn its speed down by a fifth. What happens to the flow?',
  options: [
    {
      id: 'fifth',
      label: 'It falls by a fifth, as the affinity law says',
      right: false,
      says: 'That holds where the water returns to the surface it left. Here a part of the head does not shrink with the flow.',
    },
    {
      id: 'more',
      label: 'It falls by more than a fifth, perhaps to nothing',
      right: true,
      says: 'Right. The head falls with the speed squared, the lift stays. Below a certain speed no water comes over at all.',
    },
    {
      id: 'less',
      label: 'It falls by less than a fifth',
      right: false,
      says: 'It is the other way round: the lift takes its share of the head first, and what is left for the pipes falls faster.',
    },
  ],
  working: ['Head of the pump × 0.8 × 0.8 = 0.64; the lift takes as much of it as before.'],
});

/** Where the cube law stops. */
export const bank = {
  bestSpeed,
  waterForKilowattHour,
  liftAndFlow,
} satisfies QuestionBank;
