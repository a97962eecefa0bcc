import { limitsFor } from '#core/day/limits.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { water } from '#core/water/water.ts';
import { roundFlow } from '#course/Check/drawn.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';

/** Covers and filters set their limits whatever the pipes are. */
const noPipes: Circuit = { suction: [], discharge: [], staticHead: 0, water: water(27) };

const coverStop: QuestionMaker = (draw, units) => {
  const [count, us, metric] = draw.pick([
    [2, 60, 14],
    [2, 84, 18],
    [3, 50, 11],
    [3, 36, 8],
  ] as const);
  const marked = roundFlow(units, us, metric);
  const [limit] = limitsFor({
    circuit: noPipes,
    coversBalanced: true,
    suctionCovers: Array.from({ length: count }, (_, place) => ({
      id: String(place),
      markedFlow: marked,
    })),
  });
  const answer = limit?.greatestFlow ?? 0;
  const shown = format('flow', marked, units);
  const words = { 2: 'Two', 3: 'Three' }[count];
  return {
    kind: 'number',
    prompt: `${words} suction covers on a balanced tee (equal pipes, tee midway, no valve between) feed the pump, each marked ${shown}. What is the greatest flow that any plan may use?`,
    quantity: 'flow',
    answer,
    near: 0.02,
    slips: [
      {
        value: count * marked,
        says: 'That adds all the marks. Take one cover as blocked: the others then pass everything.',
      },
      ...(count === 3
        ? [
            {
              value: marked,
              says: 'One is taken as blocked, not two: the open ones still share the flow.',
            },
          ]
        : [
            {
              value: marked / 2,
              says: 'The one that stays open may pass what is marked on it, all of it.',
            },
          ]),
    ],
    working: [
      `Take one cover as blocked: ${count - 1} stay open.`,
      `${count - 1} × ${shown} = ${format('flow', answer, units, { digits: 3 })}. It is a hard stop.`,
    ],
  };
};

const flowForAll: QuestionMaker = (draw, units) => {
  const [cell, heater, skimmer] = draw
    .pick([
      [25, 40, 48, 6, 9, 11],
      [22, 36, 52, 5, 8, 12],
      [28, 45, 54, 6, 10, 12],
    ] as const)
    .reduce<number[]>((all, _, place, list) => {
      if (place < 3) all.push(roundFlow(units, list[place] ?? 0, list[place + 3] ?? 0));
      return all;
    }, []) as [number, number, number];
  const show = (flow: number) => format('flow', flow, units);
  return {
    kind: 'number',
    prompt: `All the water passes salt cell, heater and skimmer one after the other. The cell needs at least ${show(cell)}, the heater ${show(heater)}, the skimmer ${show(skimmer)}. Which flow serves all three at once?`,
    quantity: 'flow',
    answer: skimmer,
    near: 0.02,
    slips: [
      {
        value: cell + heater + skimmer,
        says: 'In one line the same water serves each in turn. The needs do not add up; the greatest decides.',
      },
      { value: cell, says: 'That serves the cell alone. The greatest need decides.' },
      { value: heater, says: 'That leaves the skimmer short. The greatest need decides.' },
    ],
    working: [
      'The same water passes all three, so the greatest of the least flows decides.',
      `That is ${show(skimmer)}.`,
    ],
  };
};

const filterFlow: QuestionMaker = (draw, units) => {
  const inUs = units.preset === 'us';
  const area = inUs
    ? toSI('area', draw.pick([2.5, 3, 4] as const), 'ft2')
    : draw.pick([0.25, 0.3, 0.4] as const);
  const rate = inUs
    ? toSI('filterRate', draw.pick([15, 20] as const), 'gpm/ft2')
    : toSI('filterRate', draw.pick([30, 40] as const), 'm/h');
  const [limit] = limitsFor({ circuit: noPipes, filterRate: rate, filters: [{ area }] });
  const answer = limit?.greatestFlow ?? 0;
  const [shownArea, shownRate] = [format('area', area, units), format('filterRate', rate, units)];
  const numbers = inUs
    ? { area: area / 0.3048 ** 2, rate: answer / area / toSI('filterRate', 1, 'gpm/ft2') }
    : { area, rate: rate * 3600 };
  return {
    kind: 'number',
    prompt: `The label of a sand filter says ${shownArea} of area and ${shownRate} at the most. How much flow can it take?`,
    quantity: 'flow',
    answer,
    near: 0.02,
    slips: [
      {
        value: roundFlow(units, numbers.rate, numbers.rate),
        says: 'That is the flow for one unit of area. Multiply by the area.',
      },
      {
        value: roundFlow(units, numbers.rate / numbers.area, numbers.rate / numbers.area),
        says: 'The rate is flow for each unit of area, so multiply; do not divide.',
      },
    ],
    working: [`${shownArea} × ${shownRate} = ${format('flow', answer, units, { digits: 3 })}.`],
  };
};

const pastTheCovers: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'A quick-clean program wants 70 gpm (16 m³/h). With one of two suction covers blocked, the other is marked 60 gpm (13.6 m³/h). Both covers are clean today. What do you do?',
  options: [
    {
      id: 'short',
      label: 'Run it at 70 gpm, but only for half an hour',
      right: false,
      says: 'Entrapment takes a second, not half an hour. There is no short time past a hard stop.',
    },
    {
      id: 'both',
      label: 'Run it: two open covers together take 120 gpm',
      right: false,
      says: 'Until one is covered by a towel or a swimmer. Then all 70 gpm pull at the other.',
    },
    {
      id: 'watch',
      label: 'Run it while somebody watches the pool',
      right: false,
      says: 'Nobody can pull a person off a blocked outlet against the pump. Whoever watches must cut the pump first, and seconds count.',
    },
    {
      id: 'never',
      label: 'Set the program below the stop, or have the outlets changed first',
      right: true,
      says: 'Right. No speed may pass it: not a plan’s, not priming, quick clean or freeze protection.',
    },
  ],
  working: [
    'With one cover blocked the other passes everything: 70 gpm is above the 60 marked on it.',
  ],
});

/** What each thing on the pad needs, and the limits no plan may cross. */
export const bank = {
  coverStop,
  flowForAll,
  filterFlow,
  pastTheCovers,
} satisfies QuestionBank;
