import { flowAtVelocity, meanVelocity, pipeSize } from '#core/pipe.ts';
import { affinityFlow, affinityHead, affinityPower } from '#core/pump.ts';
import type { UnitChoice } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';
import type { NumberQuestion, QuestionMaker } from './question.ts';

/** Round numbers a reader of either unit system would meet. */
function round(units: UnitChoice, us: number, metric: number): number {
  return units.preset === 'us' ? toSI('flow', us, 'gpm') : toSI('flow', metric, 'm3/h');
}

const rpm = (speed: number) => `${speed} rpm`;

/** A speed pair with a ratio easy to work by hand. */
const speedPairs = [
  [3000, 1500],
  [2400, 1200],
  [3450, 1725],
  [2800, 1400],
] as const;

const flowAtLimit: QuestionMaker = (draw, units) => {
  const [asked, other] = draw.pick([
    ['sch40-2', 'sch80-2'],
    ['sch80-2', 'sch40-2'],
    ['sch40-3', 'sch80-3'],
    ['sch40-2.5', 'sch80-2.5'],
  ] as const);
  const velocity = toSI('velocity', draw.pick([6, 8] as const), 'ft/s');
  const pipe = pipeSize(asked);
  const answer = flowAtVelocity(velocity, pipe.bore);
  const nominal = toSI('diameter', Number(pipe.nominalInches), 'in');
  return {
    kind: 'number',
    prompt: `A line of ${pipe.label}, bore ${format('diameter', pipe.bore, units)}, may run at ${format('velocity', velocity, units)} at the most. How much flow is that?`,
    quantity: 'flow',
    answer,
    near: 0.02,
    slips: [
      {
        value: flowAtVelocity(velocity, pipeSize(other).bore),
        says: `That is the flow of ${pipeSize(other).label}. The name is the same, the bore is not: read the schedule on the pipe.`,
      },
      {
        value: flowAtVelocity(velocity, nominal),
        says: 'That takes the size in the name for the bore. The name is only a name; the bore is the outside diameter less two walls.',
      },
      { value: answer * 4, says: 'That uses the whole diameter as if it were the radius.' },
      {
        value: (velocity * Math.PI * pipe.bore) / 4,
        says: 'The area grows with the bore squared: multiply by the bore twice.',
      },
    ],
    working: [
      'Area = π/4 × bore × bore.',
      `Flow = velocity × area = ${format('flow', answer, units, { digits: 3 })}.`,
    ],
  };
};

const velocityOfFlow: QuestionMaker = (draw, units) => {
  const pipe = pipeSize(draw.pick(['sch40-2', 'sch80-2', 'pn10-63', 'sch40-1.5'] as const));
  const flow = round(units, draw.pick([40, 50, 60, 70] as const), draw.pick([9, 12, 15] as const));
  const answer = meanVelocity(flow, pipe.bore);
  return {
    kind: 'number',
    prompt: `${format('flow', flow, units)} runs through ${pipe.label}, bore ${format('diameter', pipe.bore, units)}. How fast does the water move?`,
    quantity: 'velocity',
    answer,
    near: 0.02,
    slips: [
      { value: answer / 4, says: 'That uses the whole diameter as if it were the radius.' },
      {
        value: answer * pipe.bore,
        says: 'The bore goes in squared: divide by it twice.',
      },
    ],
    working: [
      'Velocity = flow / area, and area = π/4 × bore × bore.',
      `That gives ${format('velocity', answer, units, { digits: 3 })}.`,
    ],
  };
};

const atTheLimit: QuestionMaker = () => ({
  kind: 'choice',
  prompt: 'What happens to the water when it reaches the velocity limit of its pipe?',
  options: [
    {
      id: 'turbulent',
      label: 'It turns turbulent',
      right: false,
      says: 'It has been turbulent long before: in a 2 in pipe from about 3 gpm.',
    },
    {
      id: 'nothing',
      label: 'Nothing sudden; loss and noise just keep rising',
      right: true,
      says: 'Right. The limit is a choice about cost, noise, wear and surge, not a cliff.',
    },
    {
      id: 'stops',
      label: 'The pipe passes no more than that',
      right: false,
      says: 'It passes more, at a price: the head it takes rises about as flow to the power 1.8.',
    },
    {
      id: 'sound',
      label: 'Nothing at all, so the limit can be ignored',
      right: false,
      says: 'Nothing sudden happens, but loss, noise and surge do grow; and codes and the flow marked on suction covers still bind.',
    },
  ],
  working: ['Velocity, loss and noise all rise smoothly through the limit.'],
});

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
      flow: round(units, draw.pick([60, 72, 80] as const), draw.pick([14, 16, 18] as const)),
      head: toSI('head', draw.pick([40, 48, 60] as const), 'ft'),
      power: draw.pick([1200, 1600, 2000] as const),
    }[quantity];
    const ratio = to / from;
    const answer = law(before, from, to);
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
        `${rule}: ${format(quantity, before, units)} × ${Array(power).fill(ratio).join(' × ')} = ${format(quantity, answer, units, { digits: 3 })}.`,
      ],
    };
  };
}

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
      says: 'That takes power as the square of speed: a quarter for twice the time. Power follows the cube.',
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

/** Every self-check of the course, by the name a lesson calls it. */
export const questions = {
  flowAtLimit,
  velocityOfFlow,
  atTheLimit,
  affinityFlow: affinity('flow', affinityFlow),
  affinityHead: affinity('head', affinityHead),
  affinityPower: affinity('power', affinityPower),
  sameWaterSlower,
} as const satisfies Record<string, QuestionMaker>;

export type QuestionName = keyof typeof questions;
