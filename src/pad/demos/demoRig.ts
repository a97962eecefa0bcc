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
  newReading,
} from '#pad/document/parts.ts';
import type { BranchSection, Pad } from '#pad/document/schema.ts';
import { ft, ftHead, ftPerSecond, gpm, hour, inchesOfMercury, psi } from './demoUnits.ts';

/** One of the two measured runs: equal in everything but the size of the pipe. */
function measuredRun(id: string, name: string, sizeId: string): BranchSection {
  return newBranch(id, {
    name,
    sections: [
      newFitting(`${id}-inlet`, 'ballValve', { sizeId }),
      newPipe(`${id}-run`, { sizeId, length: ft(20) }),
      newFitting(`${id}-elbows`, 'elbow90', { sizeId, count: 4 }),
      newFitting(`${id}-outlet`, 'ballValve', { sizeId }),
    ],
  });
}

const plumbing: Pad['plumbing'] = {
  staticHead: 0,
  suction: [
    newFitting('tank-outlet', 'projectingInlet', { sizeId: 'sch40-2' }),
    newPipe('suction-run', { sizeId: 'sch40-2', length: ft(8) }),
    newFitting('suction-elbows', 'elbow90', { sizeId: 'sch40-2', count: 2 }),
    newEquipment('strainer', 'strainer', {
      name: 'Strainer basket, clear lid',
      head: ftHead(1),
      flow: gpm(50),
    }),
  ],
  discharge: [
    newPipe('riser', { sizeId: 'sch40-2', length: ft(6) }),
    newFitting('riser-elbows', 'elbow90', { sizeId: 'sch40-2', count: 2 }),
    newEquipment('filter', 'filter', {
      name: 'Small cartridge filter',
      head: ftHead(4),
      flow: gpm(50),
      exponent: 1.3,
      area: 9.3,
      dirtyHead: ftHead(20),
      loading: 0,
      media: 'cartridge',
    }),
    newFitting('split', 'teeBranch', { sizeId: 'sch40-2' }),
    newParallel('side-by-side', {
      name: 'Two sizes side by side',
      branches: [
        measuredRun('small', '1½ in run', 'sch40-1.5'),
        measuredRun('large', '2 in run', 'sch40-2'),
      ],
    }),
    newFitting('join', 'teeBranch', { sizeId: 'sch40-2' }),
    newFitting('throttle', 'globeValve', { sizeId: 'sch40-2' }),
    newPipe('return-run', { sizeId: 'sch40-2', length: ft(10) }),
    newFitting('return-elbows', 'elbow90', { sizeId: 'sch40-2', count: 3 }),
    newFitting('tank-inlet', 'exit', { sizeId: 'sch40-2' }),
  ],
};

/** Flow [gpm], head [ft], wire power [W] at the reference speed. */
const curve = [
  [0, 62, 760],
  [20, 60, 860],
  [40, 55.5, 980],
  [60, 48.5, 1090],
  [80, 38.5, 1170],
  [95, 29, 1210],
] as const;

const empty = emptyPad('us');

/** A training rig with two pipe sizes side by side. Every figure in it is made up. */
export const rigPad: Pad = {
  ...empty,
  name: 'Training rig (invented)',
  notes:
    'An invented example: a bench with an open basin, a pump and two runs that differ only in bore. ' +
    'Its figures and its price are made up. No real school, maker or supplier stands behind it.',
  site: { altitude: 0, waterTemperature: 20, surfaceAbovePump: 0 },
  pool: { kind: 'known', volume: 3 },
  plumbing,
  pump: {
    ...empty.pump,
    name: 'Rig pump on a drive',
    referenceSpeed: 3450,
    leastSpeed: 500,
    topSpeed: 3450,
    speedStep: 5,
    voltage: 115,
    fixedPower: 30,
    knowledge: {
      kind: 'curve',
      points: curve.map(([flow, head, power]) => ({ flow: gpm(flow), head: ftHead(head), power })),
    },
  },
  readings: [
    newReading('fast', {
      speed: 3450,
      flow: gpm(88),
      filterPressure: psi(10.7),
      suctionVacuum: inchesOfMercury(5.5),
      gaugeHeight: ft(2),
      power: 1190,
    }),
    newReading('slow', {
      speed: 1725,
      flow: gpm(42.5),
      filterPressure: psi(2.4),
      suctionVacuum: inchesOfMercury(1.3),
      gaugeHeight: ft(2),
      power: 174,
    }),
  ],
  instruments: {
    filterGauge: { span: psi(30), grade: '1A' },
    vacuumGauge: { span: inchesOfMercury(30), grade: '1A' },
    meterShare: 0.02,
    powerShare: 0.01,
  },
  needs: [
    newNeed('velocity', 'filtering', {
      name: 'Show the velocity limit',
      leastFlow: gpm(55),
      minutes: 60,
      windows: [{ start: hour(8), end: hour(16) }],
      shortestRun: 20,
    }),
    newNeed('clear', 'filtering', {
      name: 'Keep the basin clear',
      leastFlow: gpm(10),
      minutes: 360,
      windows: [{ start: hour(8), end: hour(16) }],
    }),
  ],
  limits: {
    ...empty.limits,
    suctionVelocity: ftPerSecond(6),
    dischargeVelocity: ftPerSecond(8),
    suctionCovers: [newCover('cover', { name: 'Cover in the basin wall', markedFlow: gpm(110) })],
    npshRequired: ftHead(7),
    npshMargin: ftHead(2),
    sources: {
      suctionVelocity: 'Common practice',
      dischargeVelocity: 'Common practice',
      suctionCovers: 'Marked on the (invented) cover',
      npshRequired: 'Sheet of the (invented) pump',
    },
  },
  turnoverTarget: 10,
  tariff: {
    name: 'One flat price (invented)',
    currency: '$',
    dailyCharge: 0,
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
            bands: [{ start: 0, end: 0, name: 'All day', price: 0.15 }],
          },
        ],
      },
    ],
    holidays: [],
  },
  day: {
    date: { year: 2027, month: 3, day: 9 },
    blocks: [
      newBlock('warm-up', hour(8), hour(10), 1000, 'First readings, slow'),
      newBlock('show', hour(10), hour(11), 2350, 'Just under the velocity limit'),
      newBlock('practice', hour(11), hour(15), 1725, 'Half speed: the affinity laws'),
    ],
    compareWith: 'oneSpeed',
    oldBlocks: [newBlock('old', hour(8), hour(15), 3450, 'Full speed through the course day')],
  },
  year: empty.year,
};
