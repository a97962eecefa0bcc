import * as z from 'zod/mini';
import { list, part, quantity } from './fields.ts';

const side = (what: string) => quantity('length', `${what} [m].`, 0, 200);

/** One corner of a freeform outline, on a level plan of the water surface. */
const vertexSchema = z.strictObject({
  x: z.number().check(z.gte(-500), z.lte(500), z.meta({ description: 'Eastward [m].' })),
  y: z.number().check(z.gte(-500), z.lte(500), z.meta({ description: 'Northward [m].' })),
});

/** How one long side of a two-radius outline joins its round ends, touching both smoothly. */
const sideSchema = z.strictObject({
  kind: z
    .enum(['straight', 'inward', 'outward'])
    .check(z.meta({ description: 'Straight, bent inward as in a kidney, or bulging outward.' })),
  radius: side('Radius of the bend; none when straight'),
});
const sidesSchema = z.tuple([sideSchema, sideSchema]);

/** The water surface seen from above. */
export const outlineSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('rectangle'),
    length: side('Long side'),
    width: side('Short side'),
  }),
  z.strictObject({ kind: z.literal('circle'), diameter: side('Across the circle') }),
  z.strictObject({
    kind: z.literal('ellipse'),
    length: side('Longest axis'),
    width: side('Shortest axis'),
  }),
  z.strictObject({
    kind: z.literal('stadium'),
    length: side('Over all, both round ends included'),
    width: side('Between the straight sides'),
  }),
  z.strictObject({
    kind: z.literal('twoRadius'),
    length: side('Over all, from tip to tip'),
    firstRadius: side('Radius of the first round end'),
    secondRadius: side('Radius of the other round end'),
    sides: part('The two long sides, one after the other.', sidesSchema, [
      { kind: 'straight' },
      { kind: 'straight' },
    ]),
  }),
  z.strictObject({
    kind: z.literal('polygon'),
    vertices: list('Corners in order around the outline.', vertexSchema, 400),
  }),
]);

const depth = (what: string) => quantity('length', `${what} [m].`, 0, 30);

/** How deep the water is. */
export const depthSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('uniform'), depth: depth('Depth everywhere') }),
  z.strictObject({
    kind: z.literal('sloped'),
    first: depth('Depth at the first end'),
    second: depth('Depth at the other end'),
  }),
  z.strictObject({
    kind: z.literal('stations'),
    stations: list(
      'Depths measured along the pool, from one end to the other.',
      z.strictObject({
        distance: side('Distance from the first end'),
        depth: depth('Depth there'),
      }),
      60,
    ),
  }),
]);

/** The body of water: its volume when it is known, otherwise its shape. */
export const poolSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('known'),
    volume: quantity('volume', 'Volume of water [m3].', 0, 100_000),
  }),
  z.strictObject({
    kind: z.literal('shape'),
    outline: part('Water surface seen from above.', outlineSchema, { kind: 'rectangle' }),
    depth: part('How deep the water is.', depthSchema, { kind: 'uniform' }),
  }),
]);
