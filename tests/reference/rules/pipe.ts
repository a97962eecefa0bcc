import { olderWall } from '#core/olderEditions.ts';
import {
  flowArea,
  flowAtReynolds,
  flowAtVelocity,
  meanVelocity,
  type PipeSize,
  reynoldsNumber,
} from '#core/pipe.ts';
import { greatestFiltrationFlow, publishedVelocityLimits } from '#core/publishedLimits.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family } from '../rule.ts';
import {
  boreInputs,
  boreNeed,
  boreOf,
  pipeSizeOf,
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

const sectionOf = (text: string): string => text.replace(/\s+/g, '');

function publishedLimit(given: Given): number {
  const document = given.text('document');
  const line = given.text('line');
  const section = given.has('section') ? sectionOf(given.text('section')) : undefined;
  const found = publishedVelocityLimits.find(
    (limit) =>
      limit.document.toLowerCase() === document &&
      limit.line === line &&
      (section === undefined || sectionOf(limit.section.toLowerCase()) === section),
  );
  if (found === undefined) throw new NotUnderstood('the document or its line is not in the table');
  return found.velocity;
}

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
      },
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
      gives: { bore: (given) => given.number('outsideDiameter') - 2 * given.number('wall') },
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
