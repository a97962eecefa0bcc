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
import { ft, ftHead, ftPerSecond, gpm, hour, psi } from './demoUnits.ts';

const twoInch = 'sch40-2';
const twoAndHalf = 'sch40-2.5';
const oneAndHalf = 'sch40-1.5';

/** One wall return: its own run of pipe, elbows, and an eyeball outlet. */
function wallReturn(id: string, name: string, run: number): BranchSection {
  return newBranch(id, {
    name,
    sections: [
      newPipe(`${id}-run`, { sizeId: oneAndHalf, length: ft(run) }),
      newFitting(`${id}-elbows`, 'elbow90', { sizeId: oneAndHalf, count: 2 }),
      newFitting(`${id}-eyeball`, 'other', { sizeId: oneAndHalf, k: 8 }),
    ],
  });
}

const weekend = (peak: number, rest: number) => ({
  id: 'weekend',
  name: 'Weekend and holiday',
  weekdays: [0, 6],
  bands: [
    { start: hour(17), end: hour(20), name: 'Evening', price: peak },
    { start: hour(20), end: hour(17), name: 'Rest of the day', price: rest },
  ],
});

const weekday = (peak: number, middle: number, night: number) => ({
  id: 'weekday',
  name: 'Weekday',
  weekdays: [1, 2, 3, 4, 5],
  bands: [
    { start: hour(0), end: hour(7), name: 'Night', price: night },
    { start: hour(7), end: hour(16), name: 'Day', price: middle },
    { start: hour(16), end: hour(21), name: 'Evening', price: peak },
    { start: hour(21), end: hour(0), name: 'Late', price: middle },
  ],
});

const plumbing: Pad['plumbing'] = {
  staticHead: 0,
  suction: [
    newParallel('suction-lines', {
      name: 'Skimmer and floor outlets',
      branches: [
        newBranch('skimmer', {
          name: 'Skimmer line',
          sections: [
            newFitting('skimmer-inlet', 'squareInlet', { sizeId: twoInch }),
            newPipe('skimmer-run', { sizeId: twoInch, length: ft(28) }),
            newFitting('skimmer-elbows', 'elbow90', { sizeId: twoInch, count: 3 }),
          ],
        }),
        newBranch('floor', {
          name: 'Floor outlets, two covers',
          sections: [
            newFitting('floor-inlet', 'projectingInlet', { sizeId: twoInch }),
            newPipe('floor-run', { sizeId: twoInch, length: ft(46) }),
            newFitting('floor-elbows', 'elbow90', { sizeId: twoInch, count: 4 }),
          ],
        }),
      ],
    }),
    newFitting('suction-valve', 'threeWayValveBranch', { sizeId: twoAndHalf }),
    newPipe('suction-run', { sizeId: twoAndHalf, length: ft(6) }),
    newFitting('suction-elbow', 'elbow90', { sizeId: twoAndHalf }),
    newEquipment('strainer', 'strainer', {
      name: 'Strainer basket',
      head: ftHead(1.2),
      flow: gpm(60),
    }),
  ],
  discharge: [
    newPipe('to-filter', { sizeId: twoInch, length: ft(6) }),
    newFitting('to-filter-elbows', 'elbow90', { sizeId: twoInch, count: 3 }),
    newEquipment('filter', 'filter', {
      name: 'Cartridge filter',
      head: ftHead(3),
      flow: gpm(60),
      exponent: 1.3,
      area: toSI('area', 300, 'ft2'),
      dirtyHead: ftHead(22),
      loading: 0.2,
      media: 'cartridge',
    }),
    newEquipment('heater', 'heater', { name: 'Gas heater', head: ftHead(7), flow: gpm(60) }),
    newEquipment('check', 'checkValve', { name: 'Check valve', head: ftHead(1), flow: gpm(60) }),
    newEquipment('cell', 'saltCell', { name: 'Salt cell', head: ftHead(1.8), flow: gpm(60) }),
    newPipe('return-run', { sizeId: twoInch, length: ft(52) }),
    newFitting('return-elbows', 'elbow90', { sizeId: twoInch, count: 6 }),
    newFitting('return-tee', 'teeBranch', { sizeId: twoInch }),
    newParallel('returns', {
      name: 'Wall returns',
      branches: [
        wallReturn('return-1', 'Return by the steps', 8),
        wallReturn('return-2', 'Return in the long wall', 20),
        wallReturn('return-3', 'Return at the deep end', 34),
      ],
    }),
  ],
};

const curve = [
  [0, 86],
  [20, 84.5],
  [40, 81],
  [60, 75.5],
  [80, 68],
  [100, 58],
  [120, 45],
] as const;

const empty = emptyPad('us');

/** An owner's pool, in US units. Every figure in it is made up. */
export const ownerPad: Pad = {
  ...empty,
  name: 'Garden pool (invented)',
  notes:
    'An invented example: pool, pump, pipes, readings and prices are made up. No real place, maker ' +
    'or supplier stands behind it.',
  site: { altitude: ft(400), waterTemperature: 27, surfaceAbovePump: ft(-1) },
  pool: {
    kind: 'shape',
    outline: { kind: 'rectangle', length: ft(32), width: ft(16) },
    depth: { kind: 'sloped', first: ft(3.5), second: ft(7) },
  },
  plumbing,
  pump: {
    ...empty.pump,
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
    newReading('full', { speed: 3450, filterPressure: psi(23), power: 2080 }),
    newReading('middle', { speed: 2400, filterPressure: psi(11.5), power: 725 }),
    newReading('slow', { speed: 1500, filterPressure: psi(4.5), power: 215 }),
  ],
  instruments: {
    ...empty.instruments,
    filterGauge: { span: psi(60), grade: 'B' },
    powerShare: 0.03,
  },
  needs: [
    newNeed('skim', 'skimming', {
      name: 'Skim the surface',
      leastFlow: gpm(48),
      minutes: 180,
      windows: [{ start: hour(8), end: hour(18) }],
      shortestRun: 60,
    }),
    newNeed('heat', 'heating', {
      name: 'Gas heater',
      leastFlow: gpm(40),
      greatestFlow: gpm(100),
      minutes: 240,
      windows: [{ start: hour(9), end: hour(16) }],
      shortestRun: 30,
    }),
    newNeed('salt', 'saltCell', {
      name: 'Salt cell',
      leastFlow: gpm(25),
      basis: {
        kind: 'chlorine',
        dailyUse: toSI('concentration', 2, 'mg/L'),
        output: toSI('massRate', 25, 'g/h'),
      },
      shortestRun: 30,
    }),
    newNeed('filter', 'filtering', { name: 'Filter', leastFlow: gpm(18), minutes: 1200 }),
  ],
  limits: {
    suctionVelocity: ftPerSecond(6),
    dischargeVelocity: ftPerSecond(8),
    filterRate: toSI('filterRate', 0.375, 'gpm/ft2'),
    heaterGreatestFlow: gpm(100),
    suctionCovers: [
      newCover('cover-1', { name: 'Floor cover, left', markedFlow: gpm(112) }),
      newCover('cover-2', { name: 'Floor cover, right', markedFlow: gpm(112) }),
    ],
    coversBalanced: true,
    npshRequired: ftHead(8),
    npshMargin: ftHead(2),
    sources: {
      suctionVelocity: 'Common practice',
      dischargeVelocity: 'Common practice',
      filterRate: 'Label of the (invented) filter',
      heaterGreatestFlow: 'Manual of the (invented) heater',
      suctionCovers: 'Marked on the (invented) covers',
      npshRequired: 'Sheet of the (invented) pump',
    },
  },
  quiet: [newQuiet('night', hour(22), hour(7), 1800)],
  turnoverTarget: 2,
  tariff: {
    name: 'Two seasons by time of use (invented)',
    currency: '$',
    dailyCharge: 0.35,
    seasons: [
      {
        id: 'summer',
        name: 'Summer',
        from: { month: 6, day: 1 },
        to: { month: 9, day: 30 },
        dayTypes: [weekday(0.49, 0.27, 0.18), weekend(0.34, 0.2)],
      },
      {
        id: 'winter',
        name: 'Winter',
        from: { month: 10, day: 1 },
        to: { month: 5, day: 31 },
        dayTypes: [weekday(0.31, 0.22, 0.16), weekend(0.25, 0.17)],
      },
    ],
    holidays: [
      { month: 1, day: 1, dayTypeId: 'weekend' },
      { month: 12, day: 25, dayTypeId: 'weekend' },
    ],
  },
  day: {
    date: { year: 2027, month: 7, day: 14 },
    blocks: [
      newBlock('late', hour(21), hour(9), 1150, 'Slow and cheap: salt cell and filter'),
      newBlock('skim', hour(9), hour(12), 2000, 'Skims, and heats'),
      newBlock('heat', hour(12), hour(16), 1700, 'Heater'),
      newBlock('evening', hour(16), hour(21), 850, 'Peak hours: as slow as the filter allows'),
    ],
    compareWith: 'old',
    oldBlocks: [
      newBlock('old', hour(9), hour(17), 3450, 'As the pump came: top speed for eight hours'),
    ],
  },
  year: empty.year,
};
