/** The parts of an invented pad, each to be taken as often as the reader likes. */
import type { CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { fittingK } from '#core/hydraulics/fittings.ts';
import { smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import { foot, gallonPerMinute } from '#units/factors.ts';
import type { CircuitScene, Piece } from './model.ts';

const main = pipeSize('sch40-2').bore;
const branch = pipeSize('sch40-1.5').bore;

const pipe = (id: string, bore: number, feet: number): CircuitPart => ({
  kind: 'pipe',
  id,
  bore,
  length: feet * foot,
  roughness: smoothPlasticRoughness,
});

const fittings = (id: string, bore: number, k: number): CircuitPart => ({
  kind: 'fitting',
  id,
  bore,
  k,
});

/** Something known by the head it takes at 60 gpm. */
const equipment = (id: string, feet: number, exponent: number): CircuitPart => ({
  kind: 'equipment',
  id,
  referenceHead: feet * foot,
  referenceFlow: 60 * gallonPerMinute,
  exponent,
  factor: 1,
});

/** Equal ways side by side. */
const sideBySide = (
  id: string,
  count: number,
  way: (name: string) => CircuitPart[],
): CircuitPart[] => [
  {
    kind: 'parallel',
    id,
    branches: Array.from({ length: count }, (_, place) => ({
      id: `${id}-${place + 1}`,
      lift: 0,
      parts: way(`${id}-${place + 1}`),
    })),
  },
];

/** One suction line: inlet, 40 ft of pipe, four elbows. */
const suctionLine = (name: string): CircuitPart[] => [
  fittings(`${name}-inlet`, main, fittingK('squareInlet', main)),
  pipe(`${name}-run`, main, 40),
  fittings(`${name}-elbows`, main, 4 * fittingK('elbow90', main)),
];

/** One return: 15 ft of 1½ in pipe, two elbows, an eyeball outlet (K 8, made up). */
const wallReturn = (name: string): CircuitPart[] => [
  pipe(`${name}-run`, branch, 15),
  fittings(`${name}-elbows`, branch, 2 * fittingK('elbow90', branch) + 8),
];

const once = (
  id: string,
  label: string,
  side: Piece['side'],
  opening: 0 | 1,
  part: CircuitPart,
): Piece => ({ id, label, side, least: 0, most: 1, opening, make: () => [part] });

/** Every piece in the order the water meets it. */
export const examplePieces: readonly Piece[] = [
  {
    id: 'lines',
    label: 'Suction lines, 40 ft of 2 in each',
    side: 'suction',
    least: 1,
    most: 3,
    opening: 1,
    make: (count) => sideBySide('lines', count, suctionLine),
  },
  once('basket', 'Strainer basket', 'suction', 1, equipment('basket', 1.2, 2)),
  once('filter', 'Filter, clean', 'discharge', 1, equipment('filter', 3.5, 1.3)),
  once('heater', 'Heater', 'discharge', 1, equipment('heater', 7, 2)),
  once('valve', 'Check valve', 'discharge', 0, equipment('valve', 1, 2)),
  once('cell', 'Salt cell', 'discharge', 0, equipment('cell', 1.8, 2)),
  {
    id: 'pipe',
    label: 'Return pipe, 10 ft of 2 in each',
    side: 'discharge',
    least: 0,
    most: 15,
    opening: 6,
    make: (count) => [pipe('pipe', main, 10 * count)],
  },
  {
    id: 'elbows',
    label: 'Elbows, 2 in',
    side: 'discharge',
    least: 0,
    most: 20,
    opening: 8,
    make: (count) => [fittings('elbows', main, count * fittingK('elbow90', main))],
  },
  {
    id: 'returns',
    label: 'Returns, 15 ft of 1½ in each',
    side: 'discharge',
    least: 1,
    most: 4,
    opening: 1,
    make: (count) => sideBySide('returns', count, wallReturn),
  },
];

/** The invented pad as it opens. */
export const exampleScene: CircuitScene = {
  pieces: examplePieces,
  water: water(27),
  lift: 0,
  greatestFlow: 100 * gallonPerMinute,
};

/** Flow that the picture opens at [m3/s]. */
export const openingFlow = 50 * gallonPerMinute;
