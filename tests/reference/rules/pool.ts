import {
  type Depth,
  meanDepth,
  outlineArea,
  type PoolShape,
  poolVolume,
  thumbCircleGallons,
  thumbKidneyArea,
} from '#core/pool/poolVolume.ts';
import { isObject } from '../caseFile.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family } from '../rule.ts';
import { outlineInputs, outlineOf, pairsInMetres, partOfWhole } from './poolOutline.ts';

const foot = 0.3048;
const gallon = 3.785411784e-3;

function stations(given: Given) {
  return pairsInMetres(given, 'stations').map(([distance, depth]) => ({ distance, depth }));
}

/** Two depths in whatever names; undefined where one depth or a profile is given. */
function twoDepths(given: Given): readonly [number, number] | undefined {
  if (given.has('shallowDepth')) return [given.number('shallowDepth'), given.number('deepDepth')];
  if (given.has('depth#1')) return [given.number('depth#1'), given.number('depth#2')];
  if (!given.has('depth') || !Array.isArray(given.value('depth'))) return undefined;
  const [first, second, ...more] = given.numbers('depth');
  if (first === undefined || second === undefined || more.length > 0)
    throw new NotUnderstood('the depths are not two');
  return [first, second];
}

function meanOfTwo(given: Given): number {
  const two = twoDepths(given);
  if (two === undefined) throw new NotUnderstood('only one depth is given');
  return (two[0] + two[1]) / 2;
}

const isAverage = (given: Given): boolean => /average|mean/i.test(given.what);

function depthOf(given: Given, isAlongLength: boolean): Depth {
  if (given.has('stations')) return { kind: 'stations', stations: stations(given) };
  const two = twoDepths(given);
  if (two === undefined) return { kind: 'uniform', depth: given.number('depth') };
  const [first, second] = two;
  return isAlongLength && !isAverage(given)
    ? { kind: 'sloped', first, second }
    : { kind: 'uniform', depth: (first + second) / 2 };
}

const shareOf = (given: Given): number =>
  given.has('shape') ? partOfWhole(given.text('shape'))[0] : 1;

/** Where the shape does not say which way the floor falls, the mean of two depths counts. */
function shapeOf(given: Given): PoolShape {
  const words = given.has('shape') ? given.text('shape') : '';
  const isAlongLength = !/^(half|semi|quarter|l\b)|triang|trapez|regular|gon$/.test(
    words === 'polygon' && !given.has('sides') ? '' : words,
  );
  return { outline: outlineOf(given), depth: depthOf(given, isAlongLength) };
}

const volumeOf = (given: Given): number => shareOf(given) * poolVolume(shapeOf(given));
const areaOf = (given: Given): number => shareOf(given) * outlineArea(outlineOf(given));

const otherDepths = ['depth#1', 'depth#2', 'shallowDepth', 'deepDepth'];

function volumeOfParts(given: Given): number {
  const fields = ['name', 'shape', 'depth', ...otherDepths, ...outlineInputs];
  return given.list('parts').reduce<number>((sum, each) => {
    const own = given.inside(each, fields);
    const isDeep = ['depth', ...otherDepths].some((id) => own.has(id));
    const common = isDeep ? {} : given.rawOf(['depth', ...otherDepths]);
    return sum + volumeOf(given.inside({ ...common, ...(isObject(each) ? each : {}) }, fields));
  }, 0);
}

const isShape = (pattern: RegExp) => (given: Given) => pattern.test(given.text('shape'));

export const poolFamily: Family = {
  name: 'pool volume',
  quantity: /pool volume|volume from its shape|volume of a pool/i,
  rules: [
    {
      what: 'kidney by the rule of thumb',
      needs: ['shape', 'width#1', 'width#2', 'length', 'depth'],
      gives: {
        volume: (given) =>
          thumbKidneyArea(
            given.number('width#1'),
            given.number('width#2'),
            given.number('length'),
          ) * given.number('depth'),
        area: (given) =>
          thumbKidneyArea(given.number('width#1'), given.number('width#2'), given.number('length')),
      },
      when: isShape(/^kidney/),
    },
    {
      what: "circle by the trade's factor",
      needs: ['shape', 'diameter', 'depth'],
      gives: {
        volume: (given) =>
          thumbCircleGallons(given.number('diameter') / foot, given.number('depth') / foot) *
          gallon,
      },
      when: isShape(/trade factor/),
    },
    {
      // An ellipse is a circle drawn out: 5.9 times length, width and depth.
      what: "oval by the trade's factor",
      needs: ['shape', 'length', 'width', 'depth'],
      gives: {
        volume: (given) => {
          const diameter = Math.sqrt(given.number('length') * given.number('width'));
          return thumbCircleGallons(diameter / foot, given.number('depth') / foot) * gallon;
        },
      },
      when: isShape(/^(oval|ellipse).*trade factor/),
    },
    {
      what: 'volume of a shape',
      needs: ['shape|vertices|x|points', 'depth|depth#1|stations|shallowDepth'],
      takes: [...otherDepths, ...outlineInputs],
      gives: {
        volume: volumeOf,
        depth: (given) => meanDepth(shapeOf(given)),
        area: areaOf,
      },
    },
    {
      what: 'several shapes together',
      needs: ['parts'],
      takes: ['shape', 'depth', ...otherDepths],
      gives: { volume: volumeOfParts },
    },
    {
      what: 'volume of an area',
      needs: ['area', 'depth'],
      gives: { volume: (given) => given.number('area') * given.number('depth') },
    },
    {
      what: 'volume of an area over a slope',
      needs: ['area', 'depth|depth#1|shallowDepth'],
      takes: otherDepths,
      gives: {
        volume: (given) => given.number('area') * meanOfTwo(given),
        depth: meanOfTwo,
      },
    },
    {
      what: 'mean depth',
      needs: ['depth|depth#1|shallowDepth'],
      takes: otherDepths,
      gives: { depth: meanOfTwo },
    },
    {
      what: 'area of a shape',
      needs: ['shape|vertices|x|points'],
      takes: outlineInputs,
      gives: { area: areaOf },
    },
  ],
};
