import * as z from 'zod/mini';
import type { UnitChoice } from '#units/choice.ts';
import { quantityNames, unitsOf } from '#units/quantities.ts';
import { type DeepReadonly, lines, list, part, quantity, words } from './fields.ts';
import { repeatedIds } from './ids.ts';
import {
  type blockSchema,
  daySchema,
  limitsSchema,
  needSchema,
  quietSchema,
  tariffSchema,
} from './planSchema.ts';
import { plumbingSchema, type sectionSchema } from './plumbingSchema.ts';
import { type depthSchema, type outlineSchema, poolSchema } from './poolSchema.ts';
import {
  instrumentsSchema,
  type knowledgeSchema,
  pumpSchema,
  readingSchema,
} from './pumpSchema.ts';
import { padFormat, padVersion } from './version.ts';
import { type seasonPlanSchema, yearSchema } from './yearSchema.ts';

/** One optional field a quantity, each with that quantity's own units. */
const overridesSchema = z.strictObject(
  Object.fromEntries(quantityNames.map((name) => [name, z.optional(z.enum(unitsOf(name)))])),
) as unknown as z.ZodMiniType<UnitChoice['overrides'], UnitChoice['overrides']>;

/** The reader's choice of units. It never changes a stored value. */
const unitsSchema = z.strictObject({
  preset: z
    ._default(z.enum(['us', 'metric']), 'us')
    .check(z.meta({ description: 'Units used for every quantity not chosen apart.' })),
  overrides: part(
    'Unit chosen for one quantity, by the name of the quantity.',
    overridesSchema,
    {},
  ),
});

const siteSchema = z.strictObject({
  altitude: quantity('length', 'Height above the sea [m].', -430, 5000),
  waterTemperature: quantity('temperature', 'Temperature of the water [degC].', 0, 45),
  surfaceAbovePump: quantity(
    'length',
    'How far the pool surface is above the pump; negative when it is below [m].',
    -10,
    30,
  ),
});

const fieldsSchema = z.strictObject({
  format: z.literal(padFormat).check(z.meta({ description: 'Says that this is a pad file.' })),
  version: z.literal(padVersion).check(z.meta({ description: 'Version of the format.' })),
  name: words('What the reader calls this pad.'),
  notes: lines('Anything worth writing down.', 4000),
  units: part('Units to show values in.', unitsSchema, {}),
  site: part('Where the pad stands.', siteSchema, {}),
  pool: part('The body of water.', poolSchema, { kind: 'known' }),
  plumbing: part('Everything between pool and pool.', plumbingSchema, {}),
  pump: part('The pump and its drive.', pumpSchema, {}),
  readings: list('What the instruments showed, one entry a speed.', readingSchema, 60),
  instruments: part('How good the instruments are.', instrumentsSchema, {}),
  needs: list('What the water is moved for.', needSchema, 24),
  limits: part('What no plan may cross.', limitsSchema, {}),
  quiet: list('Times of day in which the pump must stay slow.', quietSchema, 12),
  turnoverTarget: quantity(null, 'Turnovers wanted in a day [-].', 0, 50),
  tariff: part('What electricity costs.', tariffSchema, {}),
  day: part('The plan for 24 hours.', daySchema, {}),
  year: part('What changes over a year.', yearSchema, {}),
});

/**
 * The pad file: everything a reader enters, in one document.
 *
 * Stored values are SI, with revolutions per minute for speeds, minutes for times of day and the
 * tariff's currency for money. A value nobody knows yet is null, and may be left out of a file.
 */
export const padSchema = fieldsSchema.check((context) => {
  for (const path of repeatedIds(context.value as Pad)) {
    context.issues.push({ code: 'custom', path: [...path], input: context.value });
  }
});

/** A whole pad file. */
export type Pad = DeepReadonly<z.output<typeof fieldsSchema>>;
/** A pad file as it may be written by hand: unknown values left out. */
export type PadInput = DeepReadonly<z.input<typeof fieldsSchema>>;

export type Units = Pad['units'];
export type Pool = DeepReadonly<z.output<typeof poolSchema>>;
export type Outline = DeepReadonly<z.output<typeof outlineSchema>>;
export type Depth = DeepReadonly<z.output<typeof depthSchema>>;
export type Plumbing = Pad['plumbing'];
export type Section = DeepReadonly<z.output<typeof sectionSchema>>;
export type PipeSection = Extract<Section, { kind: 'pipe' }>;
export type FittingSection = Extract<Section, { kind: 'fitting' }>;
export type EquipmentSection = Extract<Section, { kind: 'equipment' }>;
export type ParallelSection = Extract<Section, { kind: 'parallel' }>;
export type BranchSection = ParallelSection['branches'][number];
export type Pump = Pad['pump'];
export type PumpKnowledge = DeepReadonly<z.output<typeof knowledgeSchema>>;
export type Reading = DeepReadonly<z.output<typeof readingSchema>>;
export type Instruments = Pad['instruments'];
export type PadNeed = DeepReadonly<z.output<typeof needSchema>>;
export type PadLimits = Pad['limits'];
export type SuctionCover = PadLimits['suctionCovers'][number];
export type QuietHours = DeepReadonly<z.output<typeof quietSchema>>;
export type PadTariff = DeepReadonly<z.output<typeof tariffSchema>>;
export type PadDay = Pad['day'];
export type PadBlock = DeepReadonly<z.output<typeof blockSchema>>;
export type PadYear = Pad['year'];
export type SeasonPlan = DeepReadonly<z.output<typeof seasonPlanSchema>>;
