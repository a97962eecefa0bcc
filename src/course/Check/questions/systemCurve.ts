import { roundFlow } from '#course/Check/drawn.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import type { UnitChoice } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';

/** A head in round numbers of the reader's own system [m]. */
const roundHead = (units: UnitChoice, feet: number, metres: number) =>
  units.preset === 'us' ? toSI('head', feet, 'ft') : metres;

const ratios = [0.5, 0.6, 0.75, 1.25] as const;

const scaleSystem: QuestionMaker = (draw, units) => {
  const flow = roundFlow(units, draw.pick([40, 60, 80] as const), draw.pick([8, 12, 16] as const));
  const head = roundHead(units, draw.pick([30, 40, 50] as const), draw.pick([9, 12, 15] as const));
  const ratio = draw.pick(ratios);
  const answer = head * ratio ** 2;
  const shown = (value: number) => format('head', value, units, { digits: 3 });
  return {
    kind: 'number',
    prompt: `A closed loop, without lift, takes ${shown(head)} at ${format('flow', flow, units)}. Take its head to go with the flow squared. What does it take at ${format('flow', flow * ratio, units)}?`,
    quantity: 'head',
    answer,
    near: 0.02,
    slips: [
      {
        value: head * ratio,
        says: 'That goes with the flow. Head goes with its square: multiply by the ratio twice.',
      },
      {
        value: head,
        says: 'That is the head at the old flow. At another flow the same pipes take another head.',
      },
      {
        value: head / ratio ** 2,
        says: 'The wrong way round: more flow takes more head, less takes less.',
      },
    ],
    working: [
      `Ratio of the flows: ${ratio}. Squared: ${Number((ratio ** 2).toFixed(4))}.`,
      `${shown(head)} × ${Number((ratio ** 2).toFixed(4))} = ${shown(answer)}.`,
    ],
  };
};

const scaleWithLift: QuestionMaker = (draw, units) => {
  const flow = roundFlow(units, draw.pick([40, 60, 80] as const), draw.pick([8, 12, 16] as const));
  const friction = roundHead(units, draw.pick([24, 32] as const), draw.pick([8, 12] as const));
  const lift = roundHead(units, draw.pick([8, 10] as const), draw.pick([2.5, 3] as const));
  const ratio = draw.pick([0.5, 0.75] as const);
  const head = friction + lift;
  const answer = lift + friction * ratio ** 2;
  const shown = (value: number) => format('head', value, units, { digits: 3 });
  return {
    kind: 'number',
    prompt: `Water falls from a spillway ${shown(lift)} above the pool. At ${format('flow', flow, units)} the circuit takes ${shown(head)} in all. Take the friction to go with the flow squared. What does the circuit take at ${format('flow', flow * ratio, units)}?`,
    quantity: 'head',
    answer,
    near: 0.02,
    slips: [
      {
        value: head * ratio ** 2,
        says: 'That shrinks the lift too. The spillway stays as high as it is: only the friction falls.',
      },
      {
        value: friction * ratio ** 2,
        says: 'That is the friction alone. The lift comes on top, at any flow.',
      },
      {
        value: lift + friction * ratio,
        says: 'That goes with the flow. Friction goes with its square.',
      },
    ],
    working: [
      `Friction before: ${shown(head)} − ${shown(lift)} = ${shown(friction)}. At the new flow: × ${ratio} × ${ratio} = ${shown(friction * ratio ** 2)}.`,
      `With the lift: ${shown(friction * ratio ** 2)} + ${shown(lift)} = ${shown(answer)}.`,
    ],
  };
};

const twoEqualLines: QuestionMaker = (draw, units) => {
  const flow = roundFlow(units, draw.pick([50, 60, 70] as const), draw.pick([12, 14, 16] as const));
  const head = roundHead(units, draw.pick([8, 10, 12] as const), draw.pick([2.4, 3.2, 4] as const));
  const answer = head / 4;
  const shown = (value: number) => format('head', value, units, { digits: 2 });
  return {
    kind: 'number',
    prompt: `One suction line loses ${shown(head)} at ${format('flow', flow, units)}. You add a second, equal line beside it, and the whole flow stays the same. Take loss to go with the flow squared. What does the pair lose?`,
    quantity: 'head',
    answer,
    near: 0.04,
    slips: [
      {
        value: head / 2,
        says: 'Each line carries half the flow, and half the flow loses a quarter.',
      },
      { value: head, says: 'That is one line carrying all of it. Now each carries half.' },
      {
        value: head * 2,
        says: 'Losses of parts in a row add up. Side by side the lines share one loss.',
      },
      {
        value: head / 8,
        says: 'A quarter in each line, and that is the pair’s loss: it is shared, not halved again.',
      },
    ],
    working: [
      'Each line carries half the flow. Half squared is a quarter.',
      `Side by side they share that loss: ${shown(head)} / 4 = ${shown(answer)}.`,
    ],
  };
};

const whereLift: QuestionMaker = (draw, units) => {
  const height = roundHead(units, draw.pick([5, 6, 8] as const), draw.pick([1.5, 2, 2.5] as const));
  const shown = format('head', height, units, { digits: 2 });
  return {
    kind: 'choice',
    prompt: `The filter stands ${shown} above the pool. The water comes back through returns below the surface. How much lift is in the circuit?`,
    options: [
      {
        id: 'height',
        label: `${shown}: the water must climb to the filter`,
        right: false,
        says: 'It climbs to the filter and falls back, and the full pipe on the way down pulls as hard as the way up costs.',
      },
      {
        id: 'none',
        label: 'None',
        right: true,
        says: 'Right: it returns to the surface it left. What goes up in a full loop comes down again.',
      },
      {
        id: 'half',
        label: 'Half of it, on average',
        right: false,
        says: 'Up and down cancel altogether, as long as the pipes are full.',
      },
      {
        id: 'depth',
        label: 'The height, and the depth of the returns on top',
        right: false,
        says: 'Water below the surface pushes back just as hard as its depth. Depth costs nothing.',
      },
    ],
    working: [
      'Lift is the height at which the water breaks free above the pool. Here it does not: 0.',
    ],
  };
};

/** Whole circuits. */
export const bank = { scaleSystem, scaleWithLift, twoEqualLines, whereLift } satisfies QuestionBank;
