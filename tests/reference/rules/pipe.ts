import { minorLoss } from '#core/hydraulics/fittings.ts';
import { olderWall } from '#core/hydraulics/olderEditions.ts';
import {
  flowArea,
  flowAtReynolds,
  flowAtVelocity,
  meanVelocity,
  type PipeSize,
  pipeSizes,
  reynoldsNumber,
} from '#core/hydraulics/pipe.ts';
import {
  greatestFiltrationFlow,
  publishedVelocityLimits,
} from '#core/hydraulics/publishedLimits.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family } from '../rule.ts';
import {
  boreInputs,
  boreNeed,
  boreOf,
  pipeSizeOf,
  seriesOf,
  sizeInputs,
  viscosityInputs,
  viscosityOf,
} from './shared.ts';

function size(given: Given): PipeSize {
  const found = pipeSizeOf(given);
  if (found === undefined) throw new NotUnderstood('no size of pipe is named');
  return found;
}

/** Two standards print other walls for the same size; only words tell which is meant. */
function isOlderStandard(given: Given): boolean {
  const standard = given.has('standard') ? given.text('standard') : '';
  if (/d1785|1452/.test(standard)) return false;
  if (standard !== '' && !/8062|older/.test(standard)) {
    throw new NotUnderstood(`the standard ${standard} is not in the table`);
  }
  return standard !== '' || /older standard|to DIN 8062/i.test(given.what);
}

function wall(given: Given): number {
  const { wall: present, series, nominalMillimetres } = size(given);
  const isMetric = series === 'pn10' || series === 'pn16';
  if (!isMetric || nominalMillimetres === undefined || !isOlderStandard(given)) return present;
  return olderWall(nominalMillimetres, series);
}

const boreOfSize = (given: Given): number => size(given).outsideDiameter - 2 * wall(given);

function flow(given: Given): number {
  const bore = boreOf(given);
  if (given.has('velocity')) return flowAtVelocity(given.number('velocity'), bore);
  return flowAtReynolds(given.number('reynolds'), bore, viscosityOf(given));
}

/** Nominal size of the smallest pipe of a series that carries a flow below a velocity. */
function smallestSize(given: Given): number {
  const series = given.has('schedule')
    ? `sch${given.text('schedule')}`
    : seriesOf(given.text('pn'));
  const wide = pipeSizes
    .filter((each) => each.series === series)
    .filter(({ bore }) => meanVelocity(given.number('flow'), bore) <= given.number('velocity'))
    .toSorted((one, other) => one.bore - other.bore);
  const [least] = wide;
  if (least === undefined) throw new NotUnderstood('no size of the series is wide enough');
  const { nominalInches, nominalMillimetres = 0 } = least;
  return nominalInches === undefined ? nominalMillimetres / 1000 : nominalInches * 0.0254;
}

const sectionOf = (text: string): string => text.replace(/\s+/g, '');

/** A title with or without its year. */
const isTitle = (full: string, short: string): boolean =>
  full === short || full.replace(/ \d{4}$/, '') === short;

function publishedLimit(given: Given): number {
  const document = given.text('document');
  const line = given.text('line').replace(/ (line|side|pipe|piping)$/, '');
  const section = given.has('section') ? sectionOf(given.text('section')) : undefined;
  const found = publishedVelocityLimits.find(
    (limit) =>
      isTitle(limit.document.toLowerCase(), document) &&
      limit.line === line &&
      (section === undefined || sectionOf(limit.section.toLowerCase()) === section),
  );
  if (found === undefined) throw new NotUnderstood('the document or its line is not in the table');
  return found.velocity;
}

const boreInWall = (given: Given): number =>
  given.number('outsideDiameter') - 2 * given.number('wall');

export const pipeDimensionsFamily: Family = {
  name: 'pipe dimensions',
  quantity: /diameter|wall|bore|dimension/i,
  rules: [
    {
      what: 'dimensions of a size of pipe',
      needs: ['nominal|outsideDiameter', 'schedule|pn'],
      takes: [...sizeInputs, 'standard'],
      gives: {
        outsideDiameter: (given) => size(given).outsideDiameter,
        wall,
        bore: boreOfSize,
        area: (given) => flowArea(boreOfSize(given)),
        contents: (given) => flowArea(boreOfSize(given)),
        sdr: (given) => size(given).outsideDiameter / wall(given),
      },
    },
    {
      what: 'water in a length of pipe',
      needs: [boreNeed, 'length'],
      takes: [...boreInputs],
      gives: { volume: (given) => flowArea(boreOf(given)) * given.number('length') },
    },
    {
      what: 'area of a bore',
      needs: ['bore'],
      gives: {
        area: (given) => flowArea(given.number('bore')),
        contents: (given) => flowArea(given.number('bore')),
      },
    },
    {
      what: 'bore from outside diameter and wall',
      needs: ['outsideDiameter', 'wall'],
      gives: {
        bore: boreInWall,
        area: (given) => flowArea(boreInWall(given)),
        contents: (given) => flowArea(boreInWall(given)),
        sdr: (given) => given.number('outsideDiameter') / given.number('wall'),
      },
    },
  ],
};

export const velocityFamily: Family = {
  name: 'velocity',
  quantity: /velocity|speed of water|mean velocity/i,
  rules: [
    {
      what: 'velocity of a flow',
      needs: ['flow', boreNeed],
      takes: [...boreInputs, ...viscosityInputs],
      gives: {
        velocity: (given) => meanVelocity(given.number('flow'), boreOf(given)),
        reynolds: (given) => {
          const bore = boreOf(given);
          const velocity = meanVelocity(given.number('flow'), bore);
          return reynoldsNumber(velocity, bore, viscosityOf(given));
        },
      },
    },
    {
      what: 'flow at a velocity',
      needs: ['velocity', boreNeed],
      takes: [...boreInputs],
      gives: { flow },
    },
    {
      what: 'Reynolds number at a velocity',
      needs: ['velocity', boreNeed],
      takes: [...boreInputs, ...viscosityInputs],
      gives: {
        reynolds: (given) =>
          reynoldsNumber(given.number('velocity'), boreOf(given), viscosityOf(given)),
      },
    },
    {
      what: 'flow at a Reynolds number',
      needs: ['reynolds', boreNeed],
      takes: [...boreInputs, ...viscosityInputs],
      gives: {
        flow,
        velocity: (given) => meanVelocity(flow(given), boreOf(given)),
      },
    },
    {
      what: 'velocity head',
      needs: ['velocity'],
      gives: { velocityHead: (given) => minorLoss(1, given.number('velocity')) },
    },
    {
      what: 'velocity head of a flow',
      needs: ['flow', boreNeed],
      takes: [...boreInputs],
      gives: {
        velocityHead: (given) => minorLoss(1, meanVelocity(given.number('flow'), boreOf(given))),
      },
    },
    {
      what: 'time through a pipe',
      needs: ['flow', boreNeed, 'length'],
      takes: [...boreInputs],
      gives: {
        time: (given) => given.number('length') / meanVelocity(given.number('flow'), boreOf(given)),
      },
    },
    {
      what: 'smallest size under a velocity',
      needs: ['flow', 'velocity', 'schedule|pn'],
      gives: { nominal: smallestSize, outsideDiameter: smallestSize },
    },
    {
      what: 'published velocity limit',
      needs: ['document', 'line'],
      takes: ['section'],
      gives: { velocity: publishedLimit },
    },
    {
      what: 'greatest filtration flow for a volume',
      needs: ['volume'],
      gives: { flow: (given) => greatestFiltrationFlow(given.number('volume')) },
      ownFamilyOnly: true,
    },
  ],
};
