import { pressureHead, totalDynamicHead } from '#core/fit/gauges.ts';
import { water } from '#core/water/water.ts';
import { asPrinted } from '#course/Check/printed.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { foot, inchOfMercury, psi } from '#units/factors.ts';
import { format } from '#units/format.ts';

const density = water(27).density;

/** What the trade takes for a psi and an inch of mercury, for naming a mix-up of the two [m]. */
const perPsi = 2.31 * foot;
const perInch = 1.13 * foot;

const headFromGauges: QuestionMaker = (draw, units) => {
  const isUs = units.preset === 'us';
  const dischargePressure = isUs
    ? toSI('pressure', draw.pick([14, 16, 18, 20] as const), 'psi')
    : toSI('pressure', draw.pick([95, 110, 125, 140] as const), 'kPa');
  const suctionVacuum = isUs
    ? toSI('vacuum', draw.pick([7, 8, 9, 10] as const), 'inHg')
    : toSI('vacuum', draw.pick([20, 24, 28] as const), 'kPa');
  const gaugeHeight = isUs
    ? toSI('length', draw.pick([3, 4, 5] as const), 'ft')
    : draw.pick([1, 1.2, 1.5] as const);
  const answer = totalDynamicHead({ dischargePressure, suctionVacuum, gaugeHeight, density });
  const pressure = pressureHead(dischargePressure, density);
  const vacuum = pressureHead(suctionVacuum, density);
  const shown = (head: number) => format('head', head, units, { digits: 3 });
  const parts = [pressure, vacuum, gaugeHeight].map((head) =>
    asPrinted('head', head, units, { digits: 3 }),
  );
  return {
    kind: 'number',
    prompt: `The filter gauge shows ${format('pressure', dischargePressure, units)}, the suction gauge ${format('vacuum', suctionVacuum, units)} of vacuum, and the filter gauge sits ${format('length', gaugeHeight, units)} above the suction gauge. How much head does the pump add?`,
    quantity: 'head',
    answer,
    near: 0.012,
    slips: [
      {
        value: pressure + gaugeHeight,
        says: 'The vacuum is missing. The pump made that too.',
      },
      {
        value: pressure - vacuum + gaugeHeight,
        says: 'That takes the vacuum off. It lies below the air’s pressure, so the way up from it is longer: add it.',
      },
      {
        value: pressure + vacuum,
        says: 'The height between the gauges is missing. A gauge higher up shows less, so add it.',
      },
    ],
    working: [
      'Filter gauge, suction gauge and height, each as head:',
      `${parts.map(({ text }) => text).join(' + ')} = ${shown(parts.reduce((sum, { value }) => sum + value, 0))}.`,
    ],
  };
};

const headOfReading: QuestionMaker = (draw, units) => {
  const inches = draw.pick([6, 7, 8, 9, 10] as const);
  const vacuum = inches * inchOfMercury;
  const answer = pressureHead(vacuum, density);
  const isUs = units.preset === 'us';
  return {
    kind: 'number',
    prompt: `A suction gauge shows ${format('vacuum', vacuum, units)} of vacuum. How high a column of pool water is that?`,
    quantity: 'head',
    answer,
    near: 0.015,
    slips: isUs
      ? [
          {
            value: inches * perPsi,
            says: 'That is 2.31, the factor of a psi. For an inch of mercury it is about 1.13.',
          },
          {
            value: (inches * foot) / 1.13,
            says: 'Divided where it should be multiplied: water is lighter than mercury, so its column is the longer.',
          },
          {
            value: inches * foot,
            says: 'That counts each inch of mercury as a foot of water. It is a little more: about 1.13.',
          },
        ]
      : [
          {
            value: vacuum / 1000,
            says: 'That counts each kilopascal as a metre. A metre of water is nearly ten.',
          },
          {
            value: vacuum / 101325,
            says: 'That counts in atmospheres. A metre of water is about 9.8 kPa.',
          },
        ],
    working: [
      isUs
        ? `About 1.13 ft for each inch of mercury: ${inches} × 1.13 = ${format('head', inches * perInch, units, { digits: 3 })}.`
        : `About 9.8 kPa for each metre: ${format('vacuum', vacuum, units, { withUnit: false })} / 9.8 = ${format('head', vacuum / 9800, units, { digits: 3 })}.`,
      `Worked out with the weight of warm water: ${format('head', answer, units, { digits: 3 })}.`,
    ],
  };
};

const gaugeRose: QuestionMaker = (draw, units) => {
  const [before, after] = draw.pick([
    [14, 19],
    [12, 17],
    [16, 22],
  ] as const);
  const shown = (value: number) =>
    format('pressure', value * psi, units, units.preset === 'us' ? {} : { digits: 2 });
  return {
    kind: 'choice',
    prompt: `Same pump, same speed, same valves, clean basket; the vacuum has fallen. Since the filter was cleaned, its gauge has gone from ${shown(before)} to ${shown(after)}. What has the flow done?`,
    options: [
      {
        id: 'risen',
        label: 'Risen: more pressure pushes more water',
        right: false,
        says: 'The pump makes more pressure just because less water runs: the filter lets less through.',
      },
      {
        id: 'fallen',
        label: 'Fallen',
        right: true,
        says: 'Right. At one speed a pump gives more head only where it gives less flow, and the fallen vacuum agrees.',
      },
      {
        id: 'same',
        label: 'Stayed: the speed sets the flow',
        right: false,
        says: 'The speed sets the pump’s whole curve. Where on it the pump runs, the pipes and the filter decide.',
      },
      {
        id: 'read',
        label: `Risen by as much as the gauge did, ${Math.round((after / before - 1) * 100)} %`,
        right: false,
        says: 'The gauge measures pressure, not flow, and here the two go opposite ways.',
      },
    ],
    working: [
      'The pump gives more head, at the same speed.',
      'Along its curve more head goes with less flow. Something after the gauge has become tighter: the filter.',
    ],
  };
};

const deadHead: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'Someone shuts the return valve with the pump running. The filter gauge climbs to its highest. How much water moves?',
  options: [
    {
      id: 'most',
      label: 'The most the pump can give, for the pressure is greatest',
      right: false,
      says: 'The pressure is greatest because nothing moves. A gauge shows how hard the water is pressed, not whether it goes anywhere.',
    },
    {
      id: 'none',
      label: 'None',
      right: true,
      says: 'Right: full pressure, no flow. And a pump left like that heats its water until something gives.',
    },
    {
      id: 'some',
      label: 'About as much as before',
      right: false,
      says: 'There is no way left for it: the valve is shut.',
    },
  ],
  working: [
    'A shut valve lets nothing pass. The gauge shows the head that the pump makes at no flow.',
  ],
});

/** Head, pressure and what gauges say. */
export const bank = { headFromGauges, headOfReading, gaugeRose, deadHead } satisfies QuestionBank;
