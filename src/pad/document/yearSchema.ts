import * as z from 'zod/mini';
import { identifier, list, minutes, quantity, words } from './fields.ts';
import { blockSchema, monthDay } from './planSchema.ts';

/** A day plan that holds for a part of the year. */
export const seasonPlanSchema = z.strictObject({
  id: identifier('Stays with this plan for the life of the document.'),
  name: words('What the reader calls it.'),
  from: monthDay.check(z.meta({ description: 'First day it holds; until the next plan begins.' })),
  blocks: list('Stretches of the day at one speed.', blockSchema, 48),
  withoutNeeds: list(
    'Needs, by id, that do not hold meanwhile.',
    z.string().check(z.minLength(1), z.maxLength(40)),
    24,
  ),
  turnovers: quantity(
    null,
    'Turnovers wanted in a day of this season; those of the pad when null [-].',
    0,
    50,
  ),
});

/** What changes over a year, and what it is held against. */
export const yearSchema = z.strictObject({
  plans: list(
    'Day plans by season; the plan for 24 hours holds all year when there are none.',
    seasonPlanSchema,
    12,
  ),
  waterTemperatures: list(
    'Mean temperature of the water in each month, January first; all twelve or none [degC].',
    z.number().check(z.gte(0), z.lte(45)),
    12,
  ),
  cleaningDays: quantity(null, 'Days from one cleaning of the filter to the next [d].', 1, 3660),
  frostHours: list(
    'Hours of frost in each month, January first; all twelve or none [h].',
    z.number().check(z.gte(0), z.lte(744)),
    12,
  ),
  frostSpeed: quantity('speed', 'Speed that frost calls for [rpm].', 0, 10_000),
  emission: quantity(null, 'Greenhouse gas that comes with a kilowatt-hour [g/kWh].', 0, 5000),
  price: quantity(
    null,
    'Price of the pump that is to pay for itself [currency].',
    0,
    1_000_000_000,
  ),
  oldPower: quantity('power', 'Power the one-speed pump before it drew [W].', 0, 20_000),
  oldMinutes: minutes('Minutes a day the one-speed pump ran [min].'),
  interest: quantity('share', 'Interest a year that money is worth [-].', -0.5, 1),
  lifetime: quantity(null, 'Years the pump is to last [a].', 1, 100),
});
