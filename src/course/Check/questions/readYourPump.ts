import { fitPower } from '#core/fit/fitPower.ts';
import { gaugeTolerance } from '#core/fit/gauges.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';

/** Fixed draw and cube of an invented pump [W], with speeds whose ratio is easy. */
const pumps = [
  { fixed: 100, cube: 1600, top: 3000, slow: 1500 },
  { fixed: 80, cube: 1600, top: 3200, slow: 1600 },
  { fixed: 120, cube: 1200, top: 2800, slow: 1400 },
] as const;

const fixedFromTwo: QuestionMaker = (draw) => {
  const { fixed, cube, top, slow } = draw.pick(pumps);
  const watts = (speed: number) => fixed + cube * (speed / top) ** 3;
  const [fast, slowWatts] = [watts(top), watts(slow)];
  const fit = fitPower([
    { id: 'fast', ratio: 1, power: fast },
    { id: 'slow', ratio: slow / top, power: slowWatts },
  ]);
  return {
    kind: 'number',
    prompt: `The display shows ${fast} W at ${top} rpm and ${slowWatts} W at ${slow} rpm. Taking the power as a fixed draw and a part that goes with the cube of the speed, how large is the fixed draw?`,
    quantity: 'power',
    answer: fit.fixed,
    near: 0.04,
    slips: [
      {
        value: slowWatts,
        says: 'That is everything it draws at the slow speed. An eighth of the cube part is still in it.',
      },
      {
        value: slowWatts - fast / 8,
        says: 'Nearly: but an eighth of the fixed draw has been taken off too. Divide what is left by seven eighths.',
      },
      {
        value: fast - slowWatts,
        says: 'That is seven eighths of the cube part.',
      },
    ],
    working: [
      `Half the speed leaves an eighth of the cube part. So the difference, ${fast} − ${slowWatts} = ${fast - slowWatts} W, is seven eighths of it.`,
      `The cube part: ${fast - slowWatts} × 8 / 7 = ${Math.round(fit.cube)} W. The fixed draw: ${fast} − ${Math.round(fit.cube)} = ${Math.round(fit.fixed)} W.`,
    ],
  };
};

const gaugeShare: QuestionMaker = (draw, units) => {
  const us = units.preset === 'us';
  const span = us ? toSI('pressure', 60, 'psi') : toSI('pressure', 400, 'kPa');
  const reading = us
    ? toSI('pressure', draw.pick([4, 5, 8] as const), 'psi')
    : toSI('pressure', draw.pick([25, 40, 50] as const), 'kPa');
  const allowed = gaugeTolerance({ grade: 'B', span }, reading);
  const answer = (100 * allowed) / reading;
  return {
    kind: 'number',
    prompt: `A filter gauge goes to ${format('pressure', span, units)}. In the first quarter of its scale it may be wrong by 3\u00a0% of the whole scale. It shows ${format('pressure', reading, units)}. By how many percent of what it shows may it be wrong?`,
    quantity: null,
    unit: '%',
    answer,
    near: 0.04,
    slips: [
      {
        value: 3,
        says: 'That is 3\u00a0% of the whole scale. Of a small reading the same error is a far larger share.',
      },
      {
        value: (3 * reading) / span,
        says: 'That takes 3\u00a0% of the reading, and then a share of the scale. It is the other way round.',
      },
    ],
    working: [
      `Of the whole scale: 3\u00a0% × ${format('pressure', span, units)} = ${format('pressure', allowed, units, { digits: 2 })}.`,
      `Of the reading: ${format('pressure', allowed, units, { digits: 2 })} / ${format('pressure', reading, units)} = ${(answer / 100).toFixed(2)}, so ${answer.toFixed(0)}\u00a0%. Read gauges at a fast speed.`,
    ],
  };
};

const whichReadingNext: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'You have watts at 3450 and 3000 rpm. You want the power at 1000 rpm, where the pump will spend most of the day. Which single reading helps most?',
  options: [
    {
      id: 'middle',
      label: 'Watts at 2500 rpm: it is next in line',
      right: false,
      says: 'It lies close to the two you have and says almost the same again. The fixed draw hides below it.',
    },
    {
      id: 'lowest',
      label: 'Watts at 1000 rpm or slower',
      right: true,
      says: 'Right. There the fixed draw is a large part of what is shown. The far end of a range ties a fit down best.',
    },
    {
      id: 'again',
      label: 'Watts at 3450 rpm once more',
      right: false,
      says: 'That halves nothing: the fast end is known already, and it says little about the slow one.',
    },
    {
      id: 'gauge',
      label: 'The filter gauge at 3450 rpm',
      right: false,
      says: 'That narrows the flow, and is well worth it. It says next to nothing about watts at low speed.',
    },
  ],
  working: [
    'At high speed nearly all the watts go with the cube; at low speed the fixed draw stands out.',
  ],
});

const contradiction: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'Your notes say 505 W at 2000 rpm and 480 W at 2300 rpm, both on the same afternoon. What do you do?',
  options: [
    {
      id: 'mean',
      label: 'Take the mean of the two',
      right: false,
      says: 'Watts that fall while speed rises cannot both be right. A mean of a right and a wrong figure is wrong.',
    },
    {
      id: 'again',
      label: 'Read both again, after the display has settled, and look at what changed between',
      right: true,
      says: 'Right. Perhaps a valve was moved, a figure was written down wrong, or the pump was still slowing down.',
    },
    {
      id: 'drop',
      label: 'Drop the one that does not suit the formula',
      right: false,
      says: 'Which one is that? A reading goes only for a reason, such as a valve that was moved.',
    },
    {
      id: 'fit',
      label: 'Let the fit settle it',
      right: false,
      says: 'A fit gives a line through anything. It can tell you that the notes disagree, not which one is true.',
    },
  ],
  working: ['More speed in the same pipes always takes more power.'],
});

/** Readings, what they make sure, and what to make of them. */
export const bank = {
  fixedFromTwo,
  gaugeShare,
  whichReadingNext,
  contradiction,
} satisfies QuestionBank;
