import type { Outline } from '#core/poolOutline.ts';
import {
  type Depth,
  meanDepth,
  outlineArea,
  type PoolShape,
  poolVolume,
  thumbCircleGallons,
  thumbKidneyArea,
} from '#core/poolVolume.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family } from '../rule.ts';

const foot = 0.3048;
const gallon = 3.785411784e-3;

/** Pairs without a unit of their own are in that of the lengths beside them. */
function pairsInMetres(given: Given, id: string): readonly (readonly [number, number])[] {
  const pairs = given.pairs(id);
  if (given.key(id)?.unit.dimension === 'length') return pairs;
  const beside = ['width', 'length', 'depth', 'diameter'].map((name) => given.key(name)?.unit);
  const factors = [
    ...new Set(beside.filter((unit) => unit !== undefined).map((unit) => unit.factor)),
  ];
  const [factor] = factors;
  if (factors.length !== 1 || factor === undefined) {
    throw new NotUnderstood(`the unit of ${id} is not stated`);
  }
  return pairs.map(([first, second]) => [first * factor, second * factor] as const);
}

function stations(given: Given) {
  return pairsInMetres(given, 'stations').map(([distance, depth]) => ({ distance, depth }));
}

function depthOf(given: Given): Depth {
  if (given.has('stations')) return { kind: 'stations', stations: stations(given) };
  if (given.has('depth')) return { kind: 'uniform', depth: given.number('depth') };
  if (given.has('shallowDepth')) {
    const [first, second] = [given.number('shallowDepth'), given.number('deepDepth')];
    return { kind: 'sloped', first, second };
  }
  return { kind: 'sloped', first: given.number('depth#1'), second: given.number('depth#2') };
}

function lengthOf(given: Given): number {
  return given.maybe('length') ?? stations(given).at(-1)?.distance ?? 0;
}

function outlineOf(given: Given): Outline {
  const shape = given.text('shape');
  switch (shape) {
    case 'rectangle':
    case 'ellipse':
    case 'stadium':
      return { kind: shape, length: lengthOf(given), width: given.number('width') };
    case 'square': {
      const side = given.maybe('side') ?? given.maybe('width') ?? lengthOf(given);
      return { kind: 'rectangle', length: side, width: side };
    }
    case 'oval':
      return { kind: 'ellipse', length: lengthOf(given), width: given.number('width') };
    case 'circle':
    case 'round': {
      const radius = given.maybe('radius');
      return {
        kind: 'circle',
        diameter: radius === undefined ? given.number('diameter') : 2 * radius,
      };
    }
    case 'polygon':
      return {
        kind: 'polygon',
        vertices: pairsInMetres(given, 'vertices'),
      };
    default:
      throw new NotUnderstood(`the shape "${shape}" is not known`);
  }
}

function shapeOf(given: Given): PoolShape {
  return { outline: outlineOf(given), depth: depthOf(given) };
}

const outlineInputs = ['length', 'width', 'diameter', 'radius', 'vertices', 'side'];

function volumeOfParts(given: Given): number {
  const fields = ['name', 'shape', 'depth', 'depth#1', 'depth#2', ...outlineInputs];
  return given
    .list('parts')
    .reduce<number>((sum, each) => sum + poolVolume(shapeOf(given.inside(each, fields))), 0);
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
      what: 'volume of a shape',
      needs: ['shape', 'depth|depth#1|stations|shallowDepth'],
      takes: ['depth#2', 'deepDepth', ...outlineInputs],
      gives: {
        volume: (given) => poolVolume(shapeOf(given)),
        depth: (given) => meanDepth(shapeOf(given)),
        area: (given) => outlineArea(outlineOf(given)),
      },
    },
    {
      what: 'several shapes together',
      needs: ['parts'],
      gives: { volume: volumeOfParts },
    },
    {
      what: 'volume of an area',
      needs: ['area', 'depth'],
      gives: { volume: (given) => given.number('area') * given.number('depth') },
    },
    {
      what: 'area of a shape',
      needs: ['shape'],
      takes: outlineInputs,
      gives: {
        area: (given) => outlineArea(outlineOf(given)),
      },
    },
  ],
};
