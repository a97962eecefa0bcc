import {
  emptyPad,
  newBlock,
  newBranch,
  newCover,
  newEquipment,
  newFitting,
  newNeed,
  newParallel,
  newPipe,
  newQuiet,
  newReading,
} from '#pad/document/parts.ts';
import type { BranchSection, Pad } from '#pad/document/schema.ts';
import { toSI } from '#units/convert.ts';
import { cubicMetresPerHour, hour, kilopascals } from './demoUnits.ts';

const sixtyThree = 'pn10-63';
const fifty = 'pn10-50';

function inlet(id: string, name: string, run: number): BranchSection {
  return newBranch(id, {
    name,
    sections: [
      newPipe(`${id}-run`, { sizeId: fifty, length: run }),
      newFitting(`${id}-elbows`, 'elbow90', { sizeId: fifty, count: 2 }),
      newFitting(`${id}-nozzle`, 'other', { sizeId: fifty, k: 6 }),
    ],
  });
}

const plumbing: Pad['plumbing'] = {
  staticHead: 0,
  suction: [
    newParallel('suction-lines', {
      name: 'Skimmers and floor outlets',
      branches: [
        newBranch('skimmers', {
          name: 'Two skimmers on one line',
          sections: [
            newFitting('skimmers-inlet', 'squareInlet', { sizeId: sixtyThree }),
            newPipe('skimmers-run', { sizeId: sixtyThree, length: 14 }),
            newFitting('skimmers-elbows', 'elbow90', { sizeId: sixtyThree, count: 4 }),
          ],
        }),
        newBranch('floor', {
          name: 'Floor outlets',
          sections: [
            newFitting('floor-inlet', 'squareInlet', { sizeId: sixtyThree }),
            newPipe('floor-run', { sizeId: sixtyThree, length: 19 }),
            newFitting('floor-elbows', 'elbow90', { sizeId: sixtyThree, count: 4 }),
          ],
        }),
      ],
    }),
    newFitting('suction-tee', 'teeBranch', { sizeId: sixtyThree }),
    newPipe('suction-run', { sizeId: sixtyThree, length: 2.5 }),
    newFitting('suction-valve', 'ballValve', { sizeId: sixtyThree }),
    newEquipment('strainer', 'strainer', {
      name: 'Strainer basket',
      head: 0.4,
      flow: cubicMetresPerHour(14),
    }),
  ],
  discharge: [
    newPipe('to-filter', { sizeId: sixtyThree, length: 2 }),
    newFitting('to-filter-elbows', 'elbow90', { sizeId: sixtyThree, count: 2 }),
    newEquipment('filter', 'filter', {
      name: 'Sand filter with its valve',
      head: 2.6,
      flow: cubicMetresPerHour(14),
      exponent: 1.6,
      area: 0.44,
      dirtyHead: 7.5,
      loading: 0.3,
      media: 'sand',
    }),
    newEquipment('heat-pump', 'heater', {
      name: 'Heat pump',
      head: 1.2,
      flow: cubicMetresPerHour(7),
    }),
    newEquipment('check', 'checkValve', {
      name: 'Check valve',
      head: 0.3,
      flow: cubicMetresPerHour(14),
    }),
    newPipe('return-run', { sizeId: sixtyThree, length: 24 }),
    newFitting('return-elbows', 'elbow90', { sizeId: sixtyThree, count: 6 }),
    newParallel('inlets', {
      name: 'Wall inlets',
      branches: [
        inlet('inlet-1', 'First inlet', 3),
        inlet('inlet-2', 'Second inlet', 7),
        inlet('inlet-3', 'Third inlet', 11),
        inlet('inlet-4', 'Fourth inlet', 15),
      ],
    }),
  ],
};

const empty = emptyPad('metric');

const guestDay = [
  newBlock('night', hour(22), hour(7), 1500, 'Cheap and quiet: heat pump and filter'),
  newBlock('morning', hour(7), hour(9), 1900, 'Skims before breakfast'),
  newBlock('day', hour(9), hour(19), 1100, 'Guests in the water: filter only'),
  newBlock('evening', hour(19), hour(22), 1900, 'Skims after the day'),
];

/** A small lodge's pool in metric units, 63 mm pipe and 230 V. Every figure in it is made up. */
export const lodgePad: Pad = {
  ...empty,
  name: 'Lodge pool (invented)',
  notes:
    'An invented example: lodge, pool, pump, pipes, readings and prices are made up. No real place, ' +
    'maker or supplier stands behind it.',
  site: { altitude: 640, waterTemperature: 26, surfaceAbovePump: -0.5 },
  pool: {
    kind: 'shape',
    outline: { kind: 'stadium', length: 10, width: 5 },
    depth: {
      kind: 'stations',
      stations: [
        { distance: 0, depth: 1.1 },
        { distance: 4, depth: 1.3 },
        { distance: 10, depth: 1.8 },
      ],
    },
  },
  plumbing,
  pump: {
    ...empty.pump,
    name: 'Circulating pump on a drive',
    referenceSpeed: 2900,
    leastSpeed: 900,
    topSpeed: 2900,
    speedStep: 25,
    voltage: 230,
    knowledge: {
      kind: 'powerLaw',
      points: [
        { flow: 0, head: 18.5, power: null },
        { flow: cubicMetresPerHour(11), head: 15.4, power: null },
        { flow: cubicMetresPerHour(20), head: 9.2, power: null },
      ],
    },
  },
  readings: [
    newReading('full', {
      speed: 2900,
      flow: cubicMetresPerHour(14.6),
      filterPressure: kilopascals(115),
      power: 1060,
      current: 5,
    }),
    newReading('middle', {
      speed: 2000,
      flow: cubicMetresPerHour(9.9),
      filterPressure: kilopascals(56),
      power: 380,
      current: 2.2,
    }),
  ],
  instruments: {
    filterGauge: { span: kilopascals(250), grade: 'B' },
    vacuumGauge: { span: null, grade: null },
    meterShare: 0.05,
    powerShare: 0.03,
  },
  needs: [
    newNeed('skim', 'skimming', {
      name: 'Skim before and after guests',
      leastFlow: cubicMetresPerHour(9),
      minutes: 240,
      windows: [
        { start: hour(6), end: hour(10) },
        { start: hour(18), end: hour(22) },
      ],
      shortestRun: 60,
    }),
    newNeed('heat', 'heating', {
      name: 'Heat pump',
      leastFlow: cubicMetresPerHour(6),
      greatestFlow: cubicMetresPerHour(12),
      basis: { kind: 'heat', dailyRise: 0.6, heaterPower: 8500 },
      shortestRun: 60,
    }),
    newNeed('filter', 'filtering', {
      name: 'Filter',
      leastFlow: cubicMetresPerHour(4.5),
      minutes: 1320,
    }),
  ],
  limits: {
    suctionVelocity: 1.5,
    dischargeVelocity: 2,
    filterRate: toSI('filterRate', 40, 'm/h'),
    heaterGreatestFlow: cubicMetresPerHour(12),
    suctionCovers: [
      newCover('cover-1', { name: 'Floor cover, shallow', markedFlow: cubicMetresPerHour(21) }),
      newCover('cover-2', { name: 'Floor cover, deep', markedFlow: cubicMetresPerHour(21) }),
    ],
    coversBalanced: true,
    npshRequired: 3,
    npshMargin: 0.6,
    sources: {
      suctionVelocity: 'Common practice',
      dischargeVelocity: 'Common practice',
      filterRate: 'Label of the (invented) filter',
      heaterGreatestFlow: 'Manual of the (invented) heat pump',
      suctionCovers: 'Marked on the (invented) covers',
      npshRequired: 'Sheet of the (invented) pump',
    },
  },
  quiet: [newQuiet('night', hour(22), hour(6), 1500)],
  turnoverTarget: 2,
  tariff: {
    name: 'One price by day, one by night (invented)',
    currency: '€',
    dailyCharge: 0.4,
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
            weekdays: [0, 1, 2, 3, 4, 5, 6],
            bands: [
              { start: hour(6), end: hour(22), name: 'Day', price: 0.32 },
              { start: hour(22), end: hour(6), name: 'Night', price: 0.23 },
            ],
          },
        ],
      },
    ],
    holidays: [],
  },
  day: {
    date: { year: 2027, month: 5, day: 19 },
    blocks: guestDay,
    compareWith: 'usual',
    oldBlocks: [newBlock('old', hour(6), hour(22), 2900, 'Full speed from breakfast to closing')],
  },
  year: {
    ...empty.year,
    plans: [
      {
        id: 'open',
        name: 'Guests in the house',
        from: { month: 5, day: 15 },
        blocks: guestDay,
        withoutNeeds: [],
        turnovers: null,
      },
      {
        id: 'shut',
        name: 'House shut',
        from: { month: 10, day: 1 },
        blocks: [newBlock('noon', hour(11), hour(15), 1100, 'Keeps the water moving')],
        withoutNeeds: [],
        turnovers: null,
      },
    ],
    waterTemperatures: [6, 6, 8, 11, 17, 23, 26, 26, 22, 16, 10, 7],
    cleaningDays: 21,
    frostHours: [210, 170, 90, 20, 0, 0, 0, 0, 0, 15, 80, 180],
    frostSpeed: 900,
    emission: 320,
    price: 1150,
    oldPower: 1450,
    oldMinutes: 600,
    interest: 0.04,
    lifetime: 10,
  },
};
