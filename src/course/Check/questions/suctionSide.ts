import { pressureHead } from '#core/fit/gauges.ts';
import { atmosphericPressure, geopotentialAltitude, npshAvailable } from '#core/pump/npsh.ts';
import { water } from '#core/water/water.ts';
import { asPrinted } from '#course/Check/printed.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';

const npshAvailableHere: QuestionMaker = (draw, units) => {
  const inUs = units.preset === 'us';
  const altitude = inUs
    ? toSI('length', draw.pick([0, 3000, 6000] as const), 'ft')
    : draw.pick([0, 1000, 1800] as const);
  const temperature = inUs ? toSI('temperature', draw.pick([80, 84] as const), 'degF') : 28;
  const [lift, loss] = inUs
    ? draw
        .pick([
          [2, 5],
          [3, 5],
          [2, 8],
          [3, 8],
        ] as const)
        .map((feet) => toSI('head', feet, 'ft'))
    : draw.pick([
        [0.6, 1.5],
        [0.9, 1.5],
        [0.6, 2.4],
        [0.9, 2.4],
      ] as const);
  if (lift === undefined || loss === undefined) throw new RangeError('a pair was drawn short.');
  const liquid = water(temperature);
  const atmosphere = atmosphericPressure(geopotentialAltitude(altitude));
  const air = pressureHead(atmosphere, liquid.density);
  const boils = pressureHead(liquid.vapourPressure, liquid.density);
  const answer = npshAvailable({
    atmosphere,
    water: liquid,
    surfaceAbovePump: -lift,
    suctionLoss: loss,
  });
  const head = (value: number) => format('head', value, units);
  const first = asPrinted('head', air, units);
  const rest = [boils, lift, loss].map((value) => asPrinted('head', value, units));
  return {
    kind: 'number',
    prompt: `The air on a pool pushes with ${head(air)} of head. The water boils at ${head(boils)}. The pump stands ${head(lift)} above the water, and its suction line loses ${head(loss)}. How much NPSH is available?`,
    quantity: 'head',
    answer,
    near: 0.015,
    slips: [
      {
        value: answer + boils,
        says: 'The pump can’t use the head below which water boils: take it off too.',
      },
      {
        value: answer + 2 * lift,
        says: 'The water has to reach the pump first: the height comes off. It is a gain only where the pump sits lower than the pool.',
      },
      {
        value: answer + loss,
        says: 'What the suction line loses never reaches the pump: take it off.',
      },
      { value: answer + lift, says: 'The height of the pump above the water comes off as well.' },
    ],
    working: [
      'NPSH available = air − boiling − height − loss.',
      `${first.text} − ${rest.map(({ text }) => text).join(' − ')} = ${format(
        'head',
        rest.reduce((left, { value }) => left - value, first.value),
        units,
        { digits: 3 },
      )}.`,
    ],
  };
};

const lineMayLose: QuestionMaker = (draw, units) => {
  const inUs = units.preset === 'us';
  const [before, required, margin] = (
    inUs
      ? [draw.pick([20, 24, 28] as const), draw.pick([7, 9, 12] as const), 3]
      : [draw.pick([6, 7.5, 8.5] as const), draw.pick([2.3, 2.8, 3.5] as const), 1]
  ).map((head) => toSI('head', head, inUs ? 'ft' : 'm')) as [number, number, number];
  const answer = before - required - margin;
  const head = (value: number) => format('head', value, units);
  return {
    kind: 'number',
    prompt: `With the height of the pump taken off, ${head(before)} of head are left above the boiling point. The pump needs ${head(required)} of NPSH, and you want ${head(margin)} of margin. How much may the suction line lose?`,
    quantity: 'head',
    answer,
    near: 0.02,
    slips: [
      {
        value: before - required,
        says: 'That leaves no margin, and at its NPSH required the pump has already lost 3 % of its head.',
      },
      { value: before - margin, says: 'That leaves the pump nothing of what it needs itself.' },
      {
        value: before - required + margin,
        says: 'A margin is kept back, so it comes off like the rest.',
      },
    ],
    working: [
      'What the line may lose = head above boiling − NPSH required − margin.',
      `${head(before)} − ${head(required)} − ${head(margin)} = ${format('head', answer, units, { digits: 3 })}.`,
    ],
  };
};

const soundOfGravel: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'A pump rattles as if it moved gravel. At the same speed as ever, the vacuum gauge before it reads much higher than last month. No bubbles come out of the returns. What is most likely?',
  options: [
    {
      id: 'blocked',
      label: 'Something blocks the suction side: a full basket, a valve nearly shut',
      right: true,
      says: 'Right. More loss before the pump raises the vacuum and leaves less NPSH, and the water boils in the pump.',
    },
    {
      id: 'air',
      label: 'Air leaks into the suction line',
      right: false,
      says: 'A leak lets the vacuum down, and its air comes out of the returns as bubbles.',
    },
    {
      id: 'filter',
      label: 'The filter is dirty',
      right: false,
      says: 'The filter comes after the pump. When it loads the flow falls, and the vacuum with it.',
    },
    {
      id: 'bearing',
      label: 'A worn bearing, nothing with the water',
      right: false,
      says: 'A bearing makes noise too, but it moves no gauge. The vacuum points to what lies before the pump.',
    },
  ],
  working: [
    'High vacuum: loss before the gauge. Low or nervous vacuum with bubbles: air leaks in.',
  ],
});

const deeperLift: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'At sea level a pump has to draw from a tank whose water lies 36 ft (11 m) lower than the pump. It never primes. What helps?',
  options: [
    {
      id: 'stronger',
      label: 'A stronger pump',
      right: false,
      says: 'The pump only takes pressure away at its inlet; the air pushes the water up. More than all of the air’s pressure cannot be taken away.',
    },
    {
      id: 'wider',
      label: 'A wider suction pipe',
      right: false,
      says: 'It saves loss, but with no loss at all the air still holds up only about 34 ft (10.3 m).',
    },
    {
      id: 'lower',
      label: 'Only a pump that sits lower, near the water or in it',
      right: true,
      says: 'Right. The air holds up about 34 ft (10.3 m) and no more, whatever the pump.',
    },
    {
      id: 'seal',
      label: 'Better seals, so that it can pull harder',
      right: false,
      says: 'Tight seals are needed, but even a perfect vacuum draws water no higher than about 34 ft (10.3 m).',
    },
  ],
  working: [
    'The standard air at sea level carries 34 ft (10.3 m) of water, less what keeps it from boiling.',
  ],
});

/** What the air gives, what the suction line takes, and what the pump needs. */
export const bank = {
  npshAvailableHere,
  lineMayLose,
  soundOfGravel,
  deeperLift,
} satisfies QuestionBank;
