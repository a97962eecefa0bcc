import { affinityFlow, affinityHead, affinityPower } from '#core/pump/pump.ts';
import { roundFlow } from '#course/Check/drawn.ts';
import { asPrinted } from '#course/Check/printed.ts';
import type { NumberQuestion, QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';

const rpm = (speed: number) => `${speed} rpm`;

/** A speed pair with a ratio easy to work by hand. */
const speedPairs = [
  [3000, 1500],
  [2400, 1200],
  [3450, 1725],
  [2800, 1400],
] as const;

/** The three laws differ only in the power of the speed ratio and in what it is called. */
function affinity(
  quantity: 'flow' | 'head' | 'power',
  law: (value: number, from: number, to: number) => number,
): QuestionMaker {
  const power = { flow: 1, head: 2, power: 3 }[quantity];
  const rule = {
    flow: 'Flow follows the speed',
    head: 'Head follows the square of the speed',
    power: 'Shaft power follows the cube of the speed',
  }[quantity];
  return (draw, units): NumberQuestion => {
    const [from, to] = draw.pick(speedPairs);
    const before = {
      flow: roundFlow(units, draw.pick([60, 72, 80] as const), draw.pick([14, 16, 18] as const)),
      head: toSI('head', draw.pick([40, 48, 60] as const), 'ft'),
      power: draw.pick([1200, 1600, 2000] as const),
    }[quantity];
    const ratio = to / from;
    const answer = law(before, from, to);
    const start = asPrinted(quantity, before, units);
    const scaled = (n: number) => before * ratio ** n;
    const thoughts: Record<number, string> = {
      0: 'That is what it was before. A slower pump gives less of everything.',
      1: `That is the rule for flow. ${rule}.`,
      2: `That is the rule for head. ${rule}.`,
      3: `That is the rule for power. ${rule}.`,
    };
    return {
      kind: 'number',
      prompt: `At ${rpm(from)} the pump gives a ${quantity === 'power' ? 'shaft power' : quantity} of ${format(quantity, before, units)}. In the same pipes, with no lift, what is it at ${rpm(to)}?`,
      quantity,
      answer,
      near: 0.03,
      slips: [0, 1, 2, 3]
        .filter((n) => n !== power)
        .map((n) => ({ value: scaled(n), says: thoughts[n] ?? '' })),
      working: [
        `Speed ratio: ${to} / ${from} = ${ratio}.`,
        `${rule}: ${start.text} × ${Array(power).fill(ratio).join(' × ')} = ${format(quantity, law(start.value, from, to), units, { digits: 3 })}.`,
      ],
    };
  };
}

const speedForFlow: QuestionMaker = (draw, units) => {
  const from = draw.pick([2400, 3000, 3450] as const);
  const [us, metric, wantedUs, wantedMetric] = draw.pick([
    [60, 15, 40, 10],
    [80, 18, 50, 12],
    [70, 16, 42, 10],
  ] as const);
  const flow = roundFlow(units, us, metric);
  const wanted = roundFlow(units, wantedUs, wantedMetric);
  const share = wanted / flow;
  const answer = from * share;
  return {
    kind: 'number',
    prompt: `At ${rpm(from)} the pump gives ${format('flow', flow, units)}. The pool needs ${format('flow', wanted, units)}. In the same pipes, with no lift, at which speed does it give that?`,
    quantity: 'speed',
    answer,
    near: 0.02,
    slips: [
      { value: from, says: 'That is the speed it runs at now. It gives more than is needed.' },
      {
        value: from / share,
        says: 'That is the ratio upside down. Less flow takes less speed.',
      },
      {
        value: from * Math.sqrt(share),
        says: 'That is the rule for head turned round. Flow follows the speed itself.',
      },
      {
        value: from * Math.cbrt(share),
        says: 'That is the rule for power turned round. Flow follows the speed itself.',
      },
    ],
    working: [
      `Flow follows the speed, so the speed follows the flow wanted: ${from} × ${format('flow', wanted, units)} / ${format('flow', flow, units)} = ${format('speed', answer, units)}.`,
    ],
  };
};

const sameWaterSlower: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'A pump runs at half the speed for twice the time, so the pool gets the same water. By the affinity laws, how much energy does that take, against before?',
  options: [
    {
      id: 'same',
      label: 'The same: half the speed, twice the time',
      right: false,
      says: 'That would be so if power followed the speed. It follows the cube: an eighth of the power for twice the time.',
    },
    {
      id: 'half',
      label: 'Half',
      right: false,
      says: 'That has power follow the square of speed: a quarter for twice the time. It follows the cube.',
    },
    {
      id: 'quarter',
      label: 'A quarter',
      right: true,
      says: 'Right: an eighth of the power for twice the time. A fixed draw makes it a little more.',
    },
    {
      id: 'eighth',
      label: 'An eighth',
      right: false,
      says: 'An eighth is the power. It runs for twice as long, so the energy is twice that eighth.',
    },
  ],
  working: ['Power: ½ × ½ × ½ = ⅛. Time: × 2. Energy: ⅛ × 2 = ¼.'],
});

/** The affinity laws. */
export const bank = {
  affinityFlow: affinity('flow', affinityFlow),
  affinityHead: affinity('head', affinityHead),
  affinityPower: affinity('power', affinityPower),
  sameWaterSlower,
  speedForFlow,
} satisfies QuestionBank;
