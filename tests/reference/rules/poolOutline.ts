/** Outlines of pools as cases describe them, in what the core knows: most are polygons. */
import type { Vertex } from '#core/pool/polygon.ts';
import type { Outline } from '#core/pool/poolOutline.ts';
import { isObject, type Json } from '../caseFile.ts';
import { type Given, NotUnderstood } from '../given.ts';
import { toCanonical, type Value } from '../keys.ts';
import { unitFrom } from '../keyUnits.ts';
import { unitSpelled } from '../polynomial.ts';

type Pair = readonly [number, number];

/** The unit of numbers that have none of their own: as stated, else that of the lengths beside them. */
function unitBeside(given: Given, id: string): number {
  if (given.key(id)?.unit.dimension === 'length') return 1;
  if (given.has('units')) {
    const unit = unitSpelled(given.text('units'));
    if (unit?.dimension === 'length') return unit.factor;
  }
  const names = ['width', 'length', 'depth', 'depth#1', 'diameter', 'shallowDepth'];
  const units = names.map((name) => given.key(name)?.unit);
  const factors = [
    ...new Set(units.filter((unit) => unit !== undefined).map((unit) => unit.factor)),
  ];
  const [factor] = factors;
  if (factors.length !== 1 || factor === undefined) {
    throw new NotUnderstood(`the unit of ${id} is not stated`);
  }
  return factor;
}

/** One corner as [x, y], as {x, y} or as {x_ft, y_ft}. */
function pairOf(value: Value, factor: number, id: string): Pair {
  const entries: [string, Json][] = Array.isArray(value)
    ? ['x', 'y'].map((name, place) => [name, value[place] ?? null])
    : Object.entries(isObject(value) ? value : {});
  const [x, y] = ['x', 'y'].map((wanted) => {
    const [raw = '', number] =
      entries.find(([name]) => name === wanted || name.startsWith(`${wanted}_`)) ?? [];
    if (typeof number !== 'number' || entries.length !== 2)
      throw new NotUnderstood(`${id} is not a list of pairs`);
    const unit = unitFrom(raw.slice(2));
    return unit === undefined ? number * factor : toCanonical(number, unit);
  });
  return [x ?? 0, y ?? 0];
}

/** Pairs of lengths. */
export function pairsInMetres(given: Given, id: string): readonly Pair[] {
  const list = given.list(id);
  const isSpelled = list.every((each) => isObject(each) && !Object.hasOwn(each, 'x'));
  const factor = isSpelled ? 1 : unitBeside(given, id);
  return list.map((each) => pairOf(each, factor, id));
}

function corners(given: Given): readonly Vertex[] {
  if (given.has('x')) {
    const [xs, ys] = [given.numbers('x'), given.numbers('y')];
    if (xs.length !== ys.length) throw new NotUnderstood('x and y are not of one length');
    return xs.map((x, place) => [x, ys[place] ?? 0]);
  }
  const all = pairsInMetres(given, given.has('vertices') ? 'vertices' : 'points');
  const [first, last] = [all[0], all.at(-1)];
  // A ring may name its first corner once more at the end.
  const isClosed = all.length > 3 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
  return isClosed ? all.slice(0, -1) : all;
}

const polygon = (...vertices: readonly Vertex[]): Outline => ({ kind: 'polygon', vertices });

/** A rectangle less a rectangle at one corner, or two of them side by side. */
function ell(given: Given): Outline {
  if (given.has('length#1')) {
    const [one, wide, other, more] = ['length#1', 'width#1', 'length#2', 'width#2'].map((id) =>
      given.number(id),
    ) as [number, number, number, number];
    const top = wide + more;
    return polygon([0, 0], [one, 0], [one, wide], [other, wide], [other, top], [0, top]);
  }
  const [length, width] = [given.number('length'), given.number('width')];
  const x = length - given.number('cutLength');
  const y = width - given.number('cutWidth');
  return polygon([0, 0], [length, 0], [length, y], [x, y], [x, width], [0, width]);
}

function triangle(given: Given): Outline {
  if (given.has('side#1')) {
    const [a, b, c] = [1, 2, 3].map((index) => given.number(`side#${index}`)) as [
      number,
      number,
      number,
    ];
    // Law of cosines for the third corner over side a.
    const x = (a ** 2 + c ** 2 - b ** 2) / (2 * a);
    return polygon([0, 0], [a, 0], [x, Math.sqrt(c ** 2 - x ** 2)]);
  }
  if (given.has('side')) return regular(given, 3);
  const base = given.maybe('base') ?? given.number('length');
  return polygon([0, 0], [base, 0], [0, given.maybe('height') ?? given.number('width')]);
}

function trapezium(given: Given): Outline {
  const parallel = ['length', 'side', 'width', 'base'].find((name) => given.has(`${name}#1`));
  if (parallel === undefined) throw new NotUnderstood('no two parallel sides are given');
  const across = ['height', 'width', 'length'].find((name) => given.has(name));
  if (across === undefined) throw new NotUnderstood('how far apart they are is not given');
  const [low, high, y] = [`${parallel}#1`, `${parallel}#2`, across].map((id) =>
    given.number(id),
  ) as [number, number, number];
  return polygon([0, 0], [low, 0], [high, y], [0, y]);
}

const sidesByName: Readonly<Record<string, number>> = {
  pentagon: 5,
  hexagon: 6,
  heptagon: 7,
  octagon: 8,
  decagon: 10,
  dodecagon: 12,
};

/** A regular polygon by its side, the way across its flats, or the radius to its corners. */
function regular(given: Given, sides: number): Outline {
  const turn = Math.PI / sides;
  const flat =
    given.maybe('apothem') ??
    (given.has('acrossFlats') ? given.number('acrossFlats') / 2 : undefined);
  const fromFlat = flat === undefined ? undefined : flat / Math.cos(turn);
  const radius = given.maybe('radius') ?? fromFlat ?? given.number('side') / (2 * Math.sin(turn));
  if (given.has('acrossFlats') && sides % 2 === 1)
    throw new NotUnderstood('an odd number of sides has no two flats across');
  return polygon(
    ...Array.from({ length: sides }, (_, place): Vertex => {
      const angle = 2 * turn * place;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  );
}

/** The part of a whole that a shape is: half a circle, a quarter of an ellipse. */
export function partOfWhole(shape: string): readonly [share: number, whole: string] {
  const [, part, whole] = /^(half|semi|quarter)[- ]?(?:of an? )?(.+)$/.exec(shape) ?? [];
  if (part === undefined || whole === undefined) return [1, shape];
  return [part === 'quarter' ? 0.25 : 0.5, whole];
}

function circleOf(given: Given): Outline {
  const radius = given.maybe('radius');
  return { kind: 'circle', diameter: radius === undefined ? given.number('diameter') : 2 * radius };
}

const lengthOf = (given: Given): number =>
  given.maybe('length') ??
  (given.has('stations') ? pairsInMetres(given, 'stations').at(-1)?.[0] : 0) ??
  0;

const sizeOf = (given: Given) => ({ length: lengthOf(given), width: given.number('width') });

/** How cases call each outline; the first line that matches counts. */
const outlines: readonly (readonly [RegExp, (given: Given) => Outline])[] = [
  [/^(rectangle|rectangular)$/, (given) => ({ kind: 'rectangle', ...sizeOf(given) })],
  [/^(ellipse|elliptical|oval)$/, (given) => ({ kind: 'ellipse', ...sizeOf(given) })],
  [/^stadium$/, (given) => ({ kind: 'stadium', ...sizeOf(given) })],
  [
    /^square$/,
    (given) => {
      const side = given.maybe('side') ?? given.maybe('width') ?? lengthOf(given);
      return { kind: 'rectangle', length: side, width: side };
    },
  ],
  [/^(circle|circular|round)$/, circleOf],
  [/^(l|l[- ]shaped?|ell)$/, ell],
  [/triang/, triangle],
  [/trapez/, trapezium],
  [/regular/, (given) => regular(given, given.number('sides'))],
  [
    /polygon|freeform|free form|corner|irregular|outline|points|vertices/,
    (given) => polygon(...corners(given)),
  ],
];

export function outlineOf(given: Given): Outline {
  if (!given.has('shape')) return polygon(...corners(given));
  const [, shape] = partOfWhole(given.text('shape').replaceAll('_', ' '));
  const plain = shape.replace(/^regular /, '');
  const sides = Object.entries(sidesByName).find(([name]) => plain.startsWith(name.slice(0, -2)));
  const isListed = given.has('vertices') || given.has('points') || given.has('x');
  if (sides !== undefined && !isListed) return regular(given, sides[1]);
  if (shape === 'polygon' && given.has('sides') && !isListed)
    return regular(given, given.number('sides'));
  const found = outlines.find(([pattern]) => pattern.test(shape));
  if (found === undefined)
    throw new NotUnderstood(`the shape "${given.text('shape')}" is not known`);
  return found[1](given);
}

export const outlineInputs: readonly string[] = [
  ...['length', 'width', 'diameter', 'radius', 'vertices', 'points', 'x', 'y', 'units', 'side'],
  ...['sides', 'acrossFlats', 'apothem', 'base', 'height', 'cutLength', 'cutWidth'],
  ...['length', 'width', 'side', 'base'].flatMap((name) => [1, 2, 3].map((at) => `${name}#${at}`)),
];
