import { flowAtVelocity, meanVelocity, type PipeSize, pipeSize } from '#core/hydraulics/pipe.ts';
import { roundFlow } from '#course/Check/drawn.ts';
import { asPrinted } from '#course/Check/printed.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';

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
    prompt: `A line of ${pipe.label}, bore ${format('diameter', pipe.bore, units)}, has a limit of ${format('velocity', velocity, units)}. How much flow is that?`,
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
        says: 'That uses the size in the name as the bore. The bore is the outside diameter less two walls.',
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
  const flow = roundFlow(
    units,
    draw.pick([40, 50, 60, 70] as const),
    draw.pick([9, 12, 15] as const),
  );
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

/** Sizes whose two walls take enough of the outside diameter to be missed. */
const walled = ['sch80-2', 'sch80-1.5', 'sch40-1.5', 'pn16-63', 'sch80-1'] as const;

const boreFromWall: QuestionMaker = (draw, units) => {
  const { label, outsideDiameter, wall, bore } = pipeSize(draw.pick(walled));
  const shown = (value: number) => format('diameter', value, units, { digits: 4 });
  return {
    kind: 'number',
    prompt: `A caliper reads ${shown(outsideDiameter)} across the outside of ${label}. The wall is ${shown(wall)} thick. What is the bore?`,
    quantity: 'diameter',
    answer: bore,
    near: 0.01,
    slips: [
      {
        value: outsideDiameter - wall,
        says: 'That takes off one wall. The pipe has a wall on either side: take off two.',
      },
      {
        value: outsideDiameter,
        says: 'That is the outside. The water only has what is left between the walls.',
      },
    ],
    working: [
      'Bore = outside diameter − 2 × wall.',
      `${shown(outsideDiameter)} − 2 × ${shown(wall)} = ${shown(bore)}.`,
    ],
  };
};

const intoNarrower: QuestionMaker = (draw, units) => {
  const [wide, narrow] = draw
    .pick([
      ['sch40-2.5', 'sch40-1.5'],
      ['sch40-2', 'sch40-1.5'],
      ['sch40-3', 'sch40-2'],
      ['pn10-75', 'pn10-50'],
    ] as const)
    .map(pipeSize) as [PipeSize, PipeSize];
  const before = toSI('velocity', draw.pick([3, 4, 5] as const), 'ft/s');
  const ratio = wide.bore / narrow.bore;
  const start = asPrinted('velocity', before, units);
  const answer = before * ratio ** 2;
  return {
    kind: 'number',
    prompt: `Water runs at ${format('velocity', before, units)} in ${wide.label}, bore ${format('diameter', wide.bore, units)}, and all of it goes on in ${narrow.label}, bore ${format('diameter', narrow.bore, units)}. How fast does it run there?`,
    quantity: 'velocity',
    answer,
    near: 0.02,
    slips: [
      {
        value: before,
        says: 'The flow stays the same, and the velocity does not: the same water must pass a smaller area.',
      },
      {
        value: before * ratio,
        says: 'That goes by the bore. The area goes by the bore squared.',
      },
      {
        value: before / ratio ** 2,
        says: 'That is the wrong way round: where it is narrower the water runs faster.',
      },
    ],
    working: [
      'The flow is the same, so velocity goes the other way from area: by the bores’ ratio squared.',
      `Ratio: ${ratio.toFixed(3)}; squared: ${(ratio ** 2).toFixed(3)}.`,
      `${start.text} × ${(ratio ** 2).toFixed(3)} = ${format('velocity', start.value * Number((ratio ** 2).toFixed(3)), units, { digits: 3 })}.`,
    ],
  };
};

/** Flow, velocity and bore. */
export const bank = {
  flowAtLimit,
  velocityOfFlow,
  atTheLimit,
  boreFromWall,
  intoNarrower,
} satisfies QuestionBank;
