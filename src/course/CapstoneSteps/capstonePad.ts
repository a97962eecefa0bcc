/**
 * The pad of the capstone. It is put together so that a hand gets through it: nearly every loss is a
 * square law and nothing is lifted, so the affinity laws hold to a fraction of a percent.
 */

import { ft, ftHead, ftPerSecond, gpm, hour, inchesOfMercury, psi } from '#pad/demos/demoUnits.ts';
import {
  emptyPad,
  newBlock,
  newCover,
  newEquipment,
  newFitting,
  newNeed,
  newPipe,
  newReading,
} from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { toSI } from '#units/convert.ts';

const twoInch = 'sch40-2';

/** Head against flow at full speed, as on the sheet of the invented pump. */
const curve = [
  [0, 80],
  [20, 78.5],
  [40, 74],
  [60, 65.5],
  [80, 53],
  [100, 36],
] as const;

const everyDay = [0, 1, 2, 3, 4, 5, 6];

/** What hangs on the wall and stands on the pad, before anybody has planned a day. */
const found: Pad = {
  ...emptyPad('us'),
  name: 'Capstone pool (invented)',
  notes:
    'An invented example: pool, pump, pipes, readings and prices are made up. No real place, maker ' +
    'or supplier stands behind it.',
  site: { altitude: ft(0), waterTemperature: 27, surfaceAbovePump: ft(0) },
  pool: { kind: 'known', volume: toSI('volume', 18_000, 'gal') },
  plumbing: {
    staticHead: 0,
    suction: [
      newPipe('suction-run', { sizeId: twoInch, length: ft(1) }),
      newFitting('suction-fittings', 'other', { sizeId: twoInch, k: 9.9 }),
    ],
    discharge: [
      newEquipment('filter', 'filter', {
        name: 'Filter',
        head: ftHead(14),
        flow: gpm(60),
        exponent: 2,
      }),
      newEquipment('heater', 'heater', { name: 'Gas heater', head: ftHead(8), flow: gpm(60) }),
      newPipe('return-run', { sizeId: twoInch, length: ft(1) }),
      newFitting('return-fittings', 'other', { sizeId: twoInch, k: 34.9 }),
    ],
  },
  pump: {
    ...emptyPad('us').pump,
    name: 'Variable-speed pump',
    referenceSpeed: 3450,
    leastSpeed: 600,
    topSpeed: 3450,
    speedStep: 10,
    voltage: 230,
    knowledge: {
      kind: 'curve',
      points: curve.map(([flow, head]) => ({ flow: gpm(flow), head: ftHead(head), power: null })),
    },
  },
  readings: [
    newReading('full', {
      speed: 3450,
      filterPressure: psi(22),
      suctionVacuum: inchesOfMercury(6),
      gaugeHeight: ft(2),
      power: 1650,
    }),
    newReading('half', { speed: 1725, power: 250 }),
  ],
  // Read with test instruments, so that the sheet stands where a hand puts it.
  instruments: {
    ...emptyPad('us').instruments,
    filterGauge: { grade: '4A', span: psi(60) },
    vacuumGauge: { grade: '4A', span: inchesOfMercury(30) },
    powerShare: 0.0005,
  },
  needs: [
    newNeed('skim', 'skimming', {
      name: 'Skimming',
      leastFlow: gpm(42),
      minutes: hour(3),
      windows: [{ start: hour(13), end: hour(18) }],
      shortestRun: 60,
    }),
    newNeed('heat', 'heating', {
      name: 'Gas heater',
      leastFlow: gpm(32),
      minutes: hour(4),
      windows: [{ start: hour(10), end: hour(18) }],
      shortestRun: 60,
    }),
    newNeed('filter', 'filtering', { name: 'Filter', leastFlow: gpm(21), minutes: hour(14) }),
  ],
  limits: {
    ...emptyPad('us').limits,
    suctionVelocity: ftPerSecond(6),
    dischargeVelocity: ftPerSecond(8),
    suctionCovers: [
      newCover('first', { name: 'First floor cover', markedFlow: gpm(110) }),
      newCover('second', { name: 'Second floor cover', markedFlow: gpm(110) }),
    ],
    coversBalanced: true,
    sources: {
      suctionVelocity: 'Common practice',
      dischargeVelocity: 'Common practice',
      suctionCovers: 'Marked on the (invented) covers',
    },
  },
  turnoverTarget: 1,
  tariff: {
    name: 'Two prices a day (invented)',
    currency: '$',
    dailyCharge: 0.3,
    seasons: [
      {
        id: 'year',
        name: 'All year',
        from: { month: 1, day: 1 },
        to: null,
        dayTypes: [
          {
            id: 'every-day',
            name: 'Every day',
            weekdays: everyDay,
            bands: [
              { start: hour(16), end: hour(21), name: 'Evening', price: 0.42 },
              { start: hour(21), end: hour(16), name: 'Rest of the day', price: 0.2 },
            ],
          },
        ],
      },
    ],
    holidays: [],
  },
};

/** The slowest speed for a need, as the ladder of the pad has it [rpm]. */
export function slowestFor(pad: Pad, needId: string): number {
  const model = padModel(pad);
  const rung = model.ladder?.find(({ need }) => need.id === needId);
  if (rung?.kind !== 'served') throw new RangeError(`No speed of the capstone serves ${needId}.`);
  return model.speedOf(rung.ratio);
}

const speedOf = (needId: string) => slowestFor(found, needId);

/** The same with the day that the steps lead to, and beside it the day as it was. */
export const capstonePad: Pad = {
  ...found,
  day: {
    ...found.day,
    date: { year: 2027, month: 7, day: 14 },
    blocks: [
      newBlock('filter', hour(23), hour(9), speedOf('filter'), 'Cheap hours: filter alone'),
      newBlock('heat', hour(12), hour(13), speedOf('heat'), 'Heater, before the skimmer'),
      newBlock('skim', hour(13), hour(16), speedOf('skim'), 'Skims, heats and filters at once'),
    ],
    compareWith: 'old',
    oldBlocks: [newBlock('old', hour(9), hour(17), 3450, 'As it was found: full speed')],
  },
};
