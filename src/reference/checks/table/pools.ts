import { z } from 'zod';
import type { Outline } from '#core/pool/poolOutline.ts';
import {
  type Depth,
  poolVolume,
  thumbCircleGallons,
  thumbKidneyArea,
} from '#core/pool/poolVolume.ts';
import type { Quantity } from '#units/quantities.ts';
import { choice, formed, need, number, row } from '../grammar.ts';
import { fromCanonical, toCanonical } from '../units.ts';
import { converted } from './shared.ts';

const length = number('ft', 'm');
const pairs = z.array(z.tuple([z.number(), z.number()]));
const feet = (value: number): number => toCanonical('length_ft', value);

const depths = { depth: length, depth_1: length, depth_2: length };
type Depths = { readonly [K in keyof typeof depths]?: number | undefined };

function depthOf({ depth, depth_1: first, depth_2: second }: Depths): Depth {
  if (first === undefined || second === undefined)
    return { kind: 'uniform', depth: need(depth, 'depth') };
  return { kind: 'sloped', first, second };
}

/** The same answer in every unit that the files use. */
const volumes = <T>(answer: T) => ({ volume_gal: answer, volume_m3: answer, volume_l: answer });

const drawn = <G extends Depths>(outlineOf: (given: G) => Outline) =>
  volumes((given: G) => poolVolume({ outline: outlineOf(given), depth: depthOf(given) }));

interface Sides extends Depths {
  readonly shape: 'rectangle' | 'ellipse' | 'stadium';
  readonly length: number;
  readonly width: number;
}
interface Corners extends Depths {
  readonly vertices: readonly (readonly [number, number])[];
}
interface Round {
  readonly shape: boolean;
  readonly diameter: number;
  readonly depth: number;
}
interface Profile {
  readonly width: number;
  readonly stations: readonly (readonly [number, number])[];
}
type Kidney = Readonly<Record<'width_a' | 'width_b' | 'length' | 'depth', number>>;

/** A circle in full, or by the trade's factor. */
function roundVolume({ shape: isExact, diameter, depth }: Round): number {
  if (isExact)
    return poolVolume({ outline: { kind: 'circle', diameter }, depth: { kind: 'uniform', depth } });
  const [wide, deep] = [fromCanonical('a_ft', diameter), fromCanonical('a_ft', depth)];
  return toCanonical('volume_gal', thumbCircleGallons(wide, deep));
}

function profileVolume({ width, stations }: Profile): number {
  const points = stations.map(([at, deep]) => ({ distance: feet(at), depth: feet(deep) }));
  return poolVolume({
    outline: { kind: 'rectangle', length: points.at(-1)?.distance ?? 0, width },
    depth: { kind: 'stations', stations: points },
  });
}

const kidneyVolume = ({ width_a, width_b, length: long, depth }: Kidney): number =>
  thumbKidneyArea(width_a, width_b, long) * depth;

/** One value in the other units of its quantity, through `src/units`. */
const conversions = (name: string, quantity: Quantity, ...units: readonly string[]) =>
  units.map((from) => {
    const others = units.filter((to) => to !== from);
    const into = (to: string) => (given: Readonly<Record<string, number>>) =>
      converted(need(given[name], name), [quantity, from], [quantity, to]);
    const gives = Object.fromEntries(others.map((to) => [`${name}_${to}`, into(to)]));
    return row({ [name]: number(from) }, {}, gives);
  });

export const poolVolumes = [
  row(
    {
      shape: choice({ rectangle: 'rectangle', ellipse: 'ellipse', stadium: 'stadium' } as const),
      length,
      width: length,
    },
    depths,
    drawn(({ shape: kind, length: long, width }: Sides) => ({ kind, length: long, width })),
  ),
  row(
    { shape: choice({ polygon: true }), vertices: formed(pairs, 'ft') },
    depths,
    drawn(({ vertices }: Corners) => ({
      kind: 'polygon',
      vertices: vertices.map(([x, y]) => [feet(x), feet(y)] as const),
    })),
  ),
  row(
    {
      shape: choice({ circle: true, 'circle, trade factor': false }),
      diameter: length,
      depth: length,
    },
    {},
    volumes(roundVolume),
  ),
  row(
    { shape: choice({ rectangle: true }), width: number('ft'), stations: formed(pairs) },
    {},
    volumes(profileVolume),
  ),
  row(
    {
      shape: choice({ 'kidney, approximate': true }),
      width_a: length,
      width_b: length,
      length,
      depth: length,
    },
    {},
    volumes(kidneyVolume),
  ),
  ...conversions('volume', 'volume', 'gal', 'm3', 'l', 'ft3'),
  ...conversions('length', 'length', 'ft', 'm'),
  ...conversions('flow', 'flow', 'gpm', 'l_min', 'm3_h', 'm3_s'),
  ...conversions('area', 'area', 'ft2', 'm2'),
  ...conversions('temperature', 'temperature', 'c', 'f'),
];
