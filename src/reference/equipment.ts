import { gaugeGrades } from '#core/fit/gauges.ts';
import { typicalInstruments } from '#core/fit/padEvidence.ts';
import { typicalEfficiency } from '#core/fit/padModel.ts';
import {
  backwashRate,
  greatestFiltrationFlow,
  publishedVelocityLimits,
} from '#core/hydraulics/publishedLimits.ts';
import type { EquipmentSection, PadNeed } from '#pad/document/schema.ts';
import { usualEquipment, usualNeed, usualNeeds, usualVelocities } from '#padPage/form/usual.ts';
import { formatIn } from '#units/format.ts';
import { noValue, shortest } from '#units/numerals.ts';
import { equipmentNames } from '#words/parts.ts';
import type { FigureTable } from './table.ts';

const bare = { withUnit: false } as const;
const presets = ['us', 'metric'] as const;

const feet = (head: number) => formatIn('head', head, 'ft', bare);
const metres = (head: number) => formatIn('head', head, 'm', bare);
const gpm = (flow: number) => formatIn('flow', flow, 'gpm', bare);
const cubicMetres = (flow: number) => formatIn('flow', flow, 'm3/h', bare);

/** The usual loss of a kind in the round numbers of each system. */
function usualPair(kind: EquipmentSection['equipment']) {
  const [us, metric] = presets.map((preset) => usualEquipment(kind, preset));
  return us && metric ? { us, metric } : undefined;
}

/** Usual losses of equipment, clean. */
export function equipmentLosses(): FigureTable {
  const kinds = Object.keys(equipmentNames) as EquipmentSection['equipment'][];
  return {
    caption: 'Usual loss of equipment, clean, and the flow it is stated at',
    headings: [
      { name: 'Equipment' },
      { name: 'US figures', units: ['ft', 'at gpm'] },
      { name: 'Metric figures', units: ['m', 'at m³/h'] },
    ],
    rows: kinds.flatMap((kind) => {
      const pair = usualPair(kind);
      if (pair === undefined) return [];
      const { us, metric } = pair;
      const filter = [
        `${equipmentNames.filter}, due for cleaning`,
        feet(us.dirtyHead ?? Number.NaN),
        gpm(us.flow ?? Number.NaN),
        metres(metric.dirtyHead ?? Number.NaN),
        cubicMetres(metric.flow ?? Number.NaN),
      ];
      const row = [
        equipmentNames[kind],
        feet(us.head ?? Number.NaN),
        gpm(us.flow ?? Number.NaN),
        metres(metric.head ?? Number.NaN),
        cubicMetres(metric.flow ?? Number.NaN),
      ];
      return kind === 'filter' ? [row, filter] : [row];
    }),
  };
}

/** What each need usually takes. */
export function needs(): FigureTable {
  const hours = (minutes: number | null) =>
    minutes === null ? noValue : formatIn('duration', minutes * 60, 'h', bare);
  const flow = (kind: PadNeed['kind'], preset: (typeof presets)[number]) =>
    usualNeed('need', kind, preset).leastFlow ?? Number.NaN;
  return {
    caption: 'What each need usually takes, in its own line',
    headings: [
      { name: 'Need' },
      { name: 'Least flow', units: ['gpm', 'm³/h'] },
      { name: 'A day', units: ['h'] },
      { name: 'Shortest run', units: ['h'] },
    ],
    rows: (Object.keys(usualNeeds) as PadNeed['kind'][]).map((kind) => [
      usualNeeds[kind].name,
      gpm(flow(kind, 'us')),
      cubicMetres(flow(kind, 'metric')),
      hours(usualNeeds[kind].minutes),
      hours(usualNeeds[kind].shortestRun),
    ]),
  };
}

/** The velocities a plan starts from. */
export function velocities(): FigureTable {
  const [us, metric] = presets.map(usualVelocities);
  const row = (name: string, side: 'suction' | 'discharge') => [
    name,
    formatIn('velocity', us?.[side] ?? Number.NaN, 'ft/s', bare),
    formatIn('velocity', metric?.[side] ?? Number.NaN, 'm/s', bare),
  ];
  return {
    caption: 'Usual greatest velocities',
    headings: [
      { name: 'Pipe' },
      { name: 'US figure', units: ['ft/s'] },
      { name: 'Metric figure', units: ['m/s'] },
    ],
    rows: [row('Before the pump', 'suction'), row('After the pump', 'discharge')],
  };
}

const howRead = {
  inText: 'read in the text',
  secondHand: 'read second-hand',
  memory: 'from memory',
} as const;

/** Velocities that codes and standards print. */
export const printedVelocities: FigureTable = {
  caption: 'Velocity limits in print',
  headings: [
    { name: 'Document' },
    { name: 'Line' },
    { name: 'Limit', units: ['ft/s', 'm/s'] },
    { name: 'How we know' },
  ],
  rows: publishedVelocityLimits.map(({ document, section, line, velocity, read }) => [
    `${document}, ${section}`,
    line,
    formatIn('velocity', velocity, 'ft/s', bare),
    formatIn('velocity', velocity, 'm/s', bare),
    howRead[read],
  ]),
};

/** The flow that the filtration rule allows however small the pool. */
export const filtrationFloor: readonly string[] = [
  formatIn('flow', greatestFiltrationFlow(0), 'gpm'),
  formatIn('flow', greatestFiltrationFlow(0), 'm3/h'),
];

/** Rate that washes a sand bed: a need of its own, often the highest flow of a pool. */
export const backwash: FigureTable = {
  caption: 'Least rate of a backwash, over the area of the sand',
  headings: [{ name: 'What' }, { name: 'Rate', units: ['gpm/ft²', 'm/h'] }],
  rows: [
    [
      'Sand filter, backwash',
      formatIn('filterRate', backwashRate, 'gpm/ft2', bare),
      formatIn('filterRate', backwashRate, 'm/h', bare),
    ],
  ],
};

const share = (value: number) => shortest(100 * value, 3);

/** How far a dial gauge of each grade may be off. */
export const grades: FigureTable = {
  caption: 'Allowed error of a gauge, as a share of its whole scale',
  headings: [
    { name: 'Grade' },
    { name: 'Middle half of the scale', units: ['%'] },
    { name: 'First and last quarter', units: ['%'] },
  ],
  rows: Object.entries(gaugeGrades).map(([grade, { middle, ends }]) => [
    grade,
    share(middle),
    share(ends),
  ]),
};

/** What is taken of instruments and pumps when nobody says. */
export const taken: FigureTable = {
  caption: 'Assumed where you enter nothing',
  headings: [{ name: 'What' }, { name: 'Figure' }],
  rows: [
    ['Flow meter, share of its reading', formatIn('share', typicalInstruments.meterShare, '%')],
    [
      'Watts on a display, share of the reading',
      formatIn('share', typicalInstruments.powerShare, '%'),
    ],
    [
      `Filter gauge, grade ${typicalInstruments.filterGauge.grade}, scale`,
      formatIn('pressure', typicalInstruments.filterGauge.span, 'psi'),
    ],
    [
      `Vacuum gauge, grade ${typicalInstruments.vacuumGauge.grade}, scale`,
      formatIn('vacuum', typicalInstruments.vacuumGauge.span, 'inHg'),
    ],
    ['From wire to water at full speed', formatIn('share', typicalEfficiency, '%')],
  ],
};
