import * as z from 'zod/mini';
import { identifier, list, minuteOfDay, minutes, quantity, words } from './fields.ts';

const flow = (what: string) => quantity('flow', `${what} [m3/s].`, 0, 1);
const velocity = (what: string) => quantity('velocity', `${what} [m/s].`, 0, 20);
const speed = (what: string) => quantity('speed', `${what} [rpm].`, 0, 10_000);
const start = minuteOfDay('First minute, counted from midnight.');
const end = minuteOfDay('Minute it ends at; before the start when it crosses midnight.');

/** A branch of the plumbing by its id, or null. */
function branchReference(description: string) {
  return z
    ._default(z.nullable(z.string().check(z.minLength(1), z.maxLength(40))), null)
    .check(z.meta({ description }));
}

/** What water is moved for. */
export const needKinds = [
  'skimming',
  'heating',
  'saltCell',
  'cleaner',
  'solar',
  'spillway',
  'filtering',
] as const;

/** Where a need's minutes come from when the reader has not typed them. */
const basisSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('chlorine'),
    dailyUse: quantity('concentration', 'Chlorine the pool uses in a day [kg/m3].', 0, 0.1),
    output: quantity('massRate', 'Chlorine the cell makes at full output [kg/s].', 0, 0.01),
  }),
  z.strictObject({
    kind: z.literal('heat'),
    dailyRise: quantity('temperatureDifference', 'Temperature to be made up in a day [K].', 0, 40),
    heaterPower: quantity('heatRate', 'Heat that reaches the water [W].', 0, 2_000_000),
  }),
]);

/** One thing on the pad that needs water to flow. */
export const needSchema = z.strictObject({
  id: identifier('Stays with this need for the life of the document.'),
  kind: z.enum(needKinds).check(z.meta({ description: 'What the water is moved for.' })),
  name: words('What the reader calls it.'),
  leastFlow: flow('Least flow at which it works'),
  greatestFlow: flow('Greatest flow it works at, when there is one'),
  minutes: minutes('Minutes a day [min].'),
  windows: list(
    'Times of day it may run; any time when empty.',
    z.strictObject({ start, end }),
    12,
  ),
  shortestRun: minutes('Shortest run that does any good; 0 when null [min].'),
  branchId: branchReference(
    'Branch that must carry the flows of this need; the whole flow counts when null.',
  ),
  basis: z
    ._default(z.nullable(basisSchema), null)
    .check(z.meta({ description: 'What the minutes follow from, when they are not typed.' })),
});

/** What no plan may cross. */
export const limitsSchema = z.strictObject({
  suctionVelocity: velocity('Greatest velocity in suction pipe'),
  dischargeVelocity: velocity('Greatest velocity in discharge pipe'),
  filterRate: quantity('filterRate', 'Greatest flow per filter area [m/s].', 0, 0.2),
  heaterGreatestFlow: flow('Greatest flow through the heater'),
  suctionCovers: list(
    'Covers of the suction outlets, with the flow marked on each.',
    z.strictObject({
      id: identifier('Stays with this cover for the life of the document.'),
      name: words('What the reader calls it.'),
      markedFlow: flow('Flow marked on the cover; a hard stop'),
      branchId: branchReference(
        'Branch of the suction side it stands in; its pipes are not known when null.',
      ),
    }),
    24,
  ),
  coversBalanced: z._default(z.boolean(), false).check(
    z.meta({
      description:
        'Whether covers on one line share it evenly: equal pipes, the tee midway, no valve between.',
    }),
  ),
  npshRequired: quantity('head', 'Net positive suction head the pump requires [m].', 0, 50),
  npshMargin: quantity('head', 'Head to keep above what the pump requires [m].', 0, 20),
  sources: z
    ._default(
      z.record(
        z.string().check(z.regex(/^[A-Za-z0-9_-]{1,40}$/)),
        z.string().check(z.maxLength(200)),
      ),
      {},
    )
    .check(z.meta({ description: 'Where each limit was read, by its field name.' })),
});

/** A time of day in which the pump must stay slow. */
export const quietSchema = z.strictObject({
  id: identifier('Stays with these hours for the life of the document.'),
  start,
  end,
  ceilingSpeed: speed('Fastest speed allowed'),
});

/** A day of any year. */
export const monthDay = z.strictObject({
  month: z.int().check(z.gte(1), z.lte(12), z.meta({ description: 'January is 1.' })),
  day: z.int().check(z.gte(1), z.lte(31), z.meta({ description: 'Day of the month.' })),
});

const dayTypeSchema = z.strictObject({
  id: identifier('Stays with this kind of day for the life of the document.'),
  name: words('What the reader calls it.'),
  weekdays: list(
    'Days of the week it holds for; Sunday is 0.',
    z.int().check(z.gte(0), z.lte(6)),
    7,
  ),
  bands: list(
    'Prices over the day.',
    z.strictObject({
      start,
      end,
      name: words('What the bill calls it.'),
      // Some currencies have thousands of units to a kilowatt-hour.
      price: quantity(null, 'Price of a kilowatt-hour [currency/kWh].', -100_000, 1_000_000),
    }),
    48,
  ),
});

/** What electricity costs. */
export const tariffSchema = z.strictObject({
  name: words('What the reader calls the tariff.'),
  currency: words('Sign or code put before or after a sum.', 8),
  dailyCharge: quantity(null, 'Fixed charge a day; 0 when null [currency].', 0, 10_000_000),
  seasons: list(
    'Parts of the year with prices of their own; one of them when there are none.',
    z.strictObject({
      id: identifier('Stays with this season for the life of the document.'),
      name: words('What the bill calls it.'),
      from: monthDay.check(z.meta({ description: 'First day.' })),
      to: z
        ._default(z.nullable(monthDay), null)
        .check(z.meta({ description: 'Last day; until the next season when null.' })),
      dayTypes: list('Kinds of day in it.', dayTypeSchema, 12),
    }),
    12,
  ),
  holidays: list(
    'Days that count as another kind of day.',
    z.strictObject({
      month: monthDay.shape.month,
      day: monthDay.shape.day,
      dayTypeId: identifier('The kind of day it counts as.'),
    }),
    60,
  ),
});

/** A stretch of the day at one speed. Where there is no block the pump is off. */
export const blockSchema = z.strictObject({
  id: identifier('Stays with this block for the life of the document.'),
  start,
  end: minuteOfDay('Minute it ends at; the start again when it runs the whole day.'),
  speed: speed('Speed of the pump'),
  reason: words('Why this speed at this time.', 200),
});

/** The plan for 24 hours. */
export const daySchema = z.strictObject({
  date: z
    ._default(
      z.nullable(
        z.strictObject({
          year: z
            .int()
            .check(z.gte(1970), z.lte(2200), z.meta({ description: 'Year, four figures.' })),
          month: monthDay.shape.month,
          day: monthDay.shape.day,
        }),
      ),
      null,
    )
    .check(z.meta({ description: 'Day to be priced; today when null.' })),
  blocks: list('Stretches of the day at one speed.', blockSchema, 48),
  compareWith: z
    ._default(z.enum(['oneSpeed', 'usual', 'old']), 'usual')
    .check(z.meta({ description: 'The day to set beside it.' })),
  oldBlocks: list('The day as it was before, for comparison.', blockSchema, 48),
});
