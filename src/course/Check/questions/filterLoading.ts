import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { filterFactor } from '#core/hydraulics/equipment.ts';
import { affinityHead } from '#core/pump/pump.ts';
import type { QuestionBank, QuestionMaker } from '#course/Check/question.ts';
import { toSI } from '#units/convert.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';

/** A pressure in round numbers of the reader's own system. */
const roundPressure = (preset: 'us' | 'metric', psi: number, kilopascals: number) =>
  preset === 'us' ? toSI('pressure', psi, 'psi') : toSI('pressure', kilopascals, 'kPa');

/** A head in round numbers of the reader's own system. */
const roundHead = (preset: 'us' | 'metric', feet: number, metres: number) =>
  preset === 'us' ? toSI('head', feet, 'ft') : toSI('head', metres, 'm');

const riseAtOtherSpeed: QuestionMaker = (draw, units) => {
  const [from, to] = draw.pick([
    [3000, 1500],
    [3450, 1725],
    [2400, 1200],
    [3000, 1000],
  ] as const);
  const [psi, kilopascals] = draw.pick([
    [8, 56],
    [10, 70],
    [6, 42],
  ] as const);
  const rise = roundPressure(units.preset, psi, kilopascals);
  const ratio = to / from;
  const shownRatio = Number(ratio.toFixed(4));
  // Pressure is a head, so it takes the law of the head.
  const answer = affinityHead(rise, from, to);
  return {
    kind: 'number',
    prompt: `At ${from} rpm the same dirt raises a filter gauge by ${format('pressure', rise, units)}. About how much would it raise it at ${to} rpm, by the affinity laws?`,
    quantity: 'pressure',
    answer,
    near: 0.03,
    slips: [
      {
        value: rise,
        says: 'That is the rise at the fast speed. The gauge shows a loss, and a loss falls with the flow.',
      },
      {
        value: rise * ratio,
        says: 'That goes with the speed, as flow does. A pressure goes with its square.',
      },
      { value: rise * ratio ** 3, says: 'The cube is for power. A pressure goes with the square.' },
    ],
    working: [
      `Speed ratio: ${to} / ${from} = ${shownRatio}.`,
      `Pressure goes with its square: ${format('pressure', rise, units)} × ${shownRatio}² = ${format('pressure', rise * shownRatio ** 2, units, { digits: 3 })}.`,
    ],
  };
};

const headHalfLoaded: QuestionMaker = (draw, units) => {
  const [cleanFeet, cleanMetres, dirtyFeet, dirtyMetres] = draw.pick([
    [4, 1.2, 24, 7.2],
    [3, 1, 27, 9],
    [5, 1.5, 25, 7.5],
  ] as const);
  const loading = draw.pick([0.25, 0.5, 0.75] as const);
  const clean = roundHead(units.preset, cleanFeet, cleanMetres);
  const dirty = roundHead(units.preset, dirtyFeet, dirtyMetres);
  const answer = clean * filterFactor({ cleanHead: clean, dirtyHead: dirty }, loading);
  const share = `${loading * 100}\u00a0%`;
  const shown = (head: number) => format('head', head, units);
  return {
    kind: 'number',
    prompt: `A filter loses ${format('head', clean, units)} clean and ${format('head', dirty, units)} when it is due, both at the same flow. Take a straight line between. What does it lose at that flow when it is ${share} of the way?`,
    quantity: 'head',
    answer,
    near: 0.02,
    slips: [
      {
        value: dirty * loading,
        says: 'That counts from nothing. The line begins at the clean head.',
      },
      {
        value: (dirty - clean) * loading,
        says: 'That is only what the dirt has added. The clean filter loses head too.',
      },
      {
        value: clean + dirty * loading,
        says: 'Only the difference between dirty and clean is added, not the whole dirty head.',
      },
    ],
    working: [
      `Added by dirt when due: ${shown(dirty)} − ${shown(clean)} = ${shown(dirty - clean)}. Of that ${share}.`,
      `With the clean head: ${shown(clean)} + ${loading} × ${shown(dirty - clean)} = ${format('head', answer, units, { digits: 3 })}.`,
    ],
  };
};

const priceOfHolding: QuestionMaker = (draw) => {
  const [clean, now] = draw.pick([
    [310, 630],
    [250, 450],
    [400, 700],
  ] as const);
  const hours = draw.pick([8, 10, 12] as const);
  const price = draw.pick([0.2, 0.25, 0.3] as const);
  const days = 7;
  const energy = (now - clean) * hours * days * 3600;
  const answer = (energy / joulesPerKilowattHour) * price;
  const kilowattHours = energy / joulesPerKilowattHour;
  return {
    kind: 'number',
    prompt: `To hold the flow of the clean filter, a pump draws ${now} W where it drew ${clean} W, for ${hours} h a day. A kWh costs ${formatMoney(price, '$')}. What does that cost in a week, beyond the clean filter?`,
    quantity: null,
    unit: '$',
    answer,
    near: 0.02,
    slips: [
      {
        value: (answer * now) / (now - clean),
        says: 'That is the pump’s whole bill. The question is what the dirt adds.',
      },
      { value: answer / days, says: 'That is one day.' },
    ],
    working: [
      `The dirt adds ${now} − ${clean} = ${now - clean} W.`,
      `Over a week: ${(now - clean) / 1000} kW × ${hours} h × 7 = ${kilowattHours.toFixed(2)} kWh.`,
      `${kilowattHours.toFixed(2)} kWh × ${formatMoney(price, '$')} = ${formatMoney(answer, '$')}.`,
    ],
  };
};

const quietGauge: QuestionMaker = () => ({
  kind: 'choice',
  prompt:
    'A pump has run at 1200 rpm for two months since the filter was cleaned. The filter gauge has gone up by 1 psi (7 kPa) only. What does that say?',
  options: [
    {
      id: 'clean',
      label: 'The filter is still clean: the sign is 10 psi (70 kPa)',
      right: false,
      says: 'That sign comes from pumps that run fast. At a third of the speed the same dirt shows about a ninth of the rise.',
    },
    {
      id: 'unsure',
      label: 'Little by itself: run it for a minute at the speed of your notes, and compare',
      right: true,
      says: 'Right. Compare at one speed, always the same and a fast one, where the rise can be read.',
    },
    {
      id: 'broken',
      label: 'The gauge is broken',
      right: false,
      says: 'It may be, but a small rise at a low speed is just what a sound gauge shows.',
    },
    {
      id: 'flow',
      label: 'The flow has hardly changed either',
      right: false,
      says: 'It may have fallen by a third. At low speed a filter is a large part of the loss, and the flow gives way to it.',
    },
  ],
  working: ['The rise goes about with the square of the speed: (1200 / 3450)² is about an eighth.'],
});

/** A filter that loads, and what its gauge says. */
export const bank = {
  riseAtOtherSpeed,
  headHalfLoaded,
  priceOfHolding,
  quietGauge,
} satisfies QuestionBank;
