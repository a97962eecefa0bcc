import * as z from 'zod/mini';
import { list, part, quantity } from './fields.ts';

const side = (what: string) => quantity('length', `${what} [m].`, 0, 200);

/** One corner of a freeform outline, on a level plan of the water surface. */
const vertexSchema = z.strictObject({
  x: z.number().check(z.gte(-500), z.lte(500), z.meta({ description: 'Eastward [m].' })),
  y: z.number().check(z.gte(-500), z.lte(500), z.meta({ description: 'Northward [m].' })),
});

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
    firstDiameter: side('Across the round of the one end'),
    secondDiameter: side('Across the round of the other end'),
    length: side('Over all, from tip to tip'),
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
    shallow: depth('Depth at the shallow end'),
    deep: depth('Depth at the deep end'),
  }),
  z.strictObject({
    kind: z.literal('stations'),
    stations: list(
      'Depths measured along the pool, from one end to the other.',
      z.strictObject({
        at: side('Distance from the first end'),
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
