import { equipmentHead } from '#core/hydraulics/equipment.ts';
import { roundFlow } from '#course/Check/drawn.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import type { UnitChoice } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';

/** A pump's sheet and one known point of the pipes, the sheet's first flow; in round numbers. */
interface Sheet {
  readonly flows: readonly [number, number, number, number];
  readonly heads: readonly [number, number, number, number];
  readonly pipes: number;
}

/*
 * Invented, and made so that the lines meet at the third point, and pipes that rose as the flow itself
 * would meet the pump at the fourth.
 */
const usSheets: readonly Sheet[] = [
  { flows: [40, 50, 60, 70], heads: [64, 60, 54, 42], pipes: 24 },
  { flows: [40, 50, 60, 70], heads: [45, 42, 36, 28], pipes: 16 },
];
const metricSheets: readonly Sheet[] = [
  { flows: [10, 12, 15, 18], heads: [16.6, 15.6, 13.5, 10.8], pipes: 6 },
  { flows: [10, 12, 15, 18], heads: [11, 10.4, 9, 7.2], pipes: 4 },
];

function inStore(sheet: Sheet, units: UnitChoice) {
  const unit = units.preset === 'us' ? 'ft' : 'm';
  return {
    flows: sheet.flows.map((flow) => roundFlow(units, flow, flow)) as [
      number,
      number,
      number,
      number,
    ],
    heads: sheet.heads.map((head) => toSI('head', head, unit)),
    pipes: toSI('head', sheet.pipes, unit),
  };
}

const whereTheyMeet: QuestionMaker = (draw, units) => {
  const drawn = draw.pick(units.preset === 'us' ? usSheets : metricSheets);
  const { flows, heads, pipes } = inStore(drawn, units);
  const [first, second, answer, fourth] = flows;
  const at = (index: number) =>
    `${format('head', heads[index] ?? 0, units)} at ${format('flow', flows[index] ?? 0, units)}`;
  const loop = { referenceHead: pipes, referenceFlow: first, exponent: 2, factor: 1 };
  const asked = format('head', equipmentHead(loop, answer), units, { digits: 3 });
  return {
    kind: 'number',
    prompt: `A pump’s sheet says ${[0, 1, 2, 3].map(at).join(', ')}. The pipes take ${format('head', pipes, units)} at ${format('flow', first, units)}, and their loss rises as the flow squared. How much flows?`,
    quantity: 'flow',
    answer,
    near: 0.04,
    slips: [
      {
        value: first,
        says: 'There the pump still makes more head than the pipes ask for, so the flow goes on rising.',
      },
      {
        value: second,
        says: 'There the pump still makes more head than the pipes ask for. Try the next point.',
      },
      {
        value: fourth,
        says: 'That lets the loss rise as the flow itself. It rises as the flow squared.',
      },
    ],
    working: [
      `At ${format('flow', answer, units)} the pipes ask for ${format('head', pipes, units)} × (${format('flow', answer, units)} / ${format('flow', first, units)})² = ${asked}.`,
      'The pump makes just that there, so there they meet.',
    ],
  };
};

const closingTheValve: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'The pump runs on at the same speed. You close a return valve until the flow has fallen by a third. What do head and watts do at the pump?',
  options: [
    {
      id: 'both-up',
      label: 'Head rises, and so do the watts: it works harder',
      right: false,
      says: 'The head does rise. But less water is lifted through it, and with this kind of pump the watts fall a little.',
    },
    {
      id: 'up-down',
      label: 'Head rises, watts fall a little',
      right: true,
      says: 'Right. The point walks up the curve. Each gallon or litre costs more, because part of the head is spent in the valve.',
    },
    {
      id: 'both-down',
      label: 'Head and watts fall, both as much as the flow',
      right: false,
      says: 'The curve of the pump rises towards less flow, so the head goes up.',
    },
    {
      id: 'none',
      label: 'Neither changes: the speed is the same',
      right: false,
      says: 'The speed fixes the curve. The pipes and the valve fix where on the curve the pump runs.',
    },
  ],
  working: ['Same speed, same curve. Less flow lies further left and up on it.'],
});

const gaugeHasRisen: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'The gauge at the filter inlet reads higher than last week, at the same speed. No valve was touched, the basket is clean, and the vacuum before the pump has fallen. What happened to the flow?',
  options: [
    {
      id: 'more',
      label: 'More flow: more pressure pushes more water',
      right: false,
      says: 'At one speed the pump has one curve, and on it more pressure goes with less flow.',
    },
    {
      id: 'less',
      label: 'Less flow: the filter has loaded',
      right: true,
      says: 'Right. The pipes ask for more head now, and the point has walked up the curve. The fallen vacuum says the same.',
    },
    {
      id: 'same',
      label: 'The same: the speed sets the flow',
      right: false,
      says: 'The speed sets the curve. Where on it the pump runs, the pipes and the filter decide.',
    },
  ],
  working: ['Higher head on the same curve means less flow.'],
});

const biggerPump: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'A pump rated for twice the flow goes into the same pipes and runs at full speed. What happens to the flow?',
  options: [
    {
      id: 'twice',
      label: 'It doubles: that is what it is rated for',
      right: false,
      says: 'Twice the flow would take about four times the head in these pipes. Rated flow is one point of its curve, not what your pipes will let it give.',
    },
    {
      id: 'some',
      label: 'It rises, but far from twice',
      right: true,
      says: 'Right. The point walks up the line of the pipes, which is steep, and the watts rise much more than the flow.',
    },
    {
      id: 'same',
      label: 'It stays: the pipes set the flow',
      right: false,
      says: 'Pump and pipes set it together. A higher curve meets the pipes further up.',
    },
  ],
  working: [
    'The new curve meets the old pipes where both have the same head: a little further on.',
  ],
});

/** Pump curve and operating point. */
export const bank = {
  whereTheyMeet,
  closingTheValve,
  gaugeHasRisen,
  biggerPump,
} satisfies QuestionBank;
