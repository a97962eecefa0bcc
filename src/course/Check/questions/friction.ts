import { darcyWeisbach, smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { flowArea, type PipeSize, pipeSize, reynoldsNumber } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import { roundFlow } from '#course/Check/drawn.ts';
import { asPrinted } from '#course/Check/printed.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import type { UnitChoice } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';
import { grouped } from '#units/numerals.ts';

const nu = water(27).kinematicViscosity;

function lossIn(pipe: PipeSize, flow: number, length: number): number {
  return darcyWeisbach({
    flow,
    bore: pipe.bore,
    length,
    roughness: smoothPlasticRoughness,
    kinematicViscosity: nu,
  });
}

/** A length in round numbers of the reader's own system [m]. */
const roundLength = (units: UnitChoice, feet: number, metres: number) =>
  units.preset === 'us' ? toSI('length', feet, 'ft') : metres;

const lossTwiceFlow: QuestionMaker = (draw, units) => {
  const pipe = pipeSize(draw.pick(['sch40-2', 'sch40-1.5', 'sch40-2.5', 'pn10-63'] as const));
  const flow = roundFlow(units, draw.pick([20, 25, 30] as const), draw.pick([5, 6, 7] as const));
  const before = lossIn(pipe, flow, roundLength(units, 100, 30));
  const answer = before * 2 ** 1.8;
  const start = asPrinted('head', before, units, { digits: 3 });
  const head = (value: number) => format('head', value, units, { digits: 3 });
  return {
    kind: 'number',
    prompt: `At ${format('flow', flow, units)} a run of ${pipe.label} loses ${head(before)}. Friction in smooth pipe goes about as the flow to the power 1.8. What does the run lose at twice the flow?`,
    quantity: 'head',
    answer,
    near: 0.04,
    slips: [
      {
        value: before * 2,
        says: 'Twice would be so if friction followed the flow. It rises much faster.',
      },
      {
        value: before * 4,
        says: 'That is the square. In smooth pipe the power is a little less: 1.8.',
      },
      {
        value: before * 1.8,
        says: 'The 1.8 is a power, not a factor: 2 to the power 1.8 is about 3.5.',
      },
    ],
    working: [
      '2 to the power 1.8 (calculator: 2, the key x^y, 1.8) is about 3.48.',
      `${start.text} × 3.48 = ${head(start.value * 3.48)}.`,
    ],
  };
};

const lossWiderBore: QuestionMaker = (draw, units) => {
  const [narrow, wide] = draw
    .pick([
      ['sch40-1.5', 'sch40-2'],
      ['sch40-2', 'sch40-2.5'],
      ['sch40-2', 'sch40-3'],
      ['pn10-50', 'pn10-63'],
    ] as const)
    .map(pipeSize) as [PipeSize, PipeSize];
  const flow = roundFlow(units, draw.pick([40, 45, 50] as const), draw.pick([9, 10, 11] as const));
  const length = roundLength(units, 100, 30);
  const before = lossIn(narrow, flow, length);
  const answer = lossIn(wide, flow, length);
  const ratio = narrow.bore / wide.bore;
  const start = asPrinted('head', before, units, { digits: 3 });
  const head = (value: number) => format('head', value, units, { digits: 3 });
  const bore = ({ bore: across }: PipeSize) => format('diameter', across, units);
  return {
    kind: 'number',
    prompt: `A run of ${narrow.label}, bore ${bore(narrow)}, loses ${head(before)} at ${format('flow', flow, units)}. You replace it with ${wide.label}, bore ${bore(wide)}. What does it lose at the same flow?`,
    quantity: 'head',
    answer,
    near: 0.05,
    slips: [
      {
        value: before * ratio,
        says: 'That goes by the bore. Friction falls with nearly its fifth power.',
      },
      {
        value: before * ratio ** 2,
        says: 'That goes by the area. The water is slower by that much, and the loss falls much further.',
      },
    ],
    working: [
      `Ratio of the bores: ${ratio.toFixed(3)}. At the same flow the loss goes about as its power 4.8: ${(ratio ** 4.8).toFixed(3)}.`,
      `${start.text} × ${(ratio ** 4.8).toFixed(3)} = ${head(start.value * Number((ratio ** 4.8).toFixed(3)))}; by the full law ${head(answer)}.`,
    ],
  };
};

const lossOverLength: QuestionMaker = (draw, units) => {
  const isUs = units.preset === 'us';
  const quoted = isUs ? toSI('length', 100, 'ft') : 100;
  const times = draw.pick([0.4, 0.6, 1.5, 1.75] as const);
  const per = isUs
    ? toSI('head', draw.pick([3, 4, 5, 6] as const), 'ft')
    : draw.pick([3, 4, 5, 6] as const);
  const length = quoted * times;
  const answer = per * times;
  const head = (value: number) => format('head', value, units, { digits: 3 });
  return {
    kind: 'number',
    prompt: `A table gives ${head(per)} of loss for each ${format('length', quoted, units, { digits: 3 })} of this pipe at your flow. The run is ${format('length', length, units, { digits: 3 })} long. What does it lose?`,
    quantity: 'head',
    answer,
    near: 0.02,
    slips: [
      { value: per, says: 'That is for the length of the table. Scale it to your own run.' },
      {
        value: per / times,
        says: 'Divided where it should be multiplied: a longer run loses more.',
      },
      {
        value: per * times ** 1.8,
        says: 'The power 1.8 is for flow. With length the loss grows evenly.',
      },
    ],
    working: ['With length, friction grows evenly.', `${head(per)} × ${times} = ${head(answer)}.`],
  };
};

const regimeAtPump: QuestionMaker = (draw, units) => {
  const pipe = pipeSize(draw.pick(['sch40-2', 'sch40-1.5', 'sch40-2.5'] as const));
  const flow = roundFlow(units, draw.pick([12, 15, 20] as const), draw.pick([3, 4, 5] as const));
  const reynolds = reynoldsNumber(flow / flowArea(pipe.bore), pipe.bore, nu);
  const shown = grouped(String(Number(reynolds.toPrecision(2))));
  return {
    kind: 'choice',
    prompt: `A pump on its slowest speed moves ${format('flow', flow, units)} of warm water through ${pipe.label}; the Reynolds number is about ${shown}. How does the water move?`,
    options: [
      {
        id: 'layered',
        label: 'In layers: the pump is slow',
        right: false,
        says: 'Slow for a pump is still fast for a pipe. Layers need a Reynolds number below about 2000.',
      },
      {
        id: 'either',
        label: 'Either way: you can’t tell',
        right: false,
        says: 'That is so between about 2000 and 4000. This is far above.',
      },
      {
        id: 'turbulent',
        label: 'Turbulent',
        right: true,
        says: 'Right: it is far above 4000. In pool pipes it nearly always is.',
      },
      {
        id: 'limit',
        label: 'In layers, until it reaches the velocity limit',
        right: false,
        says: 'The velocity limit has nothing to do with it: the Reynolds number decides.',
      },
    ],
    working: [`${shown} is above 4000, so the flow is turbulent.`],
  };
};

/** Friction in straight pipe. */
export const bank = {
  lossTwiceFlow,
  lossWiderBore,
  lossOverLength,
  regimeAtPump,
} satisfies QuestionBank;
