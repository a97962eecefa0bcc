import { poolVolume } from '#core/pool/poolVolume.ts';
import { filteredShare, turnoverTime } from '#core/water/mixing.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';

const volumeOfPool: QuestionMaker = (draw, units) => {
  const inUs = units.preset === 'us';
  const unit = inUs ? 'ft' : 'm';
  const [long, wide, shallow, deep] = inUs
    ? draw.pick([
        [32, 16, 3, 8],
        [36, 18, 3.5, 8.5],
        [30, 15, 3, 7],
      ] as const)
    : draw.pick([
        [10, 5, 1, 2.4],
        [8, 4, 1, 2],
        [12, 6, 1.2, 2.6],
      ] as const);
  const metres = (length: number) => toSI('length', length, unit);
  const answer = poolVolume({
    outline: { kind: 'rectangle', length: metres(long), width: metres(wide) },
    depth: { kind: 'sloped', first: metres(shallow), second: metres(deep) },
  });
  const mean = (shallow + deep) / 2;
  const part = (depth: number) => answer * (depth / mean);
  const asTyped = `${long} × ${wide} × ${mean}`;
  const cubic = long * wide * mean;
  return {
    kind: 'number',
    prompt: `A pool is ${long} ${unit} long and ${wide} ${unit} wide. Its floor slopes evenly from ${shallow} ${unit} to ${deep} ${unit}. How much water does it hold?`,
    quantity: 'volume',
    answer,
    near: 0.02,
    slips: [
      {
        value: part(deep),
        says: 'That uses the deep end’s depth everywhere. Use the mean depth.',
      },
      {
        value: part(shallow),
        says: 'That uses the shallow end’s depth everywhere. Use the mean depth.',
      },
      {
        value: part(shallow + deep),
        says: 'That adds the two depths. The mean is half of their sum.',
      },
      ...(inUs
        ? [
            {
              value: toSI('volume', cubic, 'gal'),
              says: 'Those are cubic feet. A cubic foot holds 7.48 gallons.',
            },
          ]
        : []),
    ],
    working: [
      `Mean depth: (${shallow} + ${deep}) / 2 = ${mean} ${unit}.`,
      inUs
        ? `${asTyped} = ${cubic} cubic feet; ${cubic} × 7.4805 = ${format('volume', answer, units)}.`
        : `${asTyped} = ${format('volume', answer, units)}.`,
    ],
  };
};

const timeOfTurnover: QuestionMaker = (draw, units) => {
  const inUs = units.preset === 'us';
  const [volume, flow] = inUs
    ? draw
        .pick([
          [18_000, 50],
          [24_000, 50],
          [24_000, 40],
          [15_000, 25],
        ] as const)
        .map((amount, index) =>
          index === 0 ? toSI('volume', amount, 'gal') : toSI('flow', amount, 'gpm'),
        )
    : draw
        .pick([
          [60, 10],
          [80, 10],
          [90, 9],
          [48, 6],
        ] as const)
        .map((amount, index) => (index === 0 ? amount : toSI('flow', amount, 'm3/h')));
  if (volume === undefined || flow === undefined) throw new RangeError('a pair was drawn short.');
  const answer = turnoverTime(volume, flow);
  const hours = answer / 3600;
  return {
    kind: 'number',
    prompt: `A pool holds ${format('volume', volume, units)}. The pump moves ${format('flow', flow, units)}. How long does one turnover take?`,
    quantity: 'duration',
    answer,
    near: 0.02,
    slips: [
      {
        value: (24 / hours) * 3600,
        says: 'That is how many turnovers a day has, not how long one takes.',
      },
      {
        value: 3600 / hours,
        says: 'That is the flow divided by the volume: the wrong way up.',
      },
      ...(inUs
        ? [
            {
              value: answer * 60,
              says: 'Gallons divided by gallons a minute are minutes. Divide by 60 for hours.',
            },
          ]
        : []),
    ],
    working: [
      'Time of one turnover = volume / flow.',
      `${format('volume', volume, units)} / ${inUs ? `(60 × ${format('flow', flow, units)})` : format('flow', flow, units)} = ${format('duration', answer, units)}.`,
    ],
  };
};

const shareAfterTurnovers: QuestionMaker = (draw) => {
  const turnovers = draw.pick([1, 1.5, 2, 3] as const);
  const answer = filteredShare(turnovers);
  const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
  return {
    kind: 'number',
    prompt: `A pool mixes well. The pump has moved as much water as ${turnovers === 1 ? 'the pool holds' : `${turnovers} times what the pool holds`}. How much of the water has passed the filter at least once?`,
    quantity: 'share',
    answer,
    near: 0.015,
    slips: [
      {
        value: 1,
        says: 'That would need every drop to wait its turn. Some come round again while others have not been yet.',
      },
      {
        value: 1 - answer,
        says: 'That is the share that has not passed yet.',
      },
      ...(turnovers === 1
        ? []
        : [
            {
              value: filteredShare(1),
              says: 'That is the share after one turnover. Each further one takes 63 % of what was left.',
            },
          ]),
    ],
    working: [
      'What has never passed is e to the power of minus the turnovers. On a calculator: the turnovers, the +/− key, then eˣ.',
      `1 − e^−${turnovers} = ${percent(answer)}.`,
    ],
  };
};

const sameTurnovers: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'Two equal pools get two turnovers a day: one in 24 hours by a slow pump, one in 8 hours by a fast one. In which has more of the water passed the filter at the end of the day?',
  options: [
    {
      id: 'slow',
      label: 'In the slow one: its pump ran all day',
      right: false,
      says: 'Hours filter nothing by themselves. What counts is the water moved, and that was the same.',
    },
    {
      id: 'fast',
      label: 'In the fast one: it moves more water each hour',
      right: false,
      says: 'It moves more each hour, for fewer hours. In the end the water moved was the same.',
    },
    {
      id: 'same',
      label: 'The same share in both',
      right: true,
      says: 'Right: the share follows the turnovers alone. Energy, noise, skimming and standing hours are what differ.',
    },
    {
      id: 'all',
      label: 'In both all of it: two turnovers are plenty',
      right: false,
      says: 'Two turnovers leave about 14 % that has never passed.',
    },
  ],
  working: ['The share is 1 − e^−turnovers: 1 − e^−2 = 86 % in both.'],
});

/** Water in the pool, turnovers and mixing. */
export const bank = {
  volumeOfPool,
  timeOfTurnover,
  shareAfterTurnovers,
  sameTurnovers,
} satisfies QuestionBank;
