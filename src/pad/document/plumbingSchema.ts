import * as z from 'zod/mini';
import type { EndKind, FittingKind } from '#core/hydraulics/fittings.ts';
import { choice, identifier, list, quantity, words } from './fields.ts';

/** Every fitting and pipe end a form can offer; 'other' carries a loss coefficient of its own. */
export const fittingKinds = [
  'elbow90',
  'elbow90Long',
  'bend90Wide',
  'elbow45',
  'streetElbow90',
  'streetElbow45',
  'returnBend',
  'teeRun',
  'teeBranch',
  'gateValve',
  'ballValve',
  'butterflyValve',
  'globeValve',
  'angleValve',
  'swingCheckValve',
  'swingCheckValveClearway',
  'threeWayValveStraight',
  'threeWayValveBranch',
  'squareInlet',
  'roundedInlet',
  'projectingInlet',
  'exit',
  'other',
] as const satisfies readonly (FittingKind | EndKind | 'other')[];

/** The apparatus a circuit can hold. */
export const equipmentKinds = [
  'strainer',
  'filter',
  'heater',
  'saltCell',
  'checkValve',
  'valve',
  'other',
] as const;

/** What a filter filters through. */
export const filterMedia = ['sand', 'cartridge', 'diatomaceousEarth', 'glass', 'other'] as const;

const id = identifier('Stays with this part for the life of the document.');
const sizeId = z
  ._default(z.nullable(z.string().check(z.minLength(1), z.maxLength(40))), null)
  .check(z.meta({ description: 'Size in the pipe table, such as "sch40-2" or "pn10-63".' }));
const bore = quantity('diameter', 'Inside diameter, when it is typed instead of a size [m].', 0, 1);

const pipeSchema = z.strictObject({
  kind: z.literal('pipe'),
  id,
  sizeId,
  bore,
  length: quantity('length', 'Length of the run [m].', 0, 2000),
  roughness: quantity(
    'roughness',
    'Roughness of the wall; smooth plastic when null [m].',
    0,
    0.005,
  ),
});

const fittingSchema = z.strictObject({
  kind: z.literal('fitting'),
  id,
  fitting: z.enum(fittingKinds).check(z.meta({ description: 'Which fitting.' })),
  sizeId,
  bore,
  count: z
    ._default(z.int().check(z.gte(0), z.lte(200)), 1)
    .check(z.meta({ description: 'How many of them, one after another.' })),
  k: quantity(null, 'Loss coefficient of one; from the fitting table when null [-].', 0, 1000),
});

const equipmentSchema = z.strictObject({
  kind: z.literal('equipment'),
  id,
  equipment: z.enum(equipmentKinds).check(z.meta({ description: 'Which apparatus.' })),
  name: words('What the reader calls it.'),
  head: quantity('head', 'Head lost at the flow beside it, clean [m].', 0, 100),
  flow: quantity('flow', 'Flow at which that head was stated [m3/s].', 0, 1),
  exponent: quantity(null, 'Power of flow the loss follows; 2 when null [-].', 1, 2.5),
  area: quantity('area', 'Filter area, filters only [m2].', 0, 1000),
  dirtyHead: quantity(
    'head',
    'Head lost at the same flow when due for cleaning, filters [m].',
    0,
    100,
  ),
  loading: quantity('share', 'How far from clean (0) to due for cleaning (1), filters [-].', 0, 1),
  media: choice('What the filter filters through.', filterMedia),
});

const parallelSchema = z.strictObject({
  kind: z.literal('parallel'),
  id,
  name: words('What the reader calls the place where the flow divides.'),
  get branches() {
    return list('Ways the water can take; they share one head.', branchSchema, 24);
  },
});

const branchSchema = z.strictObject({
  id,
  name: words('What the reader calls this way.'),
  lift: quantity(
    'length',
    'How far above the pool surface its water breaks free; 0 when null [m].',
    0,
    100,
  ),
  get sections() {
    return list('Parts in the order the water meets them.', sectionSchema, 100);
  },
});

/** One part of the plumbing. */
export const sectionSchema = z.discriminatedUnion('kind', [
  pipeSchema,
  fittingSchema,
  equipmentSchema,
  parallelSchema,
]);
sectionSchema.register(z.globalRegistry, { id: 'Section' });

/** Everything between the pool and the pool. */
export const plumbingSchema = z.strictObject({
  suction: list('Pool to pump, in the order the water meets the parts.', sectionSchema, 200),
  discharge: list('Pump to pool, in the order the water meets the parts.', sectionSchema, 200),
  staticHead: quantity(
    'length',
    'Lift of the whole loop: 0 (or null) when the water returns to the surface it left [m].',
    0,
    100,
  ),
});
